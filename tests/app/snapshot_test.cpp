// The app keeps copies of its tract by itself, and says so when it cannot; a damaged file is
// rescued.
#include "core/store/snapshots.hpp"

#include <QTest>
#include <algorithm>

#include "core/session/plot_work.hpp"
#include "mobile/desk/demo_tract.hpp"
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
  void quiet() {
    ASSERT_TRUE(waitFor([this] { return !workspace().snapshots().busy(); }));
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

TEST_F(Copies, D16_OnACardThatIsNotInAreKeptHereAndTold) {
  const QString file = own_tract();
  start(kTablet, file);
  quiet();
  const auto before = copies().size();
  app_settings().setSnapshotFolder(QString::fromStdString((folder_ / "card").string()));
  workspace().snapshots().take();
  quiet();
  settle();
  EXPECT_TRUE(shows(QStringLiteral("No copy of the tract was kept")));
  EXPECT_EQ(copies().size(), before + 1) << "a copy here is better than none";
  EXPECT_FALSE(fs::exists(folder_ / "card")) << "no folder that would pass for the card";

  fs::create_directory(folder_ / "card");
  workspace().snapshots().take();
  quiet();
  EXPECT_EQ(snapshots_of(tract(), folder_ / "card").size(), 1U);
  EXPECT_EQ(copies().size(), before + 1);
}

TEST_F(Copies, OfTheDemoTractAreNotKept) {
  start();
  workspace().snapshots().take();
  quiet();
  EXPECT_FALSE(fs::exists(folder_ / "snapshots"));
}

TEST_F(Copies, ADamagedFileIsRescuedByOneTapAndTheNewOneOpens) {
  const QString file = own_tract();
  std::string bytes = bytes_of(tract());
  for (auto at = bytes.find("Whetrock Hollow"); at != std::string::npos;
       at = bytes.find("Whetrock Hollow", at + 1))
    bytes[at] = 'G';
  const std::string whole = bytes_of(tract());
  ASSERT_NE(bytes, whole) << "the name of the demo tract is another by now";
  write_bytes(tract(), bytes);
  start(kTablet, file);
  ASSERT_TRUE(waitFor([this] { return desk().damage().has_value(); }));
  settle();
  EXPECT_TRUE(copies().empty()) << "of damage no copy takes the place of a good one";
  const auto trees = desk().data().trees.size();
  tap(QStringLiteral("Rescue"));
  ASSERT_TRUE(waitFor([this] { return desk().path().filename() == "hollow-rescued.gpkg"; }));
  ASSERT_TRUE(waitFor([this] { return desk().sound(); }));
  EXPECT_EQ(desk().data().trees.size(), trees);
  EXPECT_FALSE(desk().readOnly());
  EXPECT_EQ(bytes_of(tract()), bytes) << "the damaged file stays as it is";
  EXPECT_TRUE(fs::exists(folder_ / "hollow-rescued.gpkg.txt"));
  EXPECT_NE(model().problem(), "") << "something was lost, and that is told";
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
