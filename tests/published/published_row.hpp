#pragma once

#include <iosfwd>
#include <string>
#include <vector>

#include "tests/published/evaluator.hpp"

namespace oaklight::test {

/// One outside value: what a publication, a derivation or a memory says a quantity comes to.
struct PublishedRow {
  std::string place;  ///< file and line, for messages
  std::string id;
  std::string quantity;
  Inputs inputs;
  double want = 0.0;
  double tolerance = 0.0;
  std::string unit;
  std::string source;
  std::string status;  ///< retrieved, derived, from memory, gap
};

std::ostream& operator<<(std::ostream& out, const PublishedRow& row);

/// All rows of a folder's *.tsv files, and what is wrong with those files in plain words.
struct PublishedRows {
  std::vector<PublishedRow> rows;
  std::vector<std::string> problems;
};

PublishedRows read_published(const std::string& folder);

/// The evaluators of this folder together.
Evaluators all_evaluators();

}  // namespace oaklight::test
