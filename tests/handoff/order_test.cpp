#include "core/handoff/order.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "tests/handoff/test_tract.hpp"

namespace oaklight {
namespace {

using test::at;
using testing::ElementsAre;

TEST(TagOrder, ReadsNumbersAsNumbers) {
  std::vector<std::string> tags = {"10", "B10", "9", "B2", "2a", "", "2", "02", "A-7", "A-12"};
  std::sort(tags.begin(), tags.end(), tag_before);
  EXPECT_THAT(tags, ElementsAre("", "02", "2", "2a", "9", "10", "A-7", "A-12", "B2", "B10"));
}

TEST(TagOrder, IsStrict) {
  EXPECT_FALSE(tag_before("7", "7"));
  EXPECT_NE(tag_before("007", "7"), tag_before("7", "007"));
  EXPECT_TRUE(tag_before("99999999999999999999", "100000000000000000000"));
}

std::vector<std::string> walked(std::vector<Stop> stops, std::optional<Position> start) {
  std::vector<std::string> tags;
  for (const std::size_t i : walking_order(stops, start)) tags.emplace_back(stops[i].tag);
  return tags;
}

TEST(WalkingOrder, GoesAlwaysOnToTheNearestTree) {
  const std::vector<Stop> stops = {
      {"1", at(300, 0)}, {"2", at(100, 0)}, {"3", at(190, 0)}, {"4", at(-50, 0)}};
  EXPECT_THAT(walked(stops, at(40, 0)), ElementsAre("2", "3", "1", "4"));
}

TEST(WalkingOrder, WithoutAStartBeginsAtTheFirstTag) {
  const std::vector<Stop> stops = {{"12", at(0, 0)}, {"3", at(100, 0)}, {"7", at(40, 0)}};
  EXPECT_THAT(walked(stops, std::nullopt), ElementsAre("3", "7", "12"));
}

TEST(WalkingOrder, TreesWithoutAPlaceComeLast) {
  const std::vector<Stop> stops = {{"10", std::nullopt}, {"2", std::nullopt}, {"30", at(0, 0)}};
  EXPECT_THAT(walked(stops, at(0, 0)), ElementsAre("30", "2", "10"));
}

TEST(WalkingOrder, IsTheSameWhateverOrderTheTreesComeIn) {
  std::vector<Stop> stops = {
      {"1", at(0, 0)}, {"2", at(0, 0)}, {"3", at(60, 10)}, {"4", at(20, 90)}, {"5", std::nullopt}};
  const auto first = walked(stops, std::nullopt);
  std::reverse(stops.begin(), stops.end());
  EXPECT_EQ(walked(stops, std::nullopt), first);
}

TEST(WalkingOrder, OfNoTreesIsEmpty) { EXPECT_TRUE(walking_order({}, at(0, 0)).empty()); }

}  // namespace
}  // namespace oaklight
