#pragma once

#include <string>
#include <vector>

namespace oaklight::command {

/// A table for a terminal: first column to the left, the others to the right, two blanks between.
class TextTable {
 public:
  explicit TextTable(std::vector<std::string> head) : rows_{std::move(head)} {}
  void add(std::vector<std::string> row) { rows_.push_back(std::move(row)); }
  /// All rows, each with its line end; each line starts with `indent` blanks.
  [[nodiscard]] std::string text(std::size_t indent = 2) const;

 private:
  std::vector<std::vector<std::string>> rows_;
};

}  // namespace oaklight::command
