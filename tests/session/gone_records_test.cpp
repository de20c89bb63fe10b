// A record that is named and no longer there, removed by another hand or lost with a damaged file:
// every gesture says which, and makes nothing of it.
#include "core/session/border_tree.hpp"
#include "core/session/card_work.hpp"
#include "core/session/plot_centre.hpp"
#include "core/session/plot_figures.hpp"
#include "core/session/plot_work.hpp"
#include "core/session/stand_part.hpp"
#include "core/session/stump_work.hpp"
#include "core/session/tract_work.hpp"
#include "core/session/walk.hpp"
#include "tests/session/work_fixture.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/test_ids.hpp"

namespace oaklight::test {
namespace {

constexpr std::uint32_t kNowhere = 999;  // no record of any test has this id

class GoneRecords : public WorkTest {
 protected:
  /// It names the record by its kind.
  template <class T>
  void expect_gone(const Result<T>& result, const std::string& kind) {
    ASSERT_FALSE(result) << kind;
    EXPECT_EQ(result.error().code, ErrorCode::unknown_reference) << kind;
    EXPECT_TRUE(result.error().where.starts_with(kind + "/")) << result.error().where;
    EXPECT_FALSE(result.error().what.empty());
    EXPECT_FALSE(result.error().fix.empty());
  }
  static WalkTreeDraft walk_draft(const std::string& tag = "") {
    return {tag, TreeFacts{SpeciesCode{802}, dbh_in(15.0)}, {}, {}};
  }
  static ContactDraft north() { return {Sides{Side::north}, Seen::touches, {}, {}}; }
  static TreeDraft tree_draft() { return {TreeFacts{SpeciesCode{802}, dbh_in(15.0)}}; }
  WalkTreeId crop_tree(StandId stand) {
    done(add_crop_tree(live_, knowledge_, ids_, stand, walk_draft()));
    return live_.data().walk_trees.back().id;
  }
};

TEST_F(GoneRecords, OfPlotsAreToldByEveryGestureAtAPlot) {
  const auto plot = nth_id<PlotId>(kNowhere);
  expect_gone(tally_tree(live_, knowledge_, ids_, plot, tree_draft()), "plot");
  expect_gone(count_tree(live_, knowledge_, plot, SpeciesCode{802}, 1), "plot");
  expect_gone(set_task(live_, plot, PlotTask::count), "plot");
  expect_gone(start_plot(live_, knowledge_, plot, {}), "plot");
  expect_gone(call_empty(live_, plot), "plot");
  expect_gone(plan_again(live_, plot), "plot");
  expect_gone(skip_plot(live_, knowledge_, plot, "river"), "plot");
  expect_gone(count_regen(live_, knowledge_, ids_, {plot, SpeciesCode{802}}, 1), "plot");
  expect_gone(record_centre(live_, knowledge_, plot, {}), "plot");
  expect_gone(way_to(live_, plot, {}), "plot");
  expect_gone(plot_figures(live_, plot), "plot");
  expect_gone(border_check(live_, plot, {dbh_in(12.0), tape_ft(30.0), TapedTo::centre, Slope{}}),
              "plot");
  EXPECT_EQ(difference_from_file(), "");
}

TEST_F(GoneRecords, OfStandsAndCruisesAreToldWhereAPlotIsMade) {
  stand_with_plots(1);
  Plot plot;
  plot.stand = nth_id<StandId>(kNowhere);
  plot.cruise = live_.data().cruises.front().id;
  expect_gone(add_plot(live_, knowledge_, ids_, plot), "stand");
  expect_gone(add_plots(live_, knowledge_, ids_, plot.stand, plot.cruise, 2), "stand");
  plot.stand = live_.data().stands.front().id;
  plot.cruise = nth_id<CruiseId>(kNowhere);
  expect_gone(add_plot(live_, knowledge_, ids_, plot), "cruise");
  expect_gone(add_plots(live_, knowledge_, ids_, plot.stand, plot.cruise, 2), "cruise");
  expect_gone(measure_in_turn(live_, plot.cruise, 3), "cruise");
  Stand stand;
  stand.id = nth_id<StandId>(kNowhere);
  stand.name = "Nowhere";
  expect_gone(change_stand(live_, knowledge_, stand), "stand");
  expect_gone(stand_plots(live_, stand.id), "stand");
  expect_gone(stand_part(live_, stand.id), "stand");
  expect_gone(running_figures(live_, knowledge_, stand.id, {}), "stand");
  EXPECT_EQ(live_.data().plots.size(), 1U);
}

TEST_F(GoneRecords, OfTreesAreToldByWhoeverChangesThem) {
  const auto tree = nth_id<TreeId>(kNowhere);
  expect_gone(correct_tree(live_, knowledge_, tree, tree_draft()), "tree");
  expect_gone(remove_tree(live_, knowledge_, tree), "tree");
}

TEST_F(GoneRecords, OfTheWalkAreToldByEveryCard) {
  const StandId stand = stand_with_plots(1);
  const auto tree = nth_id<WalkTreeId>(kNowhere);
  expect_gone(add_crop_tree(live_, knowledge_, ids_, nth_id<StandId>(kNowhere), walk_draft()),
              "stand");
  expect_gone(make_crop_tree(live_, knowledge_, tree), "tree");
  expect_gone(add_neighbour(live_, knowledge_, ids_, tree, walk_draft(), north()), "crop tree");
  expect_gone(add_known_neighbour(live_, knowledge_, ids_, tree, tree, north()), "crop tree");
  expect_gone(add_known_neighbour(live_, knowledge_, ids_, crop_tree(stand), tree, north()),
              "tree");
  expect_gone(correct_walk_tree(live_, knowledge_, tree, walk_draft("7")), "tree");
  expect_gone(look_open(live_, tree, Side::north), "crop tree");
  expect_gone(unlook(live_, tree, Side::north), "crop tree");
  expect_gone(remove_crop_tree(live_, knowledge_, tree), "crop tree");
  const auto contact = nth_id<ContactId>(kNowhere);
  expect_gone(change_contact(live_, knowledge_, contact, north()), "neighbour");
  expect_gone(remove_neighbour(live_, knowledge_, contact), "neighbour");
  expect_gone(overrule(live_, knowledge_, ids_, tree, Verdict::keep, "den"), "tree");
  expect_gone(take_back_overrule(live_, knowledge_, ids_, tree), "tree");
  EXPECT_EQ(difference_from_file(), "");
}

TEST_F(GoneRecords, AreToldAfterTheCutToo) {
  expect_gone(note_finding(live_, knowledge_, ids_, nth_id<WalkTreeId>(kNowhere),
                           Finding::as_marked, "2027-02-20"),
              "tree");
  expect_gone(
      note_wound(live_, knowledge_, ids_, nth_id<WalkTreeId>(kNowhere), Wound::large, "2027-02-20"),
      "tree");
  StumpDraft draft;
  draft.finding = Finding::not_marked;
  draft.stand = nth_id<StandId>(kNowhere);
  expect_gone(add_stump(live_, knowledge_, ids_, draft), "stand");
}

/// What a file may hold that lost some of its records.
class LostParents : public GoneRecords {
 protected:
  LostParents() {
    const StandId stand = stand_with_plots(1);
    done(tally_tree(live_, knowledge_, ids_, live_.data().plots.front().id, tree_draft()));
    crop_ = crop_tree(stand);
    done(add_neighbour(live_, knowledge_, ids_, crop_, walk_draft(), north()));
  }
  /// Without one record that others point at.
  template <class IdType>
  [[nodiscard]] LiveTract without(IdType id) const {
    LiveTract live = live_;
    const std::vector<Change> gone{Remove{id}};
    live.follow(gone);
    return live;
  }
  WalkTreeId crop_;
};

TEST_F(LostParents, ACardWhoseCropTreeIsLostIsNotChanged) {
  const Contact contact = live_.data().contacts.front();
  const LiveTract no_crop = without(contact.crop);
  expect_gone(change_contact(no_crop, knowledge_, contact.id, north()), "crop tree");
  const LiveTract no_neighbour = without(contact.neighbour);
  expect_gone(remove_neighbour(no_neighbour, knowledge_, contact.id), "tree");
  const auto looked = change_contact(no_neighbour, knowledge_, contact.id, north());
  ASSERT_TRUE(looked);
  EXPECT_EQ(looked->label, "look at neighbour again");
  const Error stands = refused(look_open(no_neighbour, crop_, Side::north));
  EXPECT_EQ(stands.code, ErrorCode::contradiction);
  const auto removed = remove_crop_tree(no_neighbour, knowledge_, crop_);
  ASSERT_TRUE(removed);
  EXPECT_EQ(removed->changes.size(), 2U) << "the contact and the crop tree";
}

TEST_F(LostParents, ATreeWhosePlotIsLostIsNotCorrectedAndCanBeTakenOut) {
  const Tree tree = live_.data().trees.front();
  const LiveTract live = without(tree.plot);
  expect_gone(correct_tree(live, knowledge_, tree.id, tree_draft()), "plot");
  const auto removed = remove_tree(live, knowledge_, tree.id);
  ASSERT_TRUE(removed);
  EXPECT_EQ(removed->changes.size(), 1U);
}

TEST_F(LostParents, APlotWhoseCruiseIsLostHasNoFigures) {
  const Plot plot = live_.data().plots.front();
  const LiveTract live = without(plot.cruise);
  expect_gone(plot_figures(live, plot.id), "cruise");
  expect_gone(border_check(live, plot.id, {dbh_in(12.0), tape_ft(30.0), TapedTo::centre, Slope{}}),
              "cruise");
  EXPECT_EQ(refused(set_task(live, plot.id, PlotTask::count)).code, ErrorCode::contradiction);
  EXPECT_EQ(refused(count_regen(live, knowledge_, ids_, {plot.id, SpeciesCode{802}}, 1)).code,
            ErrorCode::missing_value);
  const auto started = start_plot(live, knowledge_, plot.id, {.crew = "J. Doe"});
  ASSERT_TRUE(started) << to_text(started.error());
  EXPECT_EQ(started->changes.size(), 1U) << "no cruise to note the crew in";
  EXPECT_TRUE(tally_tree(live, knowledge_, ids_, plot.id, tree_draft()));
}

}  // namespace
}  // namespace oaklight::test
