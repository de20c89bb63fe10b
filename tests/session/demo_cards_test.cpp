// On the demo tract: a card must show what the recommendation says, no more and no less.
#include <gtest/gtest.h>

#include <algorithm>
#include <optional>

#include "core/release/wording.hpp"
#include "core/session/card_view.hpp"
#include "core/session/card_work.hpp"
#include "core/session/decide.hpp"
#include "core/session/marks_view.hpp"
#include "core/session/tract_session.hpp"
#include "tests/support/demo_files.hpp"
#include "tests/support/temp_dir.hpp"

namespace oaklight::test {
namespace {

class DemoCards : public testing::Test {
 protected:
  DemoCards()
      : session_(TractSession::create(folder_ / "hollow.gpkg", {clock_, system_random(), "test"})
                     .value()),
        ids_(clock_, system_random()) {
    EXPECT_TRUE(session_.import_files(demo_files())->faults.empty());
    live_.emplace(session_.data().value());
  }
  [[nodiscard]] const TractKnowledge& knowledge() const { return session_.knowledge(); }
  void recommend_all() {
    for (const Stand& stand : live_->data().stands) {
      if (live_->walk_trees_of(stand.id).empty()) continue;
      recommend_one(stand.id);
    }
  }

  void done(const Result<Action>& action) {
    ASSERT_TRUE(action) << to_text(action.error());
    ASSERT_TRUE(session_.store().apply(*action));
    live_->follow(action->changes);
  }
  void recommend_one(StandId stand) {
    done(recommend_stand(live_->data(), knowledge(), ids_, stand));
  }

  TempDir folder_;
  SystemClock clock_;
  TractSession session_;
  IdSource ids_;
  std::optional<LiveTract> live_;
};

void expect_same(const Light& a, const Light& b) {
  EXPECT_EQ(a.sides_free, b.sides_free);
  EXPECT_EQ(a.sides_shared, b.sides_shared);
  EXPECT_EQ(a.sides_unknown, b.sides_unknown);
  EXPECT_EQ(a.open, b.open);
}

TEST_F(DemoCards, WithTheMarksOfTheRulesShowTheLightAndGuardsOfThePlan) {
  recommend_all();
  IdSource ids(clock_, system_random());
  const auto plans = plan_stands(live_->data(), knowledge(), ids);
  ASSERT_TRUE(plans);
  int cards = 0;
  int released = 0;
  for (const StandPlan& plan : *plans) {
    const auto views = card_views(*live_, knowledge(), plan.stand);
    ASSERT_TRUE(views) << to_text(views.error());
    for (const CardView& view : *views) {
      ++cards;
      SCOPED_TRACE("card " + view.tag);
      EXPECT_EQ(view.verdict.tag, view.tag);
      released += view.verdict.released ? 1 : 0;
      if (view.verdict.before) expect_same(view.before, *view.verdict.before);
      if (view.verdict.after) expect_same(view.after, *view.verdict.after);
      expect_same(view.after, view.recommended);
      ASSERT_EQ(view.guards.size(), plan.plan.guards.size());
      for (std::size_t i = 0; i < view.guards.size(); ++i) {
        const GuardState& mine = view.guards[i].state;
        const GuardState& planned = plan.plan.guards[i];
        EXPECT_EQ(mine.rule, planned.rule);
        if (mine.rule == "R1.32" || mine.rule == "R1.41") continue;  // counts of crop trees
        EXPECT_NEAR(mine.after, planned.after, 1e-9) << mine.name;
        EXPECT_EQ(mine.holds, planned.holds) << mine.name;
      }
      for (const NeighbourView& neighbour : view.neighbours) {
        EXPECT_EQ(neighbour.marked, neighbour.recommended);
        EXPECT_FALSE(neighbour.rules.empty()) << neighbour.tag;
        EXPECT_FALSE(neighbour.by_hand);
      }
    }
  }
  EXPECT_GT(cards, 5);
  EXPECT_GT(released, 0);
}

TEST_F(DemoCards, ARecommendationForOneStandIsThatForAll) {
  IdSource ids(clock_, system_random());
  const auto plans = plan_stands(live_->data(), knowledge(), ids);
  ASSERT_TRUE(plans);
  recommend_all();
  for (const StandPlan& plan : *plans) {
    for (const Mark& mark : plan.marks) {
      const Mark* stored = live_->mark_of(mark.tree);
      ASSERT_NE(stored, nullptr);
      EXPECT_EQ(stored->verdict, mark.verdict);
      EXPECT_EQ(stored->reason, mark.reason);
      EXPECT_EQ(stored->destination, mark.destination);
    }
  }
  for (const Stand& stand : live_->data().stands) {
    if (live_->walk_trees_of(stand.id).empty()) continue;
    EXPECT_TRUE(recommend_stand(live_->data(), knowledge(), ids_, stand.id)->changes.empty())
        << "nothing is new the second time";
  }
}

TEST_F(DemoCards, ACropTreesReasonCountsWhatWasDecidedByHandBesideIt) {
  recommend_all();
  // A released crop tree and a neighbour that goes for it.
  const auto stands = live_->data().stands;
  for (const Stand& stand : stands) {
    const auto views = card_views(*live_, knowledge(), stand.id);
    ASSERT_TRUE(views);
    for (const CardView& view : *views) {
      const auto goes = std::ranges::find(view.neighbours, Verdict::take, &NeighbourView::marked);
      if (!view.verdict.released || goes == view.neighbours.end()) continue;
      const std::string planned = live_->mark_of(view.crop)->reason;
      done(overrule(*live_, knowledge(), ids_, goes->tree, Verdict::keep, "The owner likes it."));
      const auto views_now = card_views(*live_, knowledge(), stand.id);
      ASSERT_TRUE(views_now);
      const auto now = std::ranges::find(*views_now, view.crop, &CardView::crop);
      ASSERT_NE(now, views_now->end());
      const std::string told = live_->mark_of(view.crop)->reason;
      // Derived: the count on the card, which has tests of its own.
      EXPECT_LT(now->after.sides_free, view.after.sides_free);
      EXPECT_NE(told.find(side_count(now->after.sides_free) + " of its crown"), std::string::npos)
          << told;
      EXPECT_NE(told.find("with " + goes->tag + " decided by hand"), std::string::npos) << told;
      recommend_one(stand.id);
      EXPECT_EQ(live_->mark_of(view.crop)->reason, told) << "deciding anew forgets no hand";
      done(take_back_overrule(*live_, knowledge(), ids_, goes->tree));
      EXPECT_EQ(live_->mark_of(view.crop)->reason, planned);
      return;
    }
  }
  FAIL() << "no crop tree of the demo tract is released";
}

TEST_F(DemoCards, TheListOfMarksHoldsEveryTreeOfTheWalk) {
  const auto& data = live_->data();
  auto view = marks_view(data, knowledge(), {}, {});
  ASSERT_TRUE(view) << to_text(view.error());
  EXPECT_EQ(view->rows.size(), data.walk_trees.size());
  EXPECT_EQ(view->totals.undecided, view->totals.trees) << "nothing is decided yet";
  recommend_all();
  view = marks_view(data, knowledge(), {}, {});
  ASSERT_TRUE(view);
  EXPECT_EQ(view->totals.undecided, 0);
  EXPECT_EQ(view->totals.by_hand, 0);
  for (const auto& entry : kWords<Verdict>) {
    EXPECT_EQ(view->totals.of(entry.value),
              std::ranges::count(data.marks, entry.value, &Mark::verdict))
        << entry.word;
  }
  int in_stands = 0;
  for (const Stand& stand : data.stands) {
    in_stands += marks_view(data, knowledge(), stand.id, {})->totals.trees;
  }
  EXPECT_EQ(in_stands, view->totals.trees);
}

TEST_F(DemoCards, TheListOfMarksTellsTheStopsOfThePackets) {
  recommend_all();
  const auto view = marks_view(live_->data(), knowledge(), {}, {});
  ASSERT_TRUE(view);
  const PacketOptions options{day_from_text("2026-11-25").value(), {}};
  const auto packet = packet_for(live_->data(), knowledge(), PacketReader::logger, options);
  ASSERT_TRUE(packet) << to_text(packet.error());
  ASSERT_FALSE(packet->trained.empty());
  for (const PacketTree& tree : packet->trained) {
    const auto row = std::ranges::find(view->rows, tree.tag, &MarkRow::tag);
    ASSERT_NE(row, view->rows.end());
    ASSERT_FALSE(row->cautions.empty()) << tree.tag;
    EXPECT_EQ(row->cautions.front().severity, Severity::stop) << tree.tag;
  }
  EXPECT_GE(view->totals.stops, static_cast<int>(packet->trained.size()));
}

TEST_F(DemoCards, NoListLeavesTheTractWhileTwoTreesWearOneTag) {
  recommend_all();
  TractData data = live_->data();
  const std::string tag = data.walk_trees[0].tag;
  data.walk_trees[1].tag = tag + " (2nd)";
  const PacketOptions options{day_from_text("2026-11-25").value(), {}};
  const auto refused = packet_for(data, knowledge(), PacketReader::firewood, options);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().code, ErrorCode::duplicate);
  EXPECT_EQ(refused.error().where, "walk_tree/" + tag);
  EXPECT_TRUE(packet_for(data, knowledge(), PacketReader::owner, options));
}

}  // namespace
}  // namespace oaklight::test
