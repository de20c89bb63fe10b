// A number that a test expects came from somewhere; the test says from where. This one reads the
// tests of calculation and finds those that do not.
//
// A literal number in EXPECT_NEAR, EXPECT_DOUBLE_EQ or EXPECT_EQ (or in a list that a loop hands to
// one) needs a source: in a comment or message of its test, in the comment above the test, or in
// that at the head of the file. A source is a publication with its year, a table of tests/published
// or tests/golden, a program of others, a rule, or one of the words in kWords. Free are 0 and 1;
// counts up to 12, which a reader checks at a glance; and a number that the test itself put in.
#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <optional>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "core/base/number_text.hpp"
#include "tests/support/places.hpp"

namespace fs = std::filesystem;

namespace {

const std::regex kWords(
    R"(\b(derived|by hand|from memory|common practice|judgement|definition|geometry)\b|\bsource:|)"
    R"(\bR\d+\.\d+|\bscenario|tests/published|tests/golden|maps\.tsv|\bR survey|SciPy|NumPy|GDAL|)"
    R"(NOAA|RFC \d+|apart/)",
    std::regex::icase);
const std::regex kPublication(R"(\b[A-Z][A-Za-z]+[^.]{0,80}\b(18|19|20)\d\d\b)");

bool names_a_source(const std::string& words) {
  return std::regex_search(words, kWords) || std::regex_search(words, kPublication);
}

/// One test of a file: what it does, and what it says about it.
struct TestText {
  std::string name;
  std::string body;
  std::string says;  ///< comments above and in it, and its messages
};

bool is_comment(const std::string& line) {
  const auto at = line.find_first_not_of(' ');
  return at != std::string::npos && line.compare(at, 2, "//") == 0;
}

std::string comments_and_messages(const std::string& body) {
  static const std::regex said(R"(//[^\n]*|"(\\.|[^"\\\n])*")");
  std::string all;
  for (auto at = std::sregex_iterator(body.begin(), body.end(), said); at != std::sregex_iterator();
       ++at) {
    all += at->str().substr(at->str()[0] == '/' ? 2 : 0) + " ";
  }
  return all;
}

/// The tests of a file, as clang-format lays them out: from "TEST" to "}" at the margin.
std::vector<TestText> tests_of(const std::string& text) {
  std::vector<TestText> tests;
  std::istringstream in(text);
  std::string head;
  std::string above;
  bool in_head = true;
  bool in_test = false;
  for (std::string line; std::getline(in, line);) {
    if (in_head && is_comment(line)) head += line + "\n";
    in_head = in_head && (is_comment(line) || line.empty());
    if (!in_test && line.starts_with("TEST")) {
      tests.push_back({line.substr(0, line.find('{')), "", head + above});
      in_test = true;
    }
    if (!in_test) above = is_comment(line) ? above + line + "\n" : "";
    if (in_test) tests.back().body += line + "\n";
    if (in_test && (line == "}" || (line.starts_with("TEST") && line.ends_with("}")))) {
      tests.back().says += comments_and_messages(tests.back().body);
      in_test = false;
      above.clear();
    }
  }
  return tests;
}

/// The arguments of a call whose bracket opens here.
std::vector<std::string> arguments(const std::string& text, std::size_t open) {
  std::vector<std::string> found(1);
  int depth = 0;
  bool quoted = false;
  for (std::size_t i = open; i < text.size(); ++i) {
    const char c = text[i];
    if (c == '"' && text[i - 1] != '\\') quoted = !quoted;
    if (!quoted && (c == '(' || c == '{' || c == '[') && depth++ == 0) continue;
    if (!quoted && (c == ')' || c == '}' || c == ']') && --depth == 0) return found;
    if (!quoted && c == ',' && depth == 1) {
      found.emplace_back();
    } else {
      found.back() += c;
    }
  }
  return found;
}

/// The number that an argument is: 12.5, -3'000, 8U, Inches{14.0}.
std::optional<double> literal(const std::string& argument) {
  static const std::regex form(
      R"(^\s*(?:[A-Za-z_:]+\{)?\s*(-?)\s*([0-9][0-9']*\.?[0-9]*(?:e-?\d+)?)[UuLlFf]*\s*\}?\s*$)");
  std::smatch parts;
  if (!std::regex_match(argument, parts, form)) return std::nullopt;
  std::string digits = parts[2];
  std::erase(digits, '\'');
  if (digits.ends_with('.')) digits += '0';
  const auto value = oaklight::number_from_text(digits);
  return value ? std::optional(*value) : std::nullopt;
}

/// Every number written in a piece of code, without its sign.
std::vector<double> numbers_in(const std::string& code) {
  static const std::regex token(R"([A-Za-z_0-9.']+)");
  std::vector<double> all;
  for (auto at = std::sregex_iterator(code.begin(), code.end(), token);
       at != std::sregex_iterator(); ++at) {
    if (const auto value = literal(at->str())) all.push_back(*value);
  }
  return all;
}

struct Expectation {
  bool exact = false;  ///< EXPECT_EQ: counts and codes
  std::vector<std::string> sides;
};

std::vector<Expectation> expectations_of(const std::string& body) {
  static const std::regex call(R"((?:EXPECT|ASSERT)_(NEAR|DOUBLE_EQ|FLOAT_EQ|EQ)\()");
  std::vector<Expectation> all;
  for (auto at = std::sregex_iterator(body.begin(), body.end(), call); at != std::sregex_iterator();
       ++at) {
    const auto open = static_cast<std::size_t>(at->position() + at->length() - 1);
    auto sides = arguments(body, open);
    sides.resize(std::min<std::size_t>(sides.size(), 2));
    all.push_back({(*at)[1] == "EQ", sides});
  }
  return all;
}

bool is_plain(double value, bool exact) {
  if (value == 0.0 || value == 1.0) return true;
  return exact && value <= 12.0 && value == std::floor(value);
}

/// Names that a loop takes out of a list with numbers that are not plain.
std::set<std::string> listed_names(const std::string& body) {
  static const std::regex loop(R"(for \((?:const )?auto&? \[([^\]]*)\] :\s*\{)");
  static const std::regex name(R"([A-Za-z_0-9]+)");
  std::set<std::string> names;
  for (auto at = std::sregex_iterator(body.begin(), body.end(), loop); at != std::sregex_iterator();
       ++at) {
    const auto open = static_cast<std::size_t>(at->position() + at->length() - 1);
    std::string list;
    for (const std::string& part : arguments(body, open)) list += part + ",";
    const auto numbers = numbers_in(list);
    if (std::ranges::all_of(numbers, [](double x) { return is_plain(x, true); })) continue;
    const std::string bound = (*at)[1];
    for (auto each = std::sregex_iterator(bound.begin(), bound.end(), name);
         each != std::sregex_iterator(); ++each) {
      names.insert(each->str());
    }
  }
  return names;
}

std::string trimmed(const std::string& text) {
  const auto from = text.find_first_not_of(" \n");
  if (from == std::string::npos) return "";
  return text.substr(from, text.find_last_not_of(" \n") - from + 1);
}

/// What a test expects that is a number, not plain and not its own input. "" for nothing.
std::string expected_numbers(const TestText& test) {
  const auto expectations = expectations_of(test.body);
  const auto names = listed_names(test.body);
  const auto written = numbers_in(test.body);
  std::vector<double> expected;
  for (const Expectation& e : expectations) {
    for (const std::string& side : e.sides) {
      if (const auto value = literal(side)) expected.push_back(*value);
    }
  }
  std::string found;
  for (const Expectation& e : expectations) {
    for (const std::string& side : e.sides) {
      const auto value = literal(side);
      const bool unexplained =
          value && !is_plain(*value, e.exact) &&
          std::ranges::count(written, *value) <= std::ranges::count(expected, *value);
      if (unexplained || names.contains(trimmed(side))) found += trimmed(side) + "  ";
    }
  }
  return found;
}

/// What is wrong with the tests of a file's text.
std::vector<std::string> without_source(const std::string& text) {
  std::vector<std::string> faults;
  for (const TestText& test : tests_of(text)) {
    const std::string numbers = expected_numbers(test);
    if (!numbers.empty() && !names_a_source(test.says)) {
      faults.push_back(test.name + " expects " + numbers);
    }
  }
  return faults;
}

/// The text of a test that expects one thing, and what is said in it.
std::string test_text(const std::string& expectation, const std::string& said = "") {
  return "TEST(A, B) {\n" + said + "  " + expectation + "\n}\n";
}

TEST(NumberSources, TheCheckSeesANumberWithoutASource) {
  const auto faults = [](const std::string& e) { return without_source(test_text(e)).size(); };
  EXPECT_EQ(faults("EXPECT_NEAR(f(3.0), 8.25, 1e-9);"), 1U);
  EXPECT_EQ(faults("EXPECT_DOUBLE_EQ(Inches{14.5}, f());"), 1U);
  EXPECT_EQ(faults("EXPECT_EQ(f(), 2'400U);"), 1U);
  EXPECT_EQ(faults("EXPECT_NEAR(f(), -0.5, 1e-9) << \"the same as ever\";"), 1U);
  EXPECT_EQ(faults("for (const auto& [x, y] : {pair(2, 9.5)}) EXPECT_NEAR(f(x), y, 1e-9);"), 1U);
  EXPECT_EQ(without_source("// No source here.\nint i;\n\n// Of trees.\n" +
                           test_text("EXPECT_NEAR(f(), 8.25, 1e-9);"))
                .size(),
            1U);
}

TEST(NumberSources, TheCheckTakesWhatIsExplainedPlainOrComputed) {
  const auto is_free = [](const std::string& e, const std::string& said = "") {
    return without_source(test_text(e, said)).empty();
  };
  EXPECT_TRUE(is_free("EXPECT_NEAR(f(3.0), 8.25, 1e-9);", "  // By hand: 3 x 2.75.\n"));
  EXPECT_TRUE(is_free("EXPECT_NEAR(f(), 8.25, 1e-9) << \"Bruce and Schumacher 1950\";"));
  EXPECT_TRUE(is_free("EXPECT_NEAR(f(), 8.25, 1e-9);  // R6.12"));
  EXPECT_TRUE(is_free("EXPECT_EQ(f(), 12U);"));
  EXPECT_TRUE(is_free("EXPECT_NEAR(f(), 1.0, 1e-9);"));
  EXPECT_TRUE(is_free("EXPECT_NEAR(f(), 100.0 * (1.0 - 40.0 / 360.0), 1e-9);"));
  EXPECT_TRUE(is_free("EXPECT_EQ(Dbh(14.5).inches(), Inches{14.5});")) << "its own input";
  EXPECT_TRUE(without_source("// From memory: Gingrich 1967.\n#include <x>\n\n" +
                             test_text("EXPECT_NEAR(f(), 8.25, 1e-9);"))
                  .empty());
  EXPECT_TRUE(
      without_source("int i;\n// Source: geometry.\n" + test_text("EXPECT_NEAR(f(), 8.25, 1e-9);"))
          .empty());
}

TEST(NumberSources, EveryNumberThatATestOfCalculationExpectsHasOne) {
  int tests = 0;
  for (const char* folder : {"measure", "sample", "stand", "release", "place", "handoff",
                             "published", "population", "survey"}) {
    for (const auto& entry :
         fs::directory_iterator(oaklight::test::source_path("tests/") + folder)) {
      if (entry.path().extension() != ".cpp") continue;
      std::ifstream in(entry.path());
      std::stringstream text;
      text << in.rdbuf();
      tests += static_cast<int>(tests_of(text.str()).size());
      for (const std::string& fault : without_source(text.str())) {
        ADD_FAILURE() << folder << "/" << entry.path().filename().string() << ": " << fault
                      << "\nSay where it is from: a publication and its year, \"By hand: ...\", "
                         "\"Derived: ...\", \"from memory\" or \"common practice\".";
      }
    }
  }
  EXPECT_GT(tests, 400) << "the walk over the tests found nothing to check";
}

}  // namespace
