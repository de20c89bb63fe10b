#pragma once

#include <cstddef>
#include <filesystem>
#include <string>
#include <utility>
#include <vector>

#include "core/store/change.hpp"

namespace oaklight {

/// What files of several tablets leave for a person to decide. It is never stored: it follows from
/// the history, so that it is the same wherever the same histories were joined, and is gone as soon
/// as somebody's decision is in the history.
enum class QuestionKind {
  both_changed,    ///< versions of one record, or several records in the one place for such
  removed_in_use,  ///< taken out of use by one, while another went on using it
  used_twice,      ///< one tag, name or label on two records; the later ones wear "101 (2nd)"
};

/// One version of a record, or one of the records that wear one name.
struct QuestionSide {
  std::string uid;     ///< of the record
  std::string device;  ///< who made it so, when, and what he was doing
  std::string at;
  std::string label;
  std::string action;  ///< that made it so, and which of its lines; "" for none
  std::size_t line = 0;
  bool removed = false;
  /// The cells that are recorded, by column of schema/README.md, as text.
  std::vector<std::pair<std::string, std::string>> cells;
  friend bool operator==(const QuestionSide&, const QuestionSide&) = default;
};

struct Question {
  QuestionKind kind = QuestionKind::both_changed;
  std::string table;
  std::string name;  ///< the tag, name or label; "" for a record that has none
  /// both_changed: the one that shows first. removed_in_use: to keep it, then to remove it with all
  /// that belongs to it. used_twice: the one that kept its name first.
  std::vector<QuestionSide> sides;
  int users = 0;  ///< removed_in_use: records that belong to it
  friend bool operator==(const Question&, const Question&) = default;
};

/// What one file brings.
struct JoinedFile {
  std::filesystem::path path;
  std::string tract;           ///< its name there
  int actions = 0;             ///< what its crew did that the target does not know yet
  int records = 0;             ///< records that the target does not have yet
  bool started_apart = false;  ///< a tract of its own, joined because of its name or on demand
};

struct JoinReport {
  std::vector<JoinedFile> files;
  std::vector<Change> records;      ///< what became of the records here, as of TractStore::undo()
  int forms = 0;                    ///< forms that are otherwise after it: read them again
  int added = 0;                    ///< records in use after it that were not before
  int changed = 0;                  ///< records that are otherwise after it
  std::vector<Question> questions;  ///< all that is open then
  std::filesystem::path copy;       ///< the target as it was before; "" when nothing was written
};

/// Whether files of another tract are taken for parts of this one.
enum class OtherTract { refuse, take };

}  // namespace oaklight
