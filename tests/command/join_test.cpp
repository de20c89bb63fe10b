// Several tablets' files from the shell.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "core/store/tract_store.hpp"
#include "tests/command/program.hpp"
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
