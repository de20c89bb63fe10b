// Two visits compared: stands by name, plots by label, days, and what cannot be compared.
#include "core/session/compare.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/session/sheet_set.hpp"
#include "core/session/tract_session.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/temp_dir.hpp"
#include "tests/support/test_cruise.hpp"

namespace oaklight::test {
namespace {

class Compare : public testing::Test {
 protected:
  static const TractKnowledge& knowledge() {
    static const TempDir folder;
    static SystemClock clock;
    static const auto session =
        TractSession::create(folder / "empty.gpkg", {clock, system_random(), "test"});
    return session->knowledge();
  }

  /// Two stands of three points; each point of the second visit has lost a tree in Upland.
  static TestCruise visit(const std::string& day, int trees_in_upland) {
    TestCruise cruise(PointDesign{10.0, UnitSystem::us});
    if (trees_in_upland == 3) cruise.next_cruise(PointDesign{10.0, UnitSystem::us});  // other ids
    cruise.data.cruises.back().name = day.substr(0, 4);
    cruise.data.cruises.back().date = day;
    for (const char* name : {"Upland", "Cove"}) {
      const StandId stand = cruise.stand(name, name[0] == 'U' ? 30.0 : 10.0);
      for (int i = 1; i <= 3; ++i) {
        const PlotId plot = cruise.plot(stand);
        cruise.data.plots.back().label = std::to_string(i);
        const int trees = name[0] == 'U' ? trees_in_upland + i : 4;
        for (int t = 0; t < trees; ++t) cruise.tree(plot, 802, 12.0);
      }
    }
    return cruise;
  }
  static Comparison compared(const TestCruise& a, const TestCruise& b,
                             const CompareOptions& options = {}) {
    const auto c = compare_files(a.data, b.data, knowledge(), options);
    EXPECT_TRUE(c) << to_text(c.error());
    return *c;
  }
};

TEST_F(Compare, StandsArePairedByNameAndWeighedByAcres) {
  const Comparison c = compared(visit("2026-06-01", 4), visit("2031-06-01", 3));
  ASSERT_EQ(c.stands.size(), 2U);
  EXPECT_EQ(c.stands[0].stand, "Upland");
  EXPECT_EQ(c.stands[0].first_cruise, "2026");
  EXPECT_NEAR(*c.stands[0].years, 1826.0 / 365.25, 1e-12);
  EXPECT_NEAR(c.stands[0].change->ba.change.value, -10.0, 1e-12);
  // Derived: every point lost the same, so the paired error is 0 where a separate one is not.
  EXPECT_NEAR(c.stands[0].change->ba.se->value, 0.0, 1e-12);
  EXPECT_EQ(c.stands[1].change->ba.trust, Trust::not_found);
  EXPECT_NEAR(c.all->ba.change.value, -7.5, 1e-12);
  EXPECT_NEAR(total_of(c.all->ba, c.all->acres).change.value, -300.0, 1e-9);
}

TEST_F(Compare, AStandOfOneVisitIsNamedAndInNoFigure) {
  TestCruise second = visit("2031-06-01", 3);
  second.data.stands[1].name = "Flat";
  const Comparison c = compared(visit("2026-06-01", 4), second);
  EXPECT_EQ(c.stands.size(), 1U);
  EXPECT_EQ(c.only_first, std::vector<std::string>{"Cove"});
  EXPECT_EQ(c.only_second, std::vector<std::string>{"Flat"});
  EXPECT_NEAR(c.all->acres.value, 30.0, 1e-12);
}

TEST_F(Compare, AStandOfAnotherDesignKeepsTheTotalFromBeingTold) {
  TestCruise second = visit("2031-06-01", 3);
  second.data.cruises.back().min_dbh = dbh_in(5.0);
  const Comparison c = compared(visit("2026-06-01", 4), second);
  EXPECT_EQ(c.stands[0].change.error().code, ErrorCode::mixed_designs);
  EXPECT_EQ(c.all.error().code, ErrorCode::mixed_designs);
}

TEST_F(Compare, YearsCanBeTold) {
  CompareOptions options;
  options.years = 4.5;
  const Comparison c = compared(visit("", 4), visit("2031-06-01", 3), options);
  EXPECT_DOUBLE_EQ(*c.stands[0].years, 4.5);
  EXPECT_FALSE(compared(visit("", 4), visit("2031-06-01", 3)).stands[0].years.has_value());
  EXPECT_FALSE(compared(visit("2031-06-01", 4), visit("2026-06-01", 3)).stands[0].years.has_value())
      << "days that do not rise are no years";
}

TEST_F(Compare, NothingInCommonIsNoComparison) {
  TestCruise second = visit("2031-06-01", 3);
  for (Stand& stand : second.data.stands) stand.name += " Tract";
  const TestCruise first = visit("2026-06-01", 4);
  EXPECT_EQ(compare_files(first.data, second.data, knowledge(), {}).error().code,
            ErrorCode::no_data);
  EXPECT_EQ(compare_visits(first.data, knowledge(), {}).error().code, ErrorCode::no_data);
  CompareOptions options;
  options.second_cruise = "1999";
  EXPECT_EQ(compare_visits(first.data, knowledge(), options).error().code,
            ErrorCode::unknown_reference);
}

TEST_F(Compare, SheetsForTheNextVisitKnowTheDesign) {
  TestCruise cruise = visit("2026-06-01", 4);
  cruise.data.cruises.back().min_dbh = dbh_in(4.6);
  const SheetSet set = sheet_set(cruise.data, knowledge(), false).value();
  EXPECT_EQ(set.given.at("baf"), "10");
  EXPECT_EQ(set.given.at("min_dbh"), "4.6");
  EXPECT_EQ(set.given.at("cruise"), "2026");
  EXPECT_EQ(set.species.front(), "white oak");
  EXPECT_FALSE(set.seedlings);
  EXPECT_EQ(sheet_set(cruise.data, knowledge(), true).error().code, ErrorCode::no_data);
  cruise.data.plots[1].status = PlotStatus::planned;
  EXPECT_EQ(sheet_set(cruise.data, knowledge(), true).value().plots.size(), 1U);
  TestCruise fixed(FixedDesign{0.1, 0.01, dbh_in(4.5), UnitSystem::us});
  const SheetSet other = sheet_set(fixed.data, knowledge(), false).value();
  EXPECT_EQ(other.given.at("plot_area"), "0.1");
  EXPECT_EQ(other.given.at("small_plot_area"), "0.01");
  EXPECT_EQ(other.given.at("small_below"), "4.5");
  EXPECT_FALSE(other.given.contains("baf"));
  EXPECT_FALSE(other.species.empty()) << "before anything was tallied, a tally set names species";
}

TEST_F(Compare, CruisesThatAreNamedAreThoseThatAreCompared) {
  const TestCruise a = visit("2026-05-04", 3), b = visit("2031-05-04", 2);
  CompareOptions options;
  options.first_cruise = "1999";
  const auto first = compare_files(a.data, b.data, knowledge(), options);
  ASSERT_FALSE(first);
  EXPECT_EQ(first.error().code, ErrorCode::unknown_reference);
  EXPECT_TRUE(first.error().fix.find("2026") != std::string::npos) << first.error().fix;
  options = {};
  options.second_cruise = "1999";
  EXPECT_EQ(compare_files(a.data, b.data, knowledge(), options).error().where, "cruise");
  EXPECT_EQ(compare_visits(b.data, knowledge(), options).error().where, "cruise");
  TractData bare = a.data;
  bare.cruises.clear();
  options.second_cruise = "2026";
  EXPECT_EQ(compare_visits(bare, knowledge(), options).error().fix, "The tract has no cruise.");
  options = {};
  options.first_cruise = "2026";
  options.second_cruise = "2031";
  const auto c = compare_files(a.data, b.data, knowledge(), options);
  ASSERT_TRUE(c) << to_text(c.error());
  EXPECT_EQ(c->stands[0].first_cruise, "2026");
  EXPECT_EQ(c->stands[0].second_day, "2031-05-04");
}

TEST_F(Compare, AVisitOnWhichNoPlotWasDoneIsToldForItsStand) {
  const TestCruise a = visit("2026-05-04", 3);
  TestCruise b = visit("2031-05-04", 2);
  for (Plot& plot : b.data.plots) {
    if (plot.stand == b.data.stands[1].id) plot.status = PlotStatus::skipped;
  }
  std::erase_if(b.data.trees, [&](const Tree& tree) {
    return std::ranges::find(b.data.plots, tree.plot, &Plot::id)->status == PlotStatus::skipped;
  });
  for (const bool forth : {true, false}) {
    const auto c = forth ? compared(a, b) : compared(b, a);
    ASSERT_EQ(c.stands.size(), 2U);
    EXPECT_TRUE(c.stands[0].change);
    EXPECT_FALSE(c.stands[1].change);
    EXPECT_FALSE(c.all) << "no total without one of its stands";
  }
}

}  // namespace
}  // namespace oaklight::test
