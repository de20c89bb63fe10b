#pragma once

#include <QtTest/QTest>

#include "core/session/plot_work.hpp"
#include "tests/app/app_fixture.hpp"

namespace oaklight::test {

/// The whole app at a new plot of the demo tract.
class Tally : public App {
 protected:
  void begin(const Screen& screen = kTablet) {
    start(screen);
    show(AppModel::Page::Tally);
    desk().submit([this] {
      const Plot& other = desk().data().plots.front();
      return add_plots(desk().live(), desk().knowledge(), desk().ids(), other.stand, other.cruise,
                       1);
    });
    settle();
    workspace().plot().set(desk().data().plots.back().id);
    settle();
  }
  std::vector<const Tree*> trees() { return desk().live().trees_of(*workspace().plot().id()); }
  TallyViewModel& tally() { return *workspace().tally(); }
  QString species(int row) {
    return tally()
        .species()
        ->data(tally().species()->index(row), SpeciesListModel::NameRole)
        .toString();
  }
  static QString class_name(const char* label) {
    return QStringLiteral("%1, diameter class").arg(QLatin1String(label));
  }
  /// Waits until hundreds of actions are on a disk that others use as well.
  bool written() {
    for (int tries = 0; tries < 10; ++tries) {
      if (waitFor([this] { return !desk().busy(); })) return true;
    }
    return false;
  }
  /// From now on each look at the clock finds it two seconds later: no touch is a bounce.
  void unhurried() {
    tally().setNow([now = qint64{0}]() mutable { return now += 2000; });
  }
  void type(std::initializer_list<const char*> keys) {
    for (const char* key : keys) tap(QLatin1String(key));
  }
  /// The middles of some cells or buttons.
  QPoint at(const QString& name) {
    QQuickItem* item = find(name);
    EXPECT_NE(item, nullptr) << name.toStdString();
    return item == nullptr ? QPoint() : middleOf(item);
  }
};

/// A test for each row of field_rows.md that software can hold, named by its id.
class FieldRows : public Tally {
 protected:
  /// Each page of the app in turn, as it stands when it is opened.
  void on_every_page(const Screen& screen, const std::function<void(AppModel::Page)>& look);
  /// Scrolls until a control lies in sight, as near the middle as can be.
  void scroll_to(const QString& name);
  /// The sheets that can be opened while a person stands at a plot, each in turn.
  void on_every_sheet_at_the_plot(const std::function<void(const char*)>& look);
  /// Marks every tree of every stand as the rules have it.
  void decide_all();
  /// Nothing is being worked out or written.
  bool at_rest();
};

/// Sizes of one device, with so many pixels in a millimetre.
Screen screen_of(const char* name, QSizeF millimetres, double pixels_per_mm);
/// Tablets and phones of three densities: what is held in millimetres is held on each.
const std::vector<Screen>& screens_of_all_densities();
/// Whether an item lies in something that scrolls, where it need not be in sight.
bool scrolls(const QQuickItem* item);

}  // namespace oaklight::test
