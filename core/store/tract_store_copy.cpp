// Copies of a tract file, for handing over and for keeping.
#include <map>
#include <system_error>

#include "core/store/file_header.hpp"
#include "core/store/tract_store_impl.hpp"

namespace oaklight {
namespace {

namespace fs = std::filesystem;
using store::SqliteHandle;

/// Rows of every table that holds something of ours.
Result<std::map<std::string, store::Row>> count_rows(SqliteHandle& db) {
  std::map<std::string, store::Row> counts;
  std::vector<std::string_view> tables(store::kRecordTables.begin(), store::kRecordTables.end());
  tables.insert(tables.end(), {"user_action", "change", "gpkg_contents", "meta"});
  for (const std::string_view table : tables) {
    const auto row = db.first("SELECT count(*) FROM " + store::quoted_name(table));
    if (!row) return row.error();
    counts[std::string(table)] = row->value_or(store::Row{});
  }
  return counts;
}

Error cannot_copy(const fs::path& target, const std::string& what) {
  return {ErrorCode::cannot_write, what, target.string(), "Choose another name or folder."};
}

}  // namespace

Status TractStore::settle() {
  if (impl_->mode == OpenMode::read_only) return Done{};
  return impl_->db.run("PRAGMA wal_checkpoint(TRUNCATE)");
}

Status TractStore::copy_to(const fs::path& target) const {
  SqliteHandle& db = impl_->db;
  std::error_code ignored;
  if (target.extension() != ".gpkg")
    return cannot_copy(target, "The name of a tract file ends in .gpkg.");
  if (fs::exists(target, ignored))
    return cannot_copy(target, "There is a file of that name already.");
  const fs::path unfinished = target.string() + ".new";
  fs::remove(unfinished, ignored);

  // Who left the check to himself has run it before.
  if (impl_->damage_check == DamageCheck::on_opening) {
    if (const auto sound = find_damage(); !sound) return sound;
  }
  if (impl_->mode == OpenMode::read_write) {
    if (const auto done = db.run("PRAGMA wal_checkpoint(TRUNCATE)"); !done) return done;
  }
  const auto copied = db.run("VACUUM INTO ?1", {fs::absolute(unfinished).string()});
  if (!copied) {
    fs::remove(unfinished, ignored);
    if (copied.error().code == ErrorCode::cannot_open)
      return cannot_copy(target, "A file cannot be made there.");
    return copied;
  }
  const auto ours = count_rows(db);
  if (!ours) return ours.error();
  {
    auto copy = SqliteHandle::open(unfinished, store::Use::read_only);
    if (!copy) return copy.error();
    const auto theirs = count_rows(*copy);
    if (!theirs) return theirs.error();
    if (*theirs != *ours) return cannot_copy(target, "The copy does not hold the same.");
  }
  return store::publish_file(unfinished, target);
}

}  // namespace oaklight
