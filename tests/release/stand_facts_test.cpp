#include "core/release/stand_facts.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/readings.hpp"
#include "tests/support/test_cruise.hpp"
#include "tests/support/trees.hpp"

namespace oaklight {
namespace {

const ReleaseKnowledge& know() { return test::shipped_knowledge(); }

/// Two fixed plots of a tenth of an acre, one of them empty: each tree stands for 5 an acre.
struct TwoPlots {
  test::TestCruise cruise{FixedDesign{.area = 0.1}};
  StandId stand;
  PlotId plot;

  TwoPlots() {
    cruise.data.cruises.back().regen_area = 0.01;
    stand = cruise.stand("north", 10.0);
    plot = cruise.plot(stand);
    cruise.plot(stand, PlotStatus::empty);
  }
  Tree& tree(const std::string& text) {
    const TreeFacts facts = test::trees(text)[0].facts;
    Tree& tree = cruise.tree(plot, facts.species.fia, 10.0);
    tree.facts = facts;
    return tree;
  }
  StandFacts facts() {
    const auto facts = stand_facts(cruise.data, stand, know());
    EXPECT_TRUE(facts) << to_text(facts.error());
    return *facts;
  }
};

TEST(StandFacts, FiguresArePerAcreOverAllPlotsTheEmptyOneToo) {
  // By hand: 10 trees an acre for each on a tenth of an acre, halved by the empty plot: six alive.
  TwoPlots plots;
  plots.tree("WO 14 co");
  plots.tree("RO 12 dom");
  plots.tree("SH 12 co");
  plots.tree("SH 11 co");
  plots.tree("BC 8 int");
  plots.tree("RM 10 co");
  plots.tree("WO 14 dead");
  const StandFacts facts = plots.facts();
  EXPECT_NEAR(facts.before->live.trees, 30.0, 1e-9);
  EXPECT_NEAR(facts.acceptable_crop_trees->value, 20.0, 1e-9);  // two oaks, two hickories
  EXPECT_NEAR(facts.roost_hickories->value, 5.0, 1e-9);         // above 11 in
  EXPECT_NEAR(facts.fruit_trees->value, 5.0, 1e-9);
  double sum = 0.0;
  for (const auto& [species, ba] : facts.ba_by_species) sum += ba.value;
  EXPECT_NEAR(sum, facts.before->ba.value, 1e-9);
}

TEST(StandFacts, WithoutCrownClassesNobodyKnowsHowManyCropTreesThereAre) {
  TwoPlots plots;
  plots.tree("WO 14 co");
  plots.tree("RO 12");
  EXPECT_FALSE(plots.facts().acceptable_crop_trees.has_value());
  EXPECT_TRUE(plots.facts().before.has_value());
}

TEST(StandFacts, ATreeThatIsOutAnywayNeedsNoCrownClass) {
  // By hand: one tree on a tenth of an acre, halved by the empty plot.
  TwoPlots plots;
  plots.tree("WO 14 co");
  plots.tree("RM 12");
  EXPECT_NEAR(plots.facts().acceptable_crop_trees->value, 5.0, 1e-9);
}

TEST(StandFacts, YoungOaksAreCountedOverAllRegenerationPlots) {
  TwoPlots plots;
  plots.tree("WO 14 co");
  plots.cruise.regen(plots.plot, 802, RegenHeight::over_4_5_ft, 3);
  plots.cruise.regen(plots.plot, 802, RegenHeight::under_1_ft, 50);
  plots.cruise.regen(plots.plot, 316, RegenHeight::over_4_5_ft, 9);
  EXPECT_NEAR(plots.facts().advance_oak->value, 3.0 / 0.02, 1e-9);
}

TEST(StandFacts, SeedlingsNotCountedAreNotNone) {
  TwoPlots plots;
  plots.cruise.data.cruises.back().regen_area.reset();
  plots.tree("WO 14 co");
  EXPECT_FALSE(plots.facts().advance_oak.has_value());
}

TEST(StandFacts, AStandWithoutPlotsHasNoDensity) {
  TwoPlots plots;
  const StandId other = plots.cruise.stand("south", 4.0);
  plots.cruise.data.stands.back().goal = Goal::timber;
  const auto facts = stand_facts(plots.cruise.data, other, know());
  ASSERT_TRUE(facts) << to_text(facts.error());
  EXPECT_FALSE(facts->before.has_value());
  EXPECT_EQ(facts->goal, Goal::timber);
}

TEST(StandFacts, AnUnknownStandIsRefused) {
  TwoPlots plots;
  const auto facts = stand_facts(plots.cruise.data, StandId{}, know());
  ASSERT_FALSE(facts);
  EXPECT_EQ(facts.error().code, ErrorCode::unknown_reference);
}

TEST(InputFromCards, MakesAPlanFromATractFile) {
  TwoPlots plots;
  for (int i = 0; i < 20; ++i) plots.tree("WO 14 co");  // 100 an acre on average
  plots.cruise.data.stands.back().walked = Acres{1.0};
  const test::ShortCards on_cards = test::cards("crop O WO 14 co\nO maple N 16 touches RM 10 co");
  plots.cruise.data.walk_trees = on_cards.trees;
  for (WalkTree& tree : plots.cruise.data.walk_trees) tree.stand = plots.stand;
  plots.cruise.data.contacts = on_cards.contacts;
  const auto input = input_from_cards(plots.cruise.data, plots.stand, know());
  ASSERT_TRUE(input) << to_text(input.error());
  const ReleasePlan plan = recommend(*input);
  EXPECT_EQ(plan.advice.treatment, Treatment::release) << plan.advice.text;
  EXPECT_THAT(test::cut_tags(plan), testing::ElementsAre("maple"));
}

}  // namespace
}  // namespace oaklight
