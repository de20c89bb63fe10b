#include "core/release/keep_list.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/trees.hpp"

namespace oaklight {
namespace {

using test::cards;
using test::input_of;
using testing::Contains;
using testing::IsEmpty;
using testing::Not;

Keep keep_of(const ReleaseInput& input, std::string_view tag) {
  const std::vector<Keep> keeps = keep_list(input, traits_of(input));
  for (std::size_t i = 0; i < keeps.size(); ++i) {
    if (input.graph.trees()[i].tag == tag) return keeps[i];
  }
  ADD_FAILURE() << "no tree " << tag;
  return Keep::no;
}

/// The entry of one tree that stands alone on the list.
Keep alone(const std::string& tree) {
  return keep_of(input_of(cards("crop O WO 14 co\nO t N 16 touches " + tree), 1.0), "t");
}

TEST(KeepList, WhatATreeCarriesKeepsIt) {
  EXPECT_EQ(alone("RM 12 co"), Keep::no);
  EXPECT_EQ(alone("RM 12 co den"), Keep::den);
  EXPECT_EQ(alone("RM 6 co nest"), Keep::nest);
  EXPECT_EQ(alone("RM 12 dead"), Keep::dead);
  EXPECT_EQ(alone("RM 12 co lc=5"), Keep::nearly_dead);
  EXPECT_EQ(alone("RM 12 co lc=10"), Keep::no);
  EXPECT_EQ(alone("RM 12 co legacy"), Keep::legacy);
  EXPECT_EQ(alone("RM 12 co bank_tree"), Keep::bank);
  EXPECT_EQ(alone("RM 12 co line_tree"), Keep::line);
  EXPECT_EQ(alone("RM 12 co roost_bark"), Keep::bark_plates);
}

TEST(KeepList, SizesDecideAboutHollowsAndShaggyHickories) {
  EXPECT_EQ(alone("RM 12 co cavity_high"), Keep::hollow);
  EXPECT_EQ(alone("RM 11.9 co cavity_high"), Keep::no);
  EXPECT_EQ(alone("RM 17.9 co cavity_low"), Keep::no);
  EXPECT_EQ(alone("RM 18 co cavity_low"), Keep::hollow);
  EXPECT_EQ(alone("SH 11.1 co"), Keep::roost_hickory);
  EXPECT_EQ(alone("SH 11 co"), Keep::no);
  EXPECT_EQ(alone("PH 14 co"), Keep::no);
}

TEST(KeepList, AnInvasiveTreeStaysOnlyForItsDenOrItsSecondOwner) {
  EXPECT_EQ(alone("TOH 25 co"), Keep::no);
  EXPECT_EQ(alone("TOH 12 co legacy"), Keep::no);
  EXPECT_EQ(alone("TOH 12 co den"), Keep::den);
  EXPECT_EQ(alone("TOH 12 co line_tree"), Keep::line);
}

TEST(KeepList, TheBiggestOldTreesFillTheQuotaOfTheGroundCovered) {
  // One an acre above 24 in, common practice; here two acres.
  const ReleaseInput input = input_of(cards(R"(
    crop O WO 14 co
    O a N 20 touches RM 25 co
    O b E 20 touches RM 31 co
    O c S 20 touches RM 28 co
    O d W 20 touches RM 24 co)"),
                                      2.0);
  EXPECT_EQ(keep_of(input, "b"), Keep::big_old);
  EXPECT_EQ(keep_of(input, "c"), Keep::big_old);
  EXPECT_EQ(keep_of(input, "a"), Keep::no);
  EXPECT_EQ(keep_of(input, "d"), Keep::no);
}

TEST(KeepList, WhereTheGroundIsNotKnownEveryBigTreeStays) {
  ReleaseInput input = input_of(cards(R"(
    crop O WO 14 co
    O a N 20 touches RM 25 co
    O b E 20 touches RM 31 co)"),
                                0.5);
  EXPECT_EQ(keep_of(input, "a"), Keep::no);
  input.stand.covered.reset();
  EXPECT_EQ(keep_of(input, "a"), Keep::big_old);
}

TEST(KeepList, FruitTreesOfTheStandCountForTheirQuota) {
  const auto text = R"(
    crop O WO 14 co
    O a N 20 touches BC 10 co
    O b E 20 touches BC 9 co
    O c S 20 touches BC 8 co
    O d W 20 touches BC 7 co)";
  ReleaseInput input = input_of(cards(text), 1.0);  // three an acre at least, common practice
  EXPECT_EQ(keep_of(input, "c"), Keep::fruit);
  EXPECT_EQ(keep_of(input, "d"), Keep::no);
  input.stand.fruit_trees = TreesPerAcre{6.0};  // two more stand off the cards
  EXPECT_EQ(keep_of(input, "a"), Keep::fruit);
  EXPECT_EQ(keep_of(input, "b"), Keep::no);
  input.stand.fruit_trees = TreesPerAcre{20.0};
  EXPECT_EQ(keep_of(input, "a"), Keep::no);
}

TEST(KeepList, AScarceSpeciesStaysUnlessNobodyMissesIt) {
  ReleaseInput input = input_of(cards(R"(
    crop O WO 14 co
    O bass N 20 touches BW 10 co
    O maple E 20 touches RM 9 co)"),
                                1.0);
  input.stand.ba_by_species[SpeciesCode{951}] = SquareFeetPerAcre{5.4};  // of 110: 4.9 %
  input.stand.ba_by_species[SpeciesCode{316}] = SquareFeetPerAcre{5.4};
  EXPECT_EQ(keep_of(input, "bass"), Keep::scarce_species);
  EXPECT_EQ(keep_of(input, "maple"), Keep::no);                          // food rank 2: no loss
  input.stand.ba_by_species[SpeciesCode{951}] = SquareFeetPerAcre{5.6};  // 5.1 %
  EXPECT_EQ(keep_of(input, "bass"), Keep::no);
}

TEST(KeepList, EveryReasonHasWordsAndARule) {
  for (int i = 1; i <= static_cast<int>(Keep::line); ++i) {
    const KeepWords words = words_of(static_cast<Keep>(i));
    EXPECT_FALSE(words.text.empty()) << i;
    EXPECT_FALSE(words.would_change.empty()) << i;
    EXPECT_THAT(words.rules, Not(IsEmpty())) << i;
  }
}

}  // namespace
}  // namespace oaklight
