// The files of a packet, opened by programs that share no code with ours (read_packet.py says
// which) and compared with the packet that they were written from. Expected values are derived from
// that packet.
#include "core/session/packet_files.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>
#include <nlohmann/json.hpp>

#include "core/base/number_text.hpp"
#include "core/base/sha256.hpp"
#include "core/handoff/list_table.hpp"
#include "tests/handoff/test_tract.hpp"
#include "tests/support/temp_dir.hpp"
#include "tests/support/trees.hpp"

namespace oaklight::test {
namespace {

using Json = nlohmann::json;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

constexpr PacketReader kReaders[] = {PacketReader::logger, PacketReader::firewood,
                                     PacketReader::standing, PacketReader::owner};

/// Texts that people and files really bring.
const std::vector<std::string>& odd_texts() {
  static const std::vector<std::string> kTexts = {
      "=cmd|' /C calc'!A0",
      "+1",
      "-2",
      "@SUM(A1)",
      "'=1+1",
      "''quoted",
      "\"Quoted\", with 'commas', and; more",
      "<b>&amp; </wpt>",
      "\xF0\x9F\x8C\xB3 tree \xF0\x9F\x94\xA5",
      "\xD7\x90\xD7\x9C\xD7\x95\xD7\x9F \xD7\x99\xD7\xA8\xD7\x95\xD7\xA7",
      "\xE2\x80\xAE desrever",
      "two\r\nlines",
      "a\ttab",
      "bad \xFF\xFE bytes and \x01 control",
      "\xEF\xBC\x9DSUM",
      "2026-12-07",
      "1e5",
      "007",
      std::string(300, 'W')};
  return kTexts;
}

/// Marks of every kind, by turns; every seventh tree has a stop.
void mark_by_turns(TestTract& tract, WalkTreeId id, int turn) {
  static constexpr Product kProducts[] = {Product::sawlog, Product::pulpwood, Product::firewood};
  switch (turn % 6) {
    case 0:
    case 1:
      tract.take(id, Reader::logger, kProducts[turn % 2]);
      break;
    case 2:
      tract.take(id, Reader::firewood, Product::firewood);
      break;
    case 3:
      tract.mark(id, {.verdict = Verdict::kill_standing,
                      .method = Method::girdle,
                      .reason = "Crowds a crop tree."});
      break;
    case 4:
      tract.mark(id, {.verdict = Verdict::keep, .reason = "Feeds wildlife."});
      break;
    default:
      break;  // met, never decided
  }
}

/// A tract of `trees` trees, their tags, stands and reasons odd or plain.
TractData tract_of(int trees, bool odd, bool placed) {
  TestTract tract;
  const auto& texts = odd_texts();
  const auto text = [&](int i) { return texts[static_cast<std::size_t>(i) % texts.size()]; };
  if (odd) {
    tract.data.tract.name = text(0);
    tract.data.tract.contact = text(6);
    tract.data.stands.front().name = text(4);
  }
  if (placed) tract.data.tract.landing = at(0, 0);
  for (int i = 0; i < trees; ++i) {
    const std::string number = std::to_string(i + 1);
    WalkTree& tree = tract.tree(odd ? text(i) + (i < 19 ? "" : number) : number, kRedMaple,
                                6.0 + (i * 7 % 130) / 10.0);
    if (placed) tree.position = at(i % 140 * 21.0, i / 140 * 23.0);
    if (i % 7 == 6) tree.facts.conditions.add(Condition::crack);
    if (i % 4 == 0) tree.facts.half_logs = 2 + i % 5;
    mark_by_turns(tract, tree.id, i);
    if (odd && !tract.data.marks.empty()) tract.data.marks.back().reason = text(i + 3);
  }
  return tract.data;
}

Result<Packet> packet_of(const TractData& data, PacketReader reader) {
  const ReleaseKnowledge& release = shipped_knowledge();
  return make_packet(data, {release.species, cautions(), seasons(), &release}, reader, winter());
}

/// What the outside programs found in the files of a packet.
Json read_back(const Packet& packet, const std::filesystem::path& folder, bool rows = false) {
  const auto files = write_packet_files(folder, packet, std::nullopt);
  EXPECT_TRUE(files) << to_text(files.error());
  const Ran run = run_program(
      "/usr/bin/python3 " OAKLIGHT_SOURCE_DIR "/tests/session/read_packet.py " + folder.string() +
      " " + std::string(word_of(packet.reader)) + (rows ? " --rows" : ""));
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
  int trees;
  bool odd;
  bool placed;
};

class PacketFiles : public testing::TestWithParam<Case> {};

TEST_P(PacketFiles, AreReadAlikeByProgramsThatAreNotOurs) {
  const Case& c = GetParam();
  const TractData data = tract_of(c.trees, c.odd, c.placed);
  for (const PacketReader reader : kReaders) {
    const auto packet = packet_of(data, reader);
    if (!packet) {
      EXPECT_EQ(packet.error().code, ErrorCode::nothing_marked) << word_of(reader);
      continue;
    }
    const TempDir folder;
    SCOPED_TRACE(word_of(reader));
    expect_all_files_say_the_same(*packet, read_back(*packet, folder.path()));
    if (c.trees > 1000) break;
  }
}

INSTANTIATE_TEST_SUITE_P(Tracts, PacketFiles,
                         testing::Values(Case{"plain", 60, false, true},
                                         Case{"odd", 57, true, true},
                                         Case{"nowhere", 24, true, false},
                                         Case{"one_tree", 1, true, true},
                                         Case{"twenty_thousand", 20'000, false, true}),
                         [](const auto& tract) { return std::string(tract.param.name); });

/// The tree of a packet that wears a tag, as files write it.
std::map<std::string, std::pair<PacketList, const PacketTree*>> trees_by_tag(const Packet& packet) {
  std::map<std::string, std::pair<PacketList, const PacketTree*>> trees;
  for (const PacketList& list : lists_of(packet)) {
    for (const PacketTree& tree : *list.trees) trees[clean_text(tree.tag)] = {list, &tree};
  }
  return trees;
}

TEST(PacketRoundTrip, MarksFromCsvAndGpxAreTheMarksThatWentOut) {
  const auto packet = packet_of(tract_of(57, true, true), PacketReader::owner);
  ASSERT_TRUE(packet);
  const TempDir folder;
  const Json told = read_back(*packet, folder.path(), true);
  const auto trees = trees_by_tag(*packet);
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
  const auto packet = packet_of(tract.data, PacketReader::logger);
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
  const auto owner = packet_of(tract.data, PacketReader::owner);
  EXPECT_THAT(owner->list_csv, HasSubstr("SECRETREASON")) << "it is the owner's own";
}

TEST(PacketFilesOf, TheSamePacketAreTheSameBytes) {
  const auto packet = packet_of(tract_of(30, false, true), PacketReader::owner);
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
  const auto packet = packet_of(tract_of(12, false, true), PacketReader::logger);
  ASSERT_TRUE(packet);
  const TempDir folder;
  write_bytes(folder / "taken", "x");
  const auto files = write_packet_files(folder / "taken", *packet, std::nullopt);
  ASSERT_FALSE(files);
  EXPECT_EQ(files.error().code, ErrorCode::cannot_write);
}

}  // namespace
}  // namespace oaklight::test
