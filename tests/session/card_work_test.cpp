// Crop tree cards: who stands around an oak, what was seen, what is decided by hand.
#include "core/session/card_work.hpp"

#include "core/session/card_view.hpp"
#include "core/session/decide.hpp"
#include "tests/session/work_fixture.hpp"
#include "tests/support/readings.hpp"

namespace oaklight::test {
namespace {

class Cards : public WorkTest {
 protected:
  Cards() { stand_ = stand_with_plots(1); }
  static WalkTreeDraft draft(int fia, double inches, CrownClass crown = CrownClass::codominant) {
    WalkTreeDraft draft{"", TreeFacts{SpeciesCode{fia}, dbh_in(inches)}};
    draft.facts.crown_class = crown;
    draft.facts.live_crown = Percent{45.0};
    draft.facts.dieback = Percent{0.0};
    return draft;
  }
  static ContactDraft at(Side side, Seen seen) { return {Sides{side}, seen, {}, {}}; }
  WalkTreeId oak() {
    done(add_crop_tree(live_, knowledge_, ids_, stand_, draft(802, 15.0)));
    return live_.data().walk_trees.back().id;
  }
  ContactId maple(WalkTreeId crop, Side side) {
    done(add_neighbour(live_, knowledge_, ids_, crop, draft(316, 10.0), at(side, Seen::touches)));
    return live_.data().contacts.back().id;
  }

  StandId stand_;
};

TEST_F(Cards, ProposeTheNextFreeNumber) {
  EXPECT_EQ(next_tag(live_), "1");
  WalkTreeDraft tagged = draft(802, 15.0);
  tagged.tag = "41";
  const Action action = done(add_crop_tree(live_, knowledge_, ids_, stand_, tagged));
  EXPECT_EQ(action.label, "crop tree 41: white oak 15.0 in");
  EXPECT_EQ(next_tag(live_), "42");
  EXPECT_EQ(refused(add_crop_tree(live_, knowledge_, ids_, stand_, tagged)).code,
            ErrorCode::duplicate);
  oak();
  EXPECT_NE(live_.by_tag("42"), nullptr);
}

TEST_F(Cards, TakeNeighboursSideBySide) {
  const WalkTreeId crop = oak();
  maple(crop, Side::north);
  maple(crop, Side::east);
  EXPECT_EQ(live_.contacts_of(crop).size(), 2U);
  EXPECT_EQ(live_.walk_trees_of(stand_).size(), 3U);
  EXPECT_EQ(difference_from_file(), "");
  undo();
  EXPECT_EQ(live_.contacts_of(crop).size(), 1U);
  EXPECT_EQ(live_.walk_trees_of(stand_).size(), 2U);
  EXPECT_EQ(difference_from_file(), "");
}

TEST_F(Cards, RefuseACrowdingNeighbourOnNoSideOrOnTheWrongOne) {
  const WalkTreeId crop = oak();
  ContactDraft nowhere{{}, Seen::touches, {}, {}};
  EXPECT_EQ(refused(add_neighbour(live_, knowledge_, ids_, crop, draft(316, 10.0), nowhere)).code,
            ErrorCode::missing_value);
  ContactDraft crossed = at(Side::north, Seen::touches);
  crossed.azimuth = Degrees{180.0};
  EXPECT_EQ(refused(add_neighbour(live_, knowledge_, ids_, crop, draft(316, 10.0), crossed)).where,
            "card/1/azimuth_deg");
  EXPECT_EQ(live_.data().contacts.size(), 0U);
}

TEST_F(Cards, PutOneTreeOnTwoCardsAndKeepItUntilItIsOffBoth) {
  const WalkTreeId first = oak();
  const WalkTreeId second = oak();
  const ContactId on_first = maple(first, Side::north);
  const WalkTreeId shared = live_.find(on_first)->neighbour;
  done(add_known_neighbour(live_, knowledge_, ids_, second, shared, at(Side::south, Seen::over)));
  EXPECT_EQ(refused(add_known_neighbour(live_, knowledge_, ids_, second, shared,
                                        at(Side::south, Seen::over)))
                .code,
            ErrorCode::duplicate);
  EXPECT_EQ(refused(add_known_neighbour(live_, knowledge_, ids_, second, second,
                                        at(Side::south, Seen::over)))
                .code,
            ErrorCode::contradiction);
  done(remove_neighbour(live_, knowledge_, on_first));
  EXPECT_NE(live_.find(shared), nullptr);
  const ContactId on_second = live_.contacts_of(second).front()->id;
  done(overrule(live_, knowledge_, ids_, shared, Verdict::keep, "the owner wants it"));
  done(remove_neighbour(live_, knowledge_, on_second));
  EXPECT_EQ(live_.find(shared), nullptr);
  EXPECT_TRUE(live_.data().marks.empty()) << "its mark went with it";
  undo();
  EXPECT_NE(live_.mark_of(shared), nullptr);
  EXPECT_EQ(difference_from_file(), "");
}

TEST_F(Cards, RemovedTakeAlongOnlyWhatStandsNowhereElse) {
  const WalkTreeId first = oak();
  const WalkTreeId second = oak();
  maple(first, Side::north);
  done(add_known_neighbour(live_, knowledge_, ids_, second, first, at(Side::west, Seen::touches)));
  done(remove_crop_tree(live_, knowledge_, first));
  ASSERT_NE(live_.find(first), nullptr) << "it stands on the other card";
  EXPECT_FALSE(live_.find(first)->crop);
  EXPECT_EQ(live_.walk_trees_of(stand_).size(), 2U) << "the maple left";
  done(make_crop_tree(live_, knowledge_, first));
  EXPECT_TRUE(live_.find(first)->crop);
  done(remove_crop_tree(live_, knowledge_, second));
  EXPECT_EQ(live_.find(second), nullptr);
  EXPECT_EQ(difference_from_file(), "");
}

TEST_F(Cards, RemovedTakeTheirAcornCountsAlong) {
  const WalkTreeId crop = oak();
  const AcornCount count{ids_.next_id<AcornCountTag>(), crop, 2025, "",
                         BranchTipCount{15.0, 8},       ""};
  done(Action{"count acorns", {count}});
  ASSERT_EQ(live_.acorn_counts_of(crop).size(), 1U);
  done(remove_crop_tree(live_, knowledge_, crop));
  EXPECT_TRUE(live_.acorn_counts_of(crop).empty());
  EXPECT_EQ(difference_from_file(), "");
  undo();
  ASSERT_EQ(live_.acorn_counts_of(crop).size(), 1U);
  EXPECT_EQ(std::get<BranchTipCount>(live_.acorn_counts_of(crop)[0]->count).per_tip, 15.0);
  EXPECT_EQ(difference_from_file(), "");
}

TEST_F(Cards, ASideIsOpenOnlyWhereNothingCrowds) {
  const WalkTreeId crop = oak();
  const ContactId contact = maple(crop, Side::north);
  EXPECT_EQ(refused(look_open(live_, crop, Side::north)).code, ErrorCode::contradiction);
  done(look_open(live_, crop, Side::south));
  EXPECT_TRUE(live_.find(crop)->looked.has(Side::south));
  done(change_contact(live_, knowledge_, contact, at(Side::north, Seen::none)));
  done(look_open(live_, crop, Side::north));
  done(unlook(live_, crop, Side::south));
  EXPECT_FALSE(live_.find(crop)->looked.has(Side::south));
  EXPECT_TRUE(live_.find(crop)->looked.has(Side::north));
}

TEST_F(Cards, ShowTheLightThatTheMarksGive) {
  const WalkTreeId crop = oak();
  const ContactId north = maple(crop, Side::north);
  maple(crop, Side::east);
  done(look_open(live_, crop, Side::south));
  const StandId stand = live_.find(crop)->stand;
  auto views = card_views(live_, knowledge_, stand);
  ASSERT_TRUE(views) << to_text(views.error());
  ASSERT_EQ(views->size(), 1U);
  const CardView* view = &views->front();
  // Derived from the card: a quarter of the edge a side; west was not looked at.
  EXPECT_EQ(view->before.sides_free, 1);
  EXPECT_EQ(view->before.sides_unknown, 1);
  EXPECT_NEAR(view->before.open.value, 25.0, 1e-9);
  EXPECT_EQ(view->after.sides_free, 1) << "nothing is marked yet";
  using S = SideState;
  EXPECT_EQ(view->sides_before, (std::array{S::closed, S::closed, S::free, S::unknown}));
  ASSERT_EQ(view->neighbours.size(), 2U);
  EXPECT_EQ(view->neighbours[0].species, "red maple");
  EXPECT_FALSE(view->neighbours[0].marked);
  EXPECT_FALSE(view->neighbours[0].reason.empty());

  const WalkTreeId taken = live_.find(north)->neighbour;
  done(overrule(live_, knowledge_, ids_, taken, Verdict::take, "It shades the best oak."));
  views = card_views(live_, knowledge_, stand);
  ASSERT_TRUE(views);
  view = &views->front();
  EXPECT_EQ(view->after.sides_free, 2);
  EXPECT_NEAR(view->after.open.value, 50.0, 1e-9);
  EXPECT_EQ(view->sides_after, (std::array{S::free, S::closed, S::free, S::unknown}));
  EXPECT_TRUE(view->neighbours[0].by_hand);
  EXPECT_TRUE(view->neighbours[0].goes);
  EXPECT_EQ(view->neighbours[0].reason, "It shades the best oak.");
  EXPECT_TRUE(view->guards.empty()) << "the stand has no plots: no guard can be tested";
}

TEST_F(Cards, AnOverruleHasAReasonAndIsTakenBack) {
  const WalkTreeId crop = oak();
  const WalkTreeId tree = live_.find(maple(crop, Side::north))->neighbour;
  done(recommend_stand(live_.data(), knowledge_, ids_, stand_));
  const Mark before = *live_.mark_of(tree);
  EXPECT_EQ(refused(overrule(live_, knowledge_, ids_, tree, Verdict::take, " ")).code,
            ErrorCode::missing_value);
  EXPECT_EQ(refused(take_back_overrule(live_, knowledge_, ids_, tree)).code,
            ErrorCode::contradiction);
  EXPECT_EQ(done(overrule(live_, knowledge_, ids_, tree, Verdict::take, "shade")).label,
            "overrule 2: take");
  const Mark& mark = *live_.mark_of(tree);
  EXPECT_EQ(mark.id, before.id) << "a tree has one mark";
  EXPECT_TRUE(mark.by_hand);
  EXPECT_EQ(mark.method, Method::fell);
  EXPECT_NE(mark.product, Product::none);
  EXPECT_TRUE(mark.destination);
  done(recommend_stand(live_.data(), knowledge_, ids_, stand_));
  EXPECT_TRUE(live_.mark_of(tree)->by_hand) << "hands go before rules";
  done(take_back_overrule(live_, knowledge_, ids_, tree));
  EXPECT_FALSE(live_.mark_of(tree)->by_hand);
  EXPECT_EQ(live_.mark_of(tree)->verdict, before.verdict);
  EXPECT_EQ(live_.mark_of(tree)->reason, before.reason);
  EXPECT_EQ(difference_from_file(), "");
}

TEST_F(Cards, OfWhatIsNoCropTreeSayso) {
  const WalkTreeId crop = oak();
  const WalkTreeId tree = live_.find(maple(crop, Side::north))->neighbour;
  EXPECT_EQ(refused(look_open(live_, tree, Side::north)).code, ErrorCode::unknown_reference);
}

}  // namespace
}  // namespace oaklight::test
