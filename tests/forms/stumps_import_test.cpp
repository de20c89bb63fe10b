// stumps.csv: what was found after the cut.
#include <gtest/gtest.h>

#include "core/model/stump.hpp"
#include "tests/forms/cruise_files.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/set_clock.hpp"

namespace oaklight {
namespace {

using test::good_files;
using test::import_files;
using test::short_faults;
using Wants = std::vector<std::string>;

constexpr const char* kHeader =
    "finding,tag,stand,species,over_bark_in,under_bark_in,"
    "stump_height_ft,wound,wound_place,date,lat,lon,note\n";

/// The tract after good_files() were brought in.
const TractData& existing() {
  static const TractData data = import_files(good_files()).data;
  return data;
}

CruiseImport import_rows(const std::string& rows, const TractData& tract = existing()) {
  CruiseFiles files;
  files.stumps = {"stumps.csv", kHeader + rows};
  return import_files(files, tract, 99);
}

Wants faults(const std::string& rows) { return short_faults(import_rows(rows).faults); }

std::string some_tag() { return existing().walk_trees.front().tag; }

TEST(StumpsCsv, FindsTheTreeByItsTagAndKeepsTheReadings) {
  const auto read = import_rows("as_marked," + some_tag() + ",,,14.2,13.1,0.5,,,2027-02-20,,,ok\n");
  ASSERT_TRUE(read.faults.empty()) << to_text(read.faults.front());
  ASSERT_EQ(read.data.stumps.size(), 1U);
  const Stump& stump = read.data.stumps[0];
  EXPECT_EQ(stump.tree, existing().walk_trees.front().id);
  EXPECT_EQ(stump.finding, Finding::as_marked);
  EXPECT_EQ(stump.over_bark, test::stump_in(14.2));
  EXPECT_EQ(stump.under_bark, test::stump_in(13.1));
  EXPECT_EQ(stump.height, test::tape_ft(0.5));
  EXPECT_EQ(stump.seen_on, "2027-02-20");
  EXPECT_EQ(stump.note, "ok");
  EXPECT_FALSE(stump.id.is_nil());
}

TEST(StumpsCsv, TakesAStumpWithoutATagWithItsStandAndSpecies) {
  const std::string stand = existing().stands.front().name;
  const auto read = import_rows("not_marked,," + stand + ",red maple,17,,,,,,,,\n" +
                                "hurt,,,,,,,large,root,,,,\n");
  ASSERT_TRUE(read.faults.empty()) << to_text(read.faults.front());
  ASSERT_EQ(read.data.stumps.size(), 2U);
  EXPECT_EQ(read.data.stumps[0].stand, existing().stands.front().id);
  EXPECT_EQ(read.data.stumps[0].species, SpeciesCode{316});
  EXPECT_EQ(read.data.stumps[0].tree, std::nullopt);
  EXPECT_EQ(read.data.stumps[0].height, std::nullopt) << "not recorded is not zero";
  EXPECT_EQ(read.data.stumps[1].wound, Wound::large);
  EXPECT_EQ(read.data.stumps[1].wound_place, WoundPlace::root);
}

TEST(StumpsCsv, TakesATagTwice) {
  const std::string tag = some_tag();
  EXPECT_EQ(faults("as_marked," + tag + ",,,,,,,,,,,\nstanding," + tag + ",,,,,,,,,,,\n"), Wants{});
}

TEST(StumpsCsv, TellsEveryFaultWithItsPlace) {
  EXPECT_EQ(faults("as_marked,no-such-tag,,,,,,,,,,,\n"),
            Wants{"unknown_reference stumps.csv:2:tag"});
  EXPECT_EQ(faults("standing,,,,,,,,,,,,\n"), Wants{"missing_value stumps.csv:2:tag"});
  EXPECT_EQ(faults("felled," + some_tag() + ",,,,,,,,,,,\n"),
            Wants{"not_a_choice stumps.csv:2:finding"});
  EXPECT_EQ(faults("not_marked,,,,10,11,,,,,,,\n"),
            Wants{"contradiction stumps.csv:2:under_bark_in"});
  EXPECT_EQ(faults("not_marked,,,,10,,6,,,,,,\n"),
            Wants{"out_of_range stumps.csv:2:stump_height_ft"})
      << "inches in a column of feet";
  EXPECT_EQ(faults("not_marked,,,,,,,large,,,,,\n"), Wants{"contradiction stumps.csv:2:wound"});
  EXPECT_EQ(faults("not_marked,,Nowhere,,,,,,,,,,\n"),
            Wants{"unknown_reference stumps.csv:2:stand"});
  EXPECT_EQ(faults("not_marked,,,no such tree,,,,,,,,,\n"),
            Wants{"unknown_species stumps.csv:2:species"});
}

TEST(StumpsCsv, RefusesTheSameFindingASecondTime) {
  const std::string row = "as_marked," + some_tag() + ",,,,,,,,2027-02-20,,,\n";
  TractData with = existing();
  with.stumps = import_rows(row).data.stumps;
  EXPECT_EQ(short_faults(import_rows(row, with).faults), Wants{"duplicate stumps.csv:2:tag"});
}

TEST(StumpsCsv, IsReadInCentimetresToo) {
  CruiseFiles files;
  files.stumps = {"stumps.csv", "finding,over_bark_cm,stump_height_m\nnot_marked,36.1,0.15\n"};
  const auto read = import_files(files, existing(), 99);
  ASSERT_TRUE(read.faults.empty()) << to_text(read.faults.front());
  EXPECT_EQ(read.data.stumps[0].over_bark, test::stump_cm(36.1));
  EXPECT_EQ(read.data.stumps[0].height, test::tape_m(0.15));
}

TEST(StumpsCsv, IsToldThatAnOlderFormDoesNotKnowIt) {
  Form older = test::tally_form();
  std::erase_if(older.records, [](const RecordForm& record) { return record.name == "stumps"; });
  CruiseFiles files;
  files.stumps = {"stumps.csv", "finding\nnot_marked\n"};
  test::SetClock clock{1'777'900'020'000};
  IdSource ids(clock, [] { return std::uint64_t{7}; });
  const auto read = read_cruise(files, older, test::species_table(), existing(), ids);
  ASSERT_EQ(read.faults.size(), 1U);
  EXPECT_EQ(read.faults[0].code, ErrorCode::import_refused);
}

TEST(StumpsCsv, IsToldThatAFormWithoutTheFindingCannotKeepIt) {
  Form form = test::tally_form();
  for (RecordForm& record : form.records) {
    if (record.name != "stumps") continue;
    std::erase_if(record.fields, [](const Field& field) {
      return field.name == "finding" || field.only_when || field.required_when;
    });
  }
  CruiseFiles files;
  files.stumps = {"stumps.csv", "note\nseen\n"};
  test::SetClock clock{1'777'900'020'000};
  IdSource ids(clock, [] { return std::uint64_t{7}; });
  const auto read = read_cruise(files, form, test::species_table(), existing(), ids);
  ASSERT_EQ(read.faults.size(), 1U);
  EXPECT_EQ(read.faults[0].code, ErrorCode::missing_rule);
}

}  // namespace
}  // namespace oaklight
