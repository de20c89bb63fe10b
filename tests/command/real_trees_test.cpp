// The whole job on a real stem map: species and places of Lansing Woods, from an R package that is
// installed and not copied here; DBH drawn by a seed (demo_plots/lansing/README.md).
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "tests/command/program.hpp"

namespace oaklight::test {
namespace {

using Json = nlohmann::json;

/// Census of the map: 2251 stems on 924 x 924 ft (Gerrard 1969, as spatstat.data holds it).
constexpr double kTreesAnAcre = 2251.0 / (924.0 * 924.0 / 43560.0);

class RealTrees : public testing::Test {
 protected:
  void SetUp() override {
    const std::string scripts = (demo_plots() / "lansing").string();
    const std::string map = (folder_ / "lansing.csv").string();
    const Ran extracted = run_program("Rscript " + scripts + "/extract.R " + map);
    ASSERT_EQ(extracted.exit_code, 0) << extracted.errors;
    cruise_ = (folder_ / "cruise").string();
    const Ran drawn =
        run_program("/usr/bin/python3 " + scripts + "/make_lansing.py " + map + " " + cruise_);
    ASSERT_EQ(drawn.exit_code, 0) << drawn.errors;
    tract_ = (folder_ / "lansing.gpkg").string();
    const Ran imported = oaklight("import " + tract_ + " " + cruise_);
    ASSERT_EQ(imported.exit_code, 0) << imported.errors;
  }

  TempDir folder_;
  std::string cruise_;
  std::string tract_;
};

TEST_F(RealTrees, EstimateLiesWithinThreeErrorsOfTheCensus) {
  const Ran run = oaklight("estimate --json " + tract_);
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  const Json trees = Json::parse(run.out).at("all").at("live").at("trees_ac");
  EXPECT_NEAR(trees.at("mean").get<double>(), kTreesAnAcre, 3.0 * trees.at("se").get<double>());
}

TEST_F(RealTrees, GoFromImportToPacket) {
  const Ran decided = oaklight("recommend --json " + tract_);
  ASSERT_EQ(decided.exit_code, 0) << decided.errors;
  int taken = 0;
  const Json plans = Json::parse(decided.out);
  for (const Json& stand : plans.at("stands")) {
    for (const Json& tree : stand.at("plan").at("trees"))
      taken += tree.at("verdict") == "take" ? 1 : 0;
  }
  EXPECT_GT(taken, 0);
  const std::string out = (folder_ / "packet").string();
  const Ran packet = oaklight("packet --json --for logger --out " + out + " " + tract_);
  ASSERT_EQ(packet.exit_code, 0) << packet.errors;
  const Json made = Json::parse(packet.out);
  EXPECT_GT(made.at("cut").get<int>() + made.at("trained").get<int>(), 0);
  EXPECT_TRUE(bytes_of(folder_.path() / "packet" / "logger.pdf").starts_with("%PDF"));
  EXPECT_EQ(oaklight("check " + tract_).exit_code, 0);
}

TEST_F(RealTrees, MappedPlotsGiveAPrescriptionAndNoMarks) {
  const Ran run = oaklight("recommend --plots --json " + tract_);
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  const Json json = Json::parse(run.out);
  const Json& plots = json.at("plots");
  EXPECT_GE(plots.size(), 10U);
  int released = 0;
  for (const Json& plot : plots) released += plot.at("released").get<int>();
  EXPECT_GT(released, 0);
  const Json& told = json.at("stands").at(0).at("prescription");
  EXPECT_EQ(told.at("plots"), 20);  // as many as make_lansing.py lays out
  // Derived: 1/10 acre plots, so the mean is ten times what is released on a plot.
  EXPECT_NEAR(told.at("crop_trees_ac").at("mean").get<double>(), 10.0 * released / 20.0, 1e-9);
  double sum = 0.0;
  for (const Json& line : told.at("removals")) sum += line.at("trees_ac").at("mean").get<double>();
  EXPECT_NEAR(sum, told.at("removals_ac").at("mean").get<double>(), 1e-9);
  for (const char* figure : {"crop_trees_ac", "removals_ac", "stocking_before_pct"}) {
    const Json& e = told.at(figure);
    EXPECT_LT(e.at("lo"), e.at("mean")) << figure;
    EXPECT_GT(e.at("hi"), e.at("mean")) << figure;
  }
  EXPECT_LT(told.at("stocking_after_pct").at("mean"), told.at("stocking_before_pct").at("mean"));
  EXPECT_EQ(
      oaklight("packet " + tract_ + " --for logger --out " + (folder_ / "none").string()).exit_code,
      4)
      << "no mark was written";
}

}  // namespace
}  // namespace oaklight::test
