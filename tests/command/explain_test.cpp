// What the program says of one tree when it is asked for its reasons.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "tests/command/program.hpp"

namespace oaklight::test {
namespace {

using Json = nlohmann::json;

Json explained(const DemoTract& demo, const std::string& tag, const std::string& more = "") {
  const Ran run = oaklight("explain --json " + more + " " + demo.tract + " " + tag);
  EXPECT_EQ(run.exit_code, 0) << run.errors;
  return Json::parse(run.out);
}

TEST(Explain, EveryTreeOfTheDemoHasItsSentenceItsRulesAndWhatWouldChangeIt) {
  const DemoTract demo;
  const Ran all = oaklight("recommend --dry-run --json " + demo.tract);
  ASSERT_EQ(all.exit_code, 0);
  std::size_t seen = 0;
  const Json recommended = Json::parse(all.out);
  for (const Json& stand : recommended.at("stands")) {
    for (const Json& tree : stand.at("plan").at("trees")) {
      if (seen++ % 8 != 0) continue;  // a process each: every eighth will do
      const std::string tag = tree.at("tag");
      const Json told = explained(demo, tag);
      EXPECT_EQ(told.at("reason"), tree.at("reason")) << tag;
      EXPECT_EQ(told.at("what_would_change_it"), tree.at("what_would_change_it")) << tag;
      EXPECT_FALSE(told.at("what_would_change_it").get<std::string>().empty()) << tag;
      ASSERT_FALSE(told.at("rules").empty()) << tag;
      for (const Json& rule : told.at("rules")) {
        for (const char* part : {"id", "rule", "value", "unit", "status", "source"}) {
          EXPECT_FALSE(rule.at(part).get<std::string>().empty()) << tag << " " << part;
        }
      }
      EXPECT_FALSE(told.at("ways").empty()) << tag;
      EXPECT_EQ(told.at("ways"), tree.at("work").at("ways")) << tag;
      EXPECT_EQ(told.at("herbicide"), tree.at("work").at("herbicide")) << tag;
      const bool goes = tree.at("verdict") == "take" || tree.at("verdict") == "kill_standing";
      if (!goes) {
        EXPECT_EQ(told.at("ways"), Json::array({"leave"})) << tag;
      }
    }
  }
  EXPECT_GT(seen, 50U);
}

TEST(Explain, ADayInAWindowIsRefusedAndTheFirstFreeDayNamed) {
  const DemoTract demo;
  const Ran all = oaklight("recommend --dry-run --json " + demo.tract);
  std::string tag;
  const Json recommended = Json::parse(all.out);
  for (const Json& stand : recommended.at("stands")) {
    for (const Json& tree : stand.at("plan").at("trees")) {
      if (tree.at("verdict") == "take" && tag.empty() && tree.at("method") == "fell") {
        const Json told = explained(demo, tree.at("tag"));
        if (told.at("ways").front() != "leave") tag = tree.at("tag");
      }
    }
  }
  ASSERT_FALSE(tag.empty());
  // West Virginia: every window of the season table is over by November 15
  // (forms/season_windows.csv).
  const Json june = explained(demo, tag, "--day 2026-06-10");
  EXPECT_EQ(june.at("may_be_done_that_day"), false);
  const std::string earliest = june.at("earliest_day");
  EXPECT_GT(earliest, "2026-06-10");
  EXPECT_EQ(explained(demo, tag, "--day " + earliest).at("may_be_done_that_day"), true);
  EXPECT_EQ(explained(demo, tag, "--day 2026-12-20").at("may_be_done_that_day"), true);
}

TEST(Explain, ReadsWellAsText) {
  const DemoTract demo;
  const Ran run = oaklight("explain " + demo.tract + " 101 --day 2026-12-07");
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  for (const char* words : {"What would change it: ", "How: ", "Rules (", "not a safety check"}) {
    EXPECT_NE(run.out.find(words), std::string::npos) << words << "\n" << run.out;
  }
}

// demo_plots/acorns.csv: 4.5, 15.5 and 8 on a branch tip of oak 101, a mean of 9.3: fair for a
// white oak (R3.42).
TEST(Explain, TellsWhatTheAcornCountsSayOfACropTree) {
  const DemoTract demo;
  const std::string reason = explained(demo, "101").at("reason");
  EXPECT_NE(reason.find("a fair acorn producer (9.3 acorns on a branch tip, mean of 3 autumns)"),
            std::string::npos)
      << reason;
}

TEST(Explain, AnUnknownTagEndsInFourAndABadDayInOne) {
  const DemoTract demo;
  const Ran unknown = oaklight("explain " + demo.tract + " nosuchtag");
  EXPECT_EQ(unknown.exit_code, 4);
  EXPECT_NE(unknown.errors.find("nosuchtag"), std::string::npos);
  EXPECT_EQ(oaklight("explain " + demo.tract + " 101 --day 2026-13-01").exit_code, 1);
}

}  // namespace
}  // namespace oaklight::test
