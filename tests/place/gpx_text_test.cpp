#include "core/place/gpx_text.hpp"

#include <gtest/gtest.h>

namespace oaklight {
namespace {

TEST(GpxText, HoldsWaypointsAndARouteInTheirOrder) {
  const std::vector<Waypoint> places = {{"Cove 1", {Degrees{38.1234567}, Degrees{-82.5}}, "start"},
                                        {"A & <B>", {Degrees{38.2}, Degrees{-82.4}}, ""}};
  const std::string text = gpx_text("Spring", places);
  EXPECT_NE(text.find("<wpt lat=\"38.1234567\" lon=\"-82.5000000\"><name>Cove 1</name><desc>start"),
            std::string::npos);
  EXPECT_NE(text.find("<name>A &amp; &lt;B&gt;</name>"), std::string::npos);
  EXPECT_LT(text.find("<rtept lat=\"38.1234567\""), text.find("<rtept lat=\"38.2000000\""));
  EXPECT_NE(text.find("<rte><name>Spring</name>"), std::string::npos);
  EXPECT_TRUE(text.ends_with("</gpx>\n"));
}

}  // namespace
}  // namespace oaklight
