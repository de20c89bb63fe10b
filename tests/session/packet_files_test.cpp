// The files of a packet, opened by programs that share no code with ours (read_packet.py says
// which) and compared with the packet that they were written from. Expected values are derived from
// that packet.
#include "core/session/packet_files.hpp"
#include "core/session/packet_check.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>
#include <nlohmann/json.hpp>

#include "core/base/number_text.hpp"
#include "core/base/sha256.hpp"
#include "core/handoff/list_table.hpp"
#include "tests/handoff/odd_tract.hpp"
#include "tests/support/places.hpp"
#include "tests/support/temp_dir.hpp"

namespace oaklight::test {
namespace {

using Json = nlohmann::json;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

/// What the outside programs found in the files of a packet.
Json read_back(const Packet& packet, const std::filesystem::path& folder, bool rows = false) {
  const auto files = write_packet_files(folder, packet, std::nullopt);
  EXPECT_TRUE(files) << to_text(files.error());
  const Ran run = run_program("/usr/bin/python3 " + source_path("tests/session/read_packet.py ") +
                              folder.string() + " " + std::string(word_of(packet.reader)) +
                              (rows ? " --rows" : ""));
  EXPECT_EQ(run.exit_code, 0) << run.errors;
  return Json::parse(run.out, nullptr, false);
}

/// Totals as the outside programs name them: "cut|sawlog": [trees, board feet, cords].
Json totals_json(const Packet& packet) {
  Json all = Json::object();
  const auto lists = lists_of(packet);
  const auto add = [&](const PacketList& list, const std::vector<ProductTotal>& totals) {
    for (const ProductTotal& total : totals) {
      all[std::string(list.name) + "|" + std::string(word_of(total.product))] = {
          total.trees,
          total.board_feet ? Json(number_text(total.board_feet->value, 0)) : Json(nullptr),
          total.cords ? Json(number_text(total.cords->value, 2)) : Json(nullptr)};
    }
  };
  add(lists[0], packet.totals);
  add(lists[1], packet.totals_if_cleared);
  return all;
}

std::size_t trees_in(const Packet& packet) {
  std::size_t trees = 0;
  for (const PacketList& list : lists_of(packet)) trees += list.trees->size();
  return trees;
}

void expect_all_files_say_the_same(const Packet& packet, const Json& told) {
  ASSERT_TRUE(told.is_object());
  EXPECT_EQ(told["problems"], Json::array());
  EXPECT_EQ(told["rows"], trees_in(packet));
  EXPECT_EQ(told["layers"], Json({"listed_tree", "stand", "map_line"}));
  const Json expected = totals_json(packet);
  for (const char* file : {"csv", "xlsx", "geojson", "gpkg"}) {
    EXPECT_EQ(told["totals"][file], expected) << file;
  }
}

struct Case {
  const char* name;
  ManyTrees tract;
};

class PacketFiles : public testing::TestWithParam<Case> {};

TEST_P(PacketFiles, AreReadAlikeByProgramsThatAreNotOurs) {
  const ManyTrees& wish = GetParam().tract;
  const TractData data = many_trees(wish);
  int packets = 0;
  for (const PacketReader reader : kReaders) {
    const auto packet = packet_of_all(data, reader);
    if (!packet) {
      EXPECT_EQ(packet.error().code, ErrorCode::nothing_marked) << word_of(reader);
      continue;
    }
    const TempDir folder;
    SCOPED_TRACE(word_of(reader));
    expect_all_files_say_the_same(*packet, read_back(*packet, folder.path()));
    ++packets;
    // All four of so many trees: tests/bench/packet_files, by hand.
    if (wish.trees > 1000) break;
  }
  EXPECT_GE(packets, wish.trees == 1 ? 2 : wish.trees > 1000 ? 1 : 4);
}

INSTANTIATE_TEST_SUITE_P(Tracts, PacketFiles,
                         testing::Values(Case{"plain", {.trees = 60, .measured = true}},
                                         Case{"odd", {.trees = 57, .odd = true, .measured = true}},
                                         Case{"nowhere",
                                              {.trees = 24, .odd = true, .placed = false}},
                                         Case{"one_tree", {.trees = 1, .odd = true}},
                                         Case{"twenty_thousand", {.trees = 20'000, .odd = true}}),
                         [](const auto& tract) { return std::string(tract.param.name); });

/// The tree of a packet that wears a tag, as files write it.
std::map<std::string, std::pair<PacketList, const PacketTree*>> trees_by_tag(const Packet& packet) {
  std::map<std::string, std::pair<PacketList, const PacketTree*>> trees;
  for (const PacketList& list : lists_of(packet)) {
    for (const PacketTree& tree : *list.trees) trees[clean_text(tree.tag)] = {list, &tree};
  }
  return trees;
}

class PacketRoundTrip : public testing::TestWithParam<PacketReader> {};

TEST_P(PacketRoundTrip, MarksFromCsvAndGpxAreTheMarksThatWentOut) {
  const auto packet = packet_of_all(many_trees({.trees = 57, .odd = true}), GetParam());
  ASSERT_TRUE(packet);
  const TempDir folder;
  const Json told = read_back(*packet, folder.path(), true);
  const auto trees = trees_by_tag(*packet);
  ASSERT_GT(packet->cut.size(), 0U);
  for (const char* file : {"csv", "gpx"}) {
    SCOPED_TRACE(file);
    ASSERT_EQ(told[file].size(), trees.size());
    for (const Json& row : told[file]) {
      const auto text = [&](const char* column) { return row.value(column, std::string()); };
      const auto at = trees.find(text("tag"));
      ASSERT_NE(at, trees.end()) << text("tag");
      const auto& [list, tree] = at->second;
      EXPECT_EQ(text("list"), list.name);
      EXPECT_EQ(text("species"), tree->species);
      EXPECT_EQ(text("dbh_in"), number_text(tree->dbh.inches().value, 1));
      EXPECT_EQ(text("reason"), clean_text(tree->reason));
      EXPECT_EQ(text("latitude_deg"), number_text(tree->position->latitude.value, 6));
      EXPECT_EQ(text("longitude_deg"), number_text(tree->position->longitude.value, 6));
      if (!list.works) continue;
      EXPECT_EQ(text("method"), word_of(tree->method));
      EXPECT_EQ(text("product"), word_of(tree->product));
    }
  }
}

// The schema as it was published is no part of this repository: tests/run takes it out of a Debian
// package. Where it could not, ctest says that this was skipped.
TEST_P(PacketRoundTrip, WaypointsFitThePublishedSchema) {
  const std::string schema = source_path(".build/gpx11.xsd");
  if (!std::filesystem::exists(schema))
    GTEST_SKIP() << schema << " could not be fetched by .ci/gpx_schema; our own schema was held";
  const auto packet = packet_of_all(many_trees({.trees = 57, .odd = true}), GetParam());
  ASSERT_TRUE(packet);
  const TempDir folder;
  ASSERT_TRUE(write_packet_files(folder.path(), *packet, std::nullopt));
  const std::string gpx = (folder / (std::string(word_of(GetParam())) + ".gpx")).string();
  const Ran valid = run_program("xmllint --noout --schema " + schema + " " + gpx);
  EXPECT_EQ(valid.exit_code, 0) << valid.errors;
  write_bytes(folder / "bad.gpx", "<gpx xmlns=\"http://www.topografix.com/GPX/1/1\"><wpt/></gpx>");
  EXPECT_NE(run_program("xmllint --noout --schema " + schema + " " + (folder / "bad.gpx").string())
                .exit_code,
            0);
}

INSTANTIATE_TEST_SUITE_P(Readers, PacketRoundTrip, testing::ValuesIn(kReaders),
                         [](const auto& reader) { return std::string(word_of(reader.param)); });

TEST(PacketFilesOf, ACutterHoldNothingOfOthers) {
  TestTract tract;
  tract.data.stands.push_back({.id = nth_id<StandId>(900), .name = "SECRETSTAND"});
  WalkTree& tree = tract.tree("1");
  tree.facts.note = "SECRETNOTE";
  tract.take(tree.id, Reader::logger, Product::sawlog);
  WalkTree& other = tract.tree("2");
  Mark& by_hand = tract.take(other.id, Reader::logger, Product::sawlog);
  by_hand.by_hand = true;
  by_hand.reason = "SECRETREASON";
  const auto packet = packet_of_all(tract.data, PacketReader::logger);
  ASSERT_TRUE(packet);
  const TempDir folder;
  ASSERT_TRUE(write_packet_files(folder.path(), *packet, std::nullopt));
  run_program("/usr/bin/python3 -m zipfile -e " + (folder / "logger.xlsx").string() + " " +
              (folder / "sheets").string());
  int files = 0;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(folder.path())) {
    if (!entry.is_regular_file()) continue;
    ++files;
    EXPECT_THAT(bytes_of(entry.path()), Not(HasSubstr("SECRET"))) << entry.path();
  }
  EXPECT_GT(files, 10) << "the sheets were unpacked too";
  const Ran tables = run_program("sqlite3 " + (folder / "logger.gpkg").string() +
                                 " \"SELECT name FROM sqlite_schema WHERE type = 'table' AND name "
                                 "NOT LIKE 'gpkg_%' AND name NOT LIKE 'sqlite_%' ORDER BY name\"");
  EXPECT_EQ(tables.out, "listed_tree\nmap_line\nstand\n") << tables.errors;
  const auto owner = packet_of_all(tract.data, PacketReader::owner);
  EXPECT_THAT(owner->list_csv, HasSubstr("SECRETREASON")) << "it is the owner's own";
}

TEST(PacketFilesOf, TheSamePacketAreTheSameBytes) {
  const auto packet = packet_of_all(many_trees({.trees = 30}), PacketReader::owner);
  ASSERT_TRUE(packet);
  const TempDir first, second;
  const auto files = write_packet_files(first.path(), *packet, std::nullopt);
  ASSERT_TRUE(files);
  ASSERT_TRUE(write_packet_files(second.path(), *packet, std::nullopt));
  EXPECT_EQ(files->size(), 7U);
  for (const PacketFile& file : *files) {
    const std::string name = file.path.filename().string();
    EXPECT_EQ(sha256_hex(bytes_of(first / name)), sha256_hex(bytes_of(second / name))) << name;
  }
}

TEST(PacketFilesOf, AFolderThatIsAFileAreRefusedInWords) {
  const auto packet = packet_of_all(many_trees({.trees = 12}), PacketReader::logger);
  ASSERT_TRUE(packet);
  const TempDir folder;
  write_bytes(folder / "taken", "x");
  const auto files = write_packet_files(folder / "taken", *packet, std::nullopt);
  ASSERT_FALSE(files);
  EXPECT_EQ(files.error().code, ErrorCode::cannot_write);
}

// 32,767 letters fit into a cell of a spreadsheet.
TEST(PacketFilesOf, ATextLongerThanACellHoldsAreRefusedAndLeaveNothing) {
  const TempDir folder;
  Packet packet = packet_of_all(many_trees({.trees = 12}), PacketReader::logger).value();
  ASSERT_FALSE(packet.cut.empty());
  packet.cut.front().reason = std::string(33'000, 'x');
  const auto written = write_packet_files(folder.path(), packet, std::nullopt);
  ASSERT_FALSE(written);
  EXPECT_EQ(written.error().code, ErrorCode::out_of_range);
  EXPECT_FALSE(written.error().fix.empty());
  EXPECT_TRUE(std::filesystem::is_empty(folder.path()));
}

TEST(PacketFilesOf, AFolderThatCannotBeReadOrIsGoneAreToldBeforeAnyIsChecked) {
  const TempDir folder;
  const auto checked = check_packet(folder / "nowhere");
  ASSERT_FALSE(checked);
  EXPECT_EQ(checked.error().code, ErrorCode::cannot_open);
  EXPECT_EQ(checked.error().where, (folder / "nowhere").string());
  EXPECT_EQ(check_packet(folder.path()).error().code, ErrorCode::no_data);
}

// A folder in the place of a file is no file, whatever the manifest says of it.
TEST(PacketFilesOf, AnotherKindAreNotTakenForThem) {
  const TempDir folder;
  const Packet packet = packet_of_all(many_trees({.trees = 12}), PacketReader::logger).value();
  ASSERT_TRUE(write_packet_files(folder.path(), packet, std::nullopt));
  std::filesystem::remove(folder / "logger.csv");
  std::filesystem::create_directory(folder / "logger.csv");
  std::filesystem::remove(folder / "logger.gpx");
  std::filesystem::create_directory(folder / "other.manifest.json");
  const auto checked = check_packet(folder.path());
  ASSERT_TRUE(checked) << to_text(checked.error());
  ASSERT_EQ(checked->problems.size(), 3U);
  EXPECT_EQ(checked->problems[1].what, "This file of the packet is missing.");
}

}  // namespace
}  // namespace oaklight::test
