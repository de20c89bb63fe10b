// Pages for whoever kills trees standing and for the owner, made from a small measured tract.
// Expected values are derived from that tract and from the promises in the headers.
#include <algorithm>

#include "core/handoff/owner_part.hpp"
#include "core/measure/local_curves.hpp"
#include "core/paper/packet_pages.hpp"
#include "core/paper/pdf_language.hpp"
#include "core/paper/reader_words.hpp"
#include "tests/handoff/test_tract.hpp"
#include "tests/paper/paper_fixture.hpp"
#include "tests/support/trees.hpp"

namespace oaklight {
namespace {

using namespace oaklight::test;
using ReaderPages = PaperTest;

/// Two tenth-acre plots, and crop trees with maples around them, of which some go.
TractData measured_tract() {
  TestTract tract;
  Stand& stand = tract.data.stands.front();
  stand.acres = Acres{10};
  stand.walked = Acres{2};
  const StandId id = stand.id;
  const CruiseId cruise = nth_id<CruiseId>(5000);
  tract.data.cruises.push_back({.id = cruise, .name = "c", .design = FixedDesign{.area = 0.1}});
  for (std::uint32_t p = 0; p < 2; ++p) {
    const PlotId plot = nth_id<PlotId>(5010 + p);
    tract.data.plots.push_back({.id = plot,
                                .stand = id,
                                .cruise = cruise,
                                .label = std::to_string(p + 1),
                                .status = PlotStatus::measured});
    for (std::uint32_t i = 0; i < 12; ++i) {
      tract.data.trees.push_back({.id = nth_id<TreeId>(5100 + 100 * p + i),
                                  .plot = plot,
                                  .facts = {.species = {i % 3 == 0 ? kWhiteOak : kRedMaple},
                                            .dbh = dbh_in(6.0 + i),
                                            .crown_class = CrownClass::codominant}});
    }
  }
  for (int card = 0; card < 7; ++card) {
    WalkTree& oak = tract.tree("C" + std::to_string(card), kWhiteOak, 15.0);
    oak.crop = true;
    oak.position = at(200.0 * card, 0.0);
    const WalkTreeId crop = oak.id;
    tract.mark(crop, {.verdict = Verdict::keep, .reason = "Crop tree."});
    for (int i = 0; i < 3; ++i) {
      WalkTree& maple = tract.tree("M" + std::to_string(3 * card + i), kRedMaple, 9.0 + i);
      maple.position = at(200.0 * card + 15.0, 15.0 * i);
      const WalkTreeId neighbour = maple.id;
      Contact& contact = tract.contact(crop, neighbour);
      contact.seen = Seen::touches;
      contact.azimuth = Degrees{30.0 + 100.0 * i};
      contact.distance = tape_ft(18);
      if (i == 0) tract.take(neighbour, Reader::logger, Product::pulpwood);
      if (i == 1) {
        tract.mark(neighbour, {.verdict = Verdict::kill_standing,
                               .method = Method::girdle,
                               .reason = "Crowds a crop tree."});
      }
    }
  }
  return tract.data;
}

Packet packet_of(const TractData& data, PacketReader reader) {
  const ReleaseKnowledge& release = shipped_knowledge();
  return make_packet(data, {release.species, cautions(), seasons(), &release}, reader, winter())
      .value();
}

std::string all_words(const std::vector<Drawing>& pages) {
  std::string words;
  for (const Drawing& page : pages) {
    for (const std::string& text : texts_of(page)) words += text + "\n";
  }
  return words;
}

bool has(const std::string& words, const std::string& part) {
  return words.find(part) != std::string::npos;
}

TEST_F(ReaderPages, OfTheStandingListNeverSayThatATreeIsToBeCut) {
  const Packet packet = packet_of(measured_tract(), PacketReader::standing);
  const std::string words = all_words(packet_pages(packet, PaperSize::letter));
  EXPECT_TRUE(has(words, "Label first"));
  EXPECT_TRUE(has(words, "Trees to kill standing: " + std::to_string(packet.cut.size())));
  EXPECT_FALSE(has(words, "Trees to cut"));
  EXPECT_FALSE(has(words, "Cut (")) << "the key of the map";
  EXPECT_TRUE(has(words, "Kill standing ("));
  EXPECT_TRUE(has(words, "Herbicide: label"));
  EXPECT_LT(words.find("Label first"), words.find("Trees to kill standing: "));
}

TEST_F(ReaderPages, OfTheOwnerHoldBeforeAfterCrownsSourcesAndTheRecord) {
  const Packet packet = packet_of(measured_tract(), PacketReader::owner);
  const std::string words = all_words(packet_pages(packet, PaperSize::letter));
  for (const char* part :
       {"BEFORE AND AFTER", "Crowns from above: 7 crop trees", "How these figures were made",
        "PRACTICE RECORD", "7 trees felled, 7 killed standing", "logger's list", "standing list",
        "TOTALS AND SIGNATURES"}) {
    EXPECT_TRUE(has(words, part)) << part;
  }
}

/// The same tract where the radii of 24 maples were taped and 24 heights measured.
TractData taped_tract() {
  TractData data = measured_tract();
  for (std::uint32_t i = 0; i < 24; ++i) {
    WalkTree tree{.id = nth_id<WalkTreeId>(7000 + i),
                  .stand = data.stands.front().id,
                  .tag = "T" + std::to_string(i),
                  .facts = {.species = {kRedMaple}, .dbh = dbh_in(6.0 + 0.5 * i)}};
    tree.facts.height = tape_ft(40 + 2.0 * i);
    for (auto& radius : {&tree.crown.north, &tree.crown.east, &tree.crown.south, &tree.crown.west})
      *radius = tape_ft(5.0 + i / 3);
    data.walk_trees.push_back(tree);
  }
  return data;
}

TEST_F(ReaderPages, OfTheOwnerDrawTheLocalCurvesAndSayWhichWasUsed) {
  const ReleaseKnowledge& release = shipped_knowledge();
  const TractData data = taped_tract();
  LocalNumbers local;
  local.curves = height_curves(data);
  ASSERT_FALSE(local.curves.empty());
  const Packet packet = make_packet(data,
                                    {release.species, cautions(), seasons(), &release,
                                     std::make_shared<const LocalNumbers>(local)},
                                    PacketReader::owner, winter())
                            .value();
  const std::string words = all_words(packet_pages(packet, PaperSize::letter));
  for (const char* part :
       {"Local curves [local_curve]", "Crowns in stand A", "Heights in the tract", "24 trees",
        "n = 24", "Crowns by the local curve"}) {
    EXPECT_TRUE(has(words, part)) << part;
  }
  const std::string without =
      all_words(packet_pages(packet_of(measured_tract(), PacketReader::owner), PaperSize::letter));
  EXPECT_TRUE(has(without, "No curve was fitted"));
  EXPECT_FALSE(has(without, "rowns by the local curve"));
}

TEST_F(ReaderPages, OfTheLoggerTellHowItsFiguresWereMadeAndNoOthers) {
  const Packet packet = packet_of(measured_tract(), PacketReader::logger);
  const std::string words = all_words(packet_pages(packet, PaperSize::letter));
  EXPECT_TRUE(has(words, "How these figures were made"));
  EXPECT_TRUE(has(words, "[cords]")) << "pulpwood is in cords";
  for (const char* other : {"[board_feet]", "[stocking]", "[basal_area]", "[local_volume]"})
    EXPECT_FALSE(has(words, other)) << other;
  const std::string standing = all_words(
      packet_pages(packet_of(measured_tract(), PacketReader::standing), PaperSize::letter));
  EXPECT_FALSE(has(standing, "How these figures were made")) << "it prints no figure";
}

// 24 live trees on two plots of a tenth acre are 120 an acre; 14 on 2 acres are 7.
TEST_F(ReaderPages, PictureAndTableAndRecordOfTheOwnerTellTheSameFigures) {
  const Packet packet = packet_of(measured_tract(), PacketReader::owner);
  const std::string words = all_words(packet_pages(packet, PaperSize::letter));
  const PracticeRecord& record = packet.owner->stands.at(0).record;
  EXPECT_NEAR(record.all.before->value, 120.0, 1e-9);
  EXPECT_NEAR(record.all.after->value, 113.0, 1e-9);
  EXPECT_TRUE(has(words, "\n120 \u00B1 0\n113\n"))
      << "the table; two plots that are alike tell no error";
  EXPECT_TRUE(has(words, "\u2192 113")) << "the head of the picture";
  EXPECT_TRUE(has(words, "\n113.0\n")) << "the record";
}

TEST_F(ReaderPages, StayOnThePaperForEachReader) {
  const TractData data = measured_tract();
  for (const PaperSize paper : {PaperSize::letter, PaperSize::a4}) {
    const PageGrid grid = page_grid(paper);
    const QRectF inside(QPointF(grid.head.left() - 1.0, grid.head.top() - 1.0),
                        QPointF(grid.foot.right() + 1.0, grid.foot.bottom() + 1.0));
    for (const PacketReader reader :
         {PacketReader::logger, PacketReader::standing, PacketReader::owner}) {
      const auto pages = packet_pages(packet_of(data, reader), paper);
      for (std::size_t i = 0; i < pages.size(); ++i) {
        for (const DrawingItem& item : pages[i].items()) {
          // A whisker of no length (two plots that are alike) is a path of one point: no ink.
          const auto* path = std::get_if<PathItem>(&item);
          if (path != nullptr && path->path.elementCount() < 2) continue;
          const QRectF box = box_of(item);
          EXPECT_TRUE(box.isNull() || inside.contains(box))
              << word_of(reader) << ", page " << i + 1 << ": "
              << (std::holds_alternative<TextItem>(item)
                      ? std::get<TextItem>(item).text.toStdString()
                      : "a shape");
        }
      }
    }
  }
}

TEST_F(ReaderPages, SayHowAndWhenOnceForAllTreesThatItHoldsFor) {
  const std::string words =
      all_words(packet_pages(packet_of(measured_tract(), PacketReader::logger), PaperSize::letter));
  EXPECT_TRUE(has(words, "How and when"));
  EXPECT_TRUE(has(words, "No window of the season table holds"));
  EXPECT_TRUE(has(words, "All trees of this packet that go (7)."));
}

TEST(ReaderWords, EachReaderIsToldItsOwnWork) {
  for (const TreeMark mark : kTreeMarks) {
    for (const auto& reader : kWords<PacketReader>) {
      EXPECT_FALSE(words_of(mark, reader.value).isEmpty());
    }
  }
  EXPECT_EQ(words_of(TreeMark::cut, PacketReader::standing), QStringLiteral("Kill standing"));
  EXPECT_EQ(words_of(TreeMark::cut, PacketReader::logger), QStringLiteral("Cut"));
}

TEST(PdfLanguage, RefusesWhatIsNoPdfOfThisKind) {
  EXPECT_EQ(with_language("", "en-US"), std::nullopt);
  EXPECT_EQ(with_language("%PDF-1.7\nno table", "en-US"), std::nullopt);
}

}  // namespace
}  // namespace oaklight
