// Making, opening and closing a tract file.
#include "core/store/tract_store.hpp"

#include <system_error>

#include "core/base/embedded.hpp"
#include "core/store/file_header.hpp"
#include "core/store/forms_in_file.hpp"
#include "core/store/new_file.hpp"
#include "core/store/self_rules.hpp"
#include "core/store/tract_store_impl.hpp"

namespace oaklight {
namespace {

namespace fs = std::filesystem;
using store::SqliteHandle;
using store::Use;

Status fill_new_file(SqliteHandle& db, std::span<const store::SchemaStep> steps, IdSource& ids,
                     const std::string& at_utc) {
  if (const auto made = store::make_tables(db, steps, at_utc); !made) return made;
  const auto tables = store::read_record_tables(db);
  if (!tables) return tables.error();
  if (const auto added = store::add_first(db, *tables, ids.next(), Tract{}, at_utc); !added)
    return added;
  for (const EmbeddedFile& file : embedded_forms()) {
    const store::FormFile form = store::built_in_form(file, ids.next_id<store::FormFileTag>());
    if (const auto added = store::add_first(db, *tables, form.id.value, form, at_utc); !added)
      return added;
  }
  return Done{};
}

/// Whether a log of commits lies beside the file that its pages may not hold yet.
bool has_log(const fs::path& path) {
  std::error_code none;
  const auto size = fs::file_size(path.string() + "-wal", none);
  return !none && size > 0;
}

/// Reads enough of a file to know whether it is ours and which step it is at, and changes nothing.
Result<store::FileState> look_at(const fs::path& path, std::span<const store::SchemaStep> steps) {
  const Error other_kind{ErrorCode::not_a_tract_file, "This is a database of another kind.",
                         path.string(), "Choose a file that Oaklight made."};
  const auto header = store::read_file_header(path);
  // A power cut while the log is copied into the file can tear its first page; the log still holds
  // it whole, and then only SQLite can tell what the file is.
  const bool may_be_torn = has_log(path);
  if (!header && !(may_be_torn && header.error().code == ErrorCode::not_a_tract_file)) {
    return header.error();
  }
  if (header && header->application_id != store::FileHeader::kGeoPackage && !may_be_torn) {
    return other_kind;
  }
  auto db = SqliteHandle::open(path, Use::glance);
  if (!db) return header ? db.error() : header.error();
  const auto id = db->first("PRAGMA application_id");
  if (!id) return header ? id.error() : header.error();
  if (!id->has_value() || (**id)[0] != store::Value{std::int64_t{store::FileHeader::kGeoPackage}}) {
    return other_kind;
  }
  const auto state = store::read_state(*db);
  if (!state) return state;
  const auto plain = store::refuse_foreign_rules(*db, steps, *state);
  return plain ? state : plain.error();
}

Status rehearse_writing(SqliteHandle& db, const store::RecordTables& tables) {
  for (const auto& [name, table] : tables) {
    if (const auto rehearsed = table.rehearse(db); !rehearsed) return rehearsed;
  }
  return Done{};
}

}  // namespace

TractStore::TractStore(std::unique_ptr<Impl> impl) : impl_(std::move(impl)) {}
TractStore::TractStore(TractStore&&) noexcept = default;
TractStore& TractStore::operator=(TractStore&&) noexcept = default;
TractStore::~TractStore() = default;

const fs::path& TractStore::path() const { return impl_->db.path(); }
OpenMode TractStore::mode() const { return impl_->mode; }
IdSource& TractStore::ids() { return impl_->ids; }

Result<TractStore> TractStore::create(const fs::path& path, StoreContext context) {
  std::error_code problem;
  if (path.extension() != ".gpkg") {
    return Error{ErrorCode::cannot_write, "The name of a tract file ends in .gpkg.", path.string(),
                 "Choose a name like my_woods.gpkg."};
  }
  if (fs::exists(path, problem)) {
    return Error{ErrorCode::cannot_write, "There is a file of that name already.", path.string(),
                 "Choose another name, or open that file."};
  }
  auto steps = store::read_steps(embedded_schema());
  if (!steps) return steps.error();
  const fs::path unfinished = path.string() + ".new";
  fs::remove(unfinished, problem);
  fs::remove(unfinished.string() + "-journal", problem);
  {
    auto db = SqliteHandle::open(unfinished, Use::make);
    if (!db) {
      return Error{ErrorCode::cannot_write, "A file cannot be made there.", path.string(),
                   "Choose a folder where you may write."};
    }
    IdSource ids(context.clock, context.random);
    const std::string now = utc_text(context.clock.now_ms());
    const auto filled = db->transaction([&] { return fill_new_file(*db, *steps, ids, now); });
    if (!filled) return filled.error();
  }
  if (const auto named = store::publish_file(unfinished, path); !named) return named.error();
  return open(path, OpenMode::read_write, std::move(context));
}

Result<TractStore> TractStore::open(const fs::path& path, OpenMode mode, StoreContext context,
                                    DamageCheck damage_check) {
  const bool writes = mode == OpenMode::read_write;
  auto steps = store::read_steps(embedded_schema());
  if (!steps) return steps.error();
  auto state = look_at(path, *steps);
  if (!state) return state.error();
  const auto fit = store::fit_of(*state, *steps, path);
  if (!fit) return fit.error();
  if (!writes && *fit == store::Fit::older) {
    return Error{ErrorCode::read_only, "The tract file is of an older Oaklight.", path.string(),
                 "Open it for writing once; a copy of it is kept beside."};
  }

  std::optional<store::FileLock> lock;
  if (writes) {
    auto taken = store::FileLock::take(path, context.device);
    if (!taken) return taken.error();
    lock = std::move(*taken);
    if (*fit == store::Fit::older) {
      // Another program may have brought it up to date before the lock was ours.
      state = look_at(path, *steps);
      if (!state) return state.error();
      if (state->step < steps->back().number) {
        const auto done = store::bring_up_to_date(path, *steps, *state);
        if (!done) return done.error();
        state = store::FileState{steps->back().number, store::min_reader_of(*steps)};
      }
    }
  }
  auto db = SqliteHandle::open(path, writes ? Use::write : Use::read_only);
  if (!db) return db.error();
  auto tables = store::read_record_tables(*db);
  if (!tables) return tables.error();
  IdSource ids(context.clock, std::move(context.random));
  if (writes) {
    if (damage_check == DamageCheck::on_opening) {
      if (const auto sound = store::check_before_work(*db); !sound) return sound.error();
    }
    if (const auto rehearsed = rehearse_writing(*db, *tables); !rehearsed) return rehearsed.error();
  }
  if (const auto resumed = store::resume_ids(*db, ids); !resumed) return resumed.error();
  return TractStore(std::unique_ptr<Impl>(
      new Impl{std::move(lock), std::move(*db), std::move(*tables), std::move(*steps), *state, mode,
               damage_check, context.clock, std::move(ids), std::move(context.device)}));
}

}  // namespace oaklight
