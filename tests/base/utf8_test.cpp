#include "core/base/utf8.hpp"

#include <gtest/gtest.h>

namespace oaklight {
namespace {

// Well-formed and ill-formed sequences by RFC 3629, sections 3 and 4.
TEST(Utf8, TakesTheFirstAndLastCharacterOfEachLength) {
  for (const std::string_view text :
       {std::string_view(""), std::string_view("\0", 1), std::string_view("\x7F"),
        std::string_view("\xC2\x80"), std::string_view("\xDF\xBF"),
        std::string_view("\xE0\xA0\x80"), std::string_view("\xEF\xBF\xBF"),
        std::string_view("\xF0\x90\x80\x80"), std::string_view("\xF4\x8F\xBF\xBF"),
        std::string_view("\xED\x9F\xBF"), std::string_view("\xEE\x80\x80"),
        std::string_view("oak \xF0\x9F\x8C\xB3 \xD7\xA2\xD7\xA5")}) {
    EXPECT_TRUE(is_utf8(text)) << text;
  }
}

TEST(Utf8, RefusesOverlongFormsSurrogatesAndWhatLiesBeyond) {
  for (const std::string_view text :
       {"\xC0\x80", "\xC1\xBF", "\xE0\x9F\xBF", "\xF0\x8F\xBF\xBF",  // overlong
        "\xED\xA0\x80", "\xED\xBF\xBF",                              // surrogates
        "\xF4\x90\x80\x80", "\xF5\x80\x80\x80", "\xFF", "\xFE"}) {   // beyond U+10FFFF
    EXPECT_FALSE(is_utf8(text));
  }
}

TEST(Utf8, RefusesBytesThatStandAloneOrAreCutShort) {
  for (const std::string_view text :
       {"\x80", "\xBF", "caf\xE9", "\xC3", "\xE2\x82", "\xF0\x9F\x8C", "\xC3(", "\xE2(\xA1"}) {
    EXPECT_FALSE(is_utf8(text));
  }
}

TEST(Steers, ControlCharactersAndTurnsOfWritingDo) {
  for (const std::string_view text :
       {std::string_view("a\0b", 3), std::string_view("Line\x1A"), std::string_view("\x1B[2J"),
        std::string_view("\x7F"), std::string_view("\xC2\x85"), std::string_view("a\xE2\x80\xAE"),
        std::string_view("\xE2\x81\xA6z")}) {
    EXPECT_TRUE(steers(text, Lines::refused));
    EXPECT_TRUE(steers(text, Lines::allowed));
  }
  for (const std::string_view text : {"", "Cove",
                                      "ca\xC3\xB1"
                                      "ada",
                                      "\xE2\x80\x9Cwhite\xE2\x80\x9D"}) {
    EXPECT_FALSE(steers(text, Lines::refused));
  }
}

TEST(Steers, LinesDoWhereTheyAreRefused) {
  for (const std::string_view text : {"two\nlines", "two\r\nlines", "a\ttab"}) {
    EXPECT_TRUE(steers(text, Lines::refused));
    EXPECT_FALSE(steers(text, Lines::allowed));
  }
}

}  // namespace
}  // namespace oaklight
