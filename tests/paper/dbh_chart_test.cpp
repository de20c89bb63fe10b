#include "core/paper/dbh_chart.hpp"

#include "tests/paper/paper_fixture.hpp"
#include "tests/paper/picture_check.hpp"
#include "tests/support/test_cruise.hpp"

namespace oaklight {
namespace {

// All expected values here are derived: they follow from the promises in the header.

using DbhPicture = test::PaperTest;

DbhChart invented_chart(bool after) {
  DbhChart chart;
  chart.se = 14.0;
  const double oak[] = {4, 9, 14, 16, 13, 11, 7, 4, 2};
  const double mast[] = {6, 8, 7, 5, 3, 2, 1, 0, 0};
  const double rest[] = {31, 24, 15, 9, 6, 3, 1, 1, 0};
  for (int i = 0; i < 9; ++i) {
    ClassAmount c{DbhClass{4 + 2 * i}, oak[i], mast[i], rest[i], {}};
    if (i < 7) c.se = 1.5 + 0.08 * c.all();
    chart.now.push_back(c);
    c.se.reset();
    c.mast *= 0.9;
    c.rest *= 0.4;
    if (after) chart.after.push_back(c);
  }
  return chart;
}

TEST_F(DbhPicture, StaysInItsFrameAndIsReadAtEachSize) {
  for (const auto& [name, sized] : test::sized_frames()) {
    for (const UnitSystem units : {UnitSystem::us, UnitSystem::metric}) {
      for (const bool after : {false, true}) {
        PictureFrame frame = sized;
        frame.units = units;
        const Drawing drawing = draw_dbh_chart(invented_chart(after), frame);
        EXPECT_EQ(test::faults_of(drawing, frame), std::vector<std::string>{}) << name;
        test::save_pictures(std::string("dbh_") + name + (after ? "_after" : "_now") +
                                (units == UnitSystem::us ? "" : "_metric"),
                            drawing, frame);
      }
    }
  }
}

TEST_F(DbhPicture, BarsAreAsHighAsTheirAmounts) {
  DbhChart chart;
  chart.now = {{DbhClass{6}, 30.0, 0.0, 0.0, {}}, {DbhClass{8}, 10.0, 0.0, 0.0, {}}};
  chart.after = {{DbhClass{6}, 15.0, 0.0, 0.0, {}}};
  const auto bars = test::filled(draw_dbh_chart(chart, test::sized_frames()[1].frame), Ink::leave);
  ASSERT_EQ(bars.size(), 4u) << "one in the key, two now, one after";
  EXPECT_NEAR(bars[1].height() / bars[2].height(), 3.0, 1e-6);
  EXPECT_NEAR(bars[1].height() / bars[3].height(), 2.0, 1e-6);
  EXPECT_FALSE(bars[1].intersects(bars[3])) << "beside each other";
}

TEST_F(DbhPicture, TakesItsFiguresFromTheEstimate) {
  test::TestCruise cruise(FixedDesign{.area = 0.1, .small_area = {}, .small_below = {}});
  const StandId stand = cruise.stand("Ridge", 10.0);
  const PlotId first = cruise.plot(stand);
  const PlotId second = cruise.plot(stand);
  cruise.tree(first, 802, 10.0);  // white oak
  cruise.tree(first, 400, 10.4);  // hickory, same class of 2 in
  cruise.tree(second, 316, 6.0);  // red maple
  const auto estimate = cruise_estimate(cruise.data, test::test_species(), {});
  ASSERT_TRUE(estimate && estimate->all);
  const DbhChart chart = dbh_chart_of(*estimate->all, test::test_species(), ClassWidth::two_inches,
                                      ChartAmount::trees);
  ASSERT_EQ(chart.now.size(), 2u);
  // A tree on a tenth of an acre stands for 10 an acre, on two plots for 5.
  EXPECT_NEAR(chart.now[0].rest, 5.0, 1e-9);
  EXPECT_NEAR(chart.now[1].oak, 5.0, 1e-9);
  EXPECT_NEAR(chart.now[1].all(), 10.0, 1e-9);
  // Plot totals 20 and 0: sd 14.14, divided by the root of 2 plots.
  ASSERT_TRUE(chart.now[1].se);
  EXPECT_NEAR(*chart.now[1].se, 10.0, 1e-9);
  const std::string words = test::words_of(draw_dbh_chart(chart, test::sized_frames()[0].frame));
  EXPECT_NE(words.find("15 \u00B1 5"), std::string::npos) << words;
}

TEST_F(DbhPicture, ConvertsToHectares) {
  DbhChart chart;
  chart.now = {{DbhClass{10}, 100.0, 0.0, 0.0, {}}};
  PictureFrame frame = test::sized_frames()[1].frame;
  frame.units = UnitSystem::metric;
  // 100 trees an acre are 247.1 a hectare: 1 ha is 2.4711 acres.
  EXPECT_NE(test::words_of(draw_dbh_chart(chart, frame)).find("247"), std::string::npos);
  chart.amount = ChartAmount::basal_area;
  // 100 ft2/ac are 22.96 m2/ha.
  EXPECT_NE(test::words_of(draw_dbh_chart(chart, frame)).find("23.0"), std::string::npos);
}

TEST_F(DbhPicture, SaysWhenNothingWasTallied) {
  for (const auto& [name, frame] : test::sized_frames()) {
    const Drawing drawing = draw_dbh_chart({}, frame);
    EXPECT_NE(test::words_of(drawing).find("No live trees tallied yet"), std::string::npos);
    EXPECT_EQ(test::faults_of(drawing, frame), std::vector<std::string>{});
  }
}

}  // namespace
}  // namespace oaklight
