// Where somebody who never saw the app looks for something, it is there.
#include <QtTest/QTest>

#include "core/session/tract_work.hpp"
#include "tests/app/tally_fixture.hpp"

namespace oaklight::test {
namespace {

class Newcomer : public FieldRows {
 protected:
  /// Nobody said how much of any stand was walked.
  void forget_what_was_walked() {
    for (const StandId stand : stands()) {
      desk().submit([this, stand]() -> Result<Action> {
        Stand changed = *desk().live().find(stand);
        changed.walked.reset();
        return change_stand(desk().live(), desk().knowledge(), changed);
      });
    }
    settle();
  }
  std::vector<StandId> stands() {
    std::vector<StandId> ids;
    for (const Stand& stand : desk().data().stands) ids.push_back(stand.id);
    return ids;
  }
  void ready() {
    ASSERT_TRUE(waitFor([this] { return at_rest(); }));
    settle();
  }
  void type_line(const QString& name, const QString& text) {
    scroll_to(name);
    tap(name);
    for (const QChar letter : text) QTest::keyClick(&window(), letter.toLatin1());
    settle();
  }
  bool reads(const QString& words) { return control_lines(window()).contains(words); }
};

TEST_F(Newcomer, IsLedFromTheLightToWhatWasWalked) {
  for (const Screen& screen : {kTablet, kPhone}) {
    SCOPED_TRACE(screen.name);
    start(screen);
    forget_what_was_walked();
    show(AppModel::Page::Light);
    ready();
    ASSERT_GE(workspace().light()->unwalked(), 0);
    scroll_to(QStringLiteral("Say how much was walked"));
    tap(QStringLiteral("Say how much was walked"));
    type_line(QStringLiteral("Walked for marking, acres"), QStringLiteral("1"));
    tap(QStringLiteral("Save stand"));
    ready();
    EXPECT_EQ(model().page(), AppModel::Page::Light) << "and back at the light";
    EXPECT_EQ(workspace().light()->unwalked(), -1);
    EXPECT_EQ(find(QStringLiteral("Say how much was walked")), nullptr);
    stop();
  }
}

TEST_F(Newcomer, IsLedFromThePacketToWhatWasWalkedInEachStand) {
  start(kTablet);
  forget_what_was_walked();
  decide_all();
  show(AppModel::Page::Marks);
  ready();
  tap(QStringLiteral("Packet to hand over"));
  ready();
  for (std::size_t left = stands().size(); left > 0; --left) {
    ASSERT_EQ(workspace().marks()->unwalked(), static_cast<int>(stands().size() - left));
    tap(QStringLiteral("Say how much was walked"));
    type_line(QStringLiteral("Walked for marking, acres"), QStringLiteral("1"));
    tap(QStringLiteral("Save stand"));
    ready();
  }
  EXPECT_EQ(find(QStringLiteral("Say how much was walked")), nullptr);
}

TEST_F(Newcomer, IsLedFromTheTractToWhatWasWalked) {
  start(kTablet);
  forget_what_was_walked();
  show(AppModel::Page::Tract);
  ASSERT_EQ(workspace().tractView()->step(), TractViewModel::Step::SayWalked);
  tap(QStringLiteral("Say how much was walked"));
  EXPECT_NE(find(QStringLiteral("Walked for marking, acres")), nullptr);
}

TEST_F(Newcomer, SeesWhereTreesLargerThanTheCellsGo) {
  for (const Screen& screen : {kTablet, kTabletUpright, kPhone}) {
    SCOPED_TRACE(screen.name);
    begin(screen);
    const QString largest = tally().classes().back();
    EXPECT_TRUE(reads(QStringLiteral("over %1 in").arg(largest)));
    tap(species(0));
    EXPECT_NE(find(QStringLiteral("Keypad")), nullptr) << "also while the classes lie there";
    stop();
  }
}

TEST_F(Newcomer, ReadsWholeWhatTheTallySays) {
  for (const Screen& screen : {kTablet, kTabletUpright}) {
    SCOPED_TRACE(screen.name);
    begin(screen);
    const QStringList cut = cut_words();
    for (const QString& words : {QStringLiteral("Hold to lock"),
                                 QStringLiteral("Press a species, slide to the diameter, lift")}) {
      EXPECT_TRUE(reads(words)) << words.toStdString();
      EXPECT_FALSE(cut.contains(words)) << words.toStdString();
    }
    stop();
  }
}

TEST_F(Newcomer, SeesTheVerdictThatIsOverruled) {
  start(kTablet);
  decide_all();
  show(AppModel::Page::Light);
  ready();
  workspace().light()->openCard(0);
  ready();
  CardTreeModel& trees = *workspace().light()->card()->trees();
  ASSERT_GE(trees.rowCount(), 2);
  const QString tree = trees.titleOf(1);
  for (const Control& control : controls_of(window())) {
    if (control.name.startsWith(tree)) {
      scroll_to(control.name);
      tap(control.item);
      break;
    }
  }
  ASSERT_NE(find(QStringLiteral("Close")), nullptr);
  EXPECT_TRUE(reads(QStringLiteral("Now: %1").arg(trees.nowOf(1)))) << trees.nowOf(1).toStdString();
  EXPECT_TRUE(trees.nowOf(1).contains(QStringLiteral("decided by the rules")));
}

TEST_F(Newcomer, FindsTheTractFilesWithoutScrolling) {
  for (const Screen& screen : {kTablet, kTabletUpright, kPhone}) {
    SCOPED_TRACE(screen.name);
    start(screen);
    show(AppModel::Page::Tract);
    QQuickItem* files = find(QStringLiteral("Tract files"));
    ASSERT_NE(files, nullptr);
    EXPECT_LE(files->mapToScene(QPointF(0, files->height())).y(), screen.size.height());
    tap(files);
    EXPECT_NE(find(QStringLiteral("Close")), nullptr) << "it is pressed where it lies";
    stop();
  }
}

TEST_F(Newcomer, SeesTheTagBesideWhatIsTappedAfterTheCut) {
  for (const Screen& screen : {kTablet, kTabletUpright, kPhone}) {
    SCOPED_TRACE(screen.name);
    start(screen);
    if (desk().data().marks.empty()) decide_all();
    show(AppModel::Page::Stumps);
    ASSERT_TRUE(waitFor([this] { return !workspace().marks()->stumps()->busy(); }));
    settle();
    const QString tag = workspace().marks()->stumps()->tag();
    ASSERT_NE(tag, "");
    // Its line is read as a heading, and lies in nothing that scrolls.
    QQuickItem* act = find(QStringLiteral("Found as marked"));
    ASSERT_NE(act, nullptr);
    EXPECT_FALSE(scrolls(act));
    bool seen = false;
    for (const QString& line : control_lines(window()).split(QLatin1Char('\n'))) {
      const QStringList parts = line.split(QLatin1Char('\t'));
      if (parts.size() < 11 || parts[10] != QStringLiteral("Tag %1").arg(tag)) continue;
      seen = true;
      EXPECT_EQ(parts.mid(1, 4), parts.mid(5, 4)) << "in sight whole";
      EXPECT_LT(parts[2].toInt(), act->mapToScene(QPointF()).y());
    }
    EXPECT_TRUE(seen);
    stop();
  }
}

}  // namespace
}  // namespace oaklight::test
