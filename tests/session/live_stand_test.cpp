// Figures of a stand that are kept up to date beside those computed in full, after any work.
#include "core/session/live_stand.hpp"

#include <gtest/gtest.h>

#include <cstdlib>

#include "tests/session/stand_woods.hpp"

namespace oaklight::test {
namespace {

struct Case {
  const char* name;
  Design design;
  double min_dbh_in;  ///< 0: none
  bool finite;
};

class AnyWork : public testing::TestWithParam<Case> {};

TEST_P(AnyWork, KeepsTheFiguresOfTheStandAsComputedInFull) {
  const Case& c = GetParam();
  const auto min_dbh = c.min_dbh_in > 0.0 ? std::optional(dbh_in(c.min_dbh_in)) : std::nullopt;
  EstimateOptions options;
  options.finite_population = c.finite;
  options.confidence = Confidence::from_share(c.finite ? 0.9 : 0.95).value();
  int told = 0, refused = 0, needs = 0, counted = 0, left_to_full = 0;
  const char* asked = std::getenv("OAKLIGHT_HISTORIES");
  const unsigned histories = asked != nullptr ? static_cast<unsigned>(std::stoul(asked)) : 6;
  for (unsigned seed = 1; seed <= histories; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    Woods woods(c.design, min_dbh, seed);
    for (int step = 0; step < 400; ++step) {
      SCOPED_TRACE("step " + std::to_string(step));
      woods.act();
      woods.compare(options);
      if (HasFailure()) return;
    }
    told += woods.told;
    refused += woods.refused;
    needs += woods.needs;
    counted += woods.counted;
    left_to_full += woods.left_to_full;
  }
  EXPECT_GT(told, 1500);
  EXPECT_GT(needs, 300);
  EXPECT_GT(refused, 100);
  EXPECT_GT(left_to_full, 20);
  if (std::holds_alternative<PointDesign>(c.design)) {
    EXPECT_GT(counted, 50);
  }
}

INSTANTIATE_TEST_SUITE_P(
    Designs, AnyWork,
    testing::Values(Case{"points_us", PointDesign{10.0, UnitSystem::us}, 4.5, false},
                    Case{"points_metric", PointDesign{4.0, UnitSystem::metric}, 0.0, false},
                    Case{"fixed_us", FixedDesign{0.1, {}, {}, UnitSystem::us}, 0.0, true},
                    Case{"nested_us", FixedDesign{0.1, 0.01, dbh_in(4.5), UnitSystem::us}, 1.0,
                         true},
                    Case{"nested_metric",
                         FixedDesign{0.05, 0.005, dbh_cm(11.0), UnitSystem::metric}, 0.0, false}),
    [](const auto& one) { return std::string(one.param.name); });

TEST(LiveStand, StartsAnewWhereItMissedAStep) {
  TestCruise cruise;
  const StandId stand = cruise.stand("A", 10.0);
  const PlotId plot = cruise.plot(stand);
  const Tree tree = cruise.tree(plot, 802, 14.0);
  LiveTract live(cruise.data);
  LiveStand kept(live, shipped_tract_knowledge().species(), stand);
  EXPECT_EQ(kept.now({})->ba.mean.value, 10.0);
  Tree more = tree;
  for (std::uint8_t i = 1; i <= 3; ++i) {
    more.id.value.bytes[0] = i;
    live.follow(std::vector<Change>{more});
  }
  kept.follow();
  EXPECT_EQ(kept.now({})->ba.mean.value, 40.0);
  EXPECT_EQ(kept.records(), 4U);
}

TEST(LiveStand, SaysNothingOfAStandThatHasNoPlotYet) {
  TestCruise cruise;
  const StandId stand = cruise.stand("A", 10.0);
  cruise.plot(stand, PlotStatus::planned);
  const LiveTract live(cruise.data);
  EXPECT_FALSE(LiveStand(live, shipped_tract_knowledge().species(), stand).now({}));
  EXPECT_FALSE(LiveStand(live, shipped_tract_knowledge().species(), StandId{}).now({}));
}

// The same through a real file, its undo and its redo.
TEST_F(WorkTest, LiveStandFollowsWhatTheFileUndoes) {
  const StandId stand = stand_with_plots(3);
  LiveStand kept(live_, knowledge_.species(), stand);
  const auto same = [&] {
    kept.follow();
    const auto full = running_figures(live_, knowledge_, stand, {});
    const auto now = kept.now({});
    ASSERT_EQ(now.has_value(), full.has_value());
    if (full) expect_same(now->ba, full->live.ba, "basal area");
  };
  for (const Plot* plot : live_.plots_of(stand)) {
    for (const double inches : {6.0, 14.2, 21.9}) {
      done(tally_tree(live_, knowledge_, ids_, plot->id,
                      {{SpeciesCode{802}, dbh_in(inches + static_cast<double>(plot->label[0]))}}));
      same();
    }
  }
  for (int i = 0; i < 8; ++i) {
    undo();
    same();
  }
  for (int i = 0; i < 8; ++i) {
    live_.follow(*store_.redo());
    same();
  }
  EXPECT_EQ(kept.records(), 9U);
}

}  // namespace
}  // namespace oaklight::test
