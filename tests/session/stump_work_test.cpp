// After the cut: what is noted at each stump, and how it is shown.
#include "core/session/stump_work.hpp"

#include "core/session/card_work.hpp"
#include "core/session/stump_view.hpp"
#include "tests/session/work_fixture.hpp"
#include "tests/support/readings.hpp"

namespace oaklight::test {
namespace {

class Stumps : public WorkTest {
 protected:
  Stumps() {
    stand_ = stand_with_plots(1);
    oak_ = crop(802, 15.0);
    maple_ = crop(316, 12.0);
    done(overrule(live_, knowledge_, ids_, oak_, Verdict::keep, "the best oak"));
    done(overrule(live_, knowledge_, ids_, maple_, Verdict::take, "crowds the oak"));
  }
  WalkTreeId crop(int fia, double inches) {
    done(add_crop_tree(live_, knowledge_, ids_, stand_,
                       {"", TreeFacts{SpeciesCode{fia}, dbh_in(inches)}, {}, {}}));
    return live_.data().walk_trees.back().id;
  }
  Action note(WalkTreeId tree, Finding finding) {
    return done(note_finding(live_, knowledge_, ids_, tree, finding, "2027-02-20"));
  }
  Error refuse(const StumpDraft& draft) {
    return refused(add_stump(live_, knowledge_, ids_, draft));
  }
  [[nodiscard]] const std::vector<Stump>& stumps() const { return live_.data().stumps; }

  StandId stand_;
  WalkTreeId oak_, maple_;
};

TEST_F(Stumps, AreNotedWithOneTapAndTakenBackWithOne) {
  const Action action = note(maple_, Finding::as_marked);
  EXPECT_EQ(action.label, "tag 2 found as marked");
  ASSERT_EQ(stumps().size(), 1U);
  EXPECT_EQ(stumps()[0].tree, maple_);
  EXPECT_EQ(stumps()[0].seen_on, "2027-02-20");
  EXPECT_EQ(difference_from_file(), "");
  undo();
  EXPECT_TRUE(stumps().empty());
  EXPECT_EQ(difference_from_file(), "");
}

TEST_F(Stumps, AreCorrectedByTheNextTap) {
  note(maple_, Finding::standing);
  note(maple_, Finding::as_marked);
  ASSERT_EQ(stumps().size(), 1U);
  EXPECT_EQ(stumps()[0].finding, Finding::as_marked);
  undo();
  EXPECT_EQ(stumps()[0].finding, Finding::standing);
}

TEST_F(Stumps, KeepTheWoundOnlyOfAHurtTree) {
  done(note_wound(live_, knowledge_, ids_, oak_, Wound::large, "2027-02-20"));
  EXPECT_EQ(stumps()[0].finding, Finding::hurt);
  EXPECT_EQ(stumps()[0].wound, Wound::large);
  note(oak_, Finding::hurt);
  EXPECT_EQ(stumps()[0].wound, Wound::large);
  note(oak_, Finding::not_marked);
  EXPECT_EQ(stumps()[0].wound, std::nullopt);
}

TEST_F(Stumps, MustFitTheList) {
  const auto code = [&](WalkTreeId tree, Finding finding) {
    return refused(note_finding(live_, knowledge_, ids_, tree, finding, "")).code;
  };
  EXPECT_EQ(code(oak_, Finding::as_marked), ErrorCode::contradiction);
  EXPECT_EQ(code(oak_, Finding::standing), ErrorCode::contradiction);
  EXPECT_EQ(code(oak_, Finding::hung), ErrorCode::contradiction);
  EXPECT_EQ(code(maple_, Finding::not_marked), ErrorCode::contradiction);
  EXPECT_EQ(code(maple_, Finding::hurt), ErrorCode::contradiction);
  EXPECT_TRUE(stumps().empty());
}

TEST_F(Stumps, WithoutATagMayBeCutOrHurtAndNothingElse) {
  StumpDraft draft;
  draft.finding = Finding::standing;
  const Error error = refuse(draft);
  EXPECT_EQ(error.code, ErrorCode::missing_value);
  EXPECT_EQ(error.where, "stump/tag");
  draft.finding = Finding::not_marked;
  draft.over_bark = stump_cm(40.0);
  draft.height = tape_m(0.2);
  draft.species = SpeciesCode{316};
  const Action action = done(add_stump(live_, knowledge_, ids_, draft));
  EXPECT_EQ(action.label, "stump without a tag: cut, not marked");
  EXPECT_EQ(stumps()[0].over_bark, stump_cm(40.0));
  EXPECT_EQ(difference_from_file(), "");
}

TEST_F(Stumps, AreHeldAgainstTheForm) {
  StumpDraft draft{.finding = Finding::not_marked};
  draft.height = tape_ft(5.0);
  EXPECT_EQ(refuse(draft).code, ErrorCode::out_of_range) << "over breast height";
  draft.height.reset();
  draft.over_bark = stump_in(10.0);
  draft.under_bark = stump_in(11.0);
  EXPECT_EQ(refuse(draft).code, ErrorCode::contradiction);
  draft.under_bark.reset();
  draft.wound = Wound::small;
  EXPECT_EQ(refuse(draft).code, ErrorCode::contradiction);
  draft.wound.reset();
  draft.species = SpeciesCode{12345};
  EXPECT_EQ(refuse(draft).code, ErrorCode::unknown_species);
  draft.species.reset();
  draft.stand = StandId{};
  EXPECT_EQ(refuse(draft).code, ErrorCode::unknown_reference);
}

TEST_F(Stumps, HoldTheirTreeInTheWalk) {
  note(maple_, Finding::as_marked);
  EXPECT_FALSE(store_.apply({"remove", {Remove{live_.mark_of(maple_)->id}, Remove{maple_}}}))
      << "a finding still points at it";
}

TEST_F(Stumps, AreShownNearestFirstAsLongAsNobodyLooked) {
  const auto place = [&](WalkTreeId id, double longitude) {
    WalkTreeDraft draft = draft_of(*live_.find(id));
    draft.position = Position{Degrees{38.4}, Degrees{longitude}};
    done(correct_walk_tree(live_, knowledge_, id, draft));
  };
  const WalkTreeId near = crop(316, 11.0);
  const WalkTreeId lost = crop(316, 10.0);
  for (const WalkTreeId id : {near, lost})
    done(overrule(live_, knowledge_, ids_, id, Verdict::take, "crowds the oak"));
  place(maple_, -82.32);
  place(near, -82.301);
  PacketOptions options;
  options.today = Day{std::chrono::February / 20 / 2027};
  const Position here{Degrees{38.4}, Degrees{-82.3}};
  const auto tags = [&](const StumpView& view) {
    std::string text;
    for (const std::size_t i : view.order) text += view.check.listed[i].tag + " ";
    return text;
  };
  EXPECT_EQ(tags(stump_view(live_.data(), knowledge_, options, here).value()), "3 2 4 ");
  EXPECT_EQ(tags(stump_view(live_.data(), knowledge_, options, {}).value()), "2 3 4 ");
  note(near, Finding::as_marked);
  const auto view = stump_view(live_.data(), knowledge_, options, here).value();
  EXPECT_EQ(tags(view), "2 4 3 ");
  EXPECT_EQ(view.check.of(ListState::not_seen), 2);
  ASSERT_EQ(view.leave.size(), 1U);
  EXPECT_EQ(view.leave[0].tree, oak_);
  EXPECT_TRUE(view.leave[0].crop);
}

TEST_F(Stumps, GoByTheLimitsOfTheTractsOwnRules) {
  PacketOptions options;
  options.today = Day{std::chrono::February / 20 / 2027};
  const auto check = stump_check_for(live_.data(), knowledge_, options).value();
  // Rules R7.42 and R7.43 of forms/release.rule.json.
  EXPECT_EQ(check.crop_damage.limit, Percent{5.0});
  EXPECT_EQ(check.left_damage.limit, Percent{10.0});
}

}  // namespace
}  // namespace oaklight::test
