// What a person does at a plot: each gesture is one action, on disk and in memory alike.
#include "core/session/plot_work.hpp"

#include "tests/session/work_fixture.hpp"
#include "tests/support/readings.hpp"

namespace oaklight::test {
namespace {

constexpr SpeciesCode kWhiteOak{802};
constexpr SpeciesCode kRedMaple{316};

class Tally : public WorkTest {
 protected:
  Tally() {
    stand_ = stand_with_plots(3);
    plot_ = live_.plots_of(stand_).front()->id;
  }
  static TreeDraft draft(SpeciesCode species, double inches) {
    return TreeDraft{TreeFacts{species, dbh_in(inches)}};
  }
  Action tally(const TreeDraft& tree) {
    return done(tally_tree(live_, knowledge_, ids_, plot_, tree));
  }
  Error refuses(const TreeDraft& tree) {
    return refused(tally_tree(live_, knowledge_, ids_, plot_, tree));
  }
  [[nodiscard]] PlotStatus status() const { return live_.find(plot_)->status; }
  [[nodiscard]] const Tree& last() const { return *live_.trees_of(plot_).back(); }

  StandId stand_;
  PlotId plot_;
};

TEST_F(Tally, OfTheFirstTreeMakesThePlotMeasuredInTheSameAction) {
  const Action action = tally(draft(kWhiteOak, 14.0));
  EXPECT_EQ(action.label, "tally white oak 14.0 in");
  EXPECT_EQ(status(), PlotStatus::measured);
  EXPECT_EQ(live_.tree_records_of(plot_), 1U);
  undo();
  EXPECT_EQ(status(), PlotStatus::planned);
  EXPECT_EQ(live_.tree_records_of(plot_), 0U);
  EXPECT_EQ(difference_from_file(), "");
}

TEST_F(Tally, OnAnEmptyPlotMakesItMeasured) {
  done(call_empty(live_, plot_));
  EXPECT_EQ(status(), PlotStatus::empty);
  tally(draft(kWhiteOak, 14.0));
  EXPECT_EQ(status(), PlotStatus::measured);
}

TEST_F(Tally, TouchesThePlotOnlyOnce) {
  EXPECT_EQ(tally(draft(kWhiteOak, 14.0)).changes.size(), 2U);
  EXPECT_EQ(tally(draft(kRedMaple, 6.0)).changes.size(), 1U);
}

TEST_F(Tally, OnASkippedPlotIsRefusedUntilItIsPlannedAgain) {
  done(skip_plot(live_, knowledge_, plot_, "bees"));
  const Error error = refuses(draft(kWhiteOak, 14.0));
  EXPECT_EQ(error.code, ErrorCode::contradiction);
  EXPECT_NE(error.what.find("bees"), std::string::npos);
  done(plan_again(live_, plot_));
  EXPECT_EQ(live_.find(plot_)->skip_reason, "");
  tally(draft(kWhiteOak, 14.0));
}

TEST_F(Tally, IsCorrectedTreeByTree) {
  tally(draft(kWhiteOak, 14.0));
  TreeDraft better = draft_of(last());
  better.facts.crown_class = CrownClass::codominant;
  better.facts.dbh = dbh_in(15.2);
  const Action action = done(correct_tree(live_, knowledge_, last().id, better));
  EXPECT_EQ(action.label, "correct white oak 14.0 in to white oak 15.2 in");
  EXPECT_EQ(last().facts.crown_class, CrownClass::codominant);
  undo();
  EXPECT_EQ(last().facts.dbh, dbh_in(14.0));
  EXPECT_EQ(difference_from_file(), "");
}

TEST_F(Tally, WithoutItsLastTreeIsPlannedAgainBecauseNobodySaidThatItIsEmpty) {
  tally(draft(kWhiteOak, 14.0));
  tally(draft(kRedMaple, 6.0));
  done(remove_tree(live_, knowledge_, last().id));
  EXPECT_EQ(status(), PlotStatus::measured);
  const Action action = done(remove_tree(live_, knowledge_, last().id));
  EXPECT_EQ(action.label, "remove white oak 14.0 in; plot 1 is planned again");
  EXPECT_EQ(status(), PlotStatus::planned);
  undo();
  EXPECT_EQ(status(), PlotStatus::measured);
  EXPECT_EQ(live_.tree_records_of(plot_), 1U);
}

TEST_F(Tally, WithoutItsLastTreeIsEmptyWhereSeedlingsWereCounted) {
  tally(draft(kWhiteOak, 14.0));
  done(count_regen(live_, knowledge_, ids_, {plot_, kWhiteOak, RegenHeight::under_1_ft}, 1));
  const Action action = done(remove_tree(live_, knowledge_, last().id));
  EXPECT_EQ(action.label, "remove white oak 14.0 in; plot 1 is empty");
  EXPECT_EQ(status(), PlotStatus::empty);
}

TEST_F(Tally, RefusesWhatTheFormDoesNotAllowAndNamesTheField) {
  TreeDraft tree = draft(kWhiteOak, 14.0);
  tree.facts.live_crown = Percent{101.0};
  EXPECT_EQ(refuses(tree).code, ErrorCode::out_of_range);
  EXPECT_EQ(refuses(tree).where, "plot/1/tree/live_crown_pct");
  tree = draft(kWhiteOak, 14.0);
  tree.facts.height = tape_ft(251.0);  // the form allows 4.5 to 250 ft
  EXPECT_EQ(refuses(tree).where, "plot/1/tree/height");
  tree = draft(kWhiteOak, 14.0);
  tree.edge_count = 3;
  EXPECT_EQ(refuses(tree).where, "plot/1/tree/edge_count");
  tree = draft(kWhiteOak, 14.0);
  tree.stems = 0;
  EXPECT_EQ(refuses(tree).where, "plot/1/tree/stems");
  EXPECT_EQ(refuses(draft(SpeciesCode{1}, 14.0)).code, ErrorCode::unknown_species);
  EXPECT_EQ(live_.tree_records_of(plot_), 0U);
}

TEST_F(Tally, RefusesWhatCannotBeTrueTogether) {
  TreeDraft tree = draft(kWhiteOak, 14.0);
  tree.facts.status = TreeStatus::dead;
  tree.facts.live_crown = Percent{40.0};
  EXPECT_EQ(refuses(tree).code, ErrorCode::contradiction);
  tree = draft(kWhiteOak, 14.0);
  tree.facts.height = tape_ft(39.0);
  tree.facts.half_logs = 5;  // 40 ft
  EXPECT_EQ(refuses(tree).where, "plot/1/tree/logs");
  tree = draft(kWhiteOak, 14.0);
  tree.distance = tape_ft(10.0);
  EXPECT_EQ(refuses(tree).where, "plot/1/tree/azimuth_deg");
  tree = draft(kWhiteOak, 14.0);
  tree.tag = "A";
  tree.stems = 2;
  EXPECT_EQ(refuses(tree).where, "plot/1/tree/tag");
}

TEST_F(Tally, RefusesATagInUse) {
  TreeDraft tree = draft(kWhiteOak, 14.0);
  tree.tag = "7-1";
  tally(tree);
  EXPECT_EQ(refuses(tree).code, ErrorCode::duplicate);
  EXPECT_TRUE(correct_tree(live_, knowledge_, last().id, tree)) << "its own tag is no other's";
}

TEST_F(Tally, RefusesATreeUnderTheSmallestOfItsCruise) {
  Cruise cruise = live_.data().cruises.front();
  cruise.min_dbh = dbh_in(4.5);
  done(Action{"smallest tree", {cruise}});
  EXPECT_EQ(refuses(draft(kWhiteOak, 4.4)).where, "plot/1/tree/dbh");
  tally(draft(kWhiteOak, 4.5));
}

TEST_F(Tally, RefusesATreeBeyondItsFixedPlot) {
  Cruise cruise = live_.data().cruises.front();
  cruise.design = FixedDesign{.area = 0.1};
  done(Action{"design", {cruise}});
  TreeDraft tree = draft(kWhiteOak, 14.0);
  tree.azimuth = Degrees{10.0};
  tree.distance = tape_ft(37.3);  // derived: a tenth acre has a radius of 37.24 ft
  EXPECT_EQ(refuses(tree).where, "plot/1/tree/distance");
  tree.distance = tape_ft(37.2);
  tally(tree);
}

TEST_F(Tally, OfWhatIsGoneSaysSo) {
  tally(draft(kWhiteOak, 14.0));
  const TreeId gone = last().id;
  done(remove_tree(live_, knowledge_, gone));
  EXPECT_EQ(refused(remove_tree(live_, knowledge_, gone)).code, ErrorCode::unknown_reference);
  EXPECT_EQ(refused(call_empty(live_, PlotId{})).code, ErrorCode::unknown_reference);
}

TEST(DbhDigits, FillTenthsWithoutAPoint) {
  EXPECT_EQ(dbh_from_digits("123", UnitSystem::us).value(), dbh_in(12.3));
  EXPECT_EQ(dbh_from_digits("312", UnitSystem::metric).value(), dbh_cm(31.2));
  EXPECT_EQ(dbh_from_digits("05", UnitSystem::us).value(), dbh_in(0.5));
  EXPECT_EQ(dbh_from_digits("", UnitSystem::us).error().code, ErrorCode::missing_value);
  EXPECT_EQ(dbh_from_digits("2001", UnitSystem::us).error().code, ErrorCode::out_of_range);
  EXPECT_EQ(dbh_from_digits("1234567", UnitSystem::us).error().code, ErrorCode::out_of_range);
  EXPECT_EQ(dbh_from_digits("0", UnitSystem::us).error().code, ErrorCode::out_of_range);
  EXPECT_EQ(dbh_from_digits("1.2", UnitSystem::us).error().code, ErrorCode::not_a_number);
}

TEST(Unusual, AsksAboutASizeThatIsSeldomMetAndNeverRefuses) {
  const TractKnowledge& knowledge = shipped_tract_knowledge();
  EXPECT_EQ(unusual(knowledge, kWhiteOak, dbh_in(14.0)), std::nullopt);
  EXPECT_EQ(unusual(knowledge, kWhiteOak, dbh_in(44.0)), "large for white oak: 44.0 in?");
  EXPECT_TRUE(unusual(knowledge, SpeciesCode{701}, dbh_in(14.0))) << "hophornbeam stays small";
  EXPECT_FALSE(unusual(knowledge, SpeciesCode{621}, dbh_in(39.0))) << "yellow-poplar does not";
}

}  // namespace
}  // namespace oaklight::test
