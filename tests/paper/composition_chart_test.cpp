#include "core/paper/composition_chart.hpp"

#include "tests/paper/paper_fixture.hpp"
#include "tests/paper/picture_check.hpp"

namespace oaklight {
namespace {

// All expected values here are derived: they follow from the promises in the header.

using CompositionPicture = test::PaperTest;

SpeciesBar bar(const char* name, FoodGroup group, double share, std::optional<double> se = {}) {
  SpeciesBar out{name, group, {Percent{share}, {}}};
  if (se) out.part.se = Percent{*se};
  return out;
}

CompositionChart mixed_stand() {
  CompositionChart chart;
  chart.oak = BasalAreaShare{Percent{46.0}, Percent{5.2}};
  chart.species = {bar("red maple", FoodGroup::rest, 24.0, 4.1),
                   bar("white oak", FoodGroup::oak, 31.0, 4.4),
                   bar("chestnut oak", FoodGroup::oak, 15.0, 3.0),
                   bar("pignut hickory", FoodGroup::mast, 11.0, 2.2),
                   bar("yellow-poplar", FoodGroup::rest, 8.0, 2.5),
                   bar("blackgum", FoodGroup::mast, 5.0, 1.6),
                   bar("sourwood", FoodGroup::rest, 3.6, 1.1),
                   bar("eastern hophornbeam", FoodGroup::rest, 2.0, 0.9),
                   bar("sassafras", FoodGroup::mast, 0.3, 0.3),
                   bar("a name that somebody wrote down with far more letters than any species has",
                       FoodGroup::rest, 0.1)};
  return chart;
}

TEST_F(CompositionPicture, StaysInItsFrameAndIsReadAtEachSize) {
  for (const auto& [name, frame] : test::sized_frames()) {
    const Drawing drawing = draw_composition(mixed_stand(), frame);
    EXPECT_EQ(test::faults_of(drawing, frame), std::vector<std::string>{}) << name;
    test::save_pictures(std::string("composition_") + name, drawing, frame);
  }
}

TEST_F(CompositionPicture, SortsByShareAndFoldsWhatHasNoRoom) {
  PictureFrame frame = test::sized_frames()[2].frame;
  const std::string words = test::words_of(draw_composition(mixed_stand(), frame));
  EXPECT_LT(words.find("white oak"), words.find("red maple"));
  EXPECT_LT(words.find("red maple"), words.find("chestnut oak"));
  const auto at = words.find("others (");
  ASSERT_NE(at, std::string::npos) << words;
  // 10 species in all: those named and those folded.
  const int folded = std::stoi(words.substr(at + 8));
  int named = 0;
  for (const SpeciesBar& each : mixed_stand().species) {
    if (words.find(each.name) != std::string::npos) ++named;
  }
  EXPECT_EQ(named + folded, 10) << words;
}

TEST_F(CompositionPicture, BarsAreAsLongAsTheirShares) {
  CompositionChart chart;
  chart.species = {bar("white oak", FoodGroup::oak, 60.0), bar("black oak", FoodGroup::oak, 30.0),
                   bar("red oak", FoodGroup::oak, 10.0)};
  for (const auto& [name, frame] : test::sized_frames()) {
    const auto bars = test::filled(draw_composition(chart, frame), Ink::leave);
    ASSERT_EQ(bars.size(), 4u) << "one in the key, three species";
    EXPECT_NEAR(bars[1].width() / bars[2].width(), 2.0, 1e-6);
    EXPECT_NEAR(bars[1].width() / bars[3].width(), 6.0, 1e-6);
  }
}

TEST_F(CompositionPicture, SaysWhenNothingWasTallied) {
  for (const auto& [name, frame] : test::sized_frames()) {
    const Drawing drawing = draw_composition({}, frame);
    EXPECT_NE(test::words_of(drawing).find("No live trees tallied yet"), std::string::npos);
    EXPECT_EQ(test::faults_of(drawing, frame), std::vector<std::string>{});
  }
}

TEST_F(CompositionPicture, OfOnePlotSaysThatNoErrorIsKnown) {
  CompositionChart chart;
  chart.species = {bar("white oak", FoodGroup::oak, 100.0)};
  const std::string words = test::words_of(draw_composition(chart, test::sized_frames()[0].frame));
  EXPECT_NE(words.find("One plot tells no error"), std::string::npos);
  EXPECT_EQ(words.find("\u00B1"), std::string::npos);
}

}  // namespace
}  // namespace oaklight
