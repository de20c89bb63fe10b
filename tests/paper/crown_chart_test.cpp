#include "core/paper/crown_chart.hpp"

#include <cmath>

#include "core/measure/crown_width.hpp"
#include "core/paper/crown_edge.hpp"
#include "core/paper/crown_marks.hpp"
#include "core/paper/crown_spots.hpp"
#include "core/release/groundwork.hpp"
#include "tests/paper/paper_fixture.hpp"
#include "tests/paper/picture_check.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/trees.hpp"

namespace oaklight {
namespace {

// All expected values here are derived: they follow from the promises in the headers.

using CrownPicture = test::PaperTest;

/// The card of tree A; trees with these tags go.
CrownCard card_of(const test::ShortCards& cards, const std::vector<std::string>& gone = {}) {
  const auto graph = graph_from_cards(cards.trees, cards.contacts, cards.stand,
                                      test::shipped_knowledge().settings.contact);
  EXPECT_TRUE(graph);
  std::vector<bool> goes(graph->trees().size(), false);
  std::size_t crop = 0;
  for (std::size_t i = 0; i < goes.size(); ++i) {
    const std::string& tag = graph->trees()[i].tag;
    goes[i] = std::find(gone.begin(), gone.end(), tag) != gone.end();
    if (tag == "A") crop = i;
  }
  return crown_card(*graph, crop, cards.contacts, goes, test::shipped_knowledge().species);
}
CrownCard card_of(std::string_view lines, const std::vector<std::string>& gone = {}) {
  return card_of(test::cards(lines), gone);
}

const char* const kCrowded =
    "crop A WO 16.2 co lc=45\n"
    "A m1 az=350 18 touches RM 10.4 co\n"
    "A m2 az=93 19 touches RO 14 co\n"
    "A m3 S - touches RM 12.1 co\n"
    "A m4 W 27.5 none RM 9.0 int\n"
    "A m5 W 14 below PH 6.0 over\n";

const CrownNeighbour& neighbour(const CrownCard& card, const std::string& tag) {
  return *std::find_if(card.neighbours.begin(), card.neighbours.end(),
                       [&tag](const CrownNeighbour& n) { return n.tag == tag; });
}

TEST_F(CrownPicture, StaysInItsFrameAndIsReadAtEachSize) {
  const CrownCard card = card_of(kCrowded, {"m1", "m3"});
  for (const auto& [name, frame] : test::sized_frames()) {
    const Drawing drawing = draw_crowns(card, frame);
    EXPECT_EQ(test::faults_of(drawing, frame), std::vector<std::string>{}) << name;
    test::save_pictures(std::string("crowns_") + name, drawing, frame);
  }
}

TEST_F(CrownPicture, NamesEveryNeighbourOnce) {
  const CrownCard card = card_of(kCrowded, {"m1", "m3"});
  for (const auto& [name, frame] : test::sized_frames()) {
    const auto texts = test::texts_of(draw_crowns(card, frame));
    for (const char* tag : {"A", "m1", "m2", "m3", "m4", "m5"}) {
      EXPECT_EQ(std::count(texts.begin(), texts.end(), tag), 1) << tag << " on " << name;
    }
  }
}

TEST_F(CrownPicture, EvenACrowdedCardLosesNoTag) {
  CrownCard card = card_of(kCrowded, {"m1", "m3"});
  for (int i = 0; i < 7; ++i) {
    CrownNeighbour more = card.neighbours[static_cast<std::size_t>(i % 5)];
    more.tag = "n" + std::to_string(i);
    more.azimuth = Degrees{50.0 * i};
    card.neighbours.push_back(more);
  }
  for (const auto& [name, frame] : test::sized_frames()) {
    const Drawing drawing = draw_crowns(card, frame);
    const auto texts = test::texts_of(drawing);
    for (const CrownNeighbour& n : card.neighbours) {
      EXPECT_EQ(std::count(texts.begin(), texts.end(), n.tag), 1) << n.tag << " on " << name;
    }
    test::save_pictures(std::string("crowns_crowded_") + name, drawing, frame);
  }
}

TEST_F(CrownPicture, SidesAreWhatTheCardSays) {
  const CrownCard card = card_of(kCrowded, {"m1", "m3"});
  EXPECT_EQ(card.now.closed, (Sides{Side::north, Side::east, Side::south}));
  EXPECT_EQ(card.now.open, Sides{Side::west}) << "a gap and a tree below close nothing";
  EXPECT_EQ(card.after.open, (Sides{Side::north, Side::south, Side::west}));
  const std::string words = test::words_of(draw_crowns(card, test::sized_frames()[0].frame));
  EXPECT_NE(words.find("Light 25\u00A0% \u2192\u00A0"
                       "75\u00A0%"),
            std::string::npos)
      << words;
  EXPECT_NE(words.find("1 of 4 sides free now, 3 after"), std::string::npos) << words;
}

TEST_F(CrownPicture, EdgeIsOpenWhereNobodyStandsAndOpensWhereTreesGo) {
  const EdgeRing ring(card_of(kCrowded, {"m1", "m3"}));
  const auto parts = ring.parts();
  ASSERT_EQ(parts.size(), 4u);
  double whole = 0.0;
  for (const EdgePart& part : parts) {
    EXPECT_NEAR(part.to - part.from, 90.0, 1e-6) << "a side is seen closed from corner to corner";
    whole += part.to - part.from;
    const double middle = std::remainder((part.from + part.to) / 2.0, 360.0);
    const bool east = std::abs(middle - 90.0) < 1.0;
    const bool west = std::abs(middle + 90.0) < 1.0;
    EXPECT_EQ(part.state, east ? EdgeState::closed : (west ? EdgeState::open : EdgeState::opens));
  }
  EXPECT_NEAR(whole, 360.0, 1e-6);
}

TEST_F(CrownPicture, ASideThatNobodyLookedAtIsNotFree) {
  const CrownCard card = card_of("crop A WO 15 co look=NE\nA m1 N 17 touches RM 10 co\n");
  EXPECT_EQ(card.now.open, Sides{Side::east});
  EXPECT_EQ(card.now.unknown, (Sides{Side::south, Side::west}));
  const Drawing drawing = draw_crowns(card, test::sized_frames()[0].frame);
  EXPECT_NE(test::words_of(drawing).find("2 to be looked at"), std::string::npos);
  EXPECT_NE(test::words_of(drawing).find("look again"), std::string::npos);
}

TEST_F(CrownPicture, IsMadeFromTheRecordsOfACardToo) {
  const SpeciesTable& species = test::shipped_knowledge().species;
  const test::ShortCards cards = test::cards(kCrowded);
  const CrownCard whole = card_of(kCrowded);
  const CrownCard card = crown_card("A", cards.trees[0].facts, {}, species);
  EXPECT_EQ(card.crown, whole.crown);
  EXPECT_EQ(card.species, whole.species);
  for (std::size_t i = 0; i < cards.contacts.size(); ++i) {
    const Contact& contact = cards.contacts[i];
    const WalkTree& tree = cards.trees[i + 1];
    const CrownNeighbour made =
        crown_neighbour(tree.tag, tree.facts, tree.crown, contact, contact.sides, false, species);
    const CrownNeighbour& other = neighbour(whole, tree.tag);
    EXPECT_EQ(made.crown, other.crown) << tree.tag;
    EXPECT_EQ(made.closeness, other.closeness) << tree.tag;
    EXPECT_EQ(made.distance, other.distance) << tree.tag;
    EXPECT_EQ(made.azimuth, other.azimuth) << tree.tag;
  }
}

TEST_F(CrownPicture, ASideOfAPairIsNeitherOpenNorClosed) {
  CrownCard card = card_of(kCrowded, {"m1", "m3"});
  for (CrownEdge* edge : {&card.now, &card.after}) {
    edge->closed = {};
    edge->shared = {Side::east};
  }
  const EdgeRing ring(card);
  EXPECT_TRUE(ring.has(EdgeState::shared));
  EXPECT_EQ(ring.share_open(true), 75.0);
  EXPECT_NE(
      test::words_of(draw_crowns(card, test::sized_frames()[0].frame)).find("1 shared by a pair"),
      std::string::npos);
}

TEST_F(CrownPicture, ReadingsGoWithTheNeighbourAndAreTurnedAroundOnTheOtherCard) {
  const CrownCard card = card_of(
      "crop A WO 15 co\n"
      "crop B RO 15 co\n"
      "B A az=80 21 touches\n");
  ASSERT_EQ(card.neighbours.size(), 1u);
  EXPECT_NEAR(card.neighbours[0].azimuth->value, 260.0, 1e-9);
  EXPECT_NEAR(card.neighbours[0].distance->value, 21.0, 1e-9);
}

TEST_F(CrownPicture, CrownsAreHalfAsWideAsTheEquationSays) {
  const CrownCard card = card_of(kCrowded);
  const Species* maple = test::shipped_knowledge().species.find(SpeciesCode{316});
  const auto facts = test::trees("RM 10.4 co").front().facts;
  EXPECT_NEAR(neighbour(card, "m1").crown.shape.widest().value,
              stand_grown_crown_width(*maple, facts).width.value / 2.0, 1e-9);
}

/// Middles of the round dots of the stems: (west to east, north to south), by being hollow.
std::vector<QPointF> hollow_stems(const Drawing& drawing) {
  std::vector<QPointF> out;
  for (const DrawingItem& item : drawing.items()) {
    const auto* path = std::get_if<PathItem>(&item);
    if (path == nullptr || !path->stroke || !path->stroke->round) continue;
    if (path->stroke->ink == Ink::white) out.push_back(path->path.boundingRect().center());
  }
  return out;
}

TEST_F(CrownPicture, ANeighbourOfWhichOnlyTheSideIsKnownStandsInItsMiddle) {
  const CrownCard card = card_of("crop A WO 15 co\nA m1 E - touches RM 10 co\n");
  const PictureFrame& frame = test::sized_frames()[0].frame;
  const auto stems = hollow_stems(draw_crowns(card, frame));
  ASSERT_EQ(stems.size(), 1u);
  EXPECT_GT(stems[0].x(), frame.size.width() / 2.0) << "east of the crop tree";
  const auto north =
      hollow_stems(draw_crowns(card_of("crop A WO 15 co\nA m1 N - touches RM 10 co\n"), frame));
  ASSERT_EQ(north.size(), 1u);
  EXPECT_NEAR(north[0].x(), frame.size.width() / 2.0, 0.1);
  EXPECT_TRUE(
      hollow_stems(draw_crowns(card_of("crop A WO 15 co\nA m1 az=95 17 touches RM 10 co\n"), frame))
          .empty())
      << "its place was taped";
}

TEST_F(CrownPicture, ANeighbourOfNoKnownSideIsNamedBelow) {
  CrownCard card = card_of("crop A WO 15 co\nA m1 N 17 touches RM 10 co\n");
  CrownNeighbour lost = card.neighbours[0];
  lost.tag = "m9";
  lost.sides = {};
  lost.azimuth.reset();
  card.neighbours.push_back(lost);
  const Drawing drawing = draw_crowns(card, test::sized_frames()[0].frame);
  EXPECT_NE(test::words_of(drawing).find("Side not recorded: m9 red maple"), std::string::npos)
      << test::words_of(drawing);
}

TEST_F(CrownPicture, WithoutNeighboursSaysWhatToDo) {
  const CrownCard card = card_of("crop A WO 15 co look=NE\n");
  for (const auto& [name, frame] : test::sized_frames()) {
    const Drawing drawing = draw_crowns(card, frame);
    EXPECT_NE(test::words_of(drawing).find("No neighbor is recorded"), std::string::npos);
    EXPECT_EQ(test::faults_of(drawing, frame), std::vector<std::string>{}) << name;
  }
}

/// The crowded card with the radii of tree A and of m1 taped.
test::ShortCards taped_cards() {
  test::ShortCards cards = test::cards(kCrowded);
  const auto tape = [&](const std::string& tag, int north, int east, int south, int west) {
    for (WalkTree& tree : cards.trees) {
      if (tree.tag != tag) continue;
      tree.crown = {test::tape_ft(north), test::tape_ft(east), test::tape_ft(south),
                    test::tape_ft(west)};
    }
  };
  tape("A", 8, 16, 11, 20);
  tape("m1", 9, 7, 12, 6);
  return cards;
}

TEST_F(CrownPicture, OfFourTapedRadiiIsDrawnThroughThem) {
  const CrownCard card = card_of(taped_cards());
  EXPECT_TRUE(card.crown.taped);
  EXPECT_TRUE(neighbour(card, "m1").crown.taped);
  EXPECT_FALSE(neighbour(card, "m2").crown.taped);
  constexpr double kScale = 3.0;
  const QPointF stem(100.0, 50.0);
  const QRectF box = outline_of(stem, card.crown.shape, kScale).boundingRect();
  EXPECT_NEAR(stem.y() - box.top(), 8.0 * kScale, 0.01);
  EXPECT_NEAR(box.right() - stem.x(), 16.0 * kScale, 0.01);
  EXPECT_NEAR(box.bottom() - stem.y(), 11.0 * kScale, 0.01);
  EXPECT_NEAR(stem.x() - box.left(), 20.0 * kScale, 0.01);
  for (const double bearing : {10.0, 60.0, 100.0, 200.0, 290.0, 355.0}) {
    const QPainterPath part =
        outline_between(stem, card.crown.shape, kScale, bearing - 360.0, bearing - 350.0);
    const QPointF way =
        towards(bearing) * (card.crown.shape.reach(Degrees{bearing}).value * kScale);
    // A quarter ellipse is painted as one cubic curve, off by at most 0.027 % of its half axis.
    const double tolerance = 2.8e-4 * card.crown.shape.widest().value * kScale;
    EXPECT_NEAR(part.elementAt(0).x, stem.x() + way.x(), tolerance) << bearing;
    EXPECT_NEAR(part.elementAt(0).y, stem.y() - way.y(), tolerance) << bearing;
  }
  for (const auto& [name, frame] : test::sized_frames()) {
    const Drawing drawing = draw_crowns(card_of(taped_cards(), {"m1", "m3"}), frame);
    EXPECT_EQ(test::faults_of(drawing, frame), std::vector<std::string>{}) << name;
    EXPECT_NE(test::words_of(drawing).find("Round crowns by size, the others measured."),
              std::string::npos);
    test::save_pictures(std::string("crowns_taped_") + name, drawing, frame);
  }
}

TEST_F(CrownPicture, OfFourTapedRadiiShowsTheLightOfThePlan) {
  const test::ShortCards cards = taped_cards();
  const auto graph = graph_from_cards(cards.trees, cards.contacts, cards.stand,
                                      test::shipped_knowledge().settings.contact);
  ASSERT_TRUE(graph);
  const ReleaseInput input{test::shipped_knowledge(), *graph, {}, {}, {}};
  const Groundwork ground(input);
  const Selection selection(graph->trees().size());
  for (const auto& gone : {std::vector<std::string>{}, {"m1", "m3"}}) {
    const CrownCard card = card_of(cards, gone);
    std::vector<bool> goes(graph->trees().size(), false);
    std::uint32_t crop = 0;
    for (std::uint32_t i = 0; i < goes.size(); ++i) {
      const std::string& tag = graph->trees()[i].tag;
      goes[i] = std::find(gone.begin(), gone.end(), tag) != gone.end();
      if (tag == "A") crop = i;
    }
    const Light light = light_of(ground.problem, selection, goes, crop);
    EXPECT_NEAR(EdgeRing(card).share_open(true), light.open.value, 1e-9);
    EXPECT_NE(light.open.value, 25.0 * light.sides_free) << "sides alone would say this";
  }
}

TEST_F(CrownPicture, OfAStemMapShowsTheOpenShareOfTheGraph) {
  std::vector<MappedTree> places;
  const auto add = [&](std::uint8_t n, const char* text, double east, double north) {
    Uuid id;
    id.bytes[15] = n;
    places.push_back(
        {id, std::to_string(n), test::trees(text).front().facts, Feet{east}, Feet{north}});
  };
  add(1, "WO 16 co", 0, 0);
  add(2, "RM 12 co", 20, 3);
  add(3, "RM 11 co", -6, -19);
  const auto& settings = test::shipped_knowledge().settings.contact;
  const ReleaseGraph graph = graph_from_map(places, Unbounded{}, settings);
  const CrownCard card =
      mapped_crown_card(graph, 0, places, {false, true, false}, test::shipped_knowledge().species);
  ASSERT_EQ(card.neighbours.size(), 2u);
  std::vector<Arc> now, after;
  for (const CrownNeighbour& n : card.neighbours) {
    ASSERT_EQ(n.arcs.size(), 1u);
    now.push_back(n.arcs[0]);
    if (!n.goes) after.push_back(n.arcs[0]);
    // The bearing of an arc is the way to the neighbour.
    EXPECT_NEAR(std::remainder(n.arcs[0].middle.value - n.azimuth->value, 360.0), 0.0, 1e-6);
  }
  const EdgeRing ring(card);
  EXPECT_NEAR(ring.share_open(false), open_share(now).value, 1e-9);
  EXPECT_NEAR(ring.share_open(true), open_share(after).value, 1e-9);
  double drawn_open = 0.0;
  for (const EdgePart& part : ring.parts()) {
    if (part.state == EdgeState::open) drawn_open += part.to - part.from;
  }
  EXPECT_NEAR(drawn_open / 3.6, ring.share_open(false), 0.6) << "drawn in steps of half a degree";
  const PictureFrame& frame = test::sized_frames()[1].frame;
  const Drawing drawing = draw_crowns(card, frame);
  EXPECT_EQ(test::faults_of(drawing, frame), std::vector<std::string>{});
  test::save_pictures("crowns_map", drawing, frame);
}

}  // namespace
}  // namespace oaklight
