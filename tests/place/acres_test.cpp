// Areas of two invented outlines, worked out by two programs apart from this one.
#include <gtest/gtest.h>

#include "core/place/geodesy.hpp"

namespace oaklight {
namespace {

Ring ring(const std::vector<std::pair<double, double>>& corners) {
  Ring closed;
  for (const auto& [latitude, longitude] : corners) {
    closed.push_back({Degrees{latitude}, Degrees{longitude}});
  }
  closed.push_back(closed.front());
  return closed;
}

/// About a section of a township: a mile square, as the ground has it and not quite.
const Polygon kSection{
    ring({{39.35, -82.25}, {39.35012, -82.231295}, {39.364616, -82.23115}, {39.3645, -82.24987}}),
    {}};

const Polygon kWithPond{ring({{38.1012345, -82.5098765},
                              {38.1001234, -82.5012345},
                              {38.1034567, -82.4987654},
                              {38.1023456, -82.4934567},
                              {38.1087654, -82.4923456},
                              {38.1101234, -82.4998765},
                              {38.1076543, -82.5034567},
                              {38.1109876, -82.5087654}}),
                        {ring({{38.1045678, -82.5034567},
                               {38.1052345, -82.5012345},
                               {38.106789, -82.5023456},
                               {38.1061234, -82.5045678}})}};

double square_metres(const Polygon& polygon) {
  return to_square_metres(polygon_acres(polygon).value()).value;
}

TEST(Acres, OfASectionAreThoseOfPlanimeter) {
  // GeographicLib 2.1.2, program Planimeter: 2595829.5 m2. A full section is 640 acres.
  EXPECT_NEAR(square_metres(kSection), 2595829.5, 0.051);
  EXPECT_NEAR(polygon_acres(kSection)->value, 640.0, 2.0);
}

TEST(Acres, OfASectionAreThoseOfGdal) {
  // GDAL 3.6.2, area of the outline in Lambert's equal-area projection of WGS 84 about its first
  // corner: 2595829.466 m2. Its edges are straight on that map, which is centimetres off.
  EXPECT_NEAR(square_metres(kSection), 2595829.466, 0.05);
}

TEST(Acres, OfAnIrregularTractLeaveItsPondOut) {
  // Planimeter: 1239883.5 and, of the pond, 40847.1 m2; GDAL as above: 1199036.397 m2.
  EXPECT_NEAR(square_metres(kWithPond), 1239883.5 - 40847.1, 0.11);
  EXPECT_NEAR(square_metres(kWithPond), 1199036.397, 0.05);
}

}  // namespace
}  // namespace oaklight
