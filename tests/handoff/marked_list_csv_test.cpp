#include "core/handoff/marked_list_csv.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>
#include <nlohmann/json.hpp>

#include "core/base/sha256.hpp"
#include "core/handoff/manifest.hpp"
#include "tests/handoff/test_tract.hpp"

namespace oaklight {
namespace {

using namespace oaklight::test;
using Record = std::map<std::string, std::string>;

/// RFC 4180 read by the letter, without the product's own reader: records end in CRLF, nothing else
/// ends one.
std::vector<std::vector<std::string>> parse(const std::string& text) {
  std::vector<std::vector<std::string>> records(1, std::vector<std::string>(1));
  bool quoted = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    std::string& cell = records.back().back();
    if (quoted && text[i] == '"' && i + 1 < text.size() && text[i + 1] == '"') {
      cell += text[++i];
    } else if (text[i] == '"') {
      quoted = !quoted;
    } else if (!quoted && text[i] == ',') {
      records.back().emplace_back();
    } else if (!quoted && text[i] == '\r' && text.at(i + 1) == '\n') {
      ++i;
      records.emplace_back(1);
    } else {
      cell += text[i];
    }
  }
  EXPECT_FALSE(quoted);
  EXPECT_EQ(records.back(), std::vector<std::string>(1)) << "the last record ends in CRLF";
  records.pop_back();
  return records;
}

std::vector<Record> records_of(const std::string& text) {
  const auto rows = parse(text);
  std::vector<Record> records;
  for (std::size_t r = 1; r < rows.size(); ++r) {
    EXPECT_EQ(rows[r].size(), rows[0].size()) << "record " << r;
    Record record;
    for (std::size_t c = 0; c < rows[0].size(); ++c) record[rows[0][c]] = rows[r].at(c);
    records.push_back(record);
  }
  return records;
}

PacketTree listed(const std::string& tag) {
  return {.tag = tag,
          .stand = "Upper bench",
          .species = "red maple",
          .dbh = dbh_in(12.4),
          .verdict = Verdict::take,
          .method = Method::fell,
          .product = Product::sawlog,
          .board_feet = BoardFeet{61},
          .reason = "Touches white oak 7.",
          .position = Position{Degrees{38.4012}, Degrees{-82.3345}}};
}

Packet one(PacketTree tree) {
  Packet packet;
  packet.log_rule = "International 1/4-inch";
  packet.cut = {std::move(tree)};
  return packet;
}

TEST(MarkedListCsv, SaysOfEachTreeWhatThePacketSays) {
  PacketTree tree = listed("14");
  tree.cautions = {{"FORKED", Severity::extra_care, "It may split, or twist.", "common practice"}};
  tree.work = WorkNotes{.ways = {Way::fell, Way::girdle},
                        .how = "Fell it.",
                        .herbicide_words = "No herbicide here: water is near.",
                        .when = "No window holds."};
  const auto records = records_of(marked_list_csv(one(tree)));
  ASSERT_EQ(records.size(), 1U);
  EXPECT_EQ(records[0], (Record{{"list", "cut"},
                                {"number", "1"},
                                {"tag", "14"},
                                {"cautions", "extra_care FORKED: It may split, or twist."},
                                {"species", "red maple"},
                                {"dbh_in", "12.4"},
                                {"stand", "Upper bench"},
                                {"method", "fell"},
                                {"product", "sawlog"},
                                {"volume_bf", "61"},
                                {"log_rule", "International 1/4-inch"},
                                {"volume_cords", ""},
                                {"crop_tree", "no"},
                                {"latitude_deg", "38.401200"},
                                {"longitude_deg", "-82.334500"},
                                {"reason", "Touches white oak 7."},
                                {"goes_to", ""},
                                {"ways_allowed", "fell|girdle"},
                                {"how", "Fell it."},
                                {"herbicide", "no"},
                                {"herbicide_why", "No herbicide here: water is near."},
                                {"season_holds", "no"},
                                {"season", "No window holds."}}));
}

TEST(MarkedListCsv, EveryCautionIsInOneCell) {
  PacketTree tree = listed("14");
  for (const char* code : {"A", "B", "C", "D", "E"}) {
    tree.cautions.push_back({code, Severity::stop, "Stay away.", "common practice"});
  }
  EXPECT_EQ(records_of(marked_list_csv(one(tree))).at(0).at("cautions"),
            "stop A: Stay away. | stop B: Stay away. | stop C: Stay away. | stop D: Stay away. | "
            "stop E: Stay away.");
}

TEST(MarkedListCsv, WhatIsNotKnownIsAnEmptyCell) {
  PacketTree tree = listed("14");
  tree.board_feet.reset();
  tree.position.reset();
  const Record record = records_of(marked_list_csv(one(tree))).at(0);
  for (const char* column : {"volume_bf", "log_rule", "volume_cords", "latitude_deg"}) {
    EXPECT_EQ(record.at(column), "") << column;
  }
}

TEST(MarkedListCsv, TypedTextIsKeptWholeAndNeverAFormula) {
  PacketTree tree = listed("=cmd|' /C calc'!A0");
  tree.stand = "@upper, \"old\" bench";
  tree.species = "+1";
  tree.reason = "-1 side\nfree";
  const Record record = records_of(marked_list_csv(one(tree))).at(0);
  EXPECT_EQ(record.at("tag"), "'=cmd|' /C calc'!A0");
  EXPECT_EQ(record.at("stand"), "'@upper, \"old\" bench");
  EXPECT_EQ(record.at("species"), "'+1");
  EXPECT_EQ(record.at("reason"), "'-1 side\nfree");
  // An apostrophe that a person typed before such a sign is told from ours; others are left alone.
  EXPECT_EQ(records_of(marked_list_csv(one(listed("'=1")))).at(0).at("tag"), "''=1");
  EXPECT_EQ(records_of(marked_list_csv(one(listed("'tis")))).at(0).at("tag"), "'tis");
  EXPECT_EQ(records_of(marked_list_csv(one(listed("\xEF\xBC\x9D"
                                                  "1"))))
                .at(0)
                .at("tag"),
            "'\xEF\xBC\x9D"
            "1");
}

TEST(MarkedListCsv, TreesOfOthersCarryNoWorkToDo) {
  Packet packet = one(listed("1"));
  packet.trained = {listed("2")};
  packet.keep = {listed("3")};
  packet.others = {listed("4")};
  auto records = records_of(marked_list_csv(packet));
  ASSERT_EQ(records.size(), 4U);
  EXPECT_EQ(records[1].at("list"), "trained_feller_only");
  EXPECT_EQ(records[1].at("method"), "fell");
  for (const std::size_t i : {2U, 3U}) {
    for (const char* column : {"method", "product", "volume_bf", "log_rule", "volume_cords"}) {
      EXPECT_EQ(records[i].at(column), "") << column;
    }
  }
  EXPECT_EQ(records[2].at("list"), "keep");
  EXPECT_EQ(records[3].at("list"), "not_yours");

  packet.reader = PacketReader::firewood;
  records = records_of(marked_list_csv(packet));
  EXPECT_EQ(records[1].at("list"), "leave_alone");
  EXPECT_EQ(records[1].at("method"), "") << "a firewood cutter does nothing to them";
}

TEST(MarkedListCsv, EveryTreeOfAPacketIsThereOnce) {
  TestTract tract;
  for (int i = 1; i <= 30; ++i) {
    WalkTree& tree = tract.tree(std::to_string(i));
    if (i % 5 == 0) tree.facts.conditions.add(Condition::crack);
    const WalkTreeId id = tree.id;
    if (i % 3 == 0) tract.mark(id, {.verdict = Verdict::keep});
    if (i % 3 == 1) tract.take(id, Reader::logger, Product::pulpwood);
  }
  const auto packet = packet_for(tract.data, Reader::logger);
  ASSERT_TRUE(packet);
  std::map<std::string, int> seen;
  for (const Record& record : records_of(packet->list_csv)) ++seen[record.at("tag")];
  EXPECT_EQ(seen.size(), 30U);
  for (const auto& [tag, times] : seen) EXPECT_EQ(times, 1) << tag;
}

TEST(Manifest, CountsAndChecksumLetTheReceiverProveTheListWhole) {
  TestTract tract;
  tract.take(tract.tree("1", kRedMaple, 8).id, Reader::firewood, Product::firewood);
  tract.mark(tract.tree("2").id, {.verdict = Verdict::keep});
  const auto packet = packet_for(tract.data, Reader::firewood);
  ASSERT_TRUE(packet);
  const auto manifest = nlohmann::json::parse(manifest_json(*packet));
  EXPECT_EQ(manifest["reader"], "firewood");
  EXPECT_EQ(manifest["made_on"], "2026-12-01");
  EXPECT_EQ(manifest["rule_versions"], "rules: by hand, cautions 1");
  EXPECT_EQ(manifest["trees"]["cut"], 1);
  EXPECT_EQ(manifest["trees"]["leave_alone"], 0);
  EXPECT_EQ(manifest["trees"]["keep"], 1);
  EXPECT_EQ(manifest["totals"][0]["product"], "firewood");
  // University of New Hampshire cord table at 8 in: 0.12 cords.
  EXPECT_EQ(manifest["totals"][0]["cords"], 0.12);
  EXPECT_TRUE(manifest["totals"][0]["board_feet"].is_null());
  EXPECT_EQ(manifest["list_sha256"], sha256_hex(packet->list_csv));
  EXPECT_EQ(manifest["list_bytes"], packet->list_csv.size());
  EXPECT_EQ(manifest_json(*packet), manifest_json(*packet_for(tract.data, Reader::firewood)));
}

TEST(Manifest, TextThatIsNotUtf8DoesNotStopIt) {
  Packet packet = one(listed("1"));
  packet.tract.name = "Laurel \xFF Run";
  EXPECT_TRUE(nlohmann::json::accept(manifest_json(packet)));
}

}  // namespace
}  // namespace oaklight
