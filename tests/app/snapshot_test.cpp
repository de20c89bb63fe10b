// The app keeps copies of its tract by itself, and says so when it cannot; a damaged file is
// rescued.
#include "core/store/snapshots.hpp"

#include <QTest>
#include <algorithm>

#include "core/session/plot_work.hpp"
#include "mobile/desk/demo_tract.hpp"
#include "mobile/desk/snapshot_keeper.hpp"
#include "tests/app/app_fixture.hpp"
#include "tests/support/readings.hpp"

namespace oaklight::test {
namespace {

namespace fs = std::filesystem;

class Copies : public App {
 protected:
  /// The demo tract as somebody's own: of that no copies would be kept.
  QString own_tract() {
    static SystemClock clock;
    const TractDesk::Clocks clocks{clock, system_random(), "test"};
    EXPECT_TRUE(make_demo_tract(tract(), clocks));
    auto store = TractStore::open(tract(), OpenMode::read_write, {clock, system_random(), "test"});
    Tract own = store->load()->tract;
    own.demo = false;
    EXPECT_TRUE(store->apply({"own", {own}}));
    return QString::fromStdString(tract().string());
  }
  [[nodiscard]] fs::path tract() const { return folder_ / "hollow.gpkg"; }
  [[nodiscard]] std::vector<Snapshot> copies() const {
    return snapshots_of(tract(), snapshot_folder(tract()));
  }
  void tally() {
    const auto plot = *workspace().plot().id();
    desk().submit([this, plot]() -> Result<Action> {
      const TreeDraft draft{.facts = {.species = SpeciesCode{802}, .dbh = dbh_in(14.0)}};
      return tally_tree(desk().live(), desk().knowledge(), desk().ids(), plot, draft);
    });
    settle();
  }
  SnapshotKeeper& keeper() { return *workspace().findChild<SnapshotKeeper*>(); }
  void quiet() {
    ASSERT_TRUE(waitFor([this] { return !keeper().busy(); }));
  }
  bool shows(const QString& text) { return control_lines(window()).contains(text); }
};

TEST_F(Copies, D16_AreKeptWhenATractIsOpenedAndWhenAPlotIsLeft) {
  start(kTablet, own_tract());
  ASSERT_TRUE(waitFor([this] { return copies().size() == 1; })) << "it changed after its last copy";
  quiet();
  tally();
  EXPECT_EQ(copies().size(), 1U) << "not with each tree";
  const auto& plots = desk().data().plots;
  ASSERT_GT(plots.size(), 1U);
  workspace().plot().set(plots.back().id);
  ASSERT_TRUE(waitFor([this] { return copies().size() == 2; }));
  quiet();
  static SystemClock clock;
  const auto copy =
      TractStore::open(copies().back().path, OpenMode::read_only, {clock, system_random(), "test"});
  ASSERT_TRUE(copy);
  EXPECT_EQ(copy->load()->trees.size(), desk().data().trees.size());
  workspace().plot().set(plots.front().id);
  quiet();
  EXPECT_EQ(copies().size(), 2U) << "nothing was done on that plot";
}

TEST_F(Copies, D16_ThatCannotBeKeptAreTold) {
  start(kTablet, own_tract());
  write_bytes(snapshot_folder(tract()), "a file where the folder should be");
  keeper().take();
  quiet();
  settle();
  EXPECT_TRUE(shows(QStringLiteral("No copy of the tract was kept")));
  tally();
  EXPECT_FALSE(shows(QStringLiteral("No copy of the tract was kept"))) << "and the work goes on";
}

TEST_F(Copies, OfTheDemoTractAreNotKept) {
  start();
  keeper().take();
  quiet();
  EXPECT_FALSE(fs::exists(folder_ / "snapshots"));
}

TEST_F(Copies, AFileThatNoLongerOpensIsToldAndTheDemoDoesNotPassForIt) {
  start(kTablet, own_tract());
  stop();
  write_bytes(tract(), std::string(8192, 'x'));
  start();
  EXPECT_TRUE(desk().data().tract.demo);
  EXPECT_TRUE(model().problem().startsWith(QStringLiteral("hollow.gpkg: ")))
      << "why it is not open";
}

}  // namespace
}  // namespace oaklight::test
