// Names that a join found used twice, mended; and questions in words.
#include "core/session/join_work.hpp"

#include <gtest/gtest.h>

#include "core/session/question_words.hpp"
#include "tests/support/difference.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/test_cruise.hpp"

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

}  // namespace
}  // namespace oaklight::test
