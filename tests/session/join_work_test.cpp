// Names that a join found used twice, mended; and questions in words.
#include "core/session/join_work.hpp"

#include <gtest/gtest.h>

#include "core/session/question_words.hpp"
#include "tests/support/difference.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/test_cruise.hpp"
#include "tests/support/test_ids.hpp"

namespace oaklight::test {
namespace {

/// Two crews that each called their stand and cruise the same.
class JoinWork : public testing::Test {
 protected:
  JoinWork() {
    const StandId first = cruise_.stand("Cove", 10.0);
    a_ = cruise_.plot(first);
    const StandId second = cruise_.stand("Cove (2nd)", 10.0);
    b_ = cruise_.plot(second);
    cruise_.data.plots[0].label = "1";
    cruise_.data.plots[1].label = "2";
  }
  Question question(const std::string& table, const std::string& name,
                    std::vector<std::string> uids) {
    Question asked{QuestionKind::used_twice, table, name, {}, 0};
    for (const std::string& uid : uids) asked.sides.emplace_back().uid = uid;
    return asked;
  }
  Question of_stands() {
    return question("stand", "Cove",
                    {to_text(cruise_.data.stands[0].id), to_text(cruise_.data.stands[1].id)});
  }
  TractData after(const Action& action) {
    LiveTract live(cruise_.data);
    live.follow(action.changes);
    return live.data();
  }

  TestCruise cruise_;
  PlotId a_, b_;
};

TEST_F(JoinWork, TwoStandsBecomeOne) {
  const auto action = put_together(LiveTract(cruise_.data), of_stands(), 1);
  ASSERT_TRUE(action) << to_text(action.error());
  const TractData data = after(*action);
  ASSERT_EQ(data.stands.size(), 1U);
  EXPECT_EQ(data.stands[0].name, "Cove");
  for (const Plot& plot : data.plots) EXPECT_EQ(plot.stand, data.stands[0].id);
}

TEST_F(JoinWork, PlotsOfOneLabelAreNamedFirst) {
  cruise_.data.plots[1].label = "1";
  const auto action = put_together(LiveTract(cruise_.data), of_stands(), 1);
  ASSERT_FALSE(action);
  EXPECT_EQ(action.error().code, ErrorCode::duplicate);
  EXPECT_EQ(action.error().where, "plot/1");
}

TEST_F(JoinWork, CruisesBecomeOneOnlyWhenTheyAreAlike) {
  cruise_.next_cruise(PointDesign{});
  auto& cruises = cruise_.data.cruises;
  cruise_.data.plots[1].cruise = cruises[1].id;
  const Question asked = question("cruise", "", {to_text(cruises[0].id), to_text(cruises[1].id)});
  const auto action = put_together(LiveTract(cruise_.data), asked, 1);
  ASSERT_TRUE(action) << to_text(action.error());
  EXPECT_EQ(after(*action).cruises.size(), 1U);
  cruises[1].min_dbh = dbh_in(5.0);
  EXPECT_EQ(put_together(LiveTract(cruise_.data), asked, 1).error().code, ErrorCode::contradiction);
}

TEST_F(JoinWork, TheSecondGetsAnotherName) {
  const LiveTract live(cruise_.data);
  const auto action = name_anew(live, of_stands(), 1, " Ridge ");
  ASSERT_TRUE(action) << to_text(action.error());
  EXPECT_EQ(after(*action).stands[1].name, "Ridge");
  EXPECT_EQ(name_anew(live, of_stands(), 1, "Cove").error().code, ErrorCode::duplicate);
  EXPECT_EQ(name_anew(live, of_stands(), 1, " ").error().code, ErrorCode::missing_value);
  EXPECT_EQ(name_anew(live, of_stands(), 5, "Ridge").error().code, ErrorCode::not_a_choice);
}

TEST_F(JoinWork, WhenTheFirstGetsAnotherTheSecondWearsItsOwnAgain) {
  const auto action = name_anew(LiveTract(cruise_.data), of_stands(), 0, "Ridge");
  ASSERT_TRUE(action) << to_text(action.error());
  const TractData data = after(*action);
  EXPECT_EQ(data.stands[0].name, "Ridge");
  EXPECT_EQ(data.stands[1].name, "Cove");
}

TEST_F(JoinWork, WordsTellOnlyWhatDiffers) {
  Question asked{QuestionKind::both_changed, "tree", "7", {}, 0};
  for (const char* dbh : {"111", "222"}) {
    QuestionSide& side = asked.sides.emplace_back();
    side.device = "tablet a";
    side.at = "2026-05-04T13:07:00.000Z";
    side.label = "correct";
    side.cells = {{"units", "us"}, {"dbh_tenths", dbh}, {"species_fia", "833"}};
  }
  asked.sides[1].cells.emplace_back("height_hundredths", "7125");
  const SaidQuestion said = words_of(asked, test_species());
  EXPECT_EQ(title_of(said, asked.kind), "tree on plot 7: both changed");
  ASSERT_EQ(said.sides.size(), 2U);
  EXPECT_EQ(said.sides[0].when, "2026-05-04 13:07");
  EXPECT_EQ(said.sides[0].fields, (std::vector<SaidField>{{"DBH", "11.1 in"}, {"height", ""}}));
  EXPECT_EQ(said.sides[1].fields,
            (std::vector<SaidField>{{"DBH", "22.2 in"}, {"height", "71.25 ft"}}));
}

TEST_F(JoinWork, ValuesFromListsOfTheFormKeepTheirWords) {
  Question asked{QuestionKind::both_changed, "walk_tree", "101", {}, 0};
  for (const char* conditions : {"den_tree|hollow_stem", ""}) {
    QuestionSide& side = asked.sides.emplace_back();
    side.cells = {{"units", "us"}, {"conditions", conditions}};
  }
  asked.sides[0].cells.emplace_back("crown_class", "codominant");
  asked.sides[0].cells.emplace_back("note", "den_tree");
  const SaidQuestion said = words_of(asked, test_species());
  EXPECT_EQ(
      said.sides[0].fields,
      (std::vector<SaidField>{{"conditions", "den tree, hollow stem", {"den_tree", "hollow_stem"}},
                              {"crown class", "codominant", {"codominant"}},
                              {"note", "den_tree"}}));
  EXPECT_TRUE(said.sides[1].fields[0].chosen.empty());
}

TEST_F(JoinWork, QuestionsOfEveryKindSayWhatToDo) {
  const auto said = [&](QuestionKind kind, const std::string& table, std::size_t sides) {
    Question asked{kind, table, "7", {}, 0};
    asked.sides.resize(sides);
    const SaidQuestion words = words_of(asked, test_species());
    return title_of(words, kind) + " | " + words.mend;
  };
  using enum QuestionKind;
  EXPECT_EQ(said(removed_in_use, "plot", 2),
            "plot 7: removed by one, used by another | Keep it, or remove it with all that belongs "
            "to it.");
  EXPECT_EQ(
      said(used_twice, "walk_tree", 2),
      "tree with tag 7: used twice | Find both trees. Give one of them a new tag, on the tree "
      "and here, before any list leaves the tract.");
  EXPECT_EQ(said(used_twice, "stand", 3),
            "stand 7: used 3 times | If it is one stand, put them together; if not, give one of "
            "them another name.");
  EXPECT_EQ(said(used_twice, "cruise", 2),
            "cruise 7: used twice | If it is one cruise, put them together; if not, give one of "
            "them another name.");
  EXPECT_EQ(said(used_twice, "plot", 2),
            "plot 7: used twice | Give one of them another label. A plot that was taken twice "
            "counts twice until one is removed.");
  EXPECT_EQ(said(both_changed, "leaf", 2).substr(0, 20), "leaf 7: both changed") << "a newer kind";
}

TEST_F(JoinWork, EveryCellIsSaidAsPeopleSayIt) {
  Question asked{QuestionKind::used_twice, "walk_tree", "101", {}, 0};
  const auto said = [&](const std::string& column, const std::string& value,
                        const std::string& units = "us") {
    asked.sides.assign(1, {});
    asked.sides[0].cells = {{"units", units}, {column, value}};
    const SaidQuestion words = words_of(asked, test_species());
    for (const SaidField& field : words.sides[0].fields) {
      if (field.what != "units") return field.what + ": " + field.value;
    }
    return std::string("not said");
  };
  EXPECT_EQ(said("species_fia", "833"), "species: northern red oak");
  EXPECT_EQ(said("species_fia", "9999"), "species: 9999") << "of no table here";
  EXPECT_EQ(said("species_fia", "oak"), "species: oak");
  EXPECT_EQ(said("dbh_tenths", "312", "metric"), "DBH: 31.2 cm");
  EXPECT_EQ(said("distance_hundredths", "521", "metric"), "distance: 5.21 m");
  EXPECT_EQ(said("azimuth_tenths", "1234"), "azimuth: 123.4\xC2\xB0");
  EXPECT_EQ(said("azimuth_tenths", "north"), "azimuth: north") << "no number is said as it is";
  EXPECT_EQ(said("by_hand", "1"), "decided by hand: yes");
  EXPECT_EQ(said("confirmed", "0"), "confirmed: no");
  EXPECT_EQ(said("demo", "2"), "invented data: 2");
  EXPECT_EQ(said("crop", "1"), "crop tree: yes");
  EXPECT_EQ(said("crop", "bumper"), "crop: bumper") << "of an acorn year";
  EXPECT_EQ(said("slope_pct", "35"), "slope: 35 %");
  EXPECT_EQ(said("site_index_ft", "70"), "site index: 70 ft");
  EXPECT_EQ(said("age_years", "85"), "age: 85 years");
  EXPECT_EQ(said("accuracy_m", "4.6"), "accuracy: 4.6 m");
  EXPECT_EQ(said("rules", "R1.50|R4.02"), "rules: R1.50, R4.02");
  EXPECT_EQ(said("sides", "north|west"), "sides: north, west");
  EXPECT_EQ(said("name", "a_b"), "name: a_b") << "what a person typed stays";
  EXPECT_EQ(said("sha256", "0123"), "not said");
  EXPECT_EQ(said("built_in_sha256", "0123"), "not said");
  const std::string long_text = std::string(119, 'x') + "\xC3\xA4" + std::string(50, 'y');
  EXPECT_EQ(said("text", long_text), "text: " + std::string(119, 'x') + " ...")
      << "never half of a letter";
}

TEST_F(JoinWork, WhatOneSideLeftOutIsSaidAsNothing) {
  Question asked{QuestionKind::both_changed, "plot", "7", {}, 0};
  asked.sides.resize(2);
  asked.sides[0].cells = {{"slope_pct", "35"}, {"age_years", "85"}, {"label", "7"}};
  asked.sides[1].cells = {{"slope_pct", ""}, {"label", "7"}};
  asked.sides[1].at = "soon";
  const SaidQuestion said = words_of(asked, test_species());
  EXPECT_EQ(said.sides[0].fields, (std::vector<SaidField>{{"age", "85 years"}, {"slope", "35 %"}}));
  EXPECT_EQ(said.sides[1].fields, (std::vector<SaidField>{{"age", ""}, {"slope", ""}}));
  EXPECT_EQ(said.sides[1].when, "soon");
}

TEST_F(JoinWork, CruisesTagsAndLabelsGetAnotherNameToo) {
  cruise_.next_cruise(PointDesign{}).name = "test (2nd)";
  const auto& cruises = cruise_.data.cruises;
  const Question of_cruises =
      question("cruise", "test", {to_text(cruises[0].id), to_text(cruises[1].id)});
  const auto named = name_anew(LiveTract(cruise_.data), of_cruises, 1, "spring");
  ASSERT_TRUE(named) << to_text(named.error());
  EXPECT_EQ(named->label, "test (2nd) is spring");
  EXPECT_EQ(after(*named).cruises[1].name, "spring");
  EXPECT_EQ(name_anew(LiveTract(cruise_.data), of_cruises, 1, "test").error().code,
            ErrorCode::duplicate);

  for (const std::uint32_t n : {901U, 902U}) {
    WalkTree tree{nth_id<WalkTreeId>(n), cruise_.data.stands[0].id, n == 901 ? "5" : "5 (2nd)",
                  TreeFacts{SpeciesCode{802}, dbh_in(12.0)}};
    cruise_.data.walk_trees.push_back(tree);
  }
  EXPECT_EQ(tag_used_twice(cruise_.data), "5");
  const Question of_tags = question(
      "walk_tree", "5", {to_text(nth_id<WalkTreeId>(901)), to_text(nth_id<WalkTreeId>(902))});
  const auto tagged = name_anew(LiveTract(cruise_.data), of_tags, 1, "6");
  ASSERT_TRUE(tagged) << to_text(tagged.error());
  EXPECT_EQ(after(*tagged).walk_trees[1].tag, "6");
  EXPECT_EQ(name_anew(LiveTract(cruise_.data), of_tags, 1, "5").error().code, ErrorCode::duplicate);

  const Question of_labels = question("plot", "1", {to_text(a_), to_text(b_)});
  const auto labelled = name_anew(LiveTract(cruise_.data), of_labels, 1, "9");
  ASSERT_TRUE(labelled) << to_text(labelled.error());
  EXPECT_EQ(after(*labelled).plots[1].label, "9");
  cruise_.data.plots[1].stand = cruise_.data.plots[0].stand;
  EXPECT_EQ(name_anew(LiveTract(cruise_.data), of_labels, 1, "1").error().code,
            ErrorCode::duplicate);
  EXPECT_EQ(name_anew(LiveTract(cruise_.data), of_labels, 1, "9").value().changes.size(), 1U);
}

TEST_F(JoinWork, WhatIsGoneOrNoAnswerIsNotMended) {
  const LiveTract live(cruise_.data);
  const auto code = [](const Result<Action>& action) {
    return action ? ErrorCode::no_data : action.error().code;
  };
  const std::string nobody = to_text(nth_id<StandId>(999));
  for (const std::string table : {"stand", "cruise"}) {
    const Question gone = question(table, "Cove", {nobody, to_text(nth_id<StandId>(998))});
    EXPECT_EQ(code(put_together(live, gone, 1)), ErrorCode::unknown_reference) << table;
    EXPECT_EQ(code(name_anew(live, gone, 1, "Ridge")), ErrorCode::unknown_reference) << table;
    EXPECT_EQ(code(put_together(live, gone, 0)), ErrorCode::not_a_choice) << "with itself";
    EXPECT_EQ(code(put_together(live, gone, 7)), ErrorCode::not_a_choice);
    const Question unread = question(table, "Cove", {"no id", nobody});
    EXPECT_EQ(code(put_together(live, unread, 1)), ErrorCode::not_a_choice);
    EXPECT_EQ(code(put_together(live, unread, 0)), ErrorCode::not_a_choice);
  }
  EXPECT_EQ(code(put_together(live, question("plot", "1", {nobody, nobody}), 1)),
            ErrorCode::not_a_choice);
  Question changed = of_stands();
  changed.kind = QuestionKind::both_changed;
  EXPECT_EQ(code(put_together(live, changed, 1)), ErrorCode::not_a_choice);
  EXPECT_EQ(code(name_anew(live, changed, 1, "Ridge")), ErrorCode::not_a_choice);
}

TEST_F(JoinWork, AWalkAndItsStumpsMoveWithTheirStand) {
  const StandId second = cruise_.data.stands[1].id;
  cruise_.data.walk_trees.push_back(
      {nth_id<WalkTreeId>(901), second, "5", TreeFacts{SpeciesCode{802}, dbh_in(12.0)}});
  for (const std::uint32_t n : {951U, 952U}) {
    Stump& stump = cruise_.data.stumps.emplace_back();
    stump.id = nth_id<StumpId>(n);
    stump.finding = Finding::not_marked;
    if (n == 951) stump.stand = second;
  }
  const auto action = put_together(LiveTract(cruise_.data), of_stands(), 1);
  ASSERT_TRUE(action) << to_text(action.error());
  const TractData data = after(*action);
  EXPECT_EQ(data.walk_trees[0].stand, data.stands[0].id);
  EXPECT_EQ(data.stumps[0].stand, data.stands[0].id);
  EXPECT_FALSE(data.stumps[1].stand) << "that of no stand stays of none";
}

}  // namespace
}  // namespace oaklight::test
