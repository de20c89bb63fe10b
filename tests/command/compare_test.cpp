// What the program says of two visits to the demo tract. The changes are computed again here, from
// the CSV files and by plain formulas.
#include <gtest/gtest.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "tests/command/later_visit.hpp"
#include "tests/command/program.hpp"

namespace oaklight::test {
namespace {

using Json = nlohmann::json;

/// The demo tract of 2026, decided, and the same in 2031 in a file of its own.
class TwoFiles : public testing::Test {
 protected:
  void SetUp() override {
    const Ran all = oaklight("recommend --dry-run --json " + demo_.tract);
    const Json recommended = Json::parse(all.out);
    for (const Json& stand : recommended.at("stands")) {
      for (const Json& tree : stand.at("plan").at("trees")) {
        const std::string verdict = tree.at("verdict");
        if (verdict == "take" || verdict == "kill_standing") taken_.insert(tree.at("tag"));
      }
    }
    ASSERT_GT(taken_.size(), 20U);
    // Which crop trees count as released is asked of the program first, with the cards carried on.
    const Json before = compared(demo_.tract, demo_.tract);
    for (const Json& tree : before.at("crop_trees")) {
      if (tree.at("released")) released_.insert(tree.at("tag"));
    }
    const auto folder = demo_.folder / "later";
    std::filesystem::create_directory(folder);
    for (const char* name : {"tract.csv", "stands.csv"}) {
      std::filesystem::copy_file(demo_plots() / name, folder / name);
    }
    write_bytes(folder / "plots.csv", visit_.plots);
    write_bytes(folder / "trees.csv", visit_.trees);
    write_bytes(folder / "crop_trees.csv", later_cards(taken_, released_));
    later_ = (demo_.folder / "later.gpkg").string();
    const Ran imported = oaklight("import " + later_ + " " + folder.string());
    ASSERT_EQ(imported.exit_code, 0) << imported.errors;
  }

  static Json compared(const std::string& first, const std::string& second,
                       const std::string& more = "") {
    const Ran run = oaklight("compare --json " + more + " " + first + " " + second);
    EXPECT_EQ(run.exit_code, 0) << run.out << run.errors;
    return Json::parse(run.out);
  }

  /// Basal area by plain formulas: 10 ft2 a tree, difference by plot, by stand.
  struct Plain {
    double mean = 0.0, variance_of_mean = 0.0;
    int n = 0;
  };
  [[nodiscard]] Plain plain_change(const std::string& stand) const {
    std::vector<double> differences;
    for (const auto& row : csv_rows(visit_.plots)) {
      if (row.at("stand") != stand) continue;
      const std::string plot = stand + "/" + row.at("plot");
      const auto count = [&](const std::map<std::string, int>& trees) {
        const auto found = trees.find(plot);
        return found == trees.end() ? 0 : found->second;
      };
      differences.push_back(10.0 * (count(visit_.after) - count(visit_.before)));
    }
    Plain plain;
    plain.n = static_cast<int>(differences.size());
    for (const double d : differences) plain.mean += d / plain.n;
    for (const double d : differences) {
      plain.variance_of_mean += (d - plain.mean) * (d - plain.mean) / (plain.n - 1.0) / plain.n;
    }
    return plain;
  }

  const DemoTract demo_;
  const LaterVisit visit_ = later_visit();
  std::set<std::string> taken_, released_;
  std::string later_;
};

TEST_F(TwoFiles, ChangeOfBasalAreaIsThatOfThePlotsThemselves) {
  const Json json = compared(demo_.tract, later_);
  ASSERT_EQ(json.at("stands").size(), 3U);
  double acres = 0.0, mean = 0.0, variance = 0.0;
  for (const Json& stand : json.at("stands")) {
    const Plain plain = plain_change(stand.at("stand"));
    const Json& change = stand.at("change");
    EXPECT_EQ(change.at("pairs"), plain.n) << stand.at("stand");
    EXPECT_NEAR(change.at("ba_ft2_ac").at("change"), plain.mean, 1e-9);
    EXPECT_NEAR(change.at("ba_ft2_ac").at("se"), std::sqrt(plain.variance_of_mean), 1e-9);
    const double area = change.at("acres");
    acres += area;
    mean += area * plain.mean;
    variance += area * area * plain.variance_of_mean;
    EXPECT_NEAR(stand.at("years"), 1826.0 / 365.25, 1e-9);
  }
  EXPECT_NEAR(json.at("all").at("ba_ft2_ac").at("change"), mean / acres, 1e-9);
  EXPECT_NEAR(json.at("all").at("ba_ft2_ac").at("se"), std::sqrt(variance) / acres, 1e-9);
  EXPECT_NEAR(json.at("all").at("total_ba_ft2").at("change"), mean, 1e-6);
  EXPECT_NEAR(json.at("all").at("total_ba_ft2").at("se"), std::sqrt(variance), 1e-6);
}

TEST_F(TwoFiles, APlotOfOneVisitIsListedAndLeftOut) {
  const Json json = compared(demo_.tract, later_);
  bool seen = false;
  for (const Json& stand : json.at("stands")) {
    if (stand.at("stand") != "Upland") continue;
    seen = true;
    EXPECT_EQ(stand.at("plots_of_first_visit_only"), Json::array({"U03"}));
    EXPECT_EQ(stand.at("change").at("pairs"), 14);
  }
  EXPECT_TRUE(seen);
  const Ran text = oaklight("compare " + demo_.tract + " " + later_);
  EXPECT_NE(text.out.find("left out, first visit only: U03"), std::string::npos) << text.out;
}

TEST_F(TwoFiles, CropTreesGrewAsTheirTagsSay) {
  const Json json = compared(demo_.tract, later_);
  double sum = 0.0;
  int n = 0;
  for (const Json& tree : json.at("trees")) {
    if (!tree.at("crop_tree") || tree.at("fate") != "grown") continue;
    const std::string tag = tree.at("tag");
    EXPECT_EQ(tree.at("released"), released_.contains(tag)) << tag;
    const double growth = crop_growth(tag, released_.contains(tag)) / 10.0;
    EXPECT_NEAR(tree.at("dbh_in_after").get<double>() - tree.at("dbh_in_before").get<double>(),
                growth, 1e-9)
        << tag;
    EXPECT_NEAR(tree.at("growth_in_a_year"), growth / (1826.0 / 365.25), 1e-9) << tag;
    if (!released_.contains(tag)) continue;
    sum += growth / (1826.0 / 365.25);
    ++n;
  }
  const Json& growth = json.at("crop_tree_growth");
  ASSERT_GT(n, 2);
  EXPECT_EQ(growth.at("released").at("trees"), n);
  EXPECT_NEAR(growth.at("released").at("mean_in_a_year"), sum / n, 1e-9);
  // Invented so: released trees grew half an inch more in five years.
  EXPECT_NEAR(growth.at("difference").at("in_a_year"), 0.1, 0.03);
  EXPECT_GT(growth.at("difference").at("lo"), 0.0);
}

TEST_F(TwoFiles, TakenTreesAreNotLostTrees) {
  const Json json = compared(demo_.tract, later_);
  for (const Json& tree : json.at("trees")) {
    EXPECT_EQ(tree.at("fate") == "taken", taken_.contains(tree.at("tag"))) << tree.at("tag");
  }
}

TEST_F(TwoFiles, LightNowComesFromTheSecondCards) {
  const Json json = compared(demo_.tract, later_);
  int released = 0;
  for (const Json& tree : json.at("crop_trees")) {
    ASSERT_FALSE(tree.at("light_now").is_null()) << tree.at("tag");
    // The cards were made so that what was opened stayed open.
    EXPECT_GE(tree.at("light_now").at("sides_free"),
              tree.at("light_after_release").at("sides_free"))
        << tree.at("tag");
    if (tree.at("released")) {
      ++released;
      EXPECT_GT(tree.at("light_after_release").at("sides_free"),
                tree.at("light_before").at("sides_free"));
    }
    if (!tree.at("sides_closed_since").is_null()) {
      EXPECT_EQ(tree.at("sides_closed_since"), 0) << tree.at("tag");
    }
  }
  EXPECT_GT(released, 5);
}

TEST_F(TwoFiles, WithoutASecondCardItSaysWhenToLookAgain) {
  const Json json = compared(demo_.tract, demo_.tract);
  int forecast = 0;
  for (const Json& tree : json.at("crop_trees")) {
    EXPECT_TRUE(tree.at("light_now").is_null());
    const Json& look = tree.at("look_again_after_years");
    if (look.is_null()) continue;
    EXPECT_LE(look.at("soonest"), look.at("latest"));
    if (look.at("latest").get<double>() > 0.0) ++forecast;
  }
  EXPECT_GT(forecast, 3);
  EXPECT_EQ(json.at("rules"), Json::array({"R1.85", "R1.86", "R1.87", "R3.45", "R3.47", "R3.48"}));
}

// The counts as acorns.csv has them; the index by its formula, over the trees of one species.
TEST_F(TwoFiles, AcornsAreThoseThatWereCounted) {
  const Json json = compared(demo_.tract, later_);
  std::map<std::string, std::map<int, std::pair<std::string, std::string>>> counted;
  for (const auto& row : csv_rows(bytes_of(demo_plots() / "acorns.csv"))) {
    counted[row.at("tag")][std::stoi(row.at("year"))] = {row.at("per_tip"), row.at("n30")};
  }
  ASSERT_EQ(json.at("acorn_trees").size(), counted.size());
  std::map<std::pair<std::string, int>, std::vector<double>> logs;
  for (const Json& tree : json.at("acorn_trees")) {
    const std::string tag = tree.at("tag");
    const auto& autumns = counted.at(tag);
    ASSERT_EQ(tree.at("counts").size(), autumns.size()) << tag;
    double tips = 0.0;
    int years = 0;
    for (const Json& count : tree.at("counts")) {
      const int year = count.at("year");
      const auto& [per_tip, n30] = autumns.at(year);
      EXPECT_EQ(count.at("per_tip").is_null(), per_tip.empty()) << tag << year;
      EXPECT_EQ(count.at("n30").is_null(), n30.empty()) << tag << year;
      if (!per_tip.empty()) {
        EXPECT_NEAR(count.at("per_tip").get<double>(), std::stod(per_tip), 1e-9);
        tips += std::stod(per_tip);
        ++years;
      }
      if (!n30.empty()) {
        EXPECT_EQ(count.at("n30"), std::stoi(n30));
        logs[{tree.at("species"), year}].push_back(std::log(std::stoi(n30) + 1.0));
      }
    }
    EXPECT_EQ(tree.at("autumns_counted"), autumns.size()) << tag;
    // Between 6 and 12 a tip is fair for a white oak, between 8 and 16 for a red one.
    if (years > 0) {
      EXPECT_EQ(tree.at("producer"), "fair") << tag << ' ' << tips / years;
    }
    EXPECT_EQ(tree.at("proven_poor"), false) << tag;
  }
  EXPECT_FALSE(json.at("acorn_indices").empty());
  for (const Json& index : json.at("acorn_indices")) {
    const auto& values = logs.at({index.at("species"), index.at("year")});
    double mean = 0.0;
    for (const double value : values) mean += value / static_cast<double>(values.size());
    EXPECT_NEAR(index.at("mean_ln_n30_plus_1").get<double>(), mean, 1e-9);
    EXPECT_EQ(index.at("enough_trees"), false) << "one oak is few";
  }
  const Ran text = oaklight("compare " + demo_.tract + " " + later_);
  EXPECT_NE(text.out.find("It is proven poor only when poor in"), std::string::npos);
  EXPECT_NE(text.out.find("2024: 15.5 a tip"), std::string::npos) << text.out;
}

TEST_F(TwoFiles, BothVisitsInOneFileGiveTheSameChange) {
  const auto folder = demo_.folder / "again";
  std::filesystem::create_directory(folder);
  write_bytes(folder / "plots.csv", visit_.plots);
  write_bytes(folder / "trees.csv", visit_.trees);
  const Ran imported = oaklight("import " + demo_.tract + " " + folder.string());
  ASSERT_EQ(imported.exit_code, 0) << imported.errors;
  const Json one = compared(demo_.tract, "");
  const Json two = compared(demo_.tract, later_, "--first-cruise \"2026 points\"");
  EXPECT_EQ(one.at("all"), two.at("all"));
  EXPECT_EQ(one.at("stands"), two.at("stands"));
  const Json named =
      compared(demo_.tract, "", "--first-cruise \"2026 points\" --second-cruise \"2031 points\"");
  EXPECT_EQ(named.at("all"), one.at("all"));
  // The estimate is that of the newest visit, and the tract is as sound as before.
  const Ran estimate = oaklight("estimate --json " + demo_.tract);
  ASSERT_EQ(estimate.exit_code, 0) << estimate.errors;
  EXPECT_EQ(Json::parse(estimate.out).at("all").at("plots"), 35);
  EXPECT_NE(oaklight("estimate " + demo_.tract).out.find("the newest visit counts here"),
            std::string::npos);
  EXPECT_EQ(oaklight("check " + demo_.tract).exit_code, 0);
}

TEST_F(TwoFiles, TheTextNamesTheErrorAndItsLimits) {
  const Ran text = oaklight("compare " + demo_.tract + " " + later_);
  ASSERT_EQ(text.exit_code, 0) << text.errors;
  for (const char* words :
       {"SE is that of the plots' own changes (paired)", "chosen, not drawn by lot", "R1.80",
        "R1.87", "from memory", "All stands cruised both times, by acres"}) {
    EXPECT_NE(text.out.find(words), std::string::npos) << words;
  }
}

TEST_F(TwoFiles, KeysStandBesideTheFiguresOfTheText) {
  const Ran text = oaklight("compare " + demo_.tract + " " + later_);
  ASSERT_EQ(text.exit_code, 0) << text.errors;
  for (const char* key : {"basal_area", "trees", "mean_diameter", "stocking", "cords",
                          "paired_change", "growth_difference", "light", "years_to_look"}) {
    EXPECT_NE(text.out.find("[" + std::string(key) + "]"), std::string::npos) << key;
    EXPECT_EQ(oaklight("source " + std::string(key)).exit_code, 0) << key;
  }
}

TEST_F(TwoFiles, WhatCannotBeComparedIsSaid) {
  const Ran once = oaklight("compare " + demo_.tract);
  EXPECT_EQ(once.exit_code, 0) << once.errors;
  EXPECT_NE(once.out.find("No stand was cruised at both visits"), std::string::npos);
  EXPECT_NE(once.out.find("look again"), std::string::npos) << "crowns can be told all the same";
  const Ran unknown = oaklight("compare " + demo_.tract + " --first-cruise 1999");
  EXPECT_EQ(unknown.exit_code, 1);
  EXPECT_NE(unknown.errors.find("2026 points"), std::string::npos) << unknown.errors;
  EXPECT_EQ(oaklight("compare " + demo_.tract + " nowhere.gpkg").exit_code, 3);
  EXPECT_EQ(oaklight("compare " + demo_.tract + " --years -3").exit_code, 2);
}

}  // namespace
}  // namespace oaklight::test
