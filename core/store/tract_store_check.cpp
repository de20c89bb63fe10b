// Reading a whole tract file against its rules.
#include <array>

#include "core/store/file_header.hpp"
#include "core/store/gpkg_rules.hpp"
#include "core/store/history_lines.hpp"
#include "core/store/links.hpp"
#include "core/store/records.hpp"
#include "core/store/self_rules.hpp"
#include "core/store/tract_store_impl.hpp"

namespace oaklight {
namespace {

using store::Row;
using store::SqliteHandle;
using store::Value;

constexpr std::size_t kMostProblemsOfOneCheck = 20;

std::string text_of(const Value& value) {
  const auto* text = std::get_if<std::string>(&value);
  return text == nullptr ? std::string{} : *text;
}

Error damage(std::string what, std::string where) {
  return {ErrorCode::damaged, std::move(what), std::move(where),
          "Keep this file; rescue what it holds, or work on from your newest copy."};
}

using Problems = std::vector<Error>;

/// Asks SQLite, not the bytes: while a log lies beside the file its first page may be an old one.
Result<Problems> check_header(SqliteHandle& db) {
  struct Mark {
    const char* pragma;
    std::int64_t wanted;
    const char* problem;
  };
  constexpr std::array kMarks = {
      Mark{"PRAGMA application_id", store::FileHeader::kGeoPackage,
           "The file is not marked as a GeoPackage."},
      Mark{"PRAGMA user_version", store::FileHeader::kVersion,
           "The file is not marked as GeoPackage version 1.3."},
      Mark{"PRAGMA page_size", 4096, "The page size is not 4096 bytes."}};
  Problems found;
  for (const Mark& mark : kMarks) {
    const auto row = db.first(mark.pragma);
    if (!row) return row.error();
    if (!row->has_value() || (**row)[0] != store::Value{mark.wanted})
      found.push_back(damage(mark.problem, db.path().string()));
  }
  return found;
}

Result<Problems> check_settings(SqliteHandle& db) {
  const auto in_force = db.verify_settings();
  return in_force ? Problems{} : Problems{in_force.error()};
}

Result<Problems> check_integrity(SqliteHandle& db) {
  Problems found;
  const auto walked = db.each("PRAGMA integrity_check(20)", {}, [&](const Row& row) -> Status {
    const std::string line = text_of(row[0]);
    if (line != "ok") found.push_back(damage("SQLite finds: " + line, db.path().string()));
    return Done{};
  });
  if (!walked) return walked.error();
  return found;
}

Result<Problems> check_foreign_keys(SqliteHandle& db) {
  Problems found;
  const auto walked = db.each("PRAGMA foreign_key_check", {}, [&](const Row& row) -> Status {
    if (found.size() < kMostProblemsOfOneCheck)
      found.push_back(
          damage("A record points at a missing " + text_of(row[2]) + ".", text_of(row[0])));
    return Done{};
  });
  if (!walked) return walked.error();
  return found;
}

/// An empty tract file of the newest step to compare with.
Result<SqliteHandle> make_model(const std::vector<store::SchemaStep>& steps) {
  auto model = SqliteHandle::open(SqliteHandle::kMemory, store::Use::make);
  if (!model) return model;
  if (const auto ran = store::run_steps(*model, steps, 0); !ran) return ran.error();
  return model;
}

/// Every table, index and view as the schema steps make it; what others added is no fault.
Result<Problems> check_structure(SqliteHandle& db, SqliteHandle& model, bool newest) {
  auto changed = store::find_changed_tables(db, model);
  if (!changed || newest) return changed;
  // A newer program made the file; each step of its changes some table of ours.
  if (!changed->empty()) return Problems{};
  return Problems{
      damage("The file says that it is of a newer step, and its tables are not.", "meta/step")};
}

/// Checksums and readability of one table, and how many rows it has.
template <class R>
Status check_records(SqliteHandle& db, const store::RecordTables& tables, CheckReport& report) {
  const store::RecordTable& table = tables.find(store::Fields<R>::kTable)->second;
  TableCount count{table.name(), 0, 0};
  std::size_t problems = 0;
  const auto note = [&](const Error& error) {
    if (++problems <= kMostProblemsOfOneCheck) report.problems.push_back(error);
  };
  const auto walked = table.each(db, [&](const Row& row) -> Status {
    ++(table.is_live(row) ? count.live : count.removed);
    if (const auto sound = table.verify(row); !sound) {
      note(sound.error());
    } else if (const auto record = store::record_of<R>(table, row); !record) {
      note(record.error());
    }
    return Done{};
  });
  if (!walked) note(walked.error());
  report.records.push_back(count);
  return Done{};
}

Status check_all_records(SqliteHandle& db, const store::RecordTables& tables, CheckReport& report) {
  report.done.emplace_back("every record: checksum and values");
  Status status = check_records<Tract>(db, tables, report);
  if (status) status = check_records<Stand>(db, tables, report);
  if (status) status = check_records<Cruise>(db, tables, report);
  if (status) status = check_records<Plot>(db, tables, report);
  if (status) status = check_records<Tree>(db, tables, report);
  if (status) status = check_records<Regen>(db, tables, report);
  if (status) status = check_records<WalkTree>(db, tables, report);
  if (status) status = check_records<Contact>(db, tables, report);
  if (status) status = check_records<Mark>(db, tables, report);
  if (status) status = check_records<MapLine>(db, tables, report);
  if (status) status = check_records<Stump>(db, tables, report);
  if (status) status = check_records<AcornCount>(db, tables, report);
  if (status) status = check_records<AcornYear>(db, tables, report);
  if (status) status = check_records<store::FormFile>(db, tables, report);
  return status;
}

/// Adds what one check found. A file too damaged to be walked is a finding, not a failure; a disk
/// that does not answer is a failure.
Status add(CheckReport& report, const char* name, Result<Problems> found) {
  if (!found && found.error().code != ErrorCode::damaged) return found.error();
  const Problems problems = found ? std::move(*found) : Problems{found.error()};
  report.done.emplace_back(name);
  report.problems.insert(report.problems.end(), problems.begin(), problems.end());
  return Done{};
}

}  // namespace

// Damage is better met at the table than at the tenth plot.
Status store::check_before_work(SqliteHandle& db) {
  const auto quick = db.first("PRAGMA quick_check(1)");
  if (!quick) return quick.error();
  const auto references = db.first("PRAGMA foreign_key_check");
  if (!references) return references.error();
  const bool sound =
      quick->has_value() && (**quick)[0] == Value{std::string("ok")} && !references->has_value();
  if (sound) return Done{};
  return Error{ErrorCode::damaged, "The tract file is damaged.", db.path().string(),
               "Rescue what it holds (oaklight rescue), or work on from your newest copy."};
}

Status TractStore::find_damage(const std::stop_token& stop) const {
  SqliteHandle& db = impl_->db;
  return db.snapshot([&]() -> Status {
    if (const auto sound = store::check_before_work(db); !sound) return sound;
    for (const auto& [name, table] : impl_->tables) {
      const auto sound = table.each(db, [&, &table = table](const Row& row) -> Status {
        if (stop.stop_requested())
          return Error{ErrorCode::busy, "The check was stopped.", db.path().string(), ""};
        return table.verify(row);
      });
      if (!sound) return sound;
    }
    const auto broken = store::find_broken_links(db, impl_->tables);
    if (!broken) return broken.error();
    if (!broken->empty()) return broken->front();
    return Done{};
  });
}

Result<CheckReport> TractStore::check() const {
  CheckReport report;
  SqliteHandle& db = impl_->db;
  Status status = add(report, "file header: GeoPackage 1.3", check_header(db));
  if (status) status = add(report, "safety settings in force", check_settings(db));
  if (!status) return status.error();
  auto model = make_model(impl_->steps);
  if (!model) return model.error();
  const bool newest = impl_->state.step == impl_->steps.back().number;
  status = db.snapshot([&]() -> Status {
    Status read = add(report, "database structure, by SQLite", check_integrity(db));
    if (read) read = add(report, "references between records, by SQLite", check_foreign_keys(db));
    if (read)
      read = add(report, "tables as the schema makes them", check_structure(db, *model, newest));
    if (read) read = check_all_records(db, impl_->tables, report);
    if (read)
      read = add(report, "no record in use points at a removed one",
                 store::find_broken_links(db, impl_->tables));
    if (read) read = add(report, "every line of the history", store::find_damaged_history(db));
    if (read && newest)
      read = add(report, "what the file says of itself",
                 store::find_false_facts(db, *model, impl_->steps, impl_->state));
    if (read) read = add(report, "GeoPackage rules", store::find_gpkg_faults(db));
    return read;
  });
  if (!status) return status.error();
  return report;
}

}  // namespace oaklight
