#include "core/paper/ink.hpp"

#include <gtest/gtest.h>

#include "tests/paper/picture_check.hpp"

namespace oaklight {
namespace {

// Limits: WCAG 2.2, 1.4.6 (text 7:1) and 1.4.11 (graphics 3:1); 18:1 in the sun and the bound of
// #404040 at night are our own.

using test::contrast;
using test::luminance;

class EachPalette : public testing::TestWithParam<Palette> {
 protected:
  static double ratio(Ink a, Ink b) {
    return contrast(colour_of(a, GetParam()), colour_of(b, GetParam()));
  }
};

TEST(Contrast, IsThatOfTheStandard) {
  // WCAG: black on white is 21:1; #595959 is the lightest grey of 7:1 on white (derived).
  EXPECT_NEAR(contrast(Qt::black, Qt::white), 21.0, 1e-9);
  EXPECT_GE(contrast(QColor(0x59, 0x59, 0x59), Qt::white), 7.0);
  EXPECT_LT(contrast(QColor(0x5A, 0x5A, 0x5A), Qt::white), 7.0);
}

TEST_P(EachPalette, TextIsReadOnEachGround) {
  for (const Ink ground : {Ink::white, Ink::tint, Ink::band}) {
    for (const Ink text : {Ink::black, Ink::soft, Ink::leave, Ink::stop, Ink::water}) {
      EXPECT_GE(ratio(text, ground), 7.0)
          << static_cast<int>(text) << " on " << static_cast<int>(ground);
    }
  }
  EXPECT_GE(ratio(Ink::on_ground, Ink::stop_ground), 7.0);
  EXPECT_GE(ratio(Ink::on_ground, Ink::dark_ground), 7.0);
}

TEST_P(EachPalette, ShapesStandOffTheirGround) {
  for (const Ink ground : {Ink::white, Ink::tint}) {
    EXPECT_GE(ratio(Ink::light, ground), 4.5);
    if (GetParam() == Palette::paper) continue;  // hairlines of tables, no borders
    EXPECT_GE(ratio(Ink::rule, ground), 3.0);
  }
}

INSTANTIATE_TEST_SUITE_P(All, EachPalette, testing::ValuesIn(kPalettes));

TEST(Palettes, InTheSunTheStrongestTextIsNearTheMost) {
  const QColor text = colour_of(Ink::black, Palette::bright);
  for (const Ink ground : {Ink::white, Ink::tint, Ink::band}) {
    EXPECT_GE(contrast(text, colour_of(ground, Palette::bright)), 18.0);
  }
  EXPECT_GE(contrast(colour_of(Ink::soft, Palette::bright), ground_of(Palette::bright)), 18.0);
}

TEST(Palettes, AtNightNoGroundOfTextIsBright) {
  const double limit = luminance(QColor(0x40, 0x40, 0x40));
  for (const Ink ground : {Ink::white, Ink::tint, Ink::band, Ink::stop_ground, Ink::dark_ground}) {
    EXPECT_LE(luminance(colour_of(ground, Palette::night)), limit) << static_cast<int>(ground);
  }
}

TEST(Palettes, OnPaperTheNewGroundsLookLikeTheOldOnes) {
  EXPECT_EQ(colour_of(Ink::stop_ground), colour_of(Ink::stop));
  EXPECT_EQ(colour_of(Ink::dark_ground), colour_of(Ink::black));
  EXPECT_EQ(colour_of(Ink::on_ground), colour_of(Ink::white));
  EXPECT_EQ(colour_of(Ink::white), QColor(Qt::white));
}

}  // namespace
}  // namespace oaklight
