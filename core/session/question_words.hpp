#pragma once

#include <string>
#include <vector>

#include "core/model/species.hpp"
#include "core/store/join.hpp"

namespace oaklight {

/// One thing that is recorded, in words: {"DBH", "12.3 in"}.
struct SaidField {
  std::string what;
  std::string value;                     ///< "" where nothing is recorded
  std::vector<std::string> chosen = {};  ///< what the value is made of where it was chosen from
                                         ///< lists of the form: {"den_tree", "hollow"}
  friend bool operator==(const SaidField&, const SaidField&) = default;
};

/// One side of a question in words.
struct SaidSide {
  std::string who;   ///< the device
  std::string when;  ///< "2026-05-04 13:07", UTC
  std::string doing;
  bool removed = false;
  std::vector<SaidField> fields;  ///< those that are not the same on all sides; for records that
                                  ///< share a name all that is recorded
};

/// A question in words.
struct SaidQuestion {
  std::string record;  ///< "tree", "crop tree card", "plot"
  std::string name;
  std::vector<SaidSide> sides;
  std::string mend;  ///< what to do about it
};

SaidQuestion words_of(const Question& question, const SpeciesTable& species);

/// "tree of the walk 101: both changed".
std::string title_of(const SaidQuestion& said, QuestionKind kind);

}  // namespace oaklight
