// A whole import against what it must give, and the laws that hold for any import.
#include <gtest/gtest.h>

#include <chrono>
#include <clocale>
#include <locale>
#include <random>

#include "core/base/number_text.hpp"
#include "tests/forms/cruise_files.hpp"

namespace oaklight {
namespace {

using test::dump;
using test::good_files;
using test::import_files;

// Worked by hand from the text of good_files(): derived, row by row.
constexpr const char* kGolden =
    R"(tract name=Fernhollow state=OH county=Anycounty contact=the owner directions=Mill road, second gate meet=the church lot phone=top of the ridge landing=39.310000/-82.210000 demo=yes
stand name=Ridge acres=42.5000 walked=12.0000 goal=mast age=85 site=70.00 outline=(-82.214 39.309)(-82.208 39.309)(-82.208 39.314)(-82.214 39.314)(-82.214 39.309)
stand name=Cove acres=20.0000 goal=timber
cruise name=points baf=10.0000 system=us min_dbh=4.6in regen=0.001000 crew=crew A; crew B date=2026-05-04
cruise name=fixed area=0.100000 system=us small=0.020000 below=4.6in min_dbh=1.0in crew=crew A date=2026-05-06
line kind=stream name=Fern run confirmed=no points=(-82.207 39.308)(-82.206 39.312)
line kind=neighbour_line confirmed=yes points=(-82.215 39.309)(-82.215 39.314)
plot of=Ridge/1 cruise=points status=measured at=39.311000/-82.211000 accuracy=6.0 slope=12.0
plot of=Ridge/2 cruise=points status=empty at=39.312000/-82.212000 slope=30.0 note=rocks
plot of=Ridge/3 cruise=points status=skipped why=posted land
plot of=Cove/1 cruise=points status=planned at=39.309000/-82.209000
plot of=Cove/F1 cruise=fixed status=measured slope=5.0
tree plot=Ridge/1 species=802 dbh=14.2in status=live crown=dominant live_crown=40.0 dieback=5.0 height=78.00ft half_logs=5 conditions=|den|conk stems=1 edge=2 azimuth=90.0 distance=20.50ft tag=901
tree plot=Ridge/1 species=833 dbh=6.3in status=live stems=3 edge=1
tree plot=Ridge/1 species=316 dbh=5.1in status=dead live_crown=0.0 note=a snag stems=1 edge=1
tree plot=Cove/F1 species=621 dbh=18.4in status=live crown=codominant height=95.00ft half_logs=6 stems=1 edge=1 azimuth=0.0 distance=36.00ft tag=902
tree plot=Cove/F1 species=316 dbh=2.2in status=live stems=1 edge=1 azimuth=12.0 distance=11.20ft
regen plot=Ridge/1 species=802 height=under_1_ft count=4
regen plot=Ridge/2 species=802 height=over_4_5_ft count=0
regen plot=Ridge/2 species=316 height=under_1_ft count=31
walk_tree tag=17 stand=Ridge species=802 dbh=15.1in status=live crown=dominant live_crown=45.0 dieback=0.0 height=80.00ft half_logs=4 note=the big one; seen twice crop=yes looked=NESW at=39.311100/-82.211100 slope=10.0
walk_tree tag=18 stand=Ridge species=316 dbh=9.4in status=live crown=codominant crop=no
walk_tree tag=19 stand=Ridge species=531 dbh=11.0in status=live conditions=|den|beech_bark crop=no
walk_tree tag=21 stand=Ridge species=837 dbh=13.3in status=live crown=codominant crop=yes looked=W at=39.311200/-82.210800
contact crop=17 neighbour=18 sides=N seen=touches distance=14.50ft azimuth=350.0
contact crop=17 neighbour=21 seen=none distance=31.00ft azimuth=95.0
contact crop=17 neighbour=19 sides=W seen=over distance=12.20ft
contact crop=21 neighbour=17 sides=W seen=none distance=31.40ft azimuth=278.0
contact crop=21 neighbour=18 seen=not_looked distance=22.00ft azimuth=300.0
)";

TEST(GoodImport, HasNoFault) {
  for (const Error& fault : import_files(good_files()).faults) ADD_FAILURE() << to_text(fault);
}

TEST(GoodImport, GivesEveryRecordOfTheFiles) {
  EXPECT_EQ(dump(import_files(good_files()).data), kGolden);
}

TEST(GoodImport, GivesEveryRecordAnIdOfItsOwn) {
  const TractData data = import_files(good_files()).data;
  std::vector<Uuid> ids;
  const auto take = [&](const auto& records) {
    for (const auto& record : records) ids.push_back(record.id.value);
  };
  take(data.stands), take(data.cruises), take(data.plots), take(data.trees), take(data.regens);
  take(data.walk_trees), take(data.contacts), take(data.lines);
  std::sort(ids.begin(), ids.end());
  EXPECT_EQ(std::adjacent_find(ids.begin(), ids.end()), ids.end());
  EXPECT_FALSE(ids.front().is_nil());
}

TEST(GoodImport, IsTheSameTwiceApartFromIds) {
  const auto once = import_files(good_files(), {}, 1);
  const auto twice = import_files(good_files(), {}, 2);
  EXPECT_EQ(dump(once.data), dump(twice.data));
  EXPECT_NE(to_text(once.data.plots[0].id), to_text(twice.data.plots[0].id));
}

TEST(GoodImport, ReadsCrlfAndByteOrderMarkAlike) {
  CruiseFiles files = good_files();
  for (auto* file : {&files.tract, &files.stands, &files.plots, &files.trees, &files.regeneration,
                     &files.crop_trees}) {
    std::string text = "\xEF\xBB\xBF";
    for (const char c : (*file)->text) text += c == '\n' ? std::string("\r\n") : std::string(1, c);
    (*file)->text = text;
  }
  const auto read = import_files(files);
  EXPECT_TRUE(read.faults.empty());
  EXPECT_EQ(dump(read.data), kGolden);
}

/// A locale that writes 1.234,5.
class CommaPoint final : public std::numpunct<char> {
 protected:
  char do_decimal_point() const override { return ','; }
  char do_thousands_sep() const override { return '.'; }
  std::string do_grouping() const override { return "\3"; }
};

TEST(GoodImport, ReadsNumbersAlikeInAnyLocale) {
  const std::string before = std::setlocale(LC_ALL, nullptr);
  const std::locale cpp_before = std::locale::global(std::locale({}, new CommaPoint));
  // The C locale as well, where the machine has one with a comma.
  for (const char* name : {"de_DE.UTF-8", "fr_FR.UTF-8"}) {
    if (std::setlocale(LC_ALL, name) != nullptr) break;
  }
  const auto read = import_files(good_files());
  const std::string text = dump(read.data);
  std::locale::global(cpp_before);
  std::setlocale(LC_ALL, before.c_str());
  EXPECT_EQ(text, kGolden);
}

TEST(GoodImport, KeepsMetricReadingsAsTheyWereTaped) {
  CruiseFiles files;
  files.stands = {"stands.csv", "stand,hectares,site_index_m\nHang,10,21.5\n"};
  files.plots = {"plots.csv",
                 "cruise,stand,plot,status,plot_ha,min_dbh_cm\nc,Hang,1,measured,0.04,7.0\n"};
  files.trees = {"trees.csv",
                 "stand,plot,species,dbh_cm,height_m,azimuth_deg,distance_m\n"
                 "Hang,1,802,36.1,21.05,10,11.28\n"};
  const auto read = import_files(files);
  ASSERT_TRUE(read.faults.empty()) << to_text(read.faults.front());
  // 10 ha = 100,000 m2 / (0.3048 m/ft)^2 / 43,560 ft2/ac = 24.7105 ac; 21.5 m = 70.54 ft: derived.
  EXPECT_EQ(dump(read.data),
            "tract demo=no\n"
            "stand name=Hang acres=24.7105 goal=mast site=70.54\n"
            "cruise name=c area=0.040000 system=m min_dbh=7.0cm\n"
            "plot of=Hang/1 cruise=c status=measured\n"
            "tree plot=Hang/1 species=802 dbh=36.1cm status=live height=21.05m stems=1 edge=1 "
            "azimuth=10.0 distance=11.28m\n");
}

std::string many_trees(int rows) {
  std::string text = "stand,plot,species,dbh_in,crown_class,conditions,note\n";
  for (int i = 0; i < rows; ++i) {
    text += "Ridge,1,white oak," + number_text(5 + i % 200 / 10.0, 1) +
            ",codominant,conk|den,row " + std::to_string(i) + "\n";
  }
  return text;
}

double seconds_for(int rows) {
  CruiseFiles files = good_files();
  files.trees->text = many_trees(rows) + "Cove,F1,red maple,2.2,,,\n";
  // (The header has seven columns, like the rows.)
  const auto start = std::chrono::steady_clock::now();
  const auto read = import_files(files);
  const auto end = std::chrono::steady_clock::now();
  EXPECT_TRUE(read.faults.empty());
  EXPECT_EQ(read.data.trees.size(), static_cast<std::size_t>(rows) + 1);
  return std::chrono::duration<double>(end - start).count();
}

TEST(GoodImport, TakesTimeInStepWithItsRows) {
  seconds_for(1'000);  // warms up
  const double small = std::min(seconds_for(1'000), seconds_for(1'000));
  const double large = std::min(seconds_for(10'000), seconds_for(10'000));
  RecordProperty("ten_thousand_rows_ms", static_cast<int>(1000 * large));
  // Ten times the rows; a search that runs through all rows for each row would take a hundred
  // times.
  EXPECT_LT(large, 40 * small);
}

TEST(GoodImport, SurvivesAnySmallChangeOfItsFiles) {
  constexpr unsigned kSeed = 20260504;
  constexpr std::string_view kPieces[] = {"",   "\"",   ",", "\n", "\r",  "-",   "|",    "9",
                                          "\0", "\xC3", "{", "]",  "nan", "1e9", "N|E|", "="};
  std::mt19937 random(kSeed);
  const auto below = [&](std::size_t n) { return random() % n; };
  int refused = 0;
  for (int round = 0; round < 1000; ++round) {
    CruiseFiles files = good_files();
    const char* names[] = {"tract.csv",        "stands.csv",     "plots.csv",  "trees.csv",
                           "regeneration.csv", "crop_trees.csv", "map.geojson"};
    std::string& text = test::file_of(files, names[below(7)]).text;
    for (std::size_t edits = 1 + below(3); edits > 0; --edits) {
      const std::size_t at = below(text.size());
      text.replace(at, below(4), kPieces[below(std::size(kPieces))]);
    }
    const auto read = import_files(files);
    refused += read.faults.empty() ? 0 : 1;
    ASSERT_LE(read.faults.size(), kMaxFaults + 1) << "seed " << kSeed << ", round " << round;
    for (const Error& fault : read.faults) {
      ASSERT_FALSE(fault.what.empty() || fault.fix.empty() || fault.where.empty())
          << to_text(fault) << " seed " << kSeed << ", round " << round;
    }
  }
  EXPECT_GT(refused, 500) << "most changes break something; are faults still found?";
}

}  // namespace
}  // namespace oaklight
