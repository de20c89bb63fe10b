#include "tests/survey/r_lines.hpp"

#include <gtest/gtest.h>

#include <charconv>
#include <sstream>

#include "tests/support/places.hpp"
#include "tests/support/temp_dir.hpp"

namespace oaklight::test {

std::vector<RLine> r_lines(const std::string& call) {
  const Ran ran = run_program("Rscript " + source_path("tests/survey/") + call);
  EXPECT_EQ(ran.exit_code, 0) << ran.errors;
  EXPECT_FALSE(ran.out.empty());
  std::vector<RLine> lines;
  std::istringstream in(ran.out);
  for (std::string text; std::getline(in, text);) {
    RLine line;
    std::istringstream cells(text);
    for (std::string cell; std::getline(cells, cell, '\t');) {
      double number = 0.0;  // R writes exponents, which people's files may not have
      const char* end = cell.data() + cell.size();
      if (std::from_chars(cell.data(), end, number).ptr == end) {
        line.numbers.push_back(number);
      } else {
        line.words.push_back(cell);
      }
    }
    lines.push_back(std::move(line));
  }
  return lines;
}

bool r_is_installed() {
  static const bool there = run_program("Rscript -e 1").exit_code == 0;
  return there;
}

bool survey_is_installed() {
  static const bool there =
      run_program("Rscript -e 'stopifnot(requireNamespace(\"survey\"))' && sqlite3 --version")
          .exit_code == 0;
  return there;
}

}  // namespace oaklight::test
