#pragma once

#include <string>
#include <vector>

namespace oaklight::test {

/// A line that a script of this folder prints: words, then numbers, parted by tabs.
struct RLine {
  std::vector<std::string> words;
  std::vector<double> numbers;
};

/// Runs "SCRIPT.R argument ..." of this folder. Fails the test when it ends badly or says nothing.
std::vector<RLine> r_lines(const std::string& call);

bool r_is_installed();
bool survey_is_installed();  ///< R with package survey, and the command sqlite3

}  // namespace oaklight::test
