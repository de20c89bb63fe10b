#pragma once

#include <cstdint>
#include <filesystem>
#include <memory>
#include <optional>
#include <stop_token>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/clock.hpp"
#include "core/base/id.hpp"
#include "core/base/result.hpp"
#include "core/store/change.hpp"
#include "core/store/join.hpp"

namespace oaklight {

struct TreeStream;

enum class OpenMode { read_write, read_only };

/// Who looks for damage. It means reading every byte, for which a first picture must not wait.
enum class DamageCheck {
  on_opening,  ///< open() and load(): what they give is sound
  by_caller,   ///< the caller, who runs find_damage() and stops the work when there is some
};

/// What decides the time, the chance and the name in a store; passed in so that a test decides it.
struct StoreContext {
  Clock& clock;             ///< kept by reference, must outlive the store
  IdSource::Random random;  ///< see system_random()
  std::string device;       ///< which tablet or program writes, as the history shall name it
};

enum class HistoryKind { action, undo, redo };

/// One line of the history. Nothing is ever taken out of it: an undo is a line of its own.
struct HistoryEntry {
  Uuid id;
  std::string at;  ///< UTC, "2026-05-04T13:07:00.000Z"
  std::string device;
  std::string label;
  HistoryKind kind = HistoryKind::action;
  std::optional<Uuid> target;  ///< the action that was undone or redone
  int rows = 0;                ///< records that changed
};

/// What a press on undo or redo would do; nothing when there is nothing to do.
struct UndoState {
  std::optional<std::string> undo;  ///< label of the action
  std::optional<std::string> redo;
};

struct TableCount {
  std::string table;
  std::int64_t live = 0;
  std::int64_t removed = 0;  ///< tombstones
  friend bool operator==(const TableCount&, const TableCount&) = default;
};

/// What a check of the file found.
struct CheckReport {
  std::vector<std::string> done;    ///< one line for each check that ran
  std::vector<Error> problems;      ///< empty: the file is sound
  std::vector<TableCount> records;  ///< record tables in the order of the data dictionary
};

/// The tract file: an SQLite database that is also a GeoPackage (schema/README.md). One object is
/// one open file. Not for use by two threads at once.
///
/// errors of every call: disk_full, io_failed, busy, damaged; nothing was changed when one returns.
class TractStore {
 public:
  /// Makes a new file with an unnamed tract and copies of all forms.
  /// Errors: cannot_write when something is at that path already or the folder is not writable.
  static Result<TractStore> create(const std::filesystem::path& path, StoreContext context);

  /// Opens a file; one of an older step is brought up to date first (a copy of it is kept beside).
  /// read_only works on read-only media and never writes to the file, except to take back, where
  /// it may, a change that a crash broke off.
  /// Errors: cannot_open, not_a_tract_file, file_too_new, damaged; busy when another program has it
  /// open for writing; read_only when it is too old to be read unchanged.
  static Result<TractStore> open(const std::filesystem::path& path, OpenMode mode,
                                 StoreContext context,
                                 DamageCheck damage_check = DamageCheck::on_opening);

  TractStore(TractStore&&) noexcept;
  TractStore& operator=(TractStore&&) noexcept;
  ~TractStore();  ///< closes the file; whatever was applied is on disk already

  [[nodiscard]] const std::filesystem::path& path() const;
  [[nodiscard]] OpenMode mode() const;

  /// Ids for new records; they rise above every id in the file.
  IdSource& ids();

  /// All records at one moment, without the removed ones, each kind in order of its ids.
  /// Errors: damaged, naming table and record, when a row does not match its checksum.
  [[nodiscard]] Result<TractData> load() const;
  /// The same at one moment, but each tree is handed over once, checked like the others, and none
  /// is kept. Errors: of load and of the stream.
  [[nodiscard]] Result<TractData> load(const TreeStream& trees) const;

  /// Writes an action and its history in one transaction; on disk when it returns. An action that
  /// changes nothing leaves no trace.
  /// Errors, each naming the record in `where`: unknown_reference (a record it points at is missing
  /// or removed, or a removed one is still pointed at), duplicate (a tag, stand name or plot label
  /// in use), out_of_range, contradiction (readings of two unit systems in one record),
  /// missing_value (nil id), bad_geometry, read_only.
  Status apply(const Action& action);

  /// Reverses the newest action that is not undone, without limit and across restarts.
  /// returns  each record that it touched, once, as it now is, or its Remove, so that a copy in
  ///          memory can follow without reading the file again; empty when it was a form
  ///          (set_form_text), which is no record: read the forms again
  /// errors   nothing_to_undo
  Result<std::vector<Change>> undo();
  /// Does again what undo reversed last, as long as no new action came between. Returns and errors
  /// as undo.
  Result<std::vector<Change>> redo();
  [[nodiscard]] Result<UndoState> undo_state() const;
  /// Newest first, at most limit lines.
  [[nodiscard]] Result<std::vector<HistoryEntry>> history(std::size_t limit) const;

  /// The tract's own copies of the files of forms/ ("species/species.csv"), sorted by path.
  [[nodiscard]] Result<std::vector<std::string>> form_paths() const;
  /// Errors: missing_rule when the file has no form of that path.
  [[nodiscard]] Result<std::string> form_text(std::string_view form_path) const;
  /// Replaces one form by the user's version, as an action that can be undone.
  /// Errors: missing_rule, read_only. The text itself is not judged here.
  Status set_form_text(std::string_view form_path, std::string text);

  /// Looks for all that on_opening looks for: structure and references by SQLite, the checksum of
  /// every record, links to removed ones. A store of its own, read_only and by_caller, does this
  /// beside one that writes.
  /// Errors: damaged, the first that is found; busy when it was told to stop.
  [[nodiscard]] Status find_damage(const std::stop_token& stop = {}) const;

  /// Reads the whole file against its rules: header, settings, structure, references, checksums,
  /// GeoPackage rules. A problem found is in the report; an Error means that the check itself could
  /// not run.
  [[nodiscard]] Result<CheckReport> check() const;

  /// Brings what the log beside the file holds into the file itself, as closing does. Nothing is
  /// safer for it; but whoever then copies the one file alone has all of it.
  Status settle();

  /// A compact copy in one file, for handing over or keeping; opened again and counted.
  /// Errors: cannot_write when the target exists, cannot be written or does not hold the same.
  Status copy_to(const std::filesystem::path& target) const;

  /// Puts the histories of other tablets' files into this one, in one transaction; a copy of it as
  /// it was is kept beside ("woods.before-join.gpkg"). The others are only read. What comes out
  /// depends on the set of histories alone: in any order, together or one after the other, and the
  /// same file again changes nothing. What both changed stays open, see questions().
  /// Errors, with the file in `where`: of open; damaged (a checksum or a history that does not
  /// match: nothing of that file is taken); contradiction (a file of another tract: neither started
  /// from the same file, nor of the same name); file_too_new; read_only.
  Result<JoinReport> join(const std::vector<std::filesystem::path>& others,
                          OtherTract other_tract = OtherTract::refuse);
  /// What join() would report; writes nothing.
  [[nodiscard]] Result<JoinReport> preview_join(const std::vector<std::filesystem::path>& others,
                                                OtherTract other_tract = OtherTract::refuse) const;
  /// Makes a new file of two or more, of which each stays as it is. Errors: of create and join.
  static Result<JoinReport> join_to_new(const std::filesystem::path& path,
                                        const std::vector<std::filesystem::path>& files,
                                        const StoreContext& context,
                                        OtherTract other_tract = OtherTract::refuse);

  /// What joins left open, by kind of record and name.
  [[nodiscard]] Result<std::vector<Question>> questions() const;
  /// A person's answer, as an action: this side of the question holds. A name that is used twice is
  /// mended by giving one of the records another.
  /// returns  as undo()
  /// errors   contradiction when the question is not open as it was shown; not_a_choice for a name
  ///          used twice or a side that it does not have; unknown_reference when what holds would
  ///          point at something removed
  Result<std::vector<Change>> decide(const Question& question, std::size_t side);

 private:
  struct Impl;
  struct Joint;
  enum class Beside { copy, nothing };
  Result<JoinReport> join_all(const std::vector<std::filesystem::path>& others,
                              OtherTract other_tract, Beside beside);
  explicit TractStore(std::unique_ptr<Impl> impl);
  Result<std::vector<Change>> replay(HistoryKind kind);
  std::unique_ptr<Impl> impl_;
};

}  // namespace oaklight
