#pragma once

#include <string>
#include <vector>

namespace oaklight::test {

/// A table that a test program leaves behind for tests/report: results/NAME.tsv in the build
/// folder. Written when all tests of the program ran, in the order in which rows were added; a run
/// of some of its tests leaves the last whole table as it is.
class ResultTable {
 public:
  ResultTable(std::string name, std::vector<std::string> columns);

  /// One cell for each column; none may hold a tab or a line end.
  void add(const std::vector<std::string>& cells);
  /// Called once all tests have ended.
  void write() const;

 private:
  std::string name_;
  std::size_t columns_;
  std::string text_;
};

/// The program's table of this name, made at the first call.
ResultTable& result_table(const std::string& name, const std::vector<std::string>& columns);

}  // namespace oaklight::test
