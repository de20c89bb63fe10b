// The notes that a person reads under a figure must say what the code does and what its headers
// cite; these tests hold the two together.
#include "core/stand/sources.hpp"

#include <gtest/gtest.h>

#include <fstream>
#include <regex>
#include <set>
#include <sstream>
#include <string>

#include "core/measure/cords.hpp"
#include "core/measure/stocking.hpp"
#include "core/measure/tree_volume.hpp"
#include "core/sample/estimate.hpp"
#include "core/stand/stand_stocking.hpp"
#include "tests/support/places.hpp"

namespace oaklight {
namespace {

/// A header as one line: comment marks and line breaks gone, so that a citation may be wrapped.
std::string flat_text_of(std::string_view header) {
  std::ifstream in(test::source_path(std::string(header)));
  EXPECT_TRUE(in.is_open()) << header;
  std::stringstream text;
  text << in.rdbuf();
  const std::string bare = std::regex_replace(text.str(), std::regex("(///?|/\\*\\*<|///<)"), " ");
  return std::regex_replace(bare, std::regex("\\s+"), " ");
}

bool says(std::string_view text, std::string_view words) {
  return text.find(words) != std::string_view::npos;
}

TEST(Sources, EachNoteSaysHowAndCitesSomething) {
  std::set<std::string_view> keys;
  for (const SourceNote& note : source_notes()) {
    EXPECT_TRUE(keys.insert(note.key).second) << note.key;
    EXPECT_FALSE(note.name.empty()) << note.key;
    EXPECT_FALSE(note.how.empty()) << note.key;
    EXPECT_FALSE(note.citations.empty()) << note.key;
    EXPECT_EQ(source_note(note.key), &note);
  }
  EXPECT_GE(keys.size(), 15U);
  EXPECT_EQ(source_note("no_such_figure"), nullptr);
}

TEST(Sources, EachWorkIsNamedByTheHeaderThatComputesByIt) {
  for (const SourceNote& note : source_notes()) {
    for (const Citation& citation : note.citations) {
      EXPECT_TRUE(says(flat_text_of(citation.header), citation.work))
          << note.key << ": " << citation.work << " is not in " << citation.header;
    }
  }
}

TEST(Sources, WhatTheHeaderRecallsIsNotSaidToBeRead) {
  for (const SourceNote& note : source_notes()) {
    for (const Citation& citation : note.citations) {
      const std::string text = flat_text_of(citation.header);
      const std::size_t at = text.find(citation.work);
      ASSERT_NE(at, std::string::npos);
      // "..., from memory" follows the work within the sentence that names it.
      const std::string after = text.substr(at + citation.work.size(), 40);
      if (says(after.substr(0, after.find(';')), "from memory")) {
        EXPECT_EQ(citation.status, SourceStatus::from_memory) << note.key << ": " << citation.work;
      }
    }
  }
}

TEST(Sources, EachLogRuleHasItsNote) {
  for (const auto& [rule, word] : kWords<LogRule>) {
    const SourceNote* note = source_note(source_key(rule));
    ASSERT_NE(note, nullptr) << word;
    EXPECT_TRUE(says(note->name, name_of(rule))) << note->name;
  }
}

// The numbers in the words, against the functions that they describe. Derived: each is what the
// function gives for one tree an acre of which only that sum is not 0.
TEST(Sources, StockingIsSaidWithTheCoefficientsThatAreUsed) {
  const std::string_view how = source_note("stocking")->how;
  EXPECT_TRUE(says(how, "-0.00507 + 0.01698 D + 0.00317 D x D"));
  EXPECT_DOUBLE_EQ(upland_oak_stocking({1.0, 0.0, 0.0}).value, -0.00507);
  EXPECT_DOUBLE_EQ(upland_oak_stocking({0.0, 1.0, 0.0}).value, 0.01698);
  EXPECT_DOUBLE_EQ(upland_oak_stocking({0.0, 0.0, 1.0}).value, 0.00317);
  const std::string_view range = source_note("stocking")->range;
  EXPECT_TRUE(says(range, "3 to 15 in"));
  EXPECT_TRUE(says(range, "22 in"));
  EXPECT_EQ(kStockingGuideMin, Inches{3.0});
  EXPECT_EQ(kStockingGuidePrintedMax, Inches{15.0});
  EXPECT_EQ(kStockingGuideMax, Inches{22.0});
  EXPECT_TRUE(says(how, "2 in and more"));
  EXPECT_EQ(kStockingMinDbh, Inches{2.0});
  EXPECT_TRUE(says(source_note("guard_stocking")->how, "live ones of 5 in and more"));
}

TEST(Sources, RangesAreThoseAtWhichTheFunctionsRefuse) {
  const auto dbh = [](int tenths) { return *Dbh::from_tenths(tenths, UnitSystem::us); };
  EXPECT_TRUE(says(source_note("cords")->range, "DBH 5 to 22 in"));
  EXPECT_FALSE(firewood_cords(dbh(49)));
  EXPECT_TRUE(firewood_cords(dbh(50)));
  EXPECT_TRUE(firewood_cords(dbh(220)));
  EXPECT_FALSE(firewood_cords(dbh(221)));
  EXPECT_TRUE(says(source_note("board_feet")->range, "DBH 10 to 40 in, 1 to 4 logs"));
  EXPECT_FALSE(tree_board_feet(LogRule::doyle, dbh(99), 2));
  EXPECT_TRUE(tree_board_feet(LogRule::doyle, dbh(100), 2));
  EXPECT_TRUE(tree_board_feet(LogRule::doyle, dbh(400), 8));
  EXPECT_FALSE(tree_board_feet(LogRule::doyle, dbh(401), 8));
  EXPECT_FALSE(tree_board_feet(LogRule::doyle, dbh(200), 1));
  EXPECT_FALSE(tree_board_feet(LogRule::doyle, dbh(200), 9));
  EXPECT_TRUE(says(source_note("board_feet")->how, "form class (78 %)"));
  EXPECT_EQ(FormClass{}.percent, 78);
  EXPECT_TRUE(says(source_note("interval")->range, "fewer than 5 plots"));
  EXPECT_EQ(kFairPlots, 5);
}

}  // namespace
}  // namespace oaklight
