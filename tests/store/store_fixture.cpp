#include "tests/store/store_fixture.hpp"

#include <sqlite3.h>

#include "tests/support/readings.hpp"

namespace oaklight::test {

std::vector<std::string> StoreTest::raw_sql(const std::string& sql, const std::string& name) {
  sqlite3* db = nullptr;
  std::vector<std::string> cells;
  EXPECT_EQ(sqlite3_open((folder_ / name).c_str(), &db), SQLITE_OK);
  const auto take = [](void* out, int columns, char** values, char**) {
    if (columns > 0)
      static_cast<std::vector<std::string>*>(out)->emplace_back(values[0] ? values[0] : "NULL");
    return 0;
  };
  char* problem = nullptr;
  EXPECT_EQ(sqlite3_exec(db, sql.c_str(), take, &cells, &problem), SQLITE_OK)
      << sql << ": " << (problem ? problem : "");
  sqlite3_free(problem);
  sqlite3_close(db);
  return cells;
}

RawWriter::RawWriter(const std::filesystem::path& path) {
  EXPECT_EQ(sqlite3_open(path.c_str(), &db_), SQLITE_OK);
  EXPECT_EQ(sqlite3_exec(db_, "BEGIN IMMEDIATE", nullptr, nullptr, nullptr), SQLITE_OK);
}

RawWriter::~RawWriter() { sqlite3_close(db_); }

namespace {

// Text that tends to break: quotes, the marks of CSV, JSON and SQL, four-byte characters, text from
// right to left, and length.
const std::string kOddText = "O'Neil \"Red\" | 100% ; -- \\ \t\n\xF0\x9F\x8C\xB3 \xD7\xA2\xD7\xA5";

TreeFacts some_facts(bool full) {
  TreeFacts facts{SpeciesCode{833}, dbh_in(12.3), TreeStatus::live, {}, {}, {}, {}, {}, {}, {}};
  if (!full) return facts;
  facts.status = TreeStatus::dead;
  facts.crown_class = CrownClass::codominant;
  facts.live_crown = Percent{37.5};
  facts.dieback = Percent{0.0};
  facts.height = tape_ft(71.25);
  facts.half_logs = 5;
  facts.conditions = {Condition::den, Condition::legacy, Condition::conk};
  facts.note = std::string(300, 'x') + kOddText;
  return facts;
}

Polygon square_with_hole() {
  const auto at = [](double x, double y) {
    return Position{Degrees{37.9 + y / 1000}, Degrees{-81.1 + x / 1000}};
  };
  return {{at(0, 0), at(9, 0), at(9, 9), at(0, 9), at(0, 0)},
          {{at(1, 1), at(1, 2), at(2, 2), at(1, 1)}}};
}

}  // namespace

TractData sample_records(IdSource& ids, bool full) {
  const Position place{Degrees{37.91234567}, Degrees{-81.12345678}};
  TractData data;
  data.tract = full ? Tract{"Cold Hollow " + kOddText,
                            "WV",
                            "Nowhere",
                            "A. Person, 555-0100",
                            "Left at the church",
                            "Gate",
                            "Ridge top",
                            place,
                            true}
                    : Tract{};
  const auto stand = ids.next_id<StandTag>();
  const auto cruise = ids.next_id<CruiseTag>();
  const auto plot = ids.next_id<PlotTag>();
  const auto crop = ids.next_id<WalkTreeTag>();
  const auto other = ids.next_id<WalkTreeTag>();
  const std::string suffix = full ? "A" : "B";
  data.stands = {{stand, "Stand " + suffix, Acres{41.3}, {}, Goal::mast, {}, {}, {}}};
  data.cruises = {
      {cruise, full ? kOddText : "", PointDesign{10.0, UnitSystem::us}, {}, {}, "", ""}};
  data.plots = {{plot, stand, cruise, "7", PlotStatus::planned, "", {}, {}, {}, ""}};
  data.trees = {{ids.next_id<TreeTag>(), plot, some_facts(full), 1, 1, {}, {}, ""}};
  data.regens = {{ids.next_id<RegenTag>(), plot, SpeciesCode{802}, RegenHeight::under_1_ft, 0}};
  data.walk_trees = {{crop, stand, suffix + "1", some_facts(full), full, {}, {}, {}},
                     {other, stand, suffix + "2", some_facts(false), false, {}, {}, {}}};
  data.contacts = {{ids.next_id<ContactTag>(), crop, other, {}, Seen::not_looked, {}, {}}};
  data.marks = {{ids.next_id<MarkTag>(),
                 other,
                 Verdict::look_again,
                 Method::none,
                 Product::none,
                 {},
                 "",
                 {},
                 false,
                 ""}};
  data.lines = {{ids.next_id<MapLineTag>(), LineKind::trail, "", false, {}}};
  data.stumps = {{.id = ids.next_id<StumpTag>(), .finding = Finding::not_marked}};
  data.acorn_counts = {{ids.next_id<AcornCountTag>(), crop, 2025, "", BranchTipCount{0.0, {}}, ""}};
  data.acorn_years = {
      {ids.next_id<AcornYearTag>(), OakGroup::white, full ? 2025 : 2024, AcornCrop::poor, ""}};
  if (!full) return data;

  data.stands[0].walked = Acres{12.5};
  data.stands[0].goal = Goal::mixed;
  data.stands[0].age_years = 85;
  data.stands[0].site_index = Feet{70.0};
  data.stands[0].boundary = square_with_hole();
  data.cruises[0].design = FixedDesign{0.04, 0.004, dbh_cm(11.5), UnitSystem::metric};
  data.cruises[0].min_dbh = dbh_cm(2.5);
  data.cruises[0].regen_area = 0.0004;
  data.cruises[0].crew = kOddText;
  data.cruises[0].date = "2026-05-04";
  data.plots[0] = {plot,   stand, cruise,      "7b",          PlotStatus::skipped,
                   "bees", place, Metres{4.6}, Percent{35.0}, kOddText};
  data.trees[0].stems = 3;
  data.trees[0].edge_count = 4;
  data.trees[0].azimuth = Degrees{123.4};
  data.trees[0].distance = tape_ft(33.07);
  data.trees[0].tag = "T 1";
  data.regens[0].count = 17;
  data.regens[0].height = RegenHeight::from_1_to_4_5_ft;
  data.walk_trees[0].looked = Sides::all();
  data.walk_trees[0].position = place;
  data.walk_trees[0].slope = Percent{-12.5};
  data.walk_trees[0].crown = {tape_ft(11.5), tape_ft(0.0), {}, tape_ft(9.75)};
  data.contacts[0].sides = {Side::north, Side::west};
  data.contacts[0].seen = Seen::touches;
  data.contacts[0].distance = tape_m(5.21);
  data.contacts[0].azimuth = Degrees{0.0};
  data.marks[0].verdict = Verdict::kill_standing;
  data.marks[0].method = Method::girdle;
  data.marks[0].product = Product::firewood;
  data.marks[0].destination = Reader::logger;
  data.marks[0].reason = kOddText;
  data.marks[0].rules = {"R1.50", "R4.02"};
  data.marks[0].by_hand = true;
  data.marks[0].rule_version = "2026.1";
  data.lines[0] = {data.lines[0].id,
                   LineKind::neighbour_line,
                   kOddText,
                   true,
                   {place, {Degrees{37.95}, Degrees{-81.2}}, {Degrees{-1.0}, Degrees{179.9}}}};
  data.stumps[0] = {data.stumps[0].id,
                    other,
                    stand,
                    Finding::hurt,
                    SpeciesCode{316},
                    stump_cm(31.4),
                    stump_cm(29.0),
                    tape_m(0.15),
                    Wound::large,
                    WoundPlace::root,
                    place,
                    "2027-02-20",
                    kOddText};
  data.acorn_counts[0].date = "2025-08-20";
  data.acorn_counts[0].count = BranchTipCount{14.25, 8};
  data.acorn_counts[0].note = kOddText;
  data.acorn_counts.push_back({ids.next_id<AcornCountTag>(), crop, 2025, "", TimedCount{37}, ""});
  data.acorn_years[0].crop = AcornCrop::bumper;
  data.acorn_years[0].source = kOddText;
  return data;
}

Action as_action(const TractData& data, const std::string& label) {
  Action action{label, {data.tract}};
  const auto add = [&](const auto& records) {
    action.changes.insert(action.changes.end(), records.begin(), records.end());
  };
  add(data.contacts);  // before what they point at: the order inside an action is free
  add(data.stands);
  add(data.cruises);
  add(data.plots);
  add(data.trees);
  add(data.regens);
  add(data.walk_trees);
  add(data.marks);
  add(data.lines);
  add(data.stumps);
  add(data.acorn_counts);
  add(data.acorn_years);
  return action;
}

}  // namespace oaklight::test
