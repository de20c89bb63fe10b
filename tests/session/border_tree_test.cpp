// IN, OUT or ON THE LINE, and by how much.
#include "core/session/border_tree.hpp"

#include <gtest/gtest.h>

#include "tests/support/readings.hpp"
#include "tests/support/test_cruise.hpp"
#include "tests/support/test_ids.hpp"

namespace oaklight::test {
namespace {

const Design kBaf10 = PointDesign{10.0, UnitSystem::us};

BorderCheck check(const Design& design, Dbh dbh, TapedLength taped, TapedTo to = TapedTo::centre,
                  double slope = 0.0) {
  return border_check(design, {dbh, taped, to, Slope{Percent{slope}}}).value();
}

// Published: BAF 10, 12 in: 33.0 ft to the centre (tests/published/mensuration.tsv, M021).
TEST(BorderTree, IsJudgedByThePublishedLimit) {
  const BorderCheck in = check(kBaf10, dbh_in(12.0), tape_ft(31.8));
  EXPECT_EQ(in.answer, BorderAnswer::in);
  EXPECT_TRUE(in.counts);
  EXPECT_NEAR(in.limit.value, 33.0, 0.05);
  EXPECT_EQ(in.words, "IN by 1.20 ft");
  const BorderCheck out = check(kBaf10, dbh_in(12.0), tape_ft(34.0));
  EXPECT_EQ(out.answer, BorderAnswer::out);
  EXPECT_FALSE(out.counts);
  EXPECT_EQ(out.words, "OUT by 1.00 ft");
}

// Published: BAF 20, 12 in: 23.3 ft (M022). Derived: BAF 10, 16 in, to the face: 43.3333 ft (M023).
TEST(BorderTree, FollowsTheFactorAndWhereTheTapeEnded) {
  EXPECT_NEAR(check(PointDesign{20.0, UnitSystem::us}, dbh_in(12.0), tape_ft(20.0)).limit.value,
              23.3, 0.05);
  const BorderCheck face = check(kBaf10, dbh_in(16.0), tape_ft(43.0), TapedTo::face);
  EXPECT_NEAR(face.limit.value, 43.3333, 0.00005);
  EXPECT_NE(face.note.find("face of the stem"), std::string::npos);
  EXPECT_NE(check(kBaf10, dbh_in(16.0), tape_ft(43.0)).note.find("centre of the stem"),
            std::string::npos);
}

// Derived: sqrt(75.625 / 10) ft an inch; half a tenth of an inch moves the limit by 0.1375 ft, and
// half a tenth of a foot of the tape adds 0.05 ft.
TEST(BorderTree, NearerThanTheReadingsCanTellIsOnTheLine) {
  const BorderCheck near = check(kBaf10, dbh_in(12.0), tape_ft(33.18));
  EXPECT_EQ(near.answer, BorderAnswer::on_the_line);
  EXPECT_EQ(near.words, "ON THE LINE");
  EXPECT_FALSE(near.counts) << "by the readings as they are it is out";
  EXPECT_NEAR(near.unsure.value, 0.1375 + 0.05, 1e-3);
  EXPECT_NE(near.note.find("Measure"), std::string::npos);
  EXPECT_EQ(check(kBaf10, dbh_in(12.0), tape_ft(33.2)).answer, BorderAnswer::out);
  EXPECT_EQ(check(kBaf10, dbh_in(12.0), tape_ft(32.79)).answer, BorderAnswer::in);
}

TEST(BorderTree, ExactlyAtTheLimitCounts) {
  // Derived: a 10 in tree at BAF 10 has a limit of 27.5 ft exactly.
  const BorderCheck at = check(kBaf10, dbh_in(10.0), tape_ft(27.5));
  EXPECT_EQ(at.answer, BorderAnswer::on_the_line);
  EXPECT_TRUE(at.counts);
}

// Derived: along a slope of 75 % a level foot is 1.25 ft of tape.
TEST(BorderTree, IsCorrectedForTheSlopeOfTheTape) {
  const BorderCheck level = check(kBaf10, dbh_in(10.0), tape_ft(30.0));
  EXPECT_EQ(level.answer, BorderAnswer::out);
  const BorderCheck steep = check(kBaf10, dbh_in(10.0), tape_ft(30.0), TapedTo::centre, 75.0);
  EXPECT_EQ(steep.answer, BorderAnswer::in);
  EXPECT_NEAR(steep.level.value, 24.0, 1e-9);
  EXPECT_NEAR(steep.by.value, 3.5, 1e-3);
  EXPECT_NEAR(steep.limit_taped.value, 27.5 * 1.25, 1e-3);
  const BorderCheck downhill = check(kBaf10, dbh_in(10.0), tape_ft(30.0), TapedTo::centre, -75.0);
  EXPECT_EQ(downhill.words, steep.words);
}

// Derived: with a factor F in m2/ha and d in cm the limit is d / (2 sqrt F) metres.
TEST(BorderTree, IsToldInTheUnitOfTheTape) {
  const BorderCheck metric = check(PointDesign{4.0, UnitSystem::metric}, dbh_cm(20.0), tape_m(4.5));
  EXPECT_EQ(metric.words, "IN by 0.50 m");
}

TEST(BorderTree, OfANestedPlotIsJudgedByThePlotOfItsSize) {
  const Design nested{FixedDesign{0.1, 0.01, dbh_in(5.0), UnitSystem::us}};
  const BorderCheck thin = check(nested, dbh_in(4.9), tape_ft(20.0));
  EXPECT_TRUE(thin.small_plot);
  EXPECT_EQ(thin.answer, BorderAnswer::out) << "a hundredth acre has a radius of 11.78 ft";
  const BorderCheck thick = check(nested, dbh_in(5.0), tape_ft(20.0));
  EXPECT_FALSE(thick.small_plot);
  EXPECT_EQ(thick.answer, BorderAnswer::in);
}

TEST(BorderTree, TakesTheDesignOfItsPlot) {
  TestCruise cruise;
  const PlotId plot = cruise.plot(cruise.stand("A", 10.0));
  const LiveTract live(cruise.data);
  const BorderlineTree tree{dbh_in(12.0), tape_ft(31.8), TapedTo::centre, {}};
  EXPECT_EQ(border_check(live, plot, tree)->words, "IN by 1.20 ft");
  EXPECT_EQ(border_check(live, nth_id<PlotId>(99), tree).error().code,
            ErrorCode::unknown_reference);
}

TEST(BorderTree, RefusesASlopeThatIsNone) {
  const BorderlineTree tree{dbh_in(12.0), tape_ft(30.0), TapedTo::centre, Slope{Percent{201.0}}};
  EXPECT_EQ(border_check(kBaf10, tree).error().code, ErrorCode::out_of_range);
  EXPECT_EQ(border_check(PointDesign{0.0, UnitSystem::us}, tree).error().code,
            ErrorCode::out_of_range);
}

}  // namespace
}  // namespace oaklight::test
