// What joins leave open, and a person's answer.
#include <algorithm>

#include "core/store/forms_in_file.hpp"
#include "core/store/history.hpp"
#include "core/store/join_cells.hpp"
#include "core/store/join_source.hpp"
#include "core/store/records_changed.hpp"
#include "core/store/tract_store_impl.hpp"

namespace oaklight {
namespace {

using store::ActionWriter;
using store::RecordTable;
using store::Row;
using store::Version;

struct OpenFile {
  store::JoinSource source;
  store::JoinPlan plan;
};

Result<OpenFile> read_open(store::SqliteHandle& db, const store::RecordTables& tables) {
  auto source = store::read_source(db, tables, tables);
  if (!source) return source.error();
  store::JoinUnion all;
  if (const auto added = all.add(*source); !added) return added.error();
  if (const auto added = all.add_rows_without_history(*source, tables); !added)
    return added.error();
  OpenFile open{*std::move(source), {}};
  open.plan = store::plan_join(tables, all.lives, all.rows, all.lines);
  return open;
}

/// Writes one answer.
class Answer {
 public:
  Answer(store::SqliteHandle& db, const store::RecordTables& tables, const OpenFile& open,
         ActionWriter& writer, const Question& question)
      : db_(db),
        tables_(tables),
        open_(open),
        writer_(writer),
        question_(question),
        table_(tables.find(question.table)->second) {}

  Status both_changed(const QuestionSide& side) {
    const Row row = row_of(side);
    if (const auto place = store::place_of(table_, row)) {
      for (const auto& [uid, life] : open_.source.lives.find(question_.table)->second) {
        if (uid == side.uid) continue;
        if (const auto gone = give_way(uid, *place); !gone) return gone;
      }
      if (question_.table == "form_file") {
        const auto given = store::give_row_of_form(db_, table_, row);
        if (!given) return given.error();
      }
    }
    return writer_.settle(table_, versions_of(side.uid), row);
  }

  Status keep(const QuestionSide& side) { return settle_use(side.uid, 0); }

  Status remove(const std::string& uid) {
    if (const auto removed = remove_users(question_.table, uid); !removed) return removed;
    return settle_use(uid, 1);
  }

 private:
  /// All versions that no other was made from, the one that shows first.
  [[nodiscard]] std::vector<Row> versions_of(const std::string& uid) const {
    std::vector<Row> rows;
    const auto& life = open_.source.lives.find(question_.table)->second.find(uid)->second;
    for (const Version* head : store::heads_of(life)) rows.push_back(head->row);
    const auto& records = open_.source.rows.find(question_.table)->second;
    const auto shown = records.find(uid);
    if (shown == records.end()) return rows;
    const auto image = store::exact_image(table_, shown->second);
    std::ranges::stable_partition(
        rows, [&](const Row& row) { return store::exact_image(table_, row) == image; });
    return rows;
  }

  [[nodiscard]] Row row_of(const QuestionSide& side) const {
    const auto& life = open_.source.lives.find(question_.table)->second.find(side.uid)->second;
    return std::ranges::find_if(life,
                                [&](const Version& version) {
                                  return version.action == side.action && version.line == side.line;
                                })
        ->row;
  }

  /// Another record in the one place that there is.
  Status give_way(const std::string& uid, const std::string& place) {
    std::vector<Row> versions = versions_of(uid);
    const bool rival = std::ranges::any_of(versions, [&](const Row& row) {
      return table_.is_live(row) && store::place_of(table_, row) == place;
    });
    if (!rival) return Done{};
    Row gone = versions.front();
    table_.at(gone, "deleted") = std::int64_t{1};
    if (question_.table != "form_file") return writer_.settle(table_, versions, gone);
    for (Row& version : versions) writer_.note(table_, std::move(version), gone);
    return Done{};  // its row goes to the one that holds
  }

  Status settle_use(const std::string& uid, std::int64_t deleted) {
    std::vector<Row> versions = versions_of(uid);
    Row row = versions.front();
    table_.at(row, "deleted") = deleted;
    return writer_.settle(table_, versions, std::move(row));
  }

  Status remove_users(const std::string& parent, const std::string& uid) {
    for (const auto& [name, table] : tables_) {
      for (const store::Reference& reference : table.references()) {
        if (reference.parent != parent) continue;
        std::vector<std::string> users;
        const auto read = db_.each("SELECT uid FROM " + store::quoted_name(name) + " WHERE " +
                                       store::quoted_name(reference.column) +
                                       " = ?1 AND deleted = 0 ORDER BY uid",
                                   {uid}, [&](const Row& row) {
                                     users.push_back(store::text_of(row[0]));
                                     return Status(Done{});
                                   });
        if (!read) return read;
        for (const std::string& user : users) {
          if (const auto removed = remove_users(name, user); !removed) return removed;
          if (const auto removed = writer_.remove(name, user); !removed) return removed;
        }
      }
    }
    return Done{};
  }

  store::SqliteHandle& db_;
  const store::RecordTables& tables_;
  const OpenFile& open_;
  ActionWriter& writer_;
  const Question& question_;
  const RecordTable& table_;
};

}  // namespace

Result<std::vector<Question>> TractStore::questions() const {
  const auto joined = impl_->db.first("SELECT 1 FROM meta WHERE key = 'joined'");
  if (!joined) return joined.error();
  if (!joined->has_value()) return std::vector<Question>{};
  auto open = read_open(impl_->db, impl_->tables);
  if (!open) return open.error();
  return std::move(open->plan.questions);
}

Result<std::vector<Change>> TractStore::decide(const Question& question, std::size_t side) {
  if (impl_->mode == OpenMode::read_only) return impl_->read_only_error();
  if (side >= question.sides.size() || question.kind == QuestionKind::used_twice) {
    return Error{ErrorCode::not_a_choice, "That is no answer to this question.",
                 question.table + "/" + question.name,
                 "Give one of the records another name or tag."};
  }
  // Read before the transaction: nobody else writes while this store holds the file's lock.
  const auto open = read_open(impl_->db, impl_->tables);
  if (!open) return open.error();
  if (std::ranges::find(open->plan.questions, question) == open->plan.questions.end()) {
    return Error{ErrorCode::contradiction, "This was decided or changed meanwhile.",
                 question.table + "/" + question.name, "Look at what is open now."};
  }
  std::vector<Change> records;
  const auto done = impl_->db.transaction([&]() -> Status {
    ActionWriter writer(impl_->db, impl_->tables, utc_text(impl_->clock.now_ms()));
    Answer answer(impl_->db, impl_->tables, *open, writer, question);
    const QuestionSide& chosen = question.sides[side];
    Status written = Done{};
    if (question.kind == QuestionKind::both_changed) {
      written = answer.both_changed(chosen);
    } else {
      written = side == 0 ? answer.keep(chosen) : answer.remove(chosen.uid);
    }
    if (!written) return written;
    auto now = store::records_as_changed(writer.changes());
    if (!now) return now.error();
    records = *std::move(now);
    const std::string of = question.name.empty() ? question.table : question.name;
    return writer.finish(impl_->ids.next(), impl_->device, "decide: " + of, HistoryKind::action,
                         std::nullopt);
  });
  if (!done) return done.error();
  return records;
}

}  // namespace oaklight
