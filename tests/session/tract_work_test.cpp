// Setting up a tract: names, stands, cruises.
#include "core/session/tract_work.hpp"

#include "tests/session/work_fixture.hpp"
#include "tests/support/readings.hpp"

namespace oaklight::test {
namespace {

class TractWork : public WorkTest {
 protected:
  static Stand stand(const std::string& name, double acres) {
    Stand stand;
    stand.name = name;
    stand.acres = Acres{acres};
    return stand;
  }
  static Cruise cruise(const std::string& name, Design design) {
    Cruise cruise;
    cruise.name = name;
    cruise.design = design;
    return cruise;
  }
};

TEST_F(TractWork, InventedDataStaysInvented) {
  Tract tract = live_.data().tract;
  tract.name = "Cold Hollow";
  tract.demo = true;
  done(change_tract(live_, knowledge_, tract));
  tract.demo = false;
  done(change_tract(live_, knowledge_, tract));
  EXPECT_TRUE(live_.data().tract.demo);
  tract.state = "Ohio";
  EXPECT_EQ(refused(change_tract(live_, knowledge_, tract)).where, "tract/state");
}

TEST_F(TractWork, StandsAreAddedAndTheirAcresAltered) {
  done(add_stand(live_, knowledge_, ids_, stand("North Slope", 40.0)));
  EXPECT_EQ(refused(add_stand(live_, knowledge_, ids_, stand("north slope", 10.0))).code,
            ErrorCode::duplicate);
  EXPECT_EQ(refused(add_stand(live_, knowledge_, ids_, stand("B", 0.0))).where, "stand/B/acres");
  Stand altered = live_.data().stands.front();
  altered.acres = Acres{38.5};
  altered.walked = Acres{20.0};
  EXPECT_EQ(done(change_stand(live_, knowledge_, altered)).label, "change stand North Slope");
  EXPECT_EQ(live_.data().stands.front().acres, Acres{38.5});
  altered.walked = Acres{43.0};
  EXPECT_EQ(refused(change_stand(live_, knowledge_, altered)).code, ErrorCode::contradiction);
  EXPECT_EQ(difference_from_file(), "");
}

TEST_F(TractWork, ACruiseNeedsADesignThatCanBeMeasuredBy) {
  done(add_cruise(live_, knowledge_, ids_, cruise("first", PointDesign{10.0, UnitSystem::us})));
  EXPECT_EQ(refused(add_cruise(live_, knowledge_, ids_, cruise("first", PointDesign{}))).code,
            ErrorCode::duplicate);
  EXPECT_EQ(
      refused(add_cruise(live_, knowledge_, ids_, cruise("b", PointDesign{0.0, UnitSystem::us})))
          .where,
      "cruise/b/baf");
  EXPECT_EQ(refused(add_cruise(live_, knowledge_, ids_,
                               cruise("c", FixedDesign{0.1, 0.1, dbh_in(4.5), UnitSystem::us})))
                .code,
            ErrorCode::out_of_range);
  Cruise none_small = cruise("d", FixedDesign{0.1, 0.01, dbh_in(4.5), UnitSystem::us});
  none_small.min_dbh = dbh_in(5.0);
  EXPECT_EQ(refused(add_cruise(live_, knowledge_, ids_, none_small)).where, "cruise/d/small_below");
  EXPECT_EQ(live_.data().cruises.size(), 1U);
}

TEST(DesignText, SaysADesignInWords) {
  EXPECT_EQ(design_text(PointDesign{10.0, UnitSystem::us}), "point, BAF 10 ft2/ac");
  EXPECT_EQ(design_text(PointDesign{2.5, UnitSystem::metric}), "point, BAF 2.5 m2/ha");
  EXPECT_EQ(design_text(FixedDesign{0.1, 0.01, dbh_in(4.5), UnitSystem::us}),
            "fixed plot, 0.1 ac; under 4.5 in on 0.01 ac");
}

}  // namespace
}  // namespace oaklight::test
