#include "core/base/result.hpp"

#include <gtest/gtest.h>

#include <memory>

namespace oaklight {
namespace {

const Error kError{ErrorCode::no_data, "Nothing here.", "", ""};

TEST(Result, HoldsAValue) {
  const Result<int> result = 7;
  ASSERT_TRUE(result);
  EXPECT_EQ(result.value(), 7);
  EXPECT_EQ(*result, 7);
}

TEST(Result, HoldsAReason) {
  const Result<int> result = kError;
  EXPECT_FALSE(result);
  EXPECT_FALSE(result.has_value());
  EXPECT_EQ(result.error(), kError);
}

TEST(Result, TellsAnErrorThatIsAValueFromAFailure) {
  // The value type may be Error itself: an import that succeeds in listing faults.
  struct Faults {
    Error first;
  };
  const Result<Faults> listed = Faults{kError};
  EXPECT_TRUE(listed.has_value());
  EXPECT_EQ(listed->first, kError);
}

TEST(Result, GivesUpItsValueToAMove) {
  Result<std::unique_ptr<int>> result = std::make_unique<int>(3);
  const std::unique_ptr<int> taken = *std::move(result);
  ASSERT_NE(taken, nullptr);
  EXPECT_EQ(*taken, 3);
}

TEST(Result, LetsAValueBeChangedInPlace) {
  Result<int> result = 1;
  *result += 4;
  EXPECT_EQ(*result, 5);
}

TEST(Status, IsDoneOrAReason) {
  EXPECT_TRUE(Status{Done{}}.has_value());
  EXPECT_FALSE(Status{kError}.has_value());
}

}  // namespace
}  // namespace oaklight
