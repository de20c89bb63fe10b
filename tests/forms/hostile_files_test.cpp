// Files made to hurt: nested without end, as large as they may be and wrong all through, with names
// that no text can hold. Each is refused with a word how to mend it, and soon: the limit of time is
// generous, what it guards against takes minutes.
#include <gtest/gtest.h>

#include <ctime>

#include "core/base/json_limits.hpp"
#include "core/base/utf8.hpp"
#include "core/forms/outlines.hpp"
#include "tests/forms/cruise_files.hpp"
#include "tests/support/bad_outlines.hpp"

namespace oaklight {
namespace {

constexpr const char* kSquare = "-82.50,38.10 -82.49,38.10 -82.49,38.11 -82.50,38.11 -82.50,38.10";

std::string repeated(const std::string& text, std::size_t bytes) {
  std::string all;
  while (all.size() + text.size() <= bytes) all += text;
  return all;
}

/// Fails when the work takes longer than anybody would wait.
template <class Work>
auto soon(Work work) {
  const std::clock_t start = std::clock();  // of this process: others may be busy
  auto result = work();
  EXPECT_LT(static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC, 20.0) << "seconds";
  return result;
}

std::vector<Error> outline_faults(const std::string& name, const std::string& text) {
  return soon([&] {
    const DrawnOutlines drawn = read_outlines({name, text});
    return drawn.faults.empty() ? check_outlines(drawn.outlines, {}).faults : drawn.faults;
  });
}

TEST(HostileFiles, JsonNestedWithoutEndIsRefusedBeforeItIsParsed) {
  const std::string deep(4U << 20U, '[');
  const std::string inside = R"({"type":"FeatureCollection","features":)" + deep;
  const auto faults = outline_faults("a.geojson", inside);
  ASSERT_EQ(faults.size(), 1U);
  EXPECT_NE(faults[0].what.find("64 deep"), std::string::npos) << faults[0].what;
  CruiseFiles files;
  files.map = {"map.geojson", inside};
  EXPECT_EQ(test::short_faults(test::import_files(files).faults),
            std::vector<std::string>{"bad_json map.geojson:1"});
  const auto form = read_form(R"({"form":)" + deep, "tally.form.json");
  ASSERT_FALSE(form);
  EXPECT_EQ(form.error().where, "tally.form.json:1");
}

TEST(HostileFiles, DepthIsCountedOutsideOfTexts) {
  EXPECT_FALSE(json_beyond_limits("[\"" + std::string(100, '[') + "\\\"" + "[[\"]", "a.json"));
  EXPECT_FALSE(json_beyond_limits(repeated("[]", 1'000), "a.json"));
  EXPECT_FALSE(json_beyond_limits(std::string(kMaxJsonDepth, '['), "a.json"));
  const auto beyond = json_beyond_limits("\n" + std::string(kMaxJsonDepth + 1, '{'), "a.json");
  ASSERT_TRUE(beyond);
  EXPECT_EQ(beyond->where, "a.json:2");
  EXPECT_TRUE(json_beyond_limits(std::string(kMaxJsonBytes + 1, ' '), "a.json"));
}

TEST(HostileFiles, XmlNestedWithoutEndIsReadInOnePass) {
  // Five thousand placemarks inside each other: looked through one by one they would cost a minute
  // each.
  std::string text = "<kml>";
  for (int i = 0; i < 4'900; ++i) text += "<Placemark>";
  text += repeated("<a/>", 7U << 20U);
  for (int i = 0; i < 4'900; ++i) text += "</Placemark>";
  EXPECT_FALSE(outline_faults("a.kml", text + "</kml>").empty());
  EXPECT_FALSE(outline_faults("a.kml", repeated("<Placemark>", 7U << 20U)).empty());
}

TEST(HostileFiles, OutlinesOfNothingButHolesAreRefused) {
  const std::string hole = ",[[0,0],[1,0],[1,1],[0,0]]";
  const std::string text = R"({"type":"Polygon","coordinates":[[[0,0],[9,0],[9,9],[0,0]])" +
                           repeated(hole, 7U << 20U) + "]}";
  const auto faults = outline_faults("a.geojson", text);
  ASSERT_EQ(faults.size(), 1U);
  EXPECT_NE(faults[0].what.find("200,000 positions"), std::string::npos) << faults[0].what;
  const std::string some = R"({"type":"Polygon","coordinates":[[[0,0],[9,0],[9,9],[0,0]])" +
                           repeated(hole, 90'000) + "]}";
  const auto fewer = outline_faults("a.geojson", some);
  ASSERT_EQ(fewer.size(), 1U);
  EXPECT_NE(fewer[0].what.find("10,000 positions"), std::string::npos) << fewer[0].what;
}

TEST(HostileFiles, ANameThatIsNoTextIsRefused) {
  std::string kml = test::kml_of("Cove", {kSquare});
  kml.replace(kml.find("Cove"), 4, "Co\xFFve");
  const auto faults = outline_faults("a.kml", kml);
  ASSERT_EQ(faults.size(), 1U);
  EXPECT_NE(faults[0].what.find("UTF-8"), std::string::npos);
  EXPECT_TRUE(is_utf8(to_text(faults[0])));
}

TEST(HostileFiles, AMapOfMoreLinesThanATractHasIsRefused) {
  CruiseFiles files;
  files.map = {
      "map.geojson",
      R"({"type":"FeatureCollection","features":[{"type":"Feature","properties":{"kind":"trail"},)"
      R"("geometry":{"type":"MultiLineString","coordinates":[[[0,0],[1,1]])"};
  for (int i = 0; i < 200'000; ++i) {
    files.map->text += ",[[0,0],[1,0." + std::to_string(1'000'000 + i) + "]]";
  }
  files.map->text += "]}}]}";
  const auto faults = soon([&] { return test::import_files(files).faults; });
  ASSERT_EQ(faults.size(), 1U);
  EXPECT_NE(faults[0].what.find("5,000 lines"), std::string::npos) << faults[0].what;
}

/// A file of as many rows as may be, each with a number of its own in place of '#'.
NamedText rows_of(const std::string& name, const std::string& header, const std::string& row) {
  std::string text = header + "\n";
  for (int i = 0; i < 40'000 && text.size() < (8U << 20U) - 100; ++i) {
    std::string one = row;
    for (auto at = one.find('#'); at != std::string::npos; at = one.find('#')) {
      one.replace(at, 1, std::to_string(i));
    }
    text += one + "\n";
  }
  return {name, text};
}

TEST(HostileFiles, EveryRowWrongIsToldSoon) {
  struct Case {
    const char* what;
    std::optional<NamedText> CruiseFiles::*slot;
    NamedText file;
  };
  const Case cases[] = {
      {"species", &CruiseFiles::trees,
       rows_of("trees.csv", "stand,plot,species,dbh_in", "A,1,wite oka #,12")},
      {"stands of trees", &CruiseFiles::trees,
       rows_of("trees.csv", "stand,plot,species,dbh_in", "Stand #,1,802,12")},
      {"crews", &CruiseFiles::plots,
       rows_of("plots.csv", "cruise,stand,plot,status,baf_ft2_ac,crew",
               "c,Ridge,#,empty,10,crew number #")},
      {"neighbours of one tree", &CruiseFiles::crop_trees,
       rows_of("crop_trees.csv", "stand,card,role,tag,side,seen,species,dbh_in,note",
               "Ridge,#,neighbour,1,N,touches,802,12,note number #")},
      {"stumps", &CruiseFiles::stumps,
       rows_of("stumps.csv", "tag,finding,stand,species", "T#,as_marked,,")},
  };
  for (const Case& one : cases) {
    SCOPED_TRACE(one.what);
    CruiseFiles files;
    files.stands = rows_of("stands.csv", "stand,acres", "Place #,10");
    files.stands->text += "Ridge,10\n";
    files.*one.slot = one.file;
    const auto faults = soon([&] { return test::import_files(files).faults; });
    EXPECT_FALSE(faults.empty());
    EXPECT_LE(faults.size(), 2 * kMaxFaults);
  }
}

}  // namespace
}  // namespace oaklight
