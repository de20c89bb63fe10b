#include "tests/handoff/odd_tract.hpp"

#include "tests/support/trees.hpp"

namespace oaklight::test {
namespace {

constexpr int kCard = 5;  ///< trees of a card, the crop tree last

/// Marks of every kind, by turns.
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

/// The crop tree at the end of a card, and who stands around it.
void close_card(TestTract& tract, WalkTreeId crop) {
  tract.data.walk_trees.back().crop = true;
  tract.mark(crop, {.verdict = Verdict::keep, .reason = "Crop tree."});
  const auto last = tract.data.walk_trees.size() - 1;
  for (std::size_t i = 1; i < kCard; ++i) {
    Contact& contact = tract.contact(crop, tract.data.walk_trees[last - i].id);
    contact.seen = Seen::touches;
    contact.azimuth = Degrees{20.0 + 80.0 * static_cast<double>(i)};
    contact.distance = tape_ft(14.0 + 2.0 * static_cast<double>(i));
  }
}

/// Two tenth-acre plots, and acres walked on which 80 trees were met an acre.
void measure(TestTract& tract, int trees) {
  Stand& stand = tract.data.stands.front();
  stand.acres = Acres{trees / 40.0 + 1.0};
  stand.walked = Acres{trees / 80.0 + 1.0};
  const StandId id = stand.id;
  const CruiseId cruise = nth_id<CruiseId>(900'000);
  tract.data.cruises.push_back({.id = cruise, .name = "c", .design = FixedDesign{.area = 0.1}});
  for (std::uint32_t p = 0; p < 2; ++p) {
    const PlotId plot = nth_id<PlotId>(900'010 + p);
    tract.data.plots.push_back({.id = plot,
                                .stand = id,
                                .cruise = cruise,
                                .label = std::to_string(p + 1),
                                .status = PlotStatus::measured});
    for (std::uint32_t i = 0; i < 12; ++i) {
      tract.data.trees.push_back({.id = nth_id<TreeId>(900'100 + 100 * p + i),
                                  .plot = plot,
                                  .facts = {.species = {i % 3 == 0 ? kWhiteOak : kRedMaple},
                                            .dbh = dbh_in(6.0 + i),
                                            .crown_class = CrownClass::codominant}});
    }
  }
}

}  // namespace

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

TractData many_trees(const ManyTrees& wish) {
  TestTract tract;
  const auto& texts = odd_texts();
  const int kinds = static_cast<int>(texts.size());
  const auto text = [&](int i) { return texts[static_cast<std::size_t>(i % kinds)]; };
  if (wish.odd) {
    tract.data.tract.name = text(0);
    tract.data.tract.contact = text(6);
    tract.data.stands.front().name = text(4);
  }
  if (wish.placed) tract.data.tract.landing = at(0, 0);
  if (wish.measured) measure(tract, wish.trees);
  for (int i = 0; i < wish.trees; ++i) {
    const std::string number = std::to_string(i + 1);
    const bool crop = i % kCard == kCard - 1;
    WalkTree& tree = tract.tree(wish.odd ? text(i) + (i < kinds ? "" : number) : number,
                                crop ? kWhiteOak : kRedMaple, 6.0 + (i * 7 % 130) / 10.0);
    if (wish.placed) tree.position = at(i % 140 * 21.0, i / 140 * 23.0);
    if (i > 0 && i % 8 == 0) tree.facts.conditions.add(Condition::crack);
    if (i % 4 == 0) tree.facts.half_logs = 2 + i % 5;
    const WalkTreeId id = tree.id;
    if (crop) {
      close_card(tract, id);
    } else {
      mark_by_turns(tract, id, i - i / kCard);
    }
    if (wish.odd && !tract.data.marks.empty()) tract.data.marks.back().reason = text(i + 3);
  }
  return tract.data;
}

Result<Packet> packet_of_all(const TractData& data, PacketReader reader) {
  const ReleaseKnowledge& release = shipped_knowledge();
  return make_packet(data, {release.species, cautions(), seasons(), &release}, reader, winter());
}

}  // namespace oaklight::test
