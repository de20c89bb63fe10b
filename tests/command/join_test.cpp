// Several tablets' files from the shell.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "core/store/tract_store.hpp"
#include "tests/command/program.hpp"
#include "tests/command/small_tract.hpp"
#include "tests/support/readings.hpp"

namespace oaklight::test {
namespace {

using Json = nlohmann::json;

/// The demo tract on two tablets that both corrected one tree.
class JoinCommand : public testing::Test {
 protected:
  JoinCommand() {
    for (const std::string name : {"a", "b"}) {
      const auto path = demo_.folder / (name + ".gpkg");
      std::filesystem::copy_file(demo_.tract, path);
      SystemClock clock;
      auto store =
          TractStore::open(path, OpenMode::read_write, {clock, system_random(), "tablet " + name});
      Tree tree = store->load()->trees.front();
      tree.facts.dbh = dbh_in(name == "a" ? 11.1 : 22.2);
      EXPECT_TRUE(store->apply({"correct", {tree}}));
      tree.id = store->ids().next_id<TreeTag>();
      EXPECT_TRUE(store->apply({"tally", {tree}}));
    }
  }
  std::string path(const std::string& name) { return (demo_.folder / (name + ".gpkg")).string(); }

  DemoTract demo_;
};

TEST_F(JoinCommand, MakesOneFileOfTwoAndAsksWhatBothChanged) {
  const Ran run = oaklight("join " + path("all") + " " + path("a") + " " + path("b"));
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  EXPECT_NE(run.out.find("both changed"), std::string::npos) << run.out;
  EXPECT_NE(run.out.find("DBH: 11.1 in"), std::string::npos) << run.out;
  EXPECT_NE(run.out.find("tablet b"), std::string::npos) << run.out;
  EXPECT_EQ(oaklight("check " + path("all")).exit_code, 0);

  const Ran answered = oaklight("join " + path("all") + " --answer 1=B --json");
  ASSERT_EQ(answered.exit_code, 0) << answered.errors << answered.out;
  EXPECT_TRUE(Json::parse(answered.out).at("questions").empty());
  const Ran again = oaklight("join --json " + path("all") + " " + path("b"));
  EXPECT_TRUE(Json::parse(again.out).at("questions").empty());
  EXPECT_EQ(Json::parse(again.out).at("copy"), "");
}

TEST_F(JoinCommand, JoinsIntoAFileAndKeepsACopyBeside) {
  const Ran look = oaklight("join --look --json " + path("a") + " " + path("b"));
  EXPECT_EQ(Json::parse(look.out).at("records_added"), 1);
  EXPECT_FALSE(std::filesystem::exists(path("a.before-join")));
  const Ran run = oaklight("join " + path("a") + " " + path("b"));
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  EXPECT_TRUE(std::filesystem::exists(path("a.before-join")));
}

TEST_F(JoinCommand, SaysWhatWouldComeInAndWhatWasDecided) {
  const std::string before = bytes_of(path("a"));
  const Ran look = oaklight("join --look " + path("a") + " " + path("b"));
  EXPECT_TRUE(says(look.out, "Would be joined into " + path("a") + ": 1 records added"));
  EXPECT_EQ(bytes_of(path("a")), before);
  const Ran new_look = oaklight("join --look " + path("all") + " " + path("a") + " " + path("b"));
  EXPECT_TRUE(says(new_look.out, "Would be joined into " + path("all") + ": 1 records added"));
  EXPECT_FALSE(std::filesystem::exists(path("all")));
  ASSERT_EQ(oaklight("join " + path("a") + " " + path("b")).exit_code, 0);
  EXPECT_TRUE(says(oaklight("join " + path("a")).out, "To decide (on the tablet"));
  const Ran decided = oaklight("join " + path("a") + " --answer 1=A");
  EXPECT_TRUE(says(decided.out, "Decided: "));
  EXPECT_TRUE(says(decided.out, "Nothing is left to decide.\n"));
}

TEST_F(JoinCommand, TellsThatOneSideRemovedTheRecord) {
  {
    SystemClock clock;
    auto store =
        TractStore::open(path("a"), OpenMode::read_write, {clock, system_random(), "tablet a"});
    ASSERT_TRUE(store->apply({"remove tree", {Remove{store->load()->trees.front().id}}}));
  }
  // By hand: the demo's 309 tally records, one more, one less.
  EXPECT_TRUE(says(oaklight("check " + path("a")).out, "tree: 309 records, 1 removed\n"));
  const Ran run = oaklight("join " + path("a") + " " + path("b"));
  EXPECT_TRUE(says(run.out, "remove tree: REMOVED\n")) << run.errors;
}

TEST_F(JoinCommand, FilesOfOtherTractsAreTakenOnDemand) {
  const TempDir folder;
  const std::string other = small_tract(folder, "other",
                                        {{"tract.csv", "name,state\nOther wood (invented),OH\n"},
                                         {"stands.csv", "stand,acres\nNorth,10\n"}});
  const Ran refused = oaklight("join " + path("a") + " " + other);
  EXPECT_EQ(refused.exit_code, 1);
  EXPECT_TRUE(says(refused.errors, "This file is of another tract: \"Other wood (invented)\""));
  const Ran taken = oaklight("join --look --one-tract " + path("a") + " " + other);
  EXPECT_EQ(taken.exit_code, 0) << taken.errors;
  EXPECT_TRUE(says(taken.out, "; begun as a file of its own\n"));
  EXPECT_TRUE(says(taken.out, "county: -\n")) << "nothing, and no empty place";
}

TEST_F(JoinCommand, AnAnswerIsTheNumberOfAnOpenQuestionAndOneOfItsSides) {
  ASSERT_EQ(oaklight("join " + path("a") + " " + path("b")).exit_code, 0);
  const std::string before = bytes_of(path("a"));
  for (const char* answer : {"1=Z", "1=a", "1=", "1B", "=B", "0=A", "9=A", "x=A", "1=AB", "1-A"}) {
    const Ran run = oaklight("join " + path("a") + " --answer " + answer);
    EXPECT_EQ(run.exit_code, 1) << answer;
    EXPECT_TRUE(
        says(run.errors, std::string("This answers none of the open questions: ") + answer));
  }
  // One wrong answer among several: none is taken.
  EXPECT_EQ(oaklight("join " + path("a") + " --answer 1=A --answer 2=A").exit_code, 1);
  for (const char* into : {"a", "new"}) {
    const Ran run =
        oaklight("join " + path(into) + " " + path("a") + " " + path("b") + " --answer 1=A");
    EXPECT_EQ(run.exit_code, 1);
    EXPECT_TRUE(says(run.errors, "Answers come after the join")) << into;
  }
  EXPECT_EQ(bytes_of(path("a")), before);
}

TEST_F(JoinCommand, RefusesWhatItCannotJoin) {
  write_bytes(demo_.folder / "c.gpkg", "no tract");
  EXPECT_EQ(oaklight("join " + path("a") + " " + path("c")).exit_code, 3);
  EXPECT_EQ(oaklight("join " + path("new") + " " + path("a")).exit_code, 1);
  EXPECT_EQ(oaklight("join " + path("a") + " --answer 1=B").exit_code, 1);
  EXPECT_EQ(oaklight("join " + path("a") + " " + path("none")).exit_code, 2);
  EXPECT_FALSE(std::filesystem::exists(path("new")));
}

}  // namespace
}  // namespace oaklight::test
