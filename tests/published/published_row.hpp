#pragma once

#include <gtest/gtest.h>

#include <iosfwd>
#include <set>
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

/// All rows of a folder's *.tsv files (but those left out), and what is wrong with those files in
/// plain words.
struct PublishedRows {
  std::vector<PublishedRow> rows;
  std::vector<std::string> problems;
};

PublishedRows read_published(const std::string& folder,
                             const std::set<std::string>& leave_out = {});

/// Fails for what is wrong with the files, a row without an evaluator and the reverse.
void expect_well_formed(const PublishedRows& all, const Evaluators& evaluators);

/// One row as a test, and its outcome in a result table. A row marked gap is a value that we are
/// known to miss: when it starts to match, the test fails so that somebody promotes the row.
void run_row(const PublishedRow& row, const Evaluators& evaluators, const std::string& table);

/// The row's id as the name of its test.
std::string row_name(const testing::TestParamInfo<PublishedRow>& info);

}  // namespace oaklight::test
