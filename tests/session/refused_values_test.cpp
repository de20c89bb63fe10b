// Values that cannot be: each gesture names the field, and changes nothing.
#include "core/session/border_tree.hpp"
#include "core/session/card_work.hpp"
#include "core/session/plot_centre.hpp"
#include "core/session/plot_figures.hpp"
#include "core/session/plot_work.hpp"
#include "core/session/stand_view.hpp"
#include "core/session/stump_work.hpp"
#include "core/session/tract_work.hpp"
#include "core/session/walk_sheet.hpp"
#include "tests/session/work_fixture.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/test_cruise.hpp"
#include "tests/support/test_ids.hpp"

namespace oaklight::test {
namespace {

constexpr SpeciesCode kUnknown{9'999};
const Position kNoPlace{Degrees{99.0}, Degrees{-81.0}};

class RefusedValues : public WorkTest {
 protected:
  RefusedValues() { stand_ = stand_with_plots(3); }
  void expect_refused(const Result<Action>& action, ErrorCode code, const std::string& field) {
    const Error error = refused(action);
    EXPECT_EQ(error.code, code) << to_text(error);
    EXPECT_TRUE(error.where.ends_with("/" + field)) << error.where;
    EXPECT_EQ(difference_from_file(), "");
  }
  static WalkTreeDraft oak(const std::string& tag = "") {
    return {tag, TreeFacts{SpeciesCode{802}, dbh_in(15.0)}, {}, {}};
  }
  WalkTreeId crop(const std::string& tag = "") {
    done(add_crop_tree(live_, knowledge_, ids_, stand_, oak(tag)));
    return live_.data().walk_trees.back().id;
  }
  [[nodiscard]] PlotId plot(std::size_t i) const { return live_.data().plots[i].id; }

  StandId stand_;
};

TEST_F(RefusedValues, OfTreesOfTheWalk) {
  using enum ErrorCode;
  const WalkTreeId first = crop("7");
  crop("A8");
  EXPECT_EQ(next_tag(live_), "8") << "a tag that is no number counts for nothing";
  WalkTreeDraft draft = oak("A8");
  expect_refused(correct_walk_tree(live_, knowledge_, first, draft), duplicate, "tag");
  draft = oak();
  draft.position = kNoPlace;
  expect_refused(correct_walk_tree(live_, knowledge_, first, draft), out_of_range, "lat");
  draft.position = Position{Degrees{38.0}, Degrees{-81.0}};
  draft.slope = Percent{900.0};
  expect_refused(add_crop_tree(live_, knowledge_, ids_, stand_, draft), out_of_range, "slope_pct");
  draft.slope = Percent{20.0};
  draft.facts.species = kUnknown;
  expect_refused(add_neighbour(live_, knowledge_, ids_, first, draft, {}), unknown_species,
                 "species");
  draft.facts.species = SpeciesCode{833};
  EXPECT_EQ(done(correct_walk_tree(live_, knowledge_, first, draft)).label,
            "correct 7: northern red oak 15.0 in")
      << "without a tag it keeps its own";
  Stand other;
  other.name = "South";
  other.acres = Acres{5.0};
  done(add_stand(live_, knowledge_, ids_, other));
  done(add_crop_tree(live_, knowledge_, ids_, live_.data().stands.back().id, oak()));
  expect_refused(
      add_known_neighbour(live_, knowledge_, ids_, first, live_.data().walk_trees.back().id, {}),
      contradiction, "tag");
}

TEST_F(RefusedValues, OfNeighbours) {
  using enum ErrorCode;
  const WalkTreeId first = crop();
  const WalkTreeId second = crop();
  ContactDraft nowhere{{}, Seen::over, {}, {}};
  expect_refused(add_known_neighbour(live_, knowledge_, ids_, first, second, nowhere),
                 missing_value, "side");
  ContactDraft seen{{}, Seen::touches, tape_m(5.2), Degrees{10.0}};
  done(add_known_neighbour(live_, knowledge_, ids_, first, second, seen));
  const ContactId contact = live_.data().contacts.back().id;
  expect_refused(change_contact(live_, knowledge_, contact, nowhere), missing_value, "side");
  seen.azimuth = Degrees{400.0};
  expect_refused(change_contact(live_, knowledge_, contact, seen), out_of_range, "azimuth_deg");
  // 10 degrees is north of it, and no other side.
  expect_refused(look_open(live_, first, Side::north), contradiction, "side");
  EXPECT_TRUE(look_open(live_, first, Side::east));
}

TEST_F(RefusedValues, OfPlots) {
  using enum ErrorCode;
  expect_refused(start_plot(live_, knowledge_, plot(0), {.position = kNoPlace}), out_of_range,
                 "lat");
  expect_refused(start_plot(live_, knowledge_, plot(0), {.crew = std::string(5'000, 'x')}),
                 out_of_range, "crew");
  expect_refused(skip_plot(live_, knowledge_, plot(0), std::string(5'000, 'x')), out_of_range,
                 "skip_reason");
  expect_refused(skip_plot(live_, knowledge_, plot(0), " \n"), missing_value, "skip_reason");
  Plot added;
  added.stand = stand_;
  added.cruise = live_.data().cruises.front().id;
  added.note = std::string(50'000, 'x');
  expect_refused(add_plot(live_, knowledge_, ids_, added), out_of_range, "note");
  expect_refused(record_centre(live_, knowledge_, plot(0), {.at = kNoPlace, .fixes = 3}),
                 out_of_range, "lat");
  // Each crew once, and the first day.
  const auto visit = [&](const std::string& crew, const char* day) {
    done(start_plot(live_, knowledge_, plot(0), {.crew = crew, .day = *day_from_text(day)}));
  };
  visit("A. Doe", "2026-05-05");
  visit("B. Roe", "2026-05-04");
  visit("A. Doe", "2026-05-06");
  EXPECT_EQ(live_.data().cruises.front().crew, "A. Doe; B. Roe");
  EXPECT_EQ(live_.data().cruises.front().date, "2026-05-04");
}

TEST_F(RefusedValues, OfCounts) {
  using enum ErrorCode;
  done(set_task(live_, plot(1), PlotTask::count));
  for (int i = 0; i < 2; ++i) done(count_tree(live_, knowledge_, plot(1), SpeciesCode{802}, 1));
  EXPECT_EQ(refused(count_tree(live_, knowledge_, plot(1), SpeciesCode{802}, 10'000)).code,
            out_of_range);
  EXPECT_EQ(refused(set_task(live_, plot(1), PlotTask::measure)).code, contradiction);
  EXPECT_EQ(refused(plan_again(live_, plot(1))).what, "Plot 2 has 1 tree.");
  EXPECT_EQ(refused(count_regen(live_, knowledge_, ids_, {plot(1), SpeciesCode{802}}, 1)).what,
            "Plot 2 is a count point.");
  done(skip_plot(live_, knowledge_, plot(2), "bees"));
  EXPECT_EQ(refused(count_tree(live_, knowledge_, plot(2), SpeciesCode{802}, 1)).what,
            "Plot 3 was skipped.");
  EXPECT_EQ(refused(start_plot(live_, knowledge_, plot(2), {})).what, "Plot 3 was skipped: bees.");
  done(call_empty(live_, plot(0)));
  const SeedlingCell cell{plot(0), SpeciesCode{802}, RegenHeight::over_4_5_ft};
  expect_refused(count_regen(live_, knowledge_, ids_, {plot(0), kUnknown}, 1), unknown_species,
                 "species");
  expect_refused(count_regen(live_, knowledge_, ids_, cell, -1), out_of_range, "count");
  EXPECT_TRUE(set_regen(live_, knowledge_, ids_, cell, std::nullopt)->changes.empty());
  EXPECT_EQ(done(count_regen(live_, knowledge_, ids_, cell, 1)).changes.size(), 1U);
  EXPECT_EQ(refused(set_task(live_, plot(0), PlotTask::count)).what,
            "Seedlings were counted on plot 1.");
  EXPECT_EQ(refused(skip_plot(live_, knowledge_, plot(0), "bees")).what,
            "Plot 1 has seedling counts.");
}

TEST_F(RefusedValues, OfStumps) {
  using enum ErrorCode;
  const WalkTreeId tree = crop();
  StumpDraft draft{.tree = tree, .finding = Finding::hung};
  expect_refused(add_stump(live_, knowledge_, ids_, draft), contradiction, "finding");
  done(overrule(live_, knowledge_, ids_, tree, Verdict::kill_standing, "shade"));
  EXPECT_EQ(done(add_stump(live_, knowledge_, ids_, draft)).label, "tag 1 hung up");
  for (const Finding finding : {Finding::not_marked, Finding::hurt}) {
    draft.finding = finding;
    expect_refused(add_stump(live_, knowledge_, ids_, draft), contradiction, "finding");
  }
  StumpDraft untagged{.finding = Finding::not_marked, .under_bark = stump_cm(30.0)};
  untagged.position = kNoPlace;
  EXPECT_EQ(refused(add_stump(live_, knowledge_, ids_, untagged)).where, "stump/lat");
  untagged.position.reset();
  untagged.over_bark = stump_cm(29.0);
  EXPECT_EQ(refused(add_stump(live_, knowledge_, ids_, untagged)).where, "stump/under_bark");
  untagged.over_bark.reset();
  untagged.wound = Wound::large;
  EXPECT_EQ(refused(add_stump(live_, knowledge_, ids_, untagged)).where, "stump/wound");
  untagged.wound.reset();
  untagged.species = kUnknown;
  EXPECT_EQ(refused(add_stump(live_, knowledge_, ids_, untagged)).where, "stump/species");
  untagged.species.reset();
  EXPECT_EQ(done(add_stump(live_, knowledge_, ids_, untagged)).label,
            "stump without a tag: cut, not marked");
}

TEST_F(RefusedValues, OfTheTractAndItsCruises) {
  using enum ErrorCode;
  Tract tract;
  tract.name = "Cold Hollow";
  for (const char* state : {"oh", "O", "OHI"}) {
    tract.state = state;
    expect_refused(change_tract(live_, knowledge_, tract), not_a_choice, "state");
  }
  tract.state = "OH";
  tract.landing = kNoPlace;
  expect_refused(change_tract(live_, knowledge_, tract), out_of_range, "landing_lat");
  Stand twin;
  twin.name = "north slope";
  twin.acres = Acres{5.0};
  expect_refused(add_stand(live_, knowledge_, ids_, twin), duplicate, "stand");
  twin = live_.data().stands.front();
  twin.walked = twin.acres * 1.2;
  expect_refused(change_stand(live_, knowledge_, twin), contradiction, "walked_acres");
  Cruise cruise;
  cruise.name = "first";
  expect_refused(add_cruise(live_, knowledge_, ids_, cruise), duplicate, "cruise");
  cruise.name = "second";
  cruise.design = FixedDesign{0.04, 0.004, dbh_cm(11.5), UnitSystem::metric};
  EXPECT_EQ(design_text(cruise.design), "fixed plot, 0.04 ha; under 11.5 cm on 0.004 ha");
  cruise.min_dbh = dbh_cm(12.0);
  expect_refused(add_cruise(live_, knowledge_, ids_, cruise), contradiction, "small_below");
  cruise.design = FixedDesign{0.0, {}, {}, UnitSystem::us};
  EXPECT_TRUE(
      refused(add_cruise(live_, knowledge_, ids_, cruise)).where.starts_with("cruise/second/"));
}

TEST(BorderTreeOfFixedPlots, IsToldInTheUnitOfTheTapeAndByTheSmallPlot) {
  const FixedDesign design{0.04, 0.004, dbh_cm(11.5), UnitSystem::metric};
  // Derived: sqrt(400 m2 / pi) = 11.28 m, sqrt(40 m2 / pi) = 3.57 m.
  const auto large = border_check(design, {dbh_cm(30.0), tape_m(10.0), TapedTo::centre, Slope{}});
  ASSERT_TRUE(large);
  EXPECT_EQ(large->words, "IN by 1.28 m");
  const auto small = border_check(design, {dbh_cm(8.0), tape_m(10.0), TapedTo::centre, Slope{}});
  ASSERT_TRUE(small);
  EXPECT_TRUE(small->small_plot);
  EXPECT_EQ(small->words, "OUT by 6.43 m");
  EXPECT_NE(small->note.find("on the small plot"), std::string::npos);
  const auto face = border_check(design, {dbh_cm(30.0), tape_m(10.0), TapedTo::face, Slope{}});
  ASSERT_TRUE(face);
  EXPECT_GT(face->unsure.value, large->unsure.value) << "half a tenth of its radius more";
  const Slope cliff{Percent{250.0}};
  EXPECT_EQ(
      border_check(design, {dbh_cm(30.0), tape_m(10.0), TapedTo::centre, cliff}).error().where,
      "border/slope_pct");
  EXPECT_FALSE(border_check(PointDesign{-1.0, UnitSystem::us},
                            {dbh_in(12.0), tape_ft(30.0), TapedTo::centre, Slope{}}));
}

TEST(TallyClassesOfAForm, FollowTheTape) {
  const auto one = tally_classes(TallyClasses::one_inch, {}, dbh_in(3.0));
  ASSERT_EQ(one.size(), 3U);
  EXPECT_EQ(one.back().range, "2.5 to 3.4 in");
  const auto metric = tally_classes(TallyClasses::five_centimetres, dbh_cm(9.0), dbh_cm(20.0));
  ASSERT_EQ(metric.size(), 3U);
  EXPECT_EQ(metric.front().range, "7.5 to 12.4 cm");
  EXPECT_EQ(area_text(Acres{12.5}, UnitSystem::us), "12.5 ac");
  EXPECT_EQ(area_text(Acres{12.5}, UnitSystem::metric), "5.06 ha");  // derived: 0.40468564224 ha
}

TEST(FiguresShown, HaveAUnitInBothSystems) {
  for (const FigureUnit unit :
       {FigureUnit::basal_area, FigureUnit::trees, FigureUnit::diameter, FigureUnit::percent,
        FigureUnit::board_feet, FigureUnit::cords, FigureUnit::cubic_feet}) {
    const ShownUnit us = shown_unit(unit, UnitSystem::us);
    const ShownUnit metric = shown_unit(unit, UnitSystem::metric);
    EXPECT_EQ(us.factor, 1.0) << us.words << ": the core's own unit";
    EXPECT_EQ(metric.words == us.words, unit == FigureUnit::percent) << us.words;
    EXPECT_GT(metric.factor, 0.0);
  }
}

TEST(DistancesWalked, AreToldInEachUnit) {
  EXPECT_EQ(distance_text(Feet{312.0}, WalkUnit::feet), "312 ft");
  EXPECT_EQ(distance_text(Feet{312.0}, WalkUnit::chains), "4.73 ch");  // derived: 66 ft a chain
  EXPECT_EQ(distance_text(Feet{312.0}, WalkUnit::metres), "95 m");     // derived: 0.3048 m a foot
}

}  // namespace
}  // namespace oaklight::test
