#include "core/store/rescue.hpp"

#include <algorithm>
#include <set>
#include <system_error>

#include "core/base/embedded.hpp"
#include "core/store/contents.hpp"
#include "core/store/file_header.hpp"
#include "core/store/file_lock.hpp"
#include "core/store/forms_in_file.hpp"
#include "core/store/history_lines.hpp"
#include "core/store/new_file.hpp"
#include "core/store/records.hpp"
#include "core/store/rescue_copy.hpp"
#include "core/store/rescue_records.hpp"
#include "core/store/row_text.hpp"

namespace oaklight {
namespace {

namespace fs = std::filesystem;
using store::RecordTable;
using store::RescuedRow;
using store::RescueSource;
using store::Row;
using store::SqliteHandle;

Error cannot_make(const fs::path& target, const char* what) {
  return {ErrorCode::cannot_write, what, target.string(), "Choose another name or folder."};
}

std::string text_of(const store::Value& value) {
  const auto* text = std::get_if<std::string>(&value);
  return text == nullptr ? std::string{} : *text;
}

/// What a file says of itself where SQLite can still read it.
struct About {
  std::optional<store::FileState> state;
  std::string created_at;
  bool joined = false;
};

About about_of(const fs::path& copy) {
  About about;
  auto db = SqliteHandle::open(copy, store::Use::read_only);
  if (!db) return about;
  if (const auto state = store::read_state(*db)) about.state = *state;
  const auto made = db->first("SELECT value FROM meta WHERE key = 'created_at'");
  if (made && made->has_value()) about.created_at = text_of((**made)[0]);
  const auto joined = db->first("SELECT 1 FROM meta WHERE key = 'joined'");
  about.joined = joined && joined->has_value();
  return about;
}

/// Puts what was settled into an empty file, each record in its own try.
class RescueWriter {
 public:
  RescueWriter(SqliteHandle& db, const store::RecordTables& tables, RescueReport& report)
      : db_(db), tables_(tables), report_(report) {}

  Status write_records(const store::RescuedRows& rows) {
    for (const std::string_view name : store::kRecordTables) {
      const RecordTable& table = tables_.find(name)->second;
      RescuedTable& count = report_.tables.emplace_back(RescuedTable{std::string(name), 0, 0, 0});
      for (const RescuedRow& row : rows.find(name)->second) {
        const auto kept = write(table, row);
        if (!kept) return kept.error();
        if (!*kept) continue;
        ++count.kept;
        if (row.source == RescueSource::history) ++count.from_history;
        if (row.source == RescueSource::stray) ++count.from_strays;
      }
    }
    return Done{};
  }

  Status write_history(const store::RescuedHistory& history) {
    const Status actions = write_lines("user_action", history.actions, store::add_action_line);
    return actions ? write_lines("change", history.changes, store::add_change_line) : actions;
  }

  /// What every tract file has, where the old one gave none of it.
  Status fill_up(IdSource& ids, const std::string& at_utc) {
    if (live_["tract"].empty()) {
      report_.notes.emplace_back("The facts about the tract are lost; they stand empty.");
      const auto added = store::add_first(db_, tables_, ids.next(), Tract{}, at_utc);
      if (!added) return added;
    }
    for (const EmbeddedFile& file : embedded_forms()) {
      if (forms_.count(std::string(file.path)) > 0) continue;
      report_.notes.push_back("The form " + std::string(file.path) +
                              " is lost; it is as it came with this program.");
      const store::FormFile form = store::built_in_form(file, ids.next_id<store::FormFileTag>());
      const auto added = store::add_first(db_, tables_, form.id.value, form, at_utc);
      if (!added) return added;
    }
    return Done{};
  }

 private:
  /// False, and told in the report, when the record cannot be kept.
  Result<bool> write(const RecordTable& table, const RescuedRow& rescued) {
    Row row = rescued.cells;
    const std::string uid = table.uid_of(row);
    for (const store::Reference& reference : table.references()) {
      const auto& parent = table.at(row, reference.column);
      if (is_null(parent)) continue;
      // A removed record may belong to a removed one, as the file had it.
      const auto& there = table.is_live(row) ? live_[reference.parent] : all_[reference.parent];
      if (there.count(text_of(parent)) > 0) continue;
      leave_out(table, row, "its " + reference.parent + " is lost.");
      return false;
    }
    const auto written = table.insert(db_, row);
    if (!written) {
      if (!is_about_record(written.error())) return written.error();
      leave_out(table, row, written.error().what);
      return false;
    }
    all_[table.name()].insert(uid);
    if (table.is_live(row)) live_[table.name()].insert(uid);
    if (table.name() == store::Fields<store::FormFile>::kTable)
      forms_.insert(text_of(table.at(row, "path")));
    return true;
  }

  Status write_lines(const char* table, const std::vector<Row>& lines,
                     Status (*add)(store::SqliteHandle&, const Row&)) {
    RescuedTable& count = report_.tables.emplace_back(RescuedTable{table, 0, 0, 0});
    for (const Row& line : lines) {
      const Status written = add(db_, line);
      if (written) {
        ++count.kept;
      } else if (is_about_record(written.error())) {
        report_.lost.push_back({ErrorCode::damaged, written.error().what, table, ""});
      } else {
        return written;
      }
    }
    return Done{};
  }

  static bool is_about_record(const Error& error) {
    return error.code == ErrorCode::duplicate || error.code == ErrorCode::out_of_range ||
           error.code == ErrorCode::missing_value || error.code == ErrorCode::unknown_reference;
  }

  void leave_out(const RecordTable& table, const Row& row, const std::string& why) {
    const auto values = store::to_json(table.columns(), row);
    report_.lost.push_back({ErrorCode::damaged,
                            "The " + table.name() + " is left out: " + why +
                                (values ? " It says " + *values : std::string{}),
                            table.name() + "/" + table.uid_of(row),
                            "Enter it again where it belongs."});
  }

  SqliteHandle& db_;
  const store::RecordTables& tables_;
  RescueReport& report_;
  std::map<std::string, std::set<std::string>, std::less<>> live_, all_;
  std::set<std::string> forms_;
};

struct Job {
  const fs::path& target;
  StoreContext& context;
  const std::vector<store::SchemaStep>& steps;
};

Status write_new(const Job& job, SqliteHandle& db, const store::Harvest& found, const About& about,
                 RescueReport& report) {
  const std::string& created_at = about.created_at;
  const std::string now = utc_text(job.context.clock.now_ms());
  return db.transaction([&]() -> Status {
    const auto ran = store::make_tables(db, job.steps, created_at.size() == 24 ? created_at : now);
    if (!ran) return ran;
    const auto tables = store::read_record_tables(db);
    if (!tables) return tables.error();
    RescueWriter writer(db, *tables, report);
    const auto rows = store::settle_records(found, *tables, report.lost);
    if (const auto written = writer.write_records(rows); !written) return written;
    IdSource ids(job.context.clock, job.context.random);
    if (const auto resumed = store::resume_ids(db, ids); !resumed) return resumed;
    if (const auto filled = writer.fill_up(ids, now); !filled) return filled;
    // As old as the oldest of its forms, where nothing says how old it is.
    const auto dated = db.run(
        "UPDATE meta SET value = (SELECT min(changed_at) FROM form_file) WHERE key = 'created_at'"
        " AND value NOT IN (SELECT changed_at FROM form_file)");
    if (!dated) return dated;
    const auto history = store::settle_history(found, report.lost);
    if (const auto written = writer.write_history(history); !written) return written;
    // With the deeds of several tablets in it each undoes its own, also where nobody can tell any
    // more that they were joined.
    const auto devices = db.first("SELECT count(DISTINCT device) > 1 FROM user_action");
    if (!devices) return devices.error();
    const bool several = devices->has_value() && (**devices)[0] == store::Value{std::int64_t{1}};
    if (about.joined || (!about.state && several)) {
      if (const auto noted = store::set_meta(db, "joined", "1"); !noted) return noted;
    }
    return store::measure_contents(db);
  });
}

/// What the check finds in the new file was in the old one, and no better can be had.
Status check_new(const fs::path& unfinished, const Job& job, RescueReport& report) {
  const auto made = TractStore::open(unfinished, OpenMode::read_only, job.context);
  if (!made) return made.error();
  const auto found = made->check();
  if (!found) return found.error();
  report.lost.insert(report.lost.end(), found->problems.begin(), found->problems.end());
  return Done{};
}

Result<RescueReport> rescue_from(const store::RescueCopy& copy, const fs::path& damaged,
                                 const Job& job) {
  const About about = about_of(copy.path());
  if (about.state) {
    if (const auto fit = store::fit_of(*about.state, job.steps, damaged); !fit) return fit.error();
  }
  auto model = SqliteHandle::open(SqliteHandle::kMemory, store::Use::make);
  if (!model) return model.error();
  if (const auto ran = store::run_steps(*model, job.steps, 0); !ran) return ran.error();
  const store::PageReader pages(copy.path());
  auto found = store::harvest(pages, *model);
  if (!found) return found.error();
  const bool empty = std::all_of(found->tables.begin(), found->tables.end(),
                                 [](const auto& table) { return table.second.rows.empty(); });
  if (empty) {
    return Error{ErrorCode::not_a_tract_file, "Not one record of Oaklight is left in this file.",
                 damaged.string(), "Work on from your newest copy."};
  }
  RescueReport report{copy.notes(), {}, std::move(found->lost)};
  const fs::path unfinished = job.target.string() + ".new";
  const auto discard = [&](const Error& error) {
    std::error_code ignored;
    fs::remove(unfinished, ignored);
    return error;
  };
  {
    auto db = SqliteHandle::open(unfinished, store::Use::make);
    if (!db) return cannot_make(job.target, "A file cannot be made there.");
    const auto written = write_new(job, *db, *found, about, report);
    if (!written) return discard(written.error());
  }
  if (const auto sound = check_new(unfinished, job, report); !sound) return discard(sound.error());
  const auto named = store::publish_file(unfinished, job.target);
  if (!named) return discard(named.error());
  return report;
}

}  // namespace

Result<RescueReport> rescue_tract(const fs::path& damaged, const fs::path& target,
                                  StoreContext context, LockHolder lock_holder) {
  std::error_code ignored;
  if (target.extension() != ".gpkg")
    return cannot_make(target, "The name of a tract file ends in .gpkg.");
  if (fs::exists(target, ignored))
    return cannot_make(target, "There is a file of that name already.");
  const auto holder = store::FileLock::holder_of(damaged);
  if (holder && lock_holder == LockHolder::nobody) {
    return Error{ErrorCode::busy, "The tract file is open for writing in " + *holder + ".",
                 damaged.string(), "Close it there first."};
  }
  const auto steps = store::read_steps(embedded_schema());
  if (!steps) return steps.error();
  fs::remove(target.string() + ".new", ignored);
  const auto copy = store::RescueCopy::make(damaged, target.string() + ".rescue");
  if (!copy) return copy.error();
  return rescue_from(*copy, damaged, {target, context, *steps});
}

}  // namespace oaklight
