#include "core/model/words.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "core/model/mark.hpp"

namespace oaklight {
namespace {

/// Each value up to last has a word of its own that leads back to it, and nothing else does.
template <class E>
void expect_whole(E last) {
  ASSERT_EQ(kWords<E>.size(), static_cast<std::size_t>(last) + 1);
  std::set<std::string_view> words;
  for (std::size_t i = 0; i < kWords<E>.size(); ++i) {
    const E value = static_cast<E>(i);
    const std::string_view word = word_of(value);
    ASSERT_FALSE(word.empty()) << i;
    EXPECT_TRUE(words.insert(word).second) << word;
    EXPECT_EQ(from_word<E>(word), value) << word;
    EXPECT_EQ(word.find_first_of(" ,|\t\n"), std::string_view::npos)
        << word << ": words stand in lists and CSV cells";
  }
  EXPECT_EQ(from_word<E>(""), std::nullopt);
  EXPECT_EQ(from_word<E>("no such word"), std::nullopt);
}

TEST(Words, AreWholeForEachStoredEnumeration) {
  expect_whole(LeafType::softwood);
  expect_whole(OakGroup::red);
  expect_whole(MastClass::hard);
  expect_whole(Stance::prefer_remove);
  expect_whole(Level::high);
  expect_whole(TreeStatus::dead);
  expect_whole(CrownClass::overtopped);
  expect_whole(Seen::not_looked);
  expect_whole(Condition::high_joint);
  expect_whole(Side::west);
  expect_whole(LineKind::power_line);
  expect_whole(Goal::mixed);
  expect_whole(PlotStatus::skipped);
  expect_whole(RegenHeight::over_4_5_ft);
  expect_whole(Verdict::look_again);
  expect_whole(Method::girdle);
  expect_whole(Product::firewood);
  expect_whole(Reader::firewood);
  expect_whole(Finding::hurt);
  expect_whole(Wound::broken);
  expect_whole(WoundPlace::crown);
  expect_whole(AcornCrop::bumper);
}

TEST(Words, AreFoundInTheirExactSpellingOnly) {
  EXPECT_EQ(from_word<CrownClass>("codominant"), CrownClass::codominant);
  EXPECT_EQ(from_word<CrownClass>("Codominant"), std::nullopt);
  EXPECT_EQ(from_word<CrownClass>("codominant "), std::nullopt);
  EXPECT_EQ(from_word<CrownClass>("codom"), std::nullopt);
}

}  // namespace
}  // namespace oaklight
