// Several tablets, one tract: files chosen, joined, and what both changed decided by taps.
#include "mobile/viewmodels/join_view_model.hpp"

#include "tests/app/app_fixture.hpp"
#include "tests/support/readings.hpp"

namespace oaklight::test {
namespace {

class Joining : public App {
 protected:
  JoinViewModel& join() { return *workspace().join(); }
  void wait_for_join() {
    ASSERT_TRUE(waitFor([this] { return !join().busy() && !desk().busy(); }));
    settle();
  }
  /// A file beside the open one in which another tablet corrected the first tree, tallied one more
  /// and gave a tag that is given here too.
  void make_other_tablets_file() {
    const auto path = desk().path();
    bool copied = false;
    desk().copyTo(path.parent_path() / "creek-side.gpkg",
                  [&](const Status& done) { copied = done.has_value(); });
    ASSERT_TRUE(waitFor([&] { return copied; }));
    SystemClock clock;
    auto store = TractStore::open(path.parent_path() / "creek-side.gpkg", OpenMode::read_write,
                                  {clock, system_random(), "creek tablet"});
    ASSERT_TRUE(store) << to_text(store.error());
    Tree tree = store->load()->trees.front();
    tree.facts.dbh = dbh_in(22.2);
    tree.facts.crown_class = CrownClass::codominant;
    ASSERT_TRUE(store->apply({"correct", {tree}}));
    tree.id = store->ids().next_id<TreeTag>();
    ASSERT_TRUE(store->apply({"tally", {tree}}));
    WalkTree card = store->load()->walk_trees.front();
    card.id = store->ids().next_id<WalkTreeTag>();
    card.tag = "940";
    ASSERT_TRUE(store->apply({"card", {card}}));
  }
  void change_here() {
    Tree tree = desk().data().trees.front();
    tree.facts.dbh = dbh_in(11.1);
    tree.facts.crown_class = CrownClass::intermediate;
    WalkTree card = desk().data().walk_trees.front();
    card.id = desk().ids().next_id<WalkTreeTag>();
    card.tag = "940";
    desk().submit([=] { return Action{"correct here", {tree, card}}; });
    settle();
  }
  void begin(const Screen& screen) {
    start(screen);
    show(AppModel::Page::Tract);
    make_other_tablets_file();
    change_here();
    trees_ = desk().data().trees.size();
    tap(QStringLiteral("Tract files"));
    QQuickItem* button = find(QStringLiteral("Join files of other tablets"));
    ASSERT_NE(button, nullptr);
    QMetaObject::invokeMethod(button, "clicked");  // it lies below what the sheet shows at first
    wait_for_join();
  }

  std::size_t trees_ = 0;
};

TEST_F(Joining, AFileIsChosenJoinedAndDecidedByTaps) {
  begin(kTablet);
  tap(QStringLiteral("creek-side.gpkg"));
  wait_for_join();
  ASSERT_EQ(join().rows().size(), 2) << join().problem().toStdString();
  EXPECT_TRUE(join().rows()[0].contains(QStringLiteral("2 records")))
      << join().rows()[0].toStdString();
  picture(QStringLiteral("join_choose"));
  tap(QStringLiteral("Join"));
  wait_for_join();
  EXPECT_EQ(desk().data().trees.size(), trees_ + 1);
  ASSERT_EQ(join().open(), 2) << join().problem().toStdString();
  EXPECT_EQ(cut_words(), QStringList());
  picture(QStringLiteral("join_both_changed"));
  // Ours was made last, so it shows; the other is chosen.
  ASSERT_EQ(join().sides().size(), 2);
  EXPECT_TRUE(join().sides()[1].contains(QStringLiteral("DBH: 22.2 in")));
  EXPECT_TRUE(join().sides()[1].contains(QStringLiteral("creek tablet")));
  QQuickItem* holds = find(QStringLiteral("B holds"));
  ASSERT_NE(holds, nullptr);
  QMetaObject::invokeMethod(holds, "clicked");
  wait_for_join();
  EXPECT_EQ(desk().data().trees.front().facts.dbh, dbh_in(22.2));
  ASSERT_EQ(join().open(), 1);
  EXPECT_EQ(join().answer(), JoinViewModel::Answer::Name);
  picture(QStringLiteral("join_used_twice"));
  join().nameAnew(1, QStringLiteral("941"));
  wait_for_join();
  EXPECT_EQ(join().open(), 0);
  EXPECT_NE(desk().live().by_tag("941"), nullptr);
  EXPECT_TRUE(warnings().isEmpty()) << warnings().join(QLatin1Char('\n')).toStdString();
}

TEST_F(Joining, UndoOpensADecisionAgain) {
  begin(kTablet);
  tap(QStringLiteral("creek-side.gpkg"));
  wait_for_join();
  tap(QStringLiteral("Join"));
  wait_for_join();
  join().decide(1);
  wait_for_join();
  ASSERT_EQ(join().open(), 1);
  desk().undo();
  wait_for_join();
  EXPECT_EQ(join().open(), 2);
  EXPECT_EQ(desk().data().trees.front().facts.dbh, dbh_in(11.1));
}

TEST_F(Joining, FitsAPhoneInSpanish) {
  begin(kPhone);
  app_settings().setLanguage(QStringLiteral("es"));
  tap(QStringLiteral("creek-side.gpkg"));
  wait_for_join();
  tap(QStringLiteral("Unir"));
  wait_for_join();
  EXPECT_NE(find(QStringLiteral("Vale A")), nullptr);
  EXPECT_EQ(cut_words(), QStringList());
  picture(QStringLiteral("join_phone"));
  app_settings().setLanguage(QStringLiteral("en"));
}

TEST_F(Joining, AFileOfAnotherTractIsRefusedUntilAPersonSaysSo) {
  start(kTablet);
  show(AppModel::Page::Tract);
  SystemClock clock;
  {
    auto store = TractStore::create(desk().path().parent_path() / "other.gpkg",
                                    {clock, system_random(), "other"});
    ASSERT_TRUE(store);
    Tract tract;
    tract.name = "Cold Spring";
    ASSERT_TRUE(store->apply({"name", {tract}}));
  }
  join().begin();
  join().toggle(static_cast<int>(join().files().indexOf(QStringLiteral("other.gpkg"))));
  wait_for_join();
  EXPECT_TRUE(join().otherTract());
  EXPECT_FALSE(join().ready());
  EXPECT_TRUE(join().problem().startsWith(QStringLiteral("other.gpkg: ")));
  join().takeAsOneTract();
  wait_for_join();
  EXPECT_TRUE(join().ready()) << join().problem().toStdString();
}

}  // namespace
}  // namespace oaklight::test
