#include "core/units/units.hpp"

#include <gtest/gtest.h>

#include <concepts>

namespace oaklight {
namespace {

// Misuse must not compile. These lines are the test.
template <class A, class B>
concept Addable = requires(A a, B b) { a + b; };
template <class A, class B>
concept Subtractable = requires(A a, B b) { a - b; };
template <class A, class B>
concept Multipliable = requires(A a, B b) { a* b; };
template <class A, class B>
concept Divisible = requires(A a, B b) { a / b; };
template <class A, class B>
concept Comparable = requires(A a, B b) { a < b; };
template <class A, class B>
concept AddAssignable = requires(A a, B b) { a += b; };

static_assert(Addable<Inches, Inches>);
static_assert(!Addable<Inches, Feet>);
static_assert(!Addable<Inches, Centimetres>);
static_assert(!Addable<Inches, SquareFeet>);
static_assert(!Addable<Inches, double>);
static_assert(!Addable<SquareFeet, SquareFeetPerAcre>);
static_assert(!Addable<BoardFeet, CubicFeet>);
static_assert(!Addable<Acres, Hectares>);
static_assert(!Subtractable<Feet, Metres>);
static_assert(!AddAssignable<Cords, CubicFeet>);
static_assert(!AddAssignable<Cords, double>);
static_assert(!Comparable<Inches, Centimetres>);
static_assert(!Comparable<Inches, double>);
static_assert(!Multipliable<Inches, Inches>);
static_assert(Multipliable<Inches, double> && Multipliable<double, Inches>);
static_assert(std::same_as<decltype(Feet{1} / Feet{2}), double>);
static_assert(!Divisible<Feet, Inches>);
static_assert(!Divisible<double, Inches>);
static_assert(!std::convertible_to<double, Inches>);
static_assert(!std::convertible_to<Inches, double>);
static_assert(!std::convertible_to<Inches, Feet>);
static_assert(!std::constructible_from<Feet, Inches>);
static_assert(!std::assignable_from<Feet&, double>);

// Per acre and acres work only together, and give the right thing.
static_assert(std::same_as<decltype(BoardFeetPerAcre{} * Acres{}), BoardFeet>);
static_assert(std::same_as<decltype(BoardFeet{} / Acres{}), BoardFeetPerAcre>);
static_assert(std::same_as<PerAcre<Cords>, CordsPerAcre>);
static_assert(!Multipliable<BoardFeetPerAcre, Hectares>);
static_assert(std::same_as<decltype(Acres{1} / Acres{2}), double>);
static_assert(!Divisible<BoardFeet, Hectares>);
static_assert(!Multipliable<BoardFeet, Acres>);

TEST(Quantity, AddsScalesAndCompares) {
  EXPECT_EQ(Feet{2.0} + Feet{3.0}, Feet{5.0});
  EXPECT_EQ(Feet{2.0} - Feet{3.0}, Feet{-1.0});
  EXPECT_EQ(-Feet{2.0}, Feet{-2.0});
  EXPECT_EQ(2.0 * Feet{2.0}, Feet{2.0} * 2.0);
  EXPECT_EQ(Feet{3.0} / 2.0, Feet{1.5});
  EXPECT_EQ(Feet{3.0} / Feet{2.0}, 1.5);
  EXPECT_LT(Feet{1.0}, Feet{2.0});
  Feet sum;
  sum += Feet{1.5};
  sum -= Feet{0.5};
  EXPECT_EQ(sum, Feet{1.0});
}

TEST(PerAcre, GoesBackAndForthWithAcres) {
  EXPECT_EQ(BoardFeetPerAcre{1500.0} * Acres{4.0}, BoardFeet{6000.0});
  EXPECT_EQ(BoardFeet{6000.0} / Acres{4.0}, BoardFeetPerAcre{1500.0});
}

// Definitions: international yard and pound, 1959; the acre of 43,560 ft2; the hectare.
TEST(Conversions, FollowTheDefinitions) {
  EXPECT_EQ(to_feet(Inches{18.0}), Feet{1.5});
  EXPECT_EQ(to_inches(Feet{1.5}), Inches{18.0});
  EXPECT_EQ(to_metres(Feet{100.0}), Metres{30.48});
  EXPECT_NEAR(to_feet(Metres{30.48}).value, 100.0, 1e-12);
  EXPECT_EQ(to_centimetres(Inches{10.0}), Centimetres{25.4});
  EXPECT_NEAR(to_inches(Centimetres{25.4}).value, 10.0, 1e-12);
  EXPECT_EQ(to_square_feet(Acres{1.0}), SquareFeet{43'560.0});
  EXPECT_EQ(to_acres(SquareFeet{4'356.0}), Acres{0.1});
  EXPECT_NEAR(to_square_metres(Acres{1.0}).value, 4046.8564224, 1e-9);
  EXPECT_NEAR(to_acres(SquareMetres{4046.8564224}).value, 1.0, 1e-12);
  EXPECT_NEAR(to_hectares(Acres{1.0}).value, 0.40468564224, 1e-12);
}

TEST(Percent, IsAHundredthOfAShare) {
  EXPECT_EQ(fraction(Percent{60.0}), 0.6);
  EXPECT_EQ(percent(0.6), Percent{60.0});
}

TEST(Degrees, TurnIntoRadians) {
  EXPECT_NEAR(radians(Degrees{180.0}), std::numbers::pi, 1e-15);
  EXPECT_NEAR(radians(Degrees{-45.0}), -std::numbers::pi / 4.0, 1e-15);
}

// Geometry: the 3-4-5 triangle rises 75 % and its level side is 0.8 of its slope.
TEST(Slope, ShortensALineByTheCosine) {
  EXPECT_EQ(Slope{Percent{0.0}}.cosine(), 1.0);
  EXPECT_NEAR(Slope{Percent{75.0}}.cosine(), 0.8, 1e-15);
  EXPECT_EQ(Slope{Percent{75.0}}.cosine(), Slope{Percent{-75.0}}.cosine());
  EXPECT_NEAR(Slope{Percent{100.0}}.cosine(), std::cos(radians(Degrees{45.0})), 1e-15);
}

TEST(Slope, OfAnAngleIsItsTangent) {
  EXPECT_NEAR(slope_of(Degrees{45.0}).rise.value, 100.0, 1e-9);
  EXPECT_NEAR(slope_of(Degrees{-45.0}).rise.value, -100.0, 1e-9);
  EXPECT_NEAR(slope_of(Degrees{9.0}).cosine(), std::cos(radians(Degrees{9.0})), 1e-15);
}

}  // namespace
}  // namespace oaklight
