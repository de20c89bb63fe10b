// The stump check where findings are odd: no tag, no diameter, no wound told, one tag twice; and an
// audit of which every tree was looked at.
#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "tests/command/demo_cases.hpp"
#include "tests/command/small_tract.hpp"

namespace oaklight::test {
namespace {

using Json = nlohmann::json;

const std::string kHead =
    "finding,tag,stand,species,over_bark_in,under_bark_in,stump_height_ft,wound,wound_place,date,"
    "note\n";

class StumpCases : public DemoCases {
 protected:
  void found(const std::string& rows) {
    write_bytes(folder_ / "stumps.csv", kHead + rows);
    const Ran run = oaklight("import " + tract_ + " " + in_folder("stumps.csv"));
    ASSERT_EQ(run.exit_code, 0) << run.errors;
  }
  [[nodiscard]] Ran stumps(const std::string& more) const {
    return oaklight("stumps --made-on 2027-02-21 " + more + " " + tract_);
  }

  const std::string tract_ = copy_of_demo("cut.gpkg");
};

/// Crop trees of the demo tract: 101, 102, 103; 203 is left and no crop tree; 202 is on the list.
const std::string kOdd =
    "hurt,102,,,,,,medium,root,2027-02-20,\n"
    "hurt,103,,,,,,,,,bark scuffed\n"
    "hurt,,Upland,red maple,,,,small,stem,,\n"
    "hurt,,,,,,,broken,crown,,\n"
    "hurt,204,,,,,,small,stem,,\n"
    "hurt,204,,,,,,large,stem,,\n"
    "not_marked,101,,,,,,,,,\n"
    "not_marked,203,,,,,,,,,\n"
    "not_marked,,Cove,red maple,,,,,,,no tape\n"
    "not_marked,,,,17.2,,,,,,\n"
    "hung,213,,,,,,,,,\n"
    "standing,202,,,,,,,,,\n"
    "as_marked,202,,,,,,,,,\n";

TEST_F(StumpCases, WhatWasNotRecordedIsSaidAndNotMadeUp) {
  found(kOdd);
  const Ran run = stumps("--csv " + in_folder("list.csv"));
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  for (const char* words :
       {"Cut without a mark: 5\n", "101 CROP TREE white oak", "none red maple not measured - -\n",
        "none not known", "Hurt trees that were to be left: 5\n", "204 blackgum large (bad) stem -",
        "none not known broken (bad) crown -", "102 CROP TREE white oak medium root 2027-02-20",
        "103 CROP TREE northern red oak not recorded - -", "none red maple small stem -",
        "hurt trees without a tag, in no share: 2\n", "Tags noted more than once: 202, 204\n",
        "1 of 70 listed trees looked at, 0 found as marked (0.0 %)", "202 unclear red maple"}) {
    EXPECT_TRUE(says(run.out, words));
  }
  EXPECT_EQ(bytes_of(folder_ / "list.csv").substr(0, 6), "state,");
  EXPECT_TRUE(says(run.out, in_folder("list.csv")));
}

TEST_F(StumpCases, UnknownIsNullForMachines) {
  found(kOdd);
  const Json told = Json::parse(stumps("--json").out);
  int bare = 0;
  for (const Json& tree : told.at("cut_not_marked").at("each")) {
    EXPECT_EQ(tree.at("hung"), tree.at("tag") == "213") << tree;
    if (!tree.at("dbh_in").is_null()) continue;
    ++bare;
    EXPECT_TRUE(tree.at("tag").is_null());
    EXPECT_TRUE(tree.at("position").is_null());
    EXPECT_TRUE(tree.at("board_feet").is_null());
    EXPECT_TRUE(tree.at("cords_if_firewood").is_null());
    EXPECT_EQ(tree.at("stand"), "Cove");
  }
  EXPECT_EQ(bare, 1);
  EXPECT_EQ(told.at("cut_not_marked").at("without_dbh"), 1);
  int wounds = 0, places = 0, stands = 0;
  for (const Json& tree : told.at("hurt")) {
    wounds += tree.at("wound").is_null() ? 1 : 0;
    places += tree.at("wound_place").is_null() ? 1 : 0;
    stands += tree.at("stand").is_null() ? 1 : 0;
  }
  EXPECT_EQ(wounds, 1) << "103";
  EXPECT_EQ(places, 1) << "103";
  EXPECT_EQ(stands, 1) << "the one without a tag and a stand";
}

TEST_F(StumpCases, ThePagesSayTheSame) {
  found(kOdd);
  ASSERT_EQ(stumps("--paper a4 --out " + in_folder("check")).exit_code, 0);
  const Ran pages = run_program("pdftotext -layout " + in_folder("check/stumps.pdf") + " -");
  ASSERT_EQ(pages.exit_code, 0) << pages.errors;
  for (const char* words :
       {"Tags noted more than once: 2", "202 (2 times), 204 (2 times)", "Hurt, no tag 2",
        "not measured", "no figure", "from its stump, stump", "CROP TREE", "leave tree", "HUNG UP",
        "no position", "not recorded", "bark scuffed", "no tape", "Unclear, look again: 1",
        "HURT TREES", "large, stem", "broken, crown"}) {
    EXPECT_TRUE(says(pages.out, words));
  }
}

/// Findings of all 70 listed trees, as marked but for the first so many that still stand.
std::string all_looked_at(const std::string& tract, int standing) {
  std::string rows;
  const Json all = Json::parse(oaklight("recommend --dry-run --json " + tract).out);
  for (const Json& stand : all.at("stands")) {
    for (const Json& tree : stand.at("plan").at("trees")) {
      if (tree.at("verdict") != "take" && tree.at("verdict") != "kill_standing") continue;
      rows += std::string(standing-- > 0 ? "standing" : "as_marked") + "," +
              tree.at("tag").get<std::string>() + ",,,,,,,,,\n";
    }
  }
  return rows;
}

TEST_F(StumpCases, AnAuditOfTheWholeListIsACount) {
  found(all_looked_at(tract_, 1));
  // By hand: all 70 were looked at and 1 is wrong: 1 / 70 = 1.43 %, whatever the confidence.
  const Ran stands = stumps("--look-at 70 --out " + in_folder("holds"));
  EXPECT_TRUE(says(stands.out,
                   "All looked at, 1 wrong: at most 1.4 % of the list is wrong [audit]. The claim "
                   "stands.\n"));
  const Ran fails = stumps("--look-at 70 --at-most 1 --out " + in_folder("fails"));
  EXPECT_TRUE(says(fails.out, "The claim does not stand.\n"));
  const Json audit = Json::parse(stumps("--json --look-at 70").out).at("audit");
  EXPECT_NEAR(audit.at("greatest_wrong_share_pct").get<double>(), 100.0 / 70.0, 1e-9);
  EXPECT_EQ(audit.at("claim_stands"), true);
  EXPECT_EQ(audit.at("not_seen"), Json::array());
  for (const auto& [folder, words] :
       {std::pair("holds",
                  "All were looked at, 1 wrong: at most 1.4 % of the list is wrong. The "
                  "claim stands."),
        std::pair("fails", "The claim does not stand.")}) {
    const Ran pages = run_program("pdftotext " + in_folder(folder) + "/stumps.pdf -");
    std::string text = pages.out;
    std::ranges::replace(text, '\n', ' ');
    EXPECT_TRUE(says(text, words));
  }
}

TEST_F(StumpCases, WhatCannotBeDoneIsRefused) {
  found(kOdd);
  write_bytes(folder_ / "no_folder", "mine");
  const struct {
    const char* call;
    int code;
    std::string says;
  } kCalls[] = {
      {"--made-on 2027-02-30", 1, "2027-02-30"},
      {"--look-at 71", 1, "An audit looks at 1 to 70 of the listed trees."},
      {"--audit --allow 70", 1, "So many wrong ones cannot be allowed"},
      {"--csv /nowhere/list.csv", 3, "/nowhere/list.csv"},
  };
  for (const auto& [call, code, words] : kCalls) {
    const Ran run = oaklight(std::string("stumps ") + call + " " + tract_);
    EXPECT_EQ(run.exit_code, code) << call << run.out << run.errors;
    EXPECT_NE(run.errors.find(words), std::string::npos) << call << ": " << run.errors;
    const Ran json = oaklight(std::string("stumps --json ") + call + " " + tract_);
    EXPECT_EQ(json.exit_code, code) << call;
    EXPECT_EQ(Json::parse(json.out).at("errors").size(), 1U) << call;
  }
  const Ran folder = stumps("--out " + in_folder("no_folder"));
  EXPECT_EQ(folder.exit_code, 3) << folder.errors;
  EXPECT_EQ(bytes_of(folder_ / "no_folder"), "mine");
}

}  // namespace
}  // namespace oaklight::test
