// After the cut, from the shell: stumps.csv goes in, the reconciled list and its page come out.
#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <regex>
#include <vector>

#include "core/base/csv_text.hpp"
#include "tests/command/program.hpp"

namespace oaklight::test {
namespace {

using Json = nlohmann::json;

/// Tags of the demo tract by what is to become of their trees.
struct Tags {
  std::vector<std::string> listed, left;
};

Tags tags_of(const DemoTract& demo) {
  Tags tags;
  const Json all = Json::parse(oaklight("recommend --dry-run --json " + demo.tract).out);
  for (const Json& stand : all.at("stands")) {
    for (const Json& tree : stand.at("plan").at("trees")) {
      const std::string verdict = tree.at("verdict");
      const bool goes = verdict == "take" || verdict == "kill_standing";
      (goes ? tags.listed : tags.left).push_back(tree.at("tag"));
    }
  }
  return tags;
}

/// The demo tract after an invented cut: all as marked, but for one tree still standing, one hung
/// up, one that nobody looked at, a leave tree felled, one badly hurt, and a stump without a tag.
class StumpsCommand : public testing::Test {
 protected:
  StumpsCommand() : tags_(tags_of(demo_)) {
    std::string rows = "finding,tag,species,over_bark_in,stump_height_ft,wound,date\n";
    const auto add = [&](const std::string& finding, const std::string& tag,
                         const std::string& more) {
      rows += finding + "," + tag + "," + more + "\n";
    };
    for (std::size_t i = 3; i < tags_.listed.size(); ++i) add("as_marked", tags_.listed[i], ",,,,");
    add("standing", tags_.listed[0], ",,,,2027-02-20");
    add("hung", tags_.listed[1], ",,,,2027-02-20");
    add("not_marked", tags_.left[0], ",,,,");
    add("hurt", tags_.left[1], ",,,large,");
    add("not_marked", "", "red maple,17.2,0.5,,");
    write_bytes(demo_.folder / "stumps.csv", rows);
    EXPECT_EQ(
        oaklight("import " + demo_.tract + " " + (demo_.folder / "stumps.csv").string()).exit_code,
        0);
  }
  Json told(const std::string& more = "") {
    const Ran run = oaklight("stumps --json --made-on 2027-02-21 " + more + " " + demo_.tract);
    EXPECT_EQ(run.exit_code, 0) << run.errors << run.out;
    return Json::parse(run.out);
  }

  DemoTract demo_;
  Tags tags_;
};

TEST_F(StumpsCommand, TellsTheListAgainstWhatWasFound) {
  ASSERT_GT(tags_.listed.size(), 10U);
  const Json check = told();
  const auto listed = tags_.listed.size();
  EXPECT_EQ(check.at("listed"), listed);
  EXPECT_EQ(check.at("looked_at"), listed - 1);
  EXPECT_EQ(check.at("done"), listed - 3);
  EXPECT_EQ(check.at("standing"), 1);
  EXPECT_EQ(check.at("hung"), 1);
  EXPECT_EQ(check.at("not_seen"), 1);
  // Derived: found as marked, of those looked at.
  EXPECT_NEAR(check.at("share_done_pct").get<double>(),
              100.0 * static_cast<double>(listed - 3) / static_cast<double>(listed - 1), 1e-9);
  EXPECT_EQ(check.at("cut_not_marked").at("trees"), 2);
  EXPECT_EQ(check.at("trees_left").at("felled"), 1);
  EXPECT_EQ(check.at("trees_left").at("badly_hurt"), 1);
  EXPECT_GT(check.at("cut_not_marked").at("cords_if_firewood").at("likely").get<double>(), 0.0);
}

TEST_F(StumpsCommand, TellsEachTreeThatWasCutOrHurtWithItsSizeAndWound) {
  const Json check = told();
  const Json& each = check.at("cut_not_marked").at("each");
  ASSERT_EQ(each.size(), 2U);
  double likely = 0.0;
  for (const Json& tree : each) {
    EXPECT_LE(tree.at("dbh_in").at("low"), tree.at("dbh_in").at("likely"));
    EXPECT_LE(tree.at("dbh_in").at("likely"), tree.at("dbh_in").at("high"));
    likely += tree.at("cords_if_firewood").at("likely").get<double>();
  }
  EXPECT_NEAR(likely, check.at("cut_not_marked").at("cords_if_firewood").at("likely").get<double>(),
              0.005);
  const auto tape = std::ranges::count_if(
      each, [](const Json& tree) { return tree.at("dbh_by_tape").get<bool>(); });
  EXPECT_EQ(tape, 1) << "the tree of the walk; the other has only its stump";
  ASSERT_EQ(check.at("hurt").size(), 1U);
  const Json& hurt = check.at("hurt").front();
  EXPECT_EQ(hurt.at("tag"), tags_.left[1]);
  EXPECT_EQ(hurt.at("wound"), "large");
  EXPECT_EQ(hurt.at("badly"), true);
  const Ran text = oaklight("stumps --made-on 2027-02-21 " + demo_.tract);
  const auto at = text.out.find("Hurt trees that were to be left: 1");
  ASSERT_NE(at, std::string::npos) << text.out;
  EXPECT_NE(text.out.find("large (bad)", at), std::string::npos) << text.out;
}

TEST_F(StumpsCommand, SaysWhatIsDangerousBeforeAnythingElse) {
  const Ran run = oaklight("stumps --made-on 2027-02-21 " + demo_.tract);
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  EXPECT_EQ(run.out.rfind("! One tree is hung up.", 0), 0U) << run.out.substr(0, 200);
  EXPECT_NE(run.out.find("Go and look:"), std::string::npos);
  EXPECT_LT(run.out.find("fresh cut"), run.out.find("Go and look:"));
}

TEST_F(StumpsCommand, DrawsAnAuditThatItsSeedRepeats) {
  const Json first = told("--audit").at("audit");
  EXPECT_EQ(first.at("model"), "hypergeometric");
  EXPECT_EQ(first.at("seed"), 20270221) << "the day as a number";
  EXPECT_EQ(first.at("tags").size(), first.at("sample_needed").get<std::size_t>());
  EXPECT_EQ(told("--audit").at("audit").at("tags"), first.at("tags"));
  const Json five = told("--look-at 5 --seed 99").at("audit");
  EXPECT_EQ(five.at("tags").size(), 5U);
  EXPECT_EQ(five.at("seed"), 99);
  EXPECT_EQ(oaklight("stumps --look-at 100000 " + demo_.tract).exit_code, 1);
}

// Read by another program's CSV reader, and by poppler.
TEST_F(StumpsCommand, WritesAListAndAPageThatOthersRead) {
  const std::string folder = (demo_.folder / "check").string();
  const Json check = told("--audit --out " + folder);
  ASSERT_EQ(check.at("files").size(), 2U);
  const Ran counted = run_program(
      "/usr/bin/python3 -c 'import csv,sys,collections;"
      "rows=list(csv.DictReader(open(sys.argv[1],newline=\"\")));"
      "c=collections.Counter(r[\"state\"] for r in rows);"
      "print(len(rows),c[\"done\"],c[\"standing\"],c[\"hung\"],c[\"not_seen\"],"
      "c[\"cut_not_marked\"]+c[\"leave_tree_cut\"],c[\"badly_hurt\"])' " +
      folder + "/stumps.csv");
  const auto listed = tags_.listed.size();
  EXPECT_EQ(counted.out,
            std::to_string(listed + 3) + " " + std::to_string(listed - 3) + " 1 1 1 2 1\n")
      << counted.errors;
  const Ran text = run_program("pdftotext -layout " + folder + "/stumps.pdf -");
  ASSERT_EQ(text.exit_code, 0) << text.errors;
  const auto at = [&](const char* words) { return text.out.find(words); };
  for (const char* words : {"BEFORE YOU WALK A FRESH CUT", "Hung up: 1", "Still standing: 1",
                            "Nobody looked yet: 1", "Cut without a mark: 2", "Audit by sample"})
    EXPECT_NE(at(words), std::string::npos) << words;
  EXPECT_LT(at("BEFORE YOU WALK"), at("Trees on the list"));
  EXPECT_LT(at("Hung up: 1"), at("Still standing: 1"));
  const Ran fonts = run_program("pdffonts " + folder + "/stumps.pdf");
  // Its columns are: embedded, subset, with Unicode, object.
  const std::regex font("(yes|no) +(yes|no) +(yes|no) +[0-9]+ +0");
  int seen = 0;
  for (auto it = std::sregex_iterator(fonts.out.begin(), fonts.out.end(), font);
       it != std::sregex_iterator(); ++it, ++seen) {
    EXPECT_EQ((*it)[1], "yes") << fonts.out;
  }
  EXPECT_GT(seen, 0);
}

TEST(Stumps, NeedMarks) {
  const TempDir folder;
  const std::string tract = (folder / "bare.gpkg").string();
  ASSERT_EQ(oaklight("import " + tract + " " + demo_plots().string()).exit_code, 0);
  const Ran run = oaklight("stumps " + tract);
  EXPECT_EQ(run.exit_code, 4) << run.errors;
  EXPECT_NE(run.errors.find("marked"), std::string::npos);
}

}  // namespace
}  // namespace oaklight::test
