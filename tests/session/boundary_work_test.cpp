#include "core/session/boundary_work.hpp"

#include "core/session/tract_work.hpp"
#include "tests/session/work_fixture.hpp"
#include "tests/support/bad_outlines.hpp"

namespace oaklight {
namespace {

constexpr const char* kSquare = "-82.50,38.10 -82.49,38.10 -82.49,38.11 -82.50,38.11 -82.50,38.10";

class BoundaryWork : public test::WorkTest {
 protected:
  BoundaryPlan plan(const NamedText& file, const BoundaryOptions& options = {}) {
    return plan_boundaries(live_, knowledge_, ids_, read_outlines(file), options);
  }
  void stand(const std::string& name, double acres) {
    Stand made;
    made.name = name;
    made.acres = Acres{acres};
    done(add_stand(live_, knowledge_, ids_, made));
  }
  static NamedText square(const std::string& name) {
    return {"land.geojson", test::geojson_of(name, {kSquare})};
  }
};

TEST_F(BoundaryWork, AddsAStandWithTheAcresDrawn) {
  const BoundaryPlan made = plan(square("Cove"));
  ASSERT_TRUE(made.faults.empty());
  done(made.action);
  ASSERT_EQ(live_.data().stands.size(), 1U);
  const Stand& cove = live_.data().stands.front();
  EXPECT_EQ(cove.name, "Cove");
  // Derived: 0.01 x 0.01 degrees at 38.105 N are about 1,110 m by 876.5 m, 240.4 acres.
  EXPECT_NEAR(cove.acres.value, 240.4, 0.3);
  EXPECT_TRUE(cove.boundary.has_value());
  EXPECT_EQ(difference_from_file(), "");
}

TEST_F(BoundaryWork, ComparesWithTheAcresThatTheOwnerStatesAndKeepsThem) {
  stand("Cove", 240.0);
  BoundaryPlan made = plan(square("COVE"));
  ASSERT_EQ(made.rows.size(), 1U);
  EXPECT_FALSE(made.rows[0].added);
  EXPECT_FALSE(made.rows[0].doubtful);
  done(made.action);
  EXPECT_DOUBLE_EQ(live_.data().stands.front().acres.value, 240.0);
  made = plan(square("Cove"));
  ASSERT_EQ(made.rows[0].notes.size(), 1U);
  EXPECT_EQ(made.rows[0].notes[0], "It has this outline already.");
}

TEST_F(BoundaryWork, WarnsWhereTheAcresDifferByMoreThanATwentieth) {
  stand("Cove", 200.0);
  const BoundaryPlan made = plan(square("Cove"));
  ASSERT_EQ(made.rows.size(), 1U);
  EXPECT_TRUE(made.rows[0].doubtful);
  EXPECT_NE(made.rows[0].notes[0].find("20 % more"), std::string::npos) << made.rows[0].notes[0];
  BoundaryOptions options;
  options.take_acres = true;
  done(plan(square("Cove"), options).action);
  EXPECT_NEAR(live_.data().stands.front().acres.value, 240.4, 0.3);
}

TEST_F(BoundaryWork, MakesAStandOfEachPartUnlessTheStandIsKnown) {
  const std::string two =
      R"({"type":"Feature","properties":{"name":"Cove"},"geometry":{"type":"MultiPolygon",)"
      R"("coordinates":[[[[-82.5,38.1],[-82.49,38.1],[-82.49,38.11],[-82.5,38.1]]],)"
      R"([[[-82.48,38.1],[-82.47,38.1],[-82.47,38.11],[-82.48,38.1]]]]}})";
  const BoundaryPlan made = plan({"land.geojson", two});
  ASSERT_EQ(made.rows.size(), 2U);
  EXPECT_EQ(made.rows[0].stand, "Cove 1");
  EXPECT_EQ(made.rows[1].stand, "Cove 2");
  stand("Cove", 100.0);
  const BoundaryPlan refused = plan({"land.geojson", two});
  ASSERT_EQ(refused.faults.size(), 1U);
  EXPECT_EQ(refused.faults[0].code, ErrorCode::contradiction);
}

TEST_F(BoundaryWork, NeedsANameFromTheFileOrFromThePerson) {
  const NamedText unnamed{"walk.gpx", test::gpx_of("", kSquare)};
  ASSERT_EQ(plan(unnamed).faults.size(), 1U);
  EXPECT_EQ(plan(unnamed).faults[0].code, ErrorCode::missing_value);
  BoundaryOptions options;
  options.stand = "Cove";
  EXPECT_TRUE(plan(unnamed, options).faults.empty());
  EXPECT_EQ(plan(unnamed, options).rows[0].stand, "Cove");
}

TEST_F(BoundaryWork, RefusesTwoOutlinesOfOneName) {
  std::string text = test::kml_of("Cove", {kSquare});
  const auto begin = text.find("<Placemark>");
  const auto end = text.find("</Document>");
  text.insert(end, text.substr(begin, end - begin));
  const BoundaryPlan refused = plan({"land.kml", text});
  ASSERT_EQ(refused.faults.size(), 1U);
  EXPECT_EQ(refused.faults[0].code, ErrorCode::duplicate);
}

TEST_F(BoundaryWork, RefusesAnOutlineFarFromTheTract) {
  done(plan(square("Cove")).action);
  const NamedText far{"far.geojson",
                      test::geojson_of("Far", {"82.50,38.10 82.49,38.10 82.49,38.11 82.50,38.10"})};
  const BoundaryPlan refused = plan(far);
  ASSERT_EQ(refused.faults.size(), 1U);
  EXPECT_NE(refused.faults[0].fix.find("minus sign"), std::string::npos);
}

TEST_F(BoundaryWork, OneNamedStandHasOneOutline) {
  DrawnOutlines drawn = read_outlines(square("Cove"));
  drawn.outlines.push_back(drawn.outlines.front());
  BoundaryOptions options;
  options.stand = "Cove";
  const BoundaryPlan made = plan_boundaries(live_, knowledge_, ids_, drawn, options);
  ASSERT_EQ(made.faults.size(), 1U);
  EXPECT_EQ(made.faults[0].code, ErrorCode::contradiction);
  EXPECT_EQ(made.faults[0].what, "The file draws 2 outlines, and one stand was named.");
}

TEST_F(BoundaryWork, AStandThatTheFormDoesNotTakeIsToldWithItsOutline) {
  const BoundaryPlan made = plan(square(std::string(5'000, 'x')));
  ASSERT_EQ(made.faults.size(), 1U);
  EXPECT_TRUE(made.faults[0].where.starts_with("land.geojson")) << made.faults[0].where;
  EXPECT_TRUE(made.faults[0].where.ends_with("/stand")) << made.faults[0].where;
}

}  // namespace
}  // namespace oaklight
