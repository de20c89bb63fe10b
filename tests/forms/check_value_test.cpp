#include "core/forms/check_value.hpp"

#include <gtest/gtest.h>

#include "tests/forms/cruise_files.hpp"

namespace oaklight {
namespace {

using test::species_names;
using test::tally_form;

Result<FieldValue> check(const char* record, const char* field, const char* text,
                         UnitSystem system = UnitSystem::us) {
  const Field* f = tally_form().find_record(record)->find(field);
  return check_value(tally_form(), *f, system, text, species_names());
}

template <class T>
T value(const char* record, const char* field, const char* text,
        UnitSystem system = UnitSystem::us) {
  const auto read = check(record, field, text, system);
  EXPECT_TRUE(read) << to_text(read.error());
  return std::get<T>(*read);
}

std::string fix(const char* record, const char* field, const char* text) {
  const auto read = check(record, field, text);
  EXPECT_FALSE(read) << text;
  return read ? "" : read.error().fix;
}

TEST(CheckValue, ReadsEachKind) {
  EXPECT_EQ(value<Dbh>("trees", "dbh", " 12.3 ").tenths(), 123);
  EXPECT_EQ(value<Dbh>("trees", "dbh", "31.2", UnitSystem::metric).system(), UnitSystem::metric);
  EXPECT_EQ(value<TapedLength>("trees", "distance", "20.55").hundredths(), 2055);
  EXPECT_EQ(value<std::string>("trees", "crown_class", "Open grown"), "open_grown");
  EXPECT_EQ(value<std::string>("trees", "crown_class", "Open-Grown"), "open_grown");
  EXPECT_EQ(value<std::vector<std::string>>("crop_trees", "side", "n | E|N"),
            (std::vector<std::string>{"N", "E"}));
  EXPECT_EQ(value<SpeciesCode>("trees", "species", "QURU"), SpeciesCode{833});
  EXPECT_EQ(value<std::int64_t>("trees", "edge_count", "4"), 4);
  EXPECT_EQ(value<double>("trees", "logs", "2.5"), 2.5);
  EXPECT_EQ(value<double>("plots", "lat", "39.123456789012"), 39.123456789012);
  EXPECT_EQ(value<bool>("tract", "demo", "Yes"), true);
  EXPECT_EQ(value<std::string>("plots", "date", "2028-02-29"), "2028-02-29");
  EXPECT_EQ(value<std::string>("plots", "note", "two\nlines"), "two\nlines");
}

TEST(CheckValue, AnAzimuthOf360IsNorth) {
  EXPECT_EQ(value<double>("trees", "azimuth_deg", "360"), 0.0);
  EXPECT_EQ(value<double>("trees", "azimuth_deg", "359.5"), 359.5);
}

TEST(CheckValue, EmptyIsTheDefaultOrNothing) {
  EXPECT_EQ(value<std::string>("trees", "status", " "), "live");
  EXPECT_EQ(value<std::int64_t>("trees", "stems", ""), 1);
  EXPECT_TRUE(std::holds_alternative<std::monostate>(*check("trees", "height", "")));
  EXPECT_TRUE(std::holds_alternative<std::monostate>(*check("trees", "tag", "")));
}

TEST(CheckValue, ZeroIsAValue) {
  EXPECT_EQ(value<double>("trees", "logs", "0"), 0.0);
  EXPECT_EQ(value<double>("trees", "live_crown_pct", "0"), 0.0);
}

TEST(CheckValue, SaysHowToMendIt) {
  EXPECT_EQ(fix("trees", "dbh", "412"), "Check the decimal point; 41.2?");
  EXPECT_EQ(fix("trees", "dbh", "12.3 in"), "Write the number alone: 12.3.");
  EXPECT_EQ(fix("trees", "dbh", "12,3"),
            "Use a point for the decimals, and nothing to part thousands.");
  EXPECT_EQ(fix("trees", "dbh", "12.34"), "Round it to 12.3.");
  EXPECT_EQ(fix("trees", "logs", "2.3"), "Round it to the nearest 0.5.");
  EXPECT_EQ(fix("trees", "edge_count", "3"), "Write one of these.");
  EXPECT_EQ(fix("trees", "crown_class", "codom"),
            "Write one of: open_grown, dominant, codominant, intermediate, overtopped.");
  EXPECT_EQ(fix("trees", "conditions", "den|konk"), "Did you mean \"conk\"?");
  EXPECT_EQ(fix("plots", "lat", "-82.2"), "Are latitude and longitude swapped?");
  EXPECT_EQ(fix("plots", "date", "5/4/26"), "Write year-month-day, like 2026-05-04.");
}

TEST(CheckValue, SaysWhatIsWrongInItsOwnUnit) {
  const auto what = [](const char* text, UnitSystem system) {
    return check("trees", "dbh", text, system).error().what;
  };
  EXPECT_EQ(what("412", UnitSystem::us), "Diameter (DBH) 412 in is outside 0.1 to 200 in.");
  EXPECT_EQ(what("0", UnitSystem::metric), "Diameter (DBH) 0 cm is outside 0.1 to 508 cm.");
  EXPECT_EQ(check("trees", "dbh", "x", UnitSystem::metric).error().where, "dbh_cm");
}

TEST(CheckValue, RefusesWhatOnlyLooksLikeANumber) {
  for (const char* text :
       {"nan", "inf", "1e3", "0x10", "--5", "1.2.3", "+5", ".", "-", "\xC2\xB2"}) {
    const auto read = check("plots", "slope_pct", text);
    ASSERT_FALSE(read) << text;
    EXPECT_EQ(read.error().code, ErrorCode::not_a_number) << text;
  }
}

TEST(CheckValue, CountsCharactersAndNotBytes) {
  const std::string twenty =
      "\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9"
      "\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9"
      "\xC3\xA9\xC3\xA9";
  EXPECT_TRUE(check("trees", "tag", twenty.c_str()));
  EXPECT_FALSE(check("trees", "tag", (twenty + "x").c_str()));
}

TEST(CheckValue, AStepThatIsNoBinaryFractionIsAStepToo) {
  Form form = tally_form();
  Field field = *form.find_record("trees")->find("logs");
  field.step = 0.1;
  EXPECT_TRUE(check_value(form, field, UnitSystem::us, "0.3", species_names()));
  field.step = 0.3;
  EXPECT_FALSE(check_value(form, field, UnitSystem::us, "0.4", species_names()));
}

}  // namespace
}  // namespace oaklight
