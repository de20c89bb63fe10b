// The manual page and the completion are held against what --help says, read here by itself.
#include <gmock/gmock.h>

#include <regex>
#include <set>
#include <sstream>

#include "tests/command/program.hpp"

namespace oaklight::test {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;

/// First group of each line that matches.
std::vector<std::string> found(const std::string& text, const std::string& pattern) {
  const std::regex wanted(pattern);
  std::vector<std::string> out;
  std::istringstream lines(text);
  std::smatch parts;
  for (std::string line; std::getline(lines, line);) {
    if (std::regex_search(line, parts, wanted)) out.push_back(parts[1]);
  }
  return out;
}

std::vector<std::string> subcommands() {
  const std::string help = oaklight("--help").out;
  return found(help.substr(help.find("Subcommands:")), "^  ([a-z]+)  ");
}

std::vector<std::string> options_in_help(const std::string& subcommand) {
  return found(oaklight(subcommand + " --help").out, "^ +(?:-[a-z],)?(--[a-z0-9-]+)");
}

/// What bash offers for these words, the last of which is being typed.
std::vector<std::string> offered(const TempDir& folder, const std::string& words) {
  write_bytes(folder / "ask.sh", "source completion\nCOMP_WORDS=(" + words +
                                     ")\nCOMP_CWORD=$((${#COMP_WORDS[@]} - 1))\n_oaklight\n"
                                     "printf '%s\\n' \"${COMPREPLY[@]}\"\n");
  const Ran ran = run_program("cd " + folder.path().string() + " && bash -eu ask.sh");
  EXPECT_EQ(ran.exit_code, 0) << ran.errors;
  return found(ran.out, "^(.+)$");
}

TEST(Manual, NamesEachSubcommandAndEachOptionOfIt) {
  const Ran page = oaklight("--manual");
  ASSERT_EQ(page.exit_code, 0) << page.errors;
  const std::string plain = std::regex_replace(page.out, std::regex(R"(\\-)"), "-");
  const auto names = subcommands();
  EXPECT_GT(names.size(), 10U);
  EXPECT_EQ(found(plain, R"(^\.SS (.+)$)"), names);
  for (const std::string& name : names) {
    const auto from = plain.find(".SS " + name + "\n");
    const std::string part = plain.substr(from, plain.find("\n.S", from) - from);
    const auto options = options_in_help(name);
    EXPECT_THAT(options, Contains("--help")) << name;
    EXPECT_EQ(found(part, R"(^\.B (?:-[a-z],)?(--[a-z0-9-]+))").size(), options.size()) << name;
    for (const std::string& option : options) EXPECT_THAT(part, HasSubstr(option)) << name;
  }
}

TEST(Manual, ManReadsThePageWithoutAComplaint) {
  if (run_program("command -v groff").exit_code != 0) GTEST_SKIP() << "no groff here";
  const TempDir folder;
  write_bytes(folder / "page", oaklight("--manual").out);
  const Ran ran = run_program("groff -man -Tutf8 -ww -z " + (folder / "page").string());
  EXPECT_EQ(ran.exit_code, 0);
  EXPECT_EQ(ran.errors, "");
}

TEST(Completion, OffersSubcommandsOptionsAndTheirWords) {
  const TempDir folder;
  write_bytes(folder / "completion", oaklight("--completion").out);
  const auto names = subcommands();
  const auto first = offered(folder, "oaklight ''");
  EXPECT_THAT(first, testing::IsSupersetOf(names));
  EXPECT_THAT(offered(folder, "oaklight pack"), ElementsAre("packet"));
  for (const std::string& name : names) {
    const auto options = options_in_help(name);
    const auto given = offered(folder, "oaklight " + name + " --");
    EXPECT_EQ(std::set<std::string>(given.begin(), given.end()),
              std::set<std::string>(options.begin(), options.end()))
        << name;
  }
  EXPECT_THAT(offered(folder, "oaklight packet x.gpkg --for s"), ElementsAre("standing"));
  EXPECT_THAT(offered(folder, "oaklight packet x.gpkg --paper ''"), ElementsAre("letter", "a4"));
  EXPECT_THAT(offered(folder, "oaklight packet x.gp"), ElementsAre());  // files are bash's own
}

}  // namespace
}  // namespace oaklight::test
