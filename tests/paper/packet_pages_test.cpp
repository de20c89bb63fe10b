#include "core/paper/packet_pages.hpp"

#include <algorithm>
#include <set>

#include "core/base/number_text.hpp"
#include "tests/paper/invented_packet.hpp"
#include "tests/paper/paper_fixture.hpp"

namespace oaklight {
namespace {

// All expected values here are derived: from the packet that is printed and the promises in the
// headers.

using test::invented_packet;
using test::texts_of;
using PacketPages = test::PaperTest;

bool has(const Drawing& page, const std::string& words) {
  const auto texts = texts_of(page);
  return std::any_of(texts.begin(), texts.end(), [&words](const std::string& text) {
    return text.find(words) != std::string::npos;
  });
}

/// The pages whose head names the section.
std::vector<Drawing> section(const std::vector<Drawing>& pages, const std::string& name) {
  std::vector<Drawing> found;
  for (const Drawing& page : pages) {
    const auto texts = texts_of(page);
    if (std::find(texts.begin(), texts.begin() + 2, name) != texts.begin() + 2) {
      found.push_back(page);
    }
  }
  return found;
}

/// The words in tag size, in order: the first column of a list.
std::vector<std::string> listed_tags(const std::vector<Drawing>& pages) {
  std::vector<std::string> tags;
  for (const Drawing& page : pages) {
    for (const DrawingItem& item : page.items()) {
      const auto* text = std::get_if<TextItem>(&item);
      if (text && text->style.points == kTagText.points) tags.push_back(text->text.toStdString());
    }
  }
  return tags;
}

std::vector<std::string> tags_of(const std::vector<PacketTree>& trees) {
  std::vector<std::string> tags;
  for (const PacketTree& tree : trees) tags.push_back(tree.tag);
  return tags;
}

/// From the top of the capitals to the baseline: the part of a text that must stay readable.
QRectF ink_of(const TextItem& item) {
  const double capitals = 0.7 * item.style.points;
  return {item.baseline.x(), item.baseline.y() - capitals, text_width(item.text, item.style),
          capitals};
}

void expect_no_text_over_text(const Drawing& page) {
  std::vector<std::pair<QRectF, std::string>> texts;
  for (const DrawingItem& item : page.items()) {
    const auto* text = std::get_if<TextItem>(&item);
    if (!text) continue;
    const QRectF ink = ink_of(*text);
    for (const auto& [other, words] : texts) {
      EXPECT_FALSE(ink.intersects(other)) << text->text.toStdString() << " over " << words;
    }
    texts.emplace_back(ink, text->text.toStdString());
  }
}

void expect_all_inside(const std::vector<Drawing>& pages, PaperSize paper) {
  const PageGrid grid = page_grid(paper);
  const QRectF inside(QPointF(grid.head.left() - 1.0, grid.head.top() - 1.0),
                      QPointF(grid.foot.right() + 1.0, grid.foot.bottom() + 1.0));
  for (std::size_t i = 0; i < pages.size(); ++i) {
    for (const DrawingItem& item : pages[i].items()) {
      const QRectF box = box_of(item);  // null: nothing of it is left inside its clip
      EXPECT_TRUE(box.isNull() || inside.contains(box)) << "page " << i + 1;
    }
    expect_no_text_over_text(pages[i]);
  }
}

/// Words that people and files really bring.
Packet odd_packet() {
  const std::vector<std::string> odd = {
      "=cmd|' /C calc'!A0",
      "\"Quoted\", with 'commas', and; more",
      "\xF0\x9F\x8C\xB3 tree \xF0\x9F\x94\xA5",
      "\xD7\x90\xD7\x9C\xD7\x95\xD7\x9F \xD7\x99\xD7\xA8\xD7\x95\xD7\xA7",
      "\xE2\x80\xAE desrever",
      "line\r\nbreak\ttab",
      std::string(300, 'W'),
      "bad \xFF\xFE bytes",
      "",
      std::string(6000, 'x') + " end"};
  Packet packet = invented_packet(12);
  packet.tract.demo = false;
  packet.tract.name = odd[6] + " " + odd[2];
  packet.tract.contact = odd[1];
  packet.tract.county = odd[3];
  packet.before_you_start.push_back(odd[9]);
  packet.job_cautions.push_back({"ODD", Severity::stop, odd[9], ""});
  packet.season_advice = odd[6];
  packet.seasons.push_back({odd[6], odd[6], odd[9], odd[0]});
  packet.emergency.push_back({odd[6], odd[9]});
  packet.log_rule = odd[6];
  packet.rule_versions = odd[9];
  packet.made_on = odd[6];
  packet.list_sha256 = odd[6];
  for (std::size_t i = 0; i < packet.cut.size(); ++i) {
    PacketTree& tree = packet.cut[i];
    tree.tag = odd[i % odd.size()];
    tree.stand = odd[(i / 2) % odd.size()];
    tree.species = odd[(i + 1) % odd.size()];
    tree.reason = odd[(i + 2) % odd.size()];
    tree.cautions = {{"A", Severity::stop, odd[(i + 3) % odd.size()], ""},
                     {"B", Severity::extra_care, odd[(i + 4) % odd.size()], ""},
                     {"C", Severity::note, odd[(i + 5) % odd.size()], ""}};
  }
  for (Stand& stand : packet.stands) stand.name = odd[6];
  for (MapLine& line : packet.lines) line.name = odd[6];
  packet.trained = packet.cut;
  packet.keep.insert(packet.keep.end(), packet.cut.begin(), packet.cut.end());
  return packet;
}

class PacketPagesOn : public test::PaperTest, public testing::WithParamInterface<PaperSize> {};

TEST_P(PacketPagesOn, StayInsideTheMarginsAndNoTextCoversAnother) {
  for (const int trees : {1, 3, 60, 300}) {
    for (const PacketReader reader : {PacketReader::logger, PacketReader::firewood}) {
      SCOPED_TRACE(trees);
      expect_all_inside(packet_pages(invented_packet(trees, 7, reader), GetParam()), GetParam());
    }
  }
}

TEST_P(PacketPagesOn, HoldOddTextWithoutLosingThePage) {
  const auto pages = packet_pages(odd_packet(), GetParam());
  expect_all_inside(pages, GetParam());
  EXPECT_LT(pages.size(), 90u);
}

TEST_P(PacketPagesOn, CountThemselves) {
  const auto pages = packet_pages(invented_packet(60), GetParam());
  for (std::size_t i = 0; i < pages.size(); ++i) {
    EXPECT_TRUE(
        has(pages[i], "Page " + std::to_string(i + 1) + " of " + std::to_string(pages.size())));
  }
}

INSTANTIATE_TEST_SUITE_P(Papers, PacketPagesOn, testing::Values(PaperSize::letter, PaperSize::a4),
                         [](const auto& paper) { return std::string(word_of(paper.param)); });

TEST_F(PacketPages, ListsHoldEachTreeOnceInThePacketsOrder) {
  const Packet packet = invented_packet(60);
  const auto pages = packet_pages(packet, PaperSize::letter);
  EXPECT_EQ(listed_tags(section(pages, "TREES TO CUT")), tags_of(packet.cut));
  EXPECT_EQ(listed_tags(section(pages, "TRAINED FELLER ONLY")), tags_of(packet.trained));
  auto stay = tags_of(packet.keep);
  const auto others = tags_of(packet.others);
  stay.insert(stay.end(), others.begin(), others.end());
  EXPECT_EQ(listed_tags(section(pages, "DO NOT CUT")), stay);
}

TEST_F(PacketPages, NoTreeToLeaveIsOnAPageOfTreesToCut) {
  const Packet packet = invented_packet(200, 3);
  const auto cut = listed_tags(section(packet_pages(packet, PaperSize::letter), "TREES TO CUT"));
  const std::set<std::string> on_list(cut.begin(), cut.end());
  for (const auto* list : {&packet.trained, &packet.keep, &packet.others}) {
    for (const PacketTree& tree : *list) EXPECT_EQ(on_list.count(tree.tag), 0u) << tree.tag;
  }
}

TEST_F(PacketPages, EachPageOfAListRepeatsItsHeadAndItsStand) {
  const auto pages = packet_pages(invented_packet(60), PaperSize::letter);
  const auto list = section(pages, "TREES TO CUT");
  ASSERT_GT(list.size(), 3u);
  for (const Drawing& page : list) {
    EXPECT_TRUE(has(page, "Cautions"));
    EXPECT_TRUE(has(page, "What to do"));
    EXPECT_TRUE(has(page, "Stand: "));
  }
  EXPECT_TRUE(has(list[1], "(continued)"));
}

TEST_F(PacketPages, EachTreeToCutHasABoxToTickOfFiveMillimetres) {
  const Packet packet = invented_packet(30);
  const auto pages = packet_pages(packet, PaperSize::letter);
  constexpr double kFiveMillimetres = 5.0 / 25.4 * 72.0;
  std::size_t boxes = 0;
  for (const Drawing& page : section(pages, "TREES TO CUT")) {
    for (const DrawingItem& item : page.items()) {
      const auto* path = std::get_if<PathItem>(&item);
      if (!path || path->fill) continue;
      const QSizeF size = path->path.boundingRect().size();
      const bool five_wide = std::abs(size.width() - kFiveMillimetres) < 1e-6;
      if (five_wide && std::abs(size.height() - kFiveMillimetres) < 1e-6) ++boxes;
    }
  }
  EXPECT_EQ(boxes, packet.cut.size());
}

TEST_F(PacketPages, CautionsStandBesideTheirTree) {
  Packet packet = invented_packet(1);
  packet.cut[0].cautions = {{"X", Severity::extra_care, "It leans over the lane.", ""}};
  const auto list = section(packet_pages(packet, PaperSize::letter), "TREES TO CUT");
  ASSERT_EQ(list.size(), 1u);
  EXPECT_TRUE(has(list[0], "TAKE CARE"));
  EXPECT_TRUE(has(list[0], "It leans over"));
}

TEST_F(PacketPages, InventedTractsSaySoOnEachPageAndRealOnesNever) {
  Packet packet = invented_packet(20);
  for (const bool demo : {true, false}) {
    packet.tract.demo = demo;
    for (const Drawing& page : packet_pages(packet, PaperSize::letter)) {
      EXPECT_EQ(has(page, "DEMO: invented tract"), demo);
    }
  }
}

TEST_F(PacketPages, TheChecksumOfTheListIsOnEachPageAndWholeOnTheFirst) {
  const Packet packet = invented_packet(20);
  const auto pages = packet_pages(packet, PaperSize::letter);
  EXPECT_TRUE(has(pages[0], packet.list_sha256));
  for (const Drawing& page : pages) EXPECT_TRUE(has(page, packet.list_sha256));
}

TEST_F(PacketPages, TheEmergencyCardIsOnTheFirstPageHoweverLongTheCautionsAre) {
  Packet packet = invented_packet(3);
  for (int i = 0; i < 40; ++i)
    packet.before_you_start.push_back("One more thing to know, number " + std::to_string(i));
  const auto pages = packet_pages(packet, PaperSize::letter);
  EXPECT_TRUE(has(pages[0], "CALL 911"));
  EXPECT_TRUE(has(pages[0], packet.emergency[1].text)) << "the map point";
  EXPECT_TRUE(has(pages[1], "number 39"));
}

TEST_F(PacketPages, TotalsAreThoseOfThePacket) {
  const Packet packet = invented_packet(60);
  const auto end = section(packet_pages(packet, PaperSize::letter), "TOTALS AND SIGNATURES");
  ASSERT_EQ(end.size(), 1u);
  ASSERT_FALSE(packet.totals.empty());
  for (const ProductTotal& total : packet.totals) {
    if (total.board_feet) {
      EXPECT_TRUE(has(end[0], grouped_text(total.board_feet->value, 0)));
    }
    if (total.cords) {
      EXPECT_TRUE(has(end[0], grouped_text(total.cords->value, 2)));
    }
  }
  EXPECT_TRUE(has(end[0], packet.log_rule));
  EXPECT_TRUE(has(end[0], "Signature"));
  EXPECT_TRUE(has(end[0], "Who governs"));
}

TEST_F(PacketPages, AVolumeNobodyMeasuredIsNotZero) {
  Packet packet = invented_packet(1);
  packet.cut[0].product = Product::sawlog;
  packet.cut[0].board_feet.reset();
  const auto list = section(packet_pages(packet, PaperSize::letter), "TREES TO CUT");
  EXPECT_TRUE(has(list[0], "sawlog, no volume"));
}

TEST_F(PacketPages, ATrainedFellerIsToldWhatToDoAndSignsAndAFirewoodCutterIsNot) {
  Packet packet = invented_packet(3);
  packet.cut[0].product = Product::firewood;
  packet.cut[0].cords = Cords{0.25};
  packet.trained = {packet.cut[0]};
  auto page = section(packet_pages(packet, PaperSize::letter), "TRAINED FELLER ONLY");
  ASSERT_EQ(page.size(), 1u);
  EXPECT_TRUE(has(page[0], "Fell: firewood, 0.25"));
  EXPECT_TRUE(has(page[0], "Cleared by"));
  EXPECT_TRUE(has(page[0], "Nobody cuts from this page"));
  packet.reader = PacketReader::firewood;
  page = section(packet_pages(packet, PaperSize::letter), "LEAVE THESE ALONE");
  ASSERT_EQ(page.size(), 1u);
  EXPECT_FALSE(has(page[0], "Fell: "));
  EXPECT_FALSE(has(page[0], "Cleared by"));
  EXPECT_TRUE(has(page[0], "Leave these alone"));
}

TEST_F(PacketPages, TreesWithoutAPositionAreNamedUnderTheMap) {
  Packet packet = invented_packet(4);
  packet.cut[2].position.reset();
  EXPECT_TRUE(has(section(packet_pages(packet, PaperSize::letter), "MAP")[0],
                  "No position: Cut (1): " + packet.cut[2].tag));
}

TEST_F(PacketPages, APacketWithoutAnyPositionSaysThatThereIsNoMap) {
  Packet packet = invented_packet(5);
  for (auto* list : {&packet.cut, &packet.trained, &packet.keep, &packet.others}) {
    for (PacketTree& tree : *list) tree.position.reset();
  }
  packet.stands.clear();
  packet.lines.clear();
  packet.tract.landing.reset();
  const auto map = section(packet_pages(packet, PaperSize::letter), "MAP");
  ASSERT_EQ(map.size(), 1u);
  EXPECT_TRUE(has(map[0], "There is no map"));
  EXPECT_TRUE(has(map[0], packet.cut[0].tag));
}

TEST_F(PacketPages, APacketWithoutTreesSaysSo) {
  const auto pages = packet_pages(Packet{}, PaperSize::letter);
  EXPECT_TRUE(has(section(pages, "TREES TO CUT")[0], "No tree is marked"));
  expect_all_inside(pages, PaperSize::letter);
}

TEST_F(PacketPages, EveryTreeWithAPositionWearsItsTagOnOneMap) {
  const Packet packet = invented_packet(150, 5);
  std::multiset<std::string> on_maps;
  for (const Drawing& page : packet_pages(packet, PaperSize::letter)) {
    const auto texts = texts_of(page);
    if (texts.size() < 2 || texts[1].rfind("MAP", 0) != 0) continue;
    on_maps.insert(texts.begin() + 2, texts.end());
  }
  for (const auto* list : {&packet.cut, &packet.trained, &packet.keep, &packet.others}) {
    for (const PacketTree& tree : *list) {
      if (!tree.position) continue;
      EXPECT_EQ(on_maps.count(tree.tag), 1u) << tree.tag;
    }
  }
}

}  // namespace
}  // namespace oaklight
