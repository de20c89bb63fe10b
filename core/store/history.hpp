#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/store/contents.hpp"
#include "core/store/record_table.hpp"
#include "core/store/records.hpp"
#include "core/store/tract_store.hpp"

namespace oaklight::store {

/// Writes the rows of one action together with its history. Lives inside one transaction.
class ActionWriter {
 public:
  ActionWriter(SqliteHandle& db, const RecordTables& tables, std::string at_utc)
      : db_(db), tables_(tables), at_utc_(std::move(at_utc)) {}

  /// Adds or corrects a record. One that is already so is passed over.
  template <class R>
  Status put(const std::string& uid, const R& record) {
    const RecordTable& table = tables_.find(Fields<R>::kTable)->second;
    const auto before = table.find(db_, uid);
    if (!before) return before.error();
    auto row = row_of(table, before->value_or(Row(table.columns().size())), record);
    if (!row) return at_record(row.error(), table, uid);
    return put_row(table, *before, *std::move(row));
  }
  /// Errors: unknown_reference when the file has no such record in use.
  Status remove(std::string_view table_name, const std::string& uid);
  /// Reverses an action (undo) or does it again (redo).
  /// Errors: contradiction when a record is not as that action left it.
  Status replay(const std::string& action_uid, HistoryKind kind);

  /// A person's decision between versions of one record: each is followed by the chosen row. The
  /// version that shows comes first.
  Status settle(const RecordTable& table, const std::vector<Row>& versions, Row chosen);

  /// A line of history for a record whose row this file does not hold.
  void note(const RecordTable& table, Row before, Row after) {
    table.at(after, "changed_at") = at_utc_;
    changes_.push_back({&table, std::move(before), std::move(after)});
  }

  /// What was written so far, oldest first.
  [[nodiscard]] const std::vector<RowChange>& changes() const { return changes_; }

  /// Checks the links and writes the action itself; without changes it writes nothing.
  Status finish(const Uuid& action, const std::string& device, const std::string& label,
                HistoryKind kind, const std::optional<std::string>& target_uid);

 private:
  Status put_row(const RecordTable& table, const std::optional<Row>& before, Row after);
  Status retire_rivals(const RecordTable& table, const Row& removed);
  /// Lines of one record: one, or those of a decision between its versions.
  Status replay_lines(std::span<const Row> lines, bool undo);
  /// Undoes a decision.
  Status open_again(const RecordTable& table, const Row& chosen, std::vector<Row> versions);
  Status write_change(const std::string& action, const RowChange& change);
  /// The error with the record as its place.
  static Error at_record(Error error, const RecordTable& table, const std::string& uid);

  SqliteHandle& db_;
  const RecordTables& tables_;
  std::string at_utc_;
  std::vector<RowChange> changes_;
};

/// An action that undo or redo would turn to.
struct Candidate {
  std::string uid;
  std::string label;
};

/// The newest action that is not undone. Once files were joined into this one, the newest of this
/// device: what others did is theirs to undo.
Result<std::optional<Candidate>> next_undo(SqliteHandle& db, const std::string& device);
/// What undo reversed last, if no new action came since.
Result<std::optional<Candidate>> next_redo(SqliteHandle& db, const std::string& device);

/// Newest first.
Result<std::vector<HistoryEntry>> read_history(SqliteHandle& db, std::int64_t limit);

}  // namespace oaklight::store
