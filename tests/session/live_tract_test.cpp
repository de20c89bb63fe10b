// The tract in memory and the file must never tell two stories.
#include "core/session/live_tract.hpp"

#include <gtest/gtest.h>

#include <random>

#include "tests/support/difference.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/set_clock.hpp"
#include "tests/support/temp_dir.hpp"
#include "tests/support/test_cruise.hpp"
#include "tests/support/test_ids.hpp"

namespace oaklight::test {
namespace {

/// Works on a file at random, as a person with a restless hand would, and follows in memory.
class RestlessHand {
 public:
  RestlessHand(TractStore& store, LiveTract& live, unsigned seed)
      : store_(store), live_(live), chance_(seed) {}

  void act() {
    switch (chance_() % 10) {
      case 0:
        return follow_all(store_.undo());
      case 1:
        return follow_all(store_.redo());
      case 2:
        return apply({"stand and plot", {new_stand(), new_plot()}});
      case 3:
        return remove_one();
      case 4:
        return correct_one();
      case 5:
        return apply({"walk", {new_walk_tree(false)}});
      case 6:
        return apply({"card", card()});
      case 7:
        return decide_one();
      default:
        return tally();
    }
  }
  int applied = 0, refused = 0, replayed = 0;

 private:
  void apply(const Action& action) {
    if (store_.apply(action)) {
      live_.follow(action.changes);
      ++applied;
    } else {
      ++refused;  // nothing was changed, so nothing is followed
    }
  }
  void follow_all(const Result<std::vector<Change>>& changes) {
    if (!changes) return;
    live_.follow(*changes);
    ++replayed;
  }

  template <class R>
  const R* any(const std::vector<R>& records) {
    return records.empty() ? nullptr : &records[chance_() % records.size()];
  }
  Stand new_stand() {
    Stand stand;
    stand.id = stand_ = store_.ids().next_id<StandTag>();
    stand.name = "stand " + std::to_string(++named_);
    stand.acres = Acres{10.0};
    return stand;
  }
  Plot new_plot() {
    Plot plot;
    plot.id = store_.ids().next_id<PlotTag>();
    plot.stand = stand_;
    plot.cruise = live_.data().cruises.front().id;
    plot.label = std::to_string(++named_);
    plot.status = PlotStatus::measured;
    return plot;
  }
  TreeFacts facts() {
    return {SpeciesCode{802}, dbh_in(1.0 + static_cast<double>(chance_() % 300) / 10.0)};
  }
  WalkTree new_walk_tree(bool crop) {
    WalkTree tree{store_.ids().next_id<WalkTreeTag>(), {}, std::to_string(++named_), facts()};
    tree.stand = live_.data().stands.empty() ? StandId{} : live_.data().stands.back().id;
    tree.crop = crop;
    return tree;
  }
  void tally() {
    const Plot* plot = any(live_.data().plots);
    if (plot == nullptr) return;
    apply({"tally", {Tree{store_.ids().next_id<TreeTag>(), plot->id, facts()}}});
  }
  std::vector<Change> card() {
    const WalkTree crop = new_walk_tree(true);
    const WalkTree neighbour = new_walk_tree(false);
    Contact contact;
    contact.id = store_.ids().next_id<ContactTag>();
    contact.crop = crop.id;
    contact.neighbour = neighbour.id;
    contact.sides = {Side::north};
    return {crop, neighbour, contact};
  }
  void decide_one() {
    const WalkTree* tree = any(live_.data().walk_trees);
    if (tree == nullptr) return;
    const Mark* before = live_.mark_of(tree->id);
    Mark mark = before != nullptr ? *before : Mark{};
    if (before == nullptr) mark.id = store_.ids().next_id<MarkTag>();
    mark.tree = tree->id;
    mark.verdict = chance_() % 2 == 0 ? Verdict::take : Verdict::keep;
    mark.by_hand = true;
    apply({"decide", {mark}});
  }
  void correct_one() {
    if (const Tree* tree = any(live_.data().trees); tree != nullptr && chance_() % 2 == 0) {
      Tree corrected = *tree;
      corrected.facts.dbh = facts().dbh;
      if (const Plot* plot = any(live_.data().plots)) corrected.plot = plot->id;
      return apply({"correct", {corrected}});
    }
    if (const WalkTree* tree = any(live_.data().walk_trees)) {
      WalkTree corrected = *tree;
      corrected.tag = std::to_string(++named_);
      apply({"new tag", {corrected}});
    }
  }
  void remove_one() {
    if (const Tree* tree = any(live_.data().trees); tree != nullptr && chance_() % 2 == 0) {
      return apply({"remove", {Remove{tree->id}}});
    }
    if (const Contact* contact = any(live_.data().contacts); contact && chance_() % 2 == 0) {
      return apply({"remove", {Remove{contact->id}}});
    }
    if (const Plot* plot = any(live_.data().plots)) apply({"remove", {Remove{plot->id}}});
  }

  TractStore& store_;
  LiveTract& live_;
  std::mt19937 chance_;
  StandId stand_;
  int named_ = 0;
};

class LiveTractTest : public testing::Test {
 protected:
  TractStore make(unsigned seed) {
    chance_.seed(seed);
    auto store = TractStore::create(folder_ / ("woods" + std::to_string(seed) + ".gpkg"),
                                    {clock_, [this] { return chance_(); }, "tablet"});
    EXPECT_TRUE(store);
    Cruise cruise;
    cruise.id = store->ids().next_id<CruiseTag>();
    EXPECT_TRUE(store->apply({"cruise", {cruise}}));
    return *std::move(store);
  }
  TempDir folder_;
  SetClock clock_{1'777'900'020'000};
  std::mt19937_64 chance_;
};

TEST_F(LiveTractTest, TellsWhatTheFileTellsAfterAnyWork) {
  for (const unsigned seed : {1U, 2U, 3U}) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    TractStore store = make(seed);
    LiveTract live(store.load().value());
    RestlessHand hand(store, live, seed);
    for (int i = 0; i < 500; ++i) {
      hand.act();
      if (i % 50 == 49) {
        ASSERT_EQ(difference(live.data(), store.load().value()), "") << "action " << i;
      }
    }
    EXPECT_GT(hand.applied, 200);
    EXPECT_GT(hand.replayed, 50);
    EXPECT_GT(hand.refused, 5) << "a plot that has trees cannot be removed";
  }
}

TEST_F(LiveTractTest, LooksUpWhatALoadedOneLooksUp) {
  TractStore store = make(4);
  LiveTract live(store.load().value());
  RestlessHand hand(store, live, 4);
  for (int i = 0; i < 500; ++i) hand.act();
  const LiveTract loaded(store.load().value());
  ASSERT_FALSE(live.data().trees.empty());
  ASSERT_FALSE(live.data().contacts.empty());
  ASSERT_FALSE(live.data().marks.empty());
  for (const Plot& plot : live.data().plots) {
    const auto a = live.trees_of(plot.id);
    const auto b = loaded.trees_of(plot.id);
    ASSERT_EQ(a.size(), b.size());
    ASSERT_EQ(live.tree_records_of(plot.id), a.size());
    for (std::size_t i = 0; i < a.size(); ++i) ASSERT_EQ(a[i]->id, b[i]->id);
  }
  for (const WalkTree& tree : live.data().walk_trees) {
    ASSERT_EQ(live.contacts_of(tree.id).size(), loaded.contacts_of(tree.id).size());
    ASSERT_EQ(live.contacts_with(tree.id).size(), loaded.contacts_with(tree.id).size());
    const WalkTree* by_tag = live.by_tag(tree.tag);
    ASSERT_NE(by_tag, nullptr);
    ASSERT_EQ(by_tag->id, tree.id);
    const Mark* a = live.mark_of(tree.id);
    const Mark* b = loaded.mark_of(tree.id);
    ASSERT_EQ(a == nullptr, b == nullptr);
    if (a != nullptr) {
      ASSERT_EQ(a->id, b->id);
    }
  }
}

TEST(LiveTract, ListsTheTreesOfAPlotInTheOrderOfTheTally) {
  TestCruise cruise;
  const StandId stand = cruise.stand("A", 10.0);
  const PlotId first = cruise.plot(stand);
  const PlotId second = cruise.plot(stand);
  const TreeId one = cruise.tree(first, 802, 14.0).id;
  cruise.tree(second, 833, 9.0);
  const TreeId two = cruise.tree(first, 833, 10.0).id;
  const LiveTract live(cruise.data);
  const auto trees = live.trees_of(first);
  ASSERT_EQ(trees.size(), 2U);
  EXPECT_EQ(trees[0]->id, one);
  EXPECT_EQ(trees[1]->id, two);
  EXPECT_EQ(live.plots_of(stand).size(), 2U);
  EXPECT_EQ(live.find(one)->facts.dbh, dbh_in(14.0));
  EXPECT_EQ(live.find(nth_id<TreeId>(999)), nullptr);
}

TEST(LiveTract, TwoTreesMaySwapTheirTagsInOneAction) {
  WalkTree a{nth_id<WalkTreeId>(1), {}, "1", {SpeciesCode{802}, dbh_in(14.0)}};
  WalkTree b{nth_id<WalkTreeId>(2), {}, "2", {SpeciesCode{833}, dbh_in(12.0)}};
  TractData data;
  data.walk_trees = {a, b};
  LiveTract live(data);
  std::swap(a.tag, b.tag);
  const std::vector<Change> changes{a, b};
  live.follow(changes);
  EXPECT_EQ(live.by_tag("2")->id, a.id);
  EXPECT_EQ(live.by_tag("1")->id, b.id);
}

}  // namespace
}  // namespace oaklight::test
