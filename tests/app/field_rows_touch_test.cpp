// Rows T1 to T11, T15 and T16 of field_rows.md: how large things to touch are, and how they lie.
#include <QtTest/QTest>

#include "tests/app/tally_fixture.hpp"

namespace oaklight::test {
namespace {

constexpr double kHair = 0.1;  // mm; pixels are whole
constexpr double kGloves = 20.0;
constexpr double kBare = 15.0;
constexpr double kLeast = 12.0;
constexpr double kEdge = 6.0;

double least_side(const QRectF& box, const Screen& screen) {
  return std::min(box.width(), box.height()) / screen.pixels_per_mm;
}

double largest_side(const QRectF& box, const Screen& screen) {
  return std::max(box.width(), box.height()) / screen.pixels_per_mm;
}

TEST_F(FieldRows, T1_T5_WhatIsUsedAtAPlotIsAsLargeAsAGlovedFinger) {
  for (const Screen& screen : screens_of_all_densities()) {
    for (const bool gloves : {true, false}) {
      SCOPED_TRACE(std::string(screen.name) + (gloves ? ", gloves" : ", bare"));
      begin(screen);
      app_settings().setGloves(gloves);
      tap(species(0));
      slide(species(0), class_name("12"));
      const auto hold = [&] {
        for (const Control& control : controls_of(window())) {
          // To another page one does not go while a tree is in hand.
          if (model().pageNames().contains(control.name)) continue;
          EXPECT_GE(least_side(control.box, screen), (gloves ? kGloves : kBare) - kHair)
              << control.name.toStdString();
        }
      };
      hold();
      on_every_sheet_at_the_plot([&](const char*) { hold(); });
      stop();
    }
  }
}

TEST_F(FieldRows, T2_UndoSaveAndNextAreLargerStillInGloves) {
  for (const Screen& screen : screens_of_all_densities()) {
    SCOPED_TRACE(screen.name);
    begin(screen);
    slide(species(0), class_name("12"));
    const auto hold = [&](const char* name) {
      QQuickItem* item = find(QString::fromLatin1(name));
      ASSERT_NE(item, nullptr) << name;
      const QRectF box(0, 0, item->width(), item->height());
      EXPECT_GE(largest_side(box, screen), 25.0 - kHair) << name;
    };
    hold("Undo");
    tap(QStringLiteral("Keypad"));
    tap(QStringLiteral("8"));
    hold("Record");
    tap(QStringLiteral("Close"));
    if (find(QStringLiteral("More")) != nullptr) tap(QStringLiteral("More"));
    hold("Next plot");
    stop();
  }
}

TEST_F(FieldRows, T3_T4_NothingToTouchIsUnderTwelveMillimetres) {
  // 44 px of 1/96 in, the larger of the floors for web and phone, is 11.6 mm: met with it.
  for (const Screen& screen : screens_of_all_densities()) {
    for (const bool gloves : {true, false}) {
      on_every_page(screen, [&](AppModel::Page) {
        app_settings().setGloves(gloves);
        settle();
        for (const Control& control : controls_of(window()))
          EXPECT_GE(least_side(control.box, screen), kLeast - kHair) << control.name.toStdString();
      });
    }
  }
}

TEST_F(FieldRows, T6_WhatLeavesAPlotOrTakesATreeOutLiesApart) {
  for (const Screen& screen : screens_of_all_densities()) {
    SCOPED_TRACE(screen.name);
    begin(screen);
    slide(species(0), class_name("12"));
    std::vector<QRectF> cells;
    for (const Control& control : controls_of(window())) {
      const QVariant index = control.item->property("cellName");
      if (index.isValid() || control.name.endsWith(QLatin1String("diameter class")))
        cells.push_back(control.box);
    }
    ASSERT_GE(cells.size(), 8U);
    const QQuickItem* next = find(QStringLiteral("Next plot"));
    if (next == nullptr) next = find(QStringLiteral("More"));  // it is behind this one
    ASSERT_NE(next, nullptr);
    const QRectF box = next->mapRectToScene(QRectF(0, 0, next->width(), next->height()));
    for (const QRectF& cell : cells) {
      const double right = std::max({0.0, box.left() - cell.right(), cell.left() - box.right()});
      const double down = std::max({0.0, box.top() - cell.bottom(), cell.top() - box.bottom()});
      EXPECT_GE(std::hypot(right, down) / screen.pixels_per_mm, 13.0 - kHair);
    }
    tap(tally().lastTrees().front());
    const auto* out = find(QStringLiteral("Take this tree out"));
    const auto* above = find(QStringLiteral("Another species"));
    ASSERT_TRUE(out != nullptr && above != nullptr);
    const double gap =
        out->mapToScene(QPointF()).y() - above->mapToScene(QPointF(0, above->height())).y();
    EXPECT_GE(gap / screen.pixels_per_mm, 13.0 - kHair);
    stop();
  }
}

TEST_F(FieldRows, T7_NoTouchFallsBetweenTwoCells) {
  for (const Screen& screen : {kTablet, kTabletUpright, kPhone}) {
    SCOPED_TRACE(screen.name);
    begin(screen);
    QRectF field;
    std::vector<QRectF> cells;
    for (const Control& control : controls_of(window())) {
      const bool cell = control.item->property("cellName").isValid() ||
                        control.name.startsWith(QLatin1String("Other species"));
      if (!cell) continue;
      cells.push_back(control.box);
      field = field.united(control.box);
    }
    ASSERT_GE(cells.size(), 8U);
    // The last row may not be full; all above it is.
    const double rows_end = cells.back().top();
    for (double y = field.top() + 0.5; y < rows_end; y += 1.0) {
      for (double x = field.left() + 0.5; x < field.right(); x += 1.0) {
        const bool met = std::ranges::any_of(cells, [&](const QRectF& cell) {
          return cell.adjusted(-0.5, -0.5, 0.5, 0.5).contains(x, y);
        });
        ASSERT_TRUE(met) << "nothing to touch at " << x << ", " << y;
      }
    }
    stop();
  }
}

TEST_F(FieldRows, T7_F8_KeysMeetInThreeRowsOfThreeWithZeroBelow) {
  begin();
  tap(species(0));
  tap(QStringLiteral("Keypad"));
  const auto box = [this](const char* key) {
    QQuickItem* item = find(QLatin1String(key));
    EXPECT_NE(item, nullptr) << key;
    return item->mapRectToScene(QRectF(0, 0, item->width(), item->height()));
  };
  const std::array<std::array<const char*, 3>, 3> rows = {
      {{"1", "2", "3"}, {"4", "5", "6"}, {"7", "8", "9"}}};
  for (const auto& row : rows) {
    EXPECT_NEAR(box(row[0]).right(), box(row[1]).left(), 1.0);
    EXPECT_NEAR(box(row[1]).right(), box(row[2]).left(), 1.0);
    EXPECT_EQ(box(row[0]).top(), box(row[2]).top());
  }
  EXPECT_NEAR(box("1").bottom(), box("4").top(), 1.0);
  EXPECT_NEAR(box("8").bottom(), box("0").top(), 1.0);
  EXPECT_NEAR(box("0").center().x(), box("5").center().x(), 1.0);
}

TEST_F(FieldRows, T10_AWholePlotIsDoneByTapsAlone) {
  for (const Screen& screen : {kTablet, kPhone}) {
    SCOPED_TRACE(screen.name);
    begin(screen);
    const auto more = [this](const char* name) {
      if (find(QLatin1String(name)) == nullptr) tap(QStringLiteral("More"));
      tap(QLatin1String(name));
    };
    tap(species(0));
    tap(class_name("12"));
    tap(species(1));
    type({"Keypad", "1", "2", "3", "Record"});
    tap(tally().lastTrees().front());
    type({"Dead", "Close"});
    more("Border tree");
    type({"1", "2", "0", "Close"});
    more("Seedlings");
    tap(QStringLiteral("Close"));
    tap(tally().lastTrees().back());
    scroll_to(QStringLiteral("Take this tree out"));
    tap(QStringLiteral("Take this tree out"));
    EXPECT_EQ(trees().size(), 1U);
    tap(QStringLiteral("Undo"));
    EXPECT_EQ(trees().size(), 2U);
    more("Next plot");
    EXPECT_EQ(model().page(), AppModel::Page::Walk);
    stop();
  }
}

TEST_F(FieldRows, T11_AFingerThatSlipsInsideItsCellCountsAndOneThatSlidesOffDoesNot) {
  begin();
  const auto slip = [this](QPoint from, QPoint to) {
    QTest::touchEvent(&window(), finger()).press(0, from);
    QTest::qWait(40);
    QTest::touchEvent(&window(), finger()).move(0, to);
    QTest::touchEvent(&window(), finger()).release(0, to);
    settle();
  };
  const QPoint first = at(species(0));
  slip(first, first + QPoint(0, static_cast<int>(theme().mm(9.0))));
  EXPECT_EQ(tally().pinned(), 0);
  const QPoint button = at(QStringLiteral("Keypad"));
  slip(button, button + QPoint(0, static_cast<int>(theme().mm(9.0))));
  ASSERT_NE(find(QStringLiteral("Close")), nullptr) << "the button counts as well";
  tap(QStringLiteral("Close"));
  slip(at(class_name("12")), at(QStringLiteral("Undo")));
  EXPECT_EQ(trees().size(), 0U) << "off the field";
}

TEST_F(FieldRows, T15_NothingIsNeededAtTheEdgeWhereDripsGather) {
  for (const Screen& screen : screens_of_all_densities()) {
    SCOPED_TRACE(screen.name);
    begin(screen);
    slide(species(0), class_name("12"));
    const double edge = kEdge * screen.pixels_per_mm;
    const QRectF dry = QRectF(QPointF(), screen.size).adjusted(edge, edge, -edge, -edge);
    for (const Control& control : controls_of(window())) {
      const QRectF touched = control.box & dry;
      EXPECT_GE(least_side(touched, screen), kLeast - kHair)
          << control.name.toStdString() << " without the wet edge";
    }
    stop();
  }
}

TEST_F(FieldRows, T16_TheLeftHandHasItsOwnSide) {
  begin(kTablet);
  const int right = at(QStringLiteral("Keypad")).x();
  const int undo = at(QStringLiteral("Undo")).x();
  app_settings().setLeftHand(true);
  settle();
  const int middle = window().width() / 2;
  EXPECT_GT(right, middle);
  EXPECT_GT(undo, middle);
  EXPECT_LT(at(QStringLiteral("Keypad")).x(), middle);
  EXPECT_LT(at(QStringLiteral("Undo")).x(), middle);
}

}  // namespace
}  // namespace oaklight::test
