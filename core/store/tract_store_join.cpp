// Putting the files of several tablets together.
#include <algorithm>
#include <numeric>
#include <system_error>

#include "core/store/contents.hpp"
#include "core/store/file_header.hpp"
#include "core/store/forms_in_file.hpp"
#include "core/store/history_lines.hpp"
#include "core/store/join_source.hpp"
#include "core/store/links.hpp"
#include "core/store/migrate.hpp"
#include "core/store/records_changed.hpp"
#include "core/store/tract_store_impl.hpp"

namespace oaklight {
namespace {

namespace fs = std::filesystem;
using store::Row;
using store::SqliteHandle;

Error in_file(Error error, const fs::path& path) {
  const std::string file = path.string();
  if (error.where != file && !error.where.starts_with(file + "/"))
    error.where = file + (error.where.empty() ? "" : ": " + error.where);
  if (error.code == ErrorCode::damaged)
    error.fix = "Nothing was joined. Leave this file out, or rescue what it holds and join that.";
  return error;
}

/// A copy of an older file, brought up to date where it disturbs nobody; gone with the object.
class NewerCopy {
 public:
  explicit NewerCopy(const Uuid& name)
      : path_(fs::temp_directory_path() / ("oaklight-" + to_text(name) + ".gpkg")) {}
  ~NewerCopy() {
    const std::string stem = (path_.parent_path() / path_.stem()).string();
    std::error_code ignored;
    for (const auto& entry : fs::directory_iterator(path_.parent_path(), ignored)) {
      if (entry.path().string().starts_with(stem)) fs::remove(entry.path(), ignored);
    }
  }
  NewerCopy(const NewerCopy&) = delete;
  NewerCopy& operator=(const NewerCopy&) = delete;

  Status make_from(const fs::path& original) const {
    auto db = SqliteHandle::open(original, store::Use::glance);
    if (!db) return db.error();
    return db->backup_to(path_);
  }
  [[nodiscard]] const fs::path& path() const { return path_; }

 private:
  fs::path path_;
};

fs::path free_name(const fs::path& path) {
  const std::string stem = (path.parent_path() / path.stem()).string() + ".before-join";
  fs::path name = stem + path.extension().string();
  std::error_code ignored;
  for (int i = 2; fs::exists(name, ignored); ++i)
    name = stem + "-" + std::to_string(i) + path.extension().string();
  return name;
}

bool same_cells(const store::RecordTable& table, Row a, Row b) {
  table.at(a, "row_crc") = table.at(b, "row_crc") = store::Value{};
  return a == b;
}

/// Copies a file as it is; a backup sees what still lies in its log. Errors: as of reading it.
Status copy_first(const fs::path& first, const fs::path& unfinished, const StoreContext& context) {
  const auto known = TractStore::open(first, OpenMode::read_only, context, DamageCheck::by_caller);
  // One of an older step is brought up to date where it is copied to.
  if (!known && known.error().code != ErrorCode::read_only) return in_file(known.error(), first);
  auto db = SqliteHandle::open(first, store::Use::glance);
  if (!db) return in_file(db.error(), first);
  return db->backup_to(unfinished);
}

}  // namespace

/// The histories of this file and of others together, and what they make of the records.
struct TractStore::Joint {
  store::JoinSource ours;
  store::JoinUnion all;
  store::JoinPlan plan;
  JoinReport report;
  std::vector<store::RowChange> changes;  ///< from our rows to those of the plan

  static Result<Joint> of(const TractStore& store, const std::vector<fs::path>& others,
                          OtherTract other_tract);
  static Result<store::JoinSource> read(const TractStore& store, const fs::path& path);
  Status add_all(const std::vector<store::JoinSource>& sources, OtherTract other_tract);
  void compare(const store::RecordTables& tables);
  Status write(Impl& impl) const;
  static Status put(store::SqliteHandle& db, store::RowChange change);
};

Result<store::JoinSource> TractStore::Joint::read(const TractStore& store, const fs::path& path) {
  Impl& impl = *store.impl_;
  const auto context = [&] { return StoreContext{impl.clock, system_random(), impl.device}; };
  const NewerCopy copy(impl.ids.next());
  auto other = TractStore::open(path, OpenMode::read_only, context(), DamageCheck::by_caller);
  if (!other && other.error().code == ErrorCode::read_only) {
    if (const auto made = copy.make_from(path); !made) return in_file(made.error(), path);
    other = TractStore::open(copy.path(), OpenMode::read_write, context(), DamageCheck::by_caller);
  }
  if (!other) return in_file(other.error(), path);
  if (other->impl_->state.step != impl.state.step) {
    return Error{ErrorCode::file_too_new, "The file was made by a newer Oaklight.", path.string(),
                 "Join with the newest Oaklight."};
  }
  if (const auto sound = other->find_damage(); !sound) return in_file(sound.error(), path);
  auto source = store::read_source(other->impl_->db, other->impl_->tables, impl.tables);
  if (!source) return in_file(source.error(), path);
  source->path = path;
  return source;
}

Result<TractStore::Joint> TractStore::Joint::of(const TractStore& store,
                                                const std::vector<fs::path>& others,
                                                OtherTract other_tract) {
  Impl& impl = *store.impl_;
  Joint joint;
  auto ours = store::read_source(impl.db, impl.tables, impl.tables);
  if (!ours) return in_file(ours.error(), store.path());
  joint.ours = *std::move(ours);
  joint.ours.path = store.path();
  if (const auto added = joint.all.add(joint.ours); !added) return added.error();
  std::vector<store::JoinSource> sources;
  for (const fs::path& path : others) {
    auto source = read(store, path);
    if (!source) return source.error();
    joint.report.files.push_back({path, source->name, 0, source->records_beside(joint.ours), true});
    for (const auto& [uid, action] : source->lines.actions)
      joint.report.files.back().actions += joint.ours.lines.actions.contains(uid) ? 0 : 1;
    sources.push_back(*std::move(source));
  }
  if (const auto added = joint.add_all(sources, other_tract); !added) return added.error();
  sources.push_back(joint.ours);
  for (const store::JoinSource& source : sources) {
    const auto settled = joint.all.add_rows_without_history(source, impl.tables);
    if (!settled) return in_file(settled.error(), source.path);
  }
  joint.plan = plan_join(impl.tables, joint.all.lives, joint.all.rows, joint.all.lines);
  joint.report.questions = joint.plan.questions;
  joint.compare(impl.tables);
  // What comes from others must read back as records, or it would shut us out of our own file.
  auto records = store::records_as_changed(joint.changes);
  if (!records) return records.error();
  joint.report.records = *std::move(records);
  return joint;
}

Status TractStore::Joint::add_all(const std::vector<store::JoinSource>& sources,
                                  OtherTract other_tract) {
  std::vector<std::size_t> left(sources.size());
  std::iota(left.begin(), left.end(), std::size_t{0});
  const auto take = [&](auto fits) -> Result<bool> {
    const auto found = std::ranges::find_if(left, [&](std::size_t i) { return fits(sources[i]); });
    if (found == left.end()) return false;
    report.files[*found].started_apart = !all.is_of_tract(sources[*found]);
    if (const auto added = all.add(sources[*found]); !added)
      return in_file(added.error(), sources[*found].path);
    left.erase(found);
    return true;
  };
  // Whoever shares a beginning with any of those taken is of this tract, in whatever order.
  while (!left.empty()) {
    auto taken = take([&](const auto& source) { return all.is_of_tract(source); });
    if (taken && !*taken) taken = take([&](const auto& source) { return all.has_name(source); });
    if (taken && !*taken && other_tract == OtherTract::take)
      taken = take([](const auto&) { return true; });
    if (!taken) return taken.error();
    if (*taken) continue;
    const store::JoinSource& other = sources[left.front()];
    return Error{
        ErrorCode::contradiction,
        "This file is of another tract: \"" + other.name + "\", not \"" + ours.name + "\".",
        other.path.string(),
        "If it is one tract, give both the same name, or say that they are one."};
  }
  return Done{};
}

void TractStore::Joint::compare(const store::RecordTables& tables) {
  for (const std::string_view name : store::kRecordTables) {
    const store::RecordTable& table = tables.find(name)->second;
    const auto& before = ours.rows[std::string(name)];
    for (auto& [uid, row] : plan.rows[std::string(name)]) {
      const auto found = before.find(uid);
      if (found != before.end() && same_cells(table, found->second, row)) continue;
      if (name == "form_file") ++report.forms;
      const bool was_live = found != before.end() && table.is_live(found->second);
      ++(table.is_live(row) && !was_live ? report.added : report.changed);
      changes.push_back(
          {&table, found == before.end() ? std::nullopt : std::optional(found->second), row});
    }
  }
}

Status TractStore::Joint::put(store::SqliteHandle& db, store::RowChange change) {
  if (change.before) return change.table->update(db, change.after);
  if (change.table->name() == "form_file") {
    // The copy that gives way hands over its row; what a person changed in it stays in the history.
    const auto given = store::give_row_of_form(db, *change.table, change.after);
    if (!given) return given.error();
    if (*given) return Done{};
  }
  return change.table->insert(db, change.after);
}

Status TractStore::Joint::write(Impl& impl) const {
  for (const auto& [uid, action] : all.lines.actions) {
    if (ours.lines.actions.contains(uid)) continue;
    if (const auto added = store::add_action_line(impl.db, action); !added) return added;
    const auto lines = all.lines.changes.find(uid);
    if (lines == all.lines.changes.end()) continue;
    for (const Row& line : lines->second) {
      if (const auto added = store::add_change_line(impl.db, line); !added) return added;
    }
  }
  if (all.lines.actions.size() > ours.lines.actions.size()) {
    if (const auto noted = store::set_meta(impl.db, "joined", "1"); !noted) return noted;
  }
  // First away with what is to change: on the way two records may wear one name.
  for (const store::RowChange& change : changes) {
    if (!change.before) continue;
    const auto hidden = impl.db.run(
        "UPDATE " + store::quoted_name(change.table->name()) + " SET deleted = 1 WHERE uid = ?1",
        {change.table->uid_of(*change.before)});
    if (!hidden) return hidden;
  }
  for (const store::RowChange& change : changes) {
    if (const auto written = put(impl.db, change); !written) return written;
  }
  const auto broken = store::find_broken_links(impl.db, impl.tables);
  if (!broken) return broken.error();
  if (!broken->empty()) return broken->front();
  return store::update_contents(impl.db, changes, utc_text(impl.clock.now_ms()));
}

Result<JoinReport> TractStore::preview_join(const std::vector<fs::path>& others,
                                            OtherTract other_tract) const {
  auto joint = Joint::of(*this, others, other_tract);
  if (!joint) return joint.error();
  return std::move(joint->report);
}

Result<JoinReport> TractStore::join(const std::vector<fs::path>& others, OtherTract other_tract) {
  return join_all(others, other_tract, Beside::copy);
}

Result<JoinReport> TractStore::join_all(const std::vector<fs::path>& others, OtherTract other_tract,
                                        Beside beside) {
  if (impl_->mode == OpenMode::read_only) return impl_->read_only_error();
  auto joint = Joint::of(*this, others, other_tract);
  if (!joint) return joint.error();
  const bool nothing_new =
      joint->changes.empty() && joint->all.lines.actions.size() == joint->ours.lines.actions.size();
  if (nothing_new) return std::move(joint->report);
  if (beside == Beside::copy) {
    joint->report.copy = free_name(path());
    if (const auto kept = copy_to(joint->report.copy); !kept) return kept.error();
  }
  const auto written = impl_->db.transaction([&] { return joint->write(*impl_); });
  if (!written) {
    std::error_code ignored;
    if (beside == Beside::copy) fs::remove(joint->report.copy, ignored);
    return written.error();
  }
  for (const store::RowChange& change : joint->changes) {
    const auto uid = uuid_from_text(change.table->uid_of(change.after));
    if (uid) impl_->ids.resume_after(*uid);
  }
  if (!joint->all.lines.actions.empty()) {
    const auto uid = uuid_from_text(joint->all.lines.actions.rbegin()->first);
    if (uid) impl_->ids.resume_after(*uid);
  }
  return std::move(joint->report);
}

Result<JoinReport> TractStore::join_to_new(const fs::path& path, const std::vector<fs::path>& files,
                                           const StoreContext& context, OtherTract other_tract) {
  std::error_code ignored;
  if (path.extension() != ".gpkg" || fs::exists(path, ignored) || files.empty()) {
    return Error{ErrorCode::cannot_write, "A new tract file cannot be made under that name.",
                 path.string(), "Choose a free name that ends in .gpkg."};
  }
  const fs::path unfinished = path.string() + ".joining";
  const auto clear = [&] {
    for (const char* ending : {"-wal", "-shm", "-journal", ".lock", ""})
      fs::remove(unfinished.string() + ending, ignored);
  };
  const auto fill = [&]() -> Result<JoinReport> {
    if (const auto copied = copy_first(files.front(), unfinished, context); !copied)
      return copied.error();
    auto target = open(unfinished, OpenMode::read_write, context, DamageCheck::by_caller);
    if (!target) return in_file(target.error(), files.front());
    if (const auto sound = target->find_damage(); !sound)
      return in_file(sound.error(), files.front());
    auto joined = target->join_all({files.begin() + 1, files.end()}, other_tract, Beside::nothing);
    if (joined) joined->files.insert(joined->files.begin(), {files.front(), "", 0, 0, false});
    return joined;
  };
  clear();
  auto joined = fill();
  if (joined) {
    if (const auto named = store::publish_file(unfinished, path); !named) joined = named.error();
  }
  clear();
  return joined;
}

}  // namespace oaklight
