#include "core/paper/fit_chart.hpp"

#include "core/measure/local_curves.hpp"
#include "tests/paper/paper_fixture.hpp"
#include "tests/paper/picture_check.hpp"
#include "tests/support/trees.hpp"

namespace oaklight {
namespace {

// All expected values here are derived: they follow from the promises in the header.

using FitPicture = test::PaperTest;

/// Invented trees: the line or curve, give or take a foot or five.
LocalCurve invented(CurveKind kind, std::optional<int> fia) {
  std::vector<SizedTree> trees;
  for (int i = 0; i < 31; ++i) {
    const double dbh = 6.0 + 0.55 * i;
    const double off = i % 3 - 1.0;
    const double length = kind == CurveKind::crown_width
                              ? 4.0 + 1.3 * dbh + 2.0 * off
                              : 4.5 + std::exp(4.7 - 7.0 / (dbh + 1.0)) + 5.0 * off;
    trees.push_back({Inches{dbh}, Feet{length}});
  }
  LocalCurve curve = fit_curve(kind, trees).value();
  curve.fia = fia;
  return curve;
}

const SpeciesTable& species() { return test::shipped_knowledge().species; }

TEST_F(FitPicture, StaysInItsFrameAndIsReadAtEachSize) {
  for (const auto& [name, sized] : test::sized_frames()) {
    for (const UnitSystem units : {UnitSystem::us, UnitSystem::metric}) {
      for (const CurveKind kind : {CurveKind::crown_width, CurveKind::height}) {
        PictureFrame frame = sized;
        frame.units = units;
        const Drawing drawing = draw_fit_chart(invented(kind, 802), species(), frame);
        EXPECT_EQ(test::faults_of(drawing, frame), std::vector<std::string>{}) << name;
        test::save_pictures(std::string("fit_") + name + "_" + std::string(word_of(kind)) +
                                (units == UnitSystem::us ? "" : "_metric"),
                            drawing, frame);
      }
    }
  }
}

TEST_F(FitPicture, SaysOfWhatItIsHowManyTreesAndHowFarTheyStray) {
  const LocalCurve curve = invented(CurveKind::crown_width, 802);
  const PictureFrame& frame = test::sized_frames()[1].frame;
  const std::string words = test::words_of(draw_fit_chart(curve, species(), frame));
  for (const char* part : {"31 trees", "Crown width by DBH, white oak", "n = 31", "residual SD",
                           "6.0 to 22.5 in", "the book's mean crown"}) {
    EXPECT_NE(words.find(part), std::string::npos) << part << " in " << words;
  }
  const std::string pooled =
      test::words_of(draw_fit_chart(invented(CurveKind::height, {}), species(), frame));
  EXPECT_NE(pooled.find("Height by DBH, all species together"), std::string::npos) << pooled;
  EXPECT_EQ(pooled.find("the book's mean crown"), std::string::npos) << "there is none of heights";
}

TEST_F(FitPicture, DrawsEachTreeOnce) {
  const LocalCurve curve = invented(CurveKind::height, 802);
  const PictureFrame& frame = test::sized_frames()[1].frame;
  int dots = 0;
  const Drawing drawing = draw_fit_chart(curve, species(), frame);
  for (const DrawingItem& item : drawing.items()) {
    const auto* path = std::get_if<PathItem>(&item);
    dots +=
        path != nullptr && path->stroke && path->stroke->round && path->stroke->ink == Ink::black
            ? 1
            : 0;
  }
  EXPECT_EQ(dots, curve.trees + 1) << "and one in the key";
}

}  // namespace
}  // namespace oaklight
