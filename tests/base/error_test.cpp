#include "core/base/error.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>
#include <string>

namespace oaklight {
namespace {

TEST(Error, HasOneStableNameForEachCode) {
  std::set<std::string_view> names;
  int code = 0;
  for (; name_of(static_cast<ErrorCode>(code)) != "unknown"; ++code) {
    const std::string_view name = name_of(static_cast<ErrorCode>(code));
    EXPECT_TRUE(names.insert(name).second) << name << " is given to two codes";
    EXPECT_TRUE(std::all_of(name.begin(), name.end(), [](char c) {
      return (c >= 'a' && c <= 'z') || c == '_';
    })) << name;
  }
  EXPECT_GT(code, static_cast<int>(ErrorCode::not_a_number));
  EXPECT_TRUE(names.contains("cannot_write"));
  // A gap in the switch would hide here: every later code must be unnamed too.
  for (; code < 200; ++code) EXPECT_EQ(name_of(static_cast<ErrorCode>(code)), "unknown") << code;
}

TEST(Error, ReadsAsPlaceFactAndRemedy) {
  const Error error{ErrorCode::out_of_range, "DBH 412.0 in is too large.", "trees.csv:14:dbh_in",
                    "Check the decimal point."};
  EXPECT_EQ(to_text(error),
            "trees.csv:14:dbh_in: DBH 412.0 in is too large. Check the decimal point.");
}

TEST(Error, LeavesOutWhatIsNotKnown) {
  EXPECT_EQ(to_text({ErrorCode::no_data, "There are no plots.", "", ""}), "There are no plots.");
  EXPECT_EQ(to_text({ErrorCode::no_data, "No plots.", "stand/A", ""}), "stand/A: No plots.");
}

}  // namespace
}  // namespace oaklight
