// What comes before what when a tract is opened, and that nothing makes the screen wait.
#include <QThread>
#include <QtTest/QTest>
#include <atomic>

#include "core/session/plot_work.hpp"
#include "tests/app/app_fixture.hpp"
#include "tests/app/demo_workspace.hpp"
#include "tests/support/readings.hpp"

namespace oaklight::test {
namespace {

constexpr int kPatienceMs = 10'000;

/// A time that takes long to tell to whoever is not the screen: the writer asks for it within each
/// action, so that its disk seems slow.
class SlowClock : public Clock {
 public:
  std::int64_t now_ms() override {
    if (slow && QThread::currentThread() != qApp->thread()) QThread::msleep(500);
    return system_.now_ms();
  }
  std::atomic<bool> slow = false;

 private:
  SystemClock system_;
};

/// The longest time for which the screen's thread did not answer.
class Answering {
 public:
  Answering() {
    last_.start();
    QObject::connect(&tick_, &QTimer::timeout, &tick_,
                     [this] { longest_ = std::max(longest_, last_.restart()); });
    tick_.start(5);
  }
  [[nodiscard]] qint64 longest() const { return longest_; }

 private:
  QTimer tick_;
  QElapsedTimer last_;
  qint64 longest_ = 0;
};

class Start : public App {
 protected:
  std::filesystem::path demo() {
    const auto path = folder_ / "demo.gpkg";
    static SystemClock clock;
    EXPECT_TRUE(make_demo_tract(path, {clock, system_random(), "test"}));
    return path;
  }
  /// The demo tract with a text that nobody wrote into it.
  QString damaged() {
    const auto path = demo();
    std::string bytes = bytes_of(path);
    const std::string place = [&path] {
      SystemClock clock;
      const auto read = TractDesk::read(path, {clock, system_random(), "test"});
      return read->live.data().tract.meeting_place;
    }();
    EXPECT_GT(place.size(), 4U);
    for (auto at = bytes.find(place); at != std::string::npos; at = bytes.find(place, at + 1))
      bytes[at] = static_cast<char>(bytes[at] ^ 1);
    write_bytes(path, bytes);
    return QString::fromStdString(path.string());
  }
  Result<Action> tree() {
    const TreeDraft draft{.facts = {.species = SpeciesCode{802}, .dbh = dbh_in(14.0)}};
    return tally_tree(desk().live(), desk().knowledge(), desk().ids(), desk().data().plots[0].id,
                      draft);
  }
  bool shows(const char* text) { return control_lines(window()).contains(QLatin1String(text)); }
};

TEST_F(Start, TheWindowIsThereBeforeTheTractAndThePictureBeforeTheCheck) {
  AppOptions options;
  options.folder = QString::fromStdString(folder_.path().string());
  AppWindow app(options);
  app.settings().setIntroSeen(true);
  ASSERT_TRUE(app.load());
  EXPECT_TRUE(app.model().opening());
  EXPECT_EQ(app.model().workspace(), nullptr) << "it is read while the pages load";
  std::optional<bool> checked_at_first_picture;
  QObject::connect(app.window(), &QQuickWindow::frameSwapped, app.window(), [&] {
    Workspace* open = app.model().workspace();
    if (open != nullptr && !checked_at_first_picture)
      checked_at_first_picture = open->tract().sound();
  });
  app.window()->show();
  ASSERT_TRUE(QTest::qWaitFor([&] { return checked_at_first_picture.has_value(); }, kPatienceMs));
  EXPECT_FALSE(*checked_at_first_picture);
  EXPECT_TRUE(
      QTest::qWaitFor([&] { return app.model().workspace()->tract().sound(); }, kPatienceMs));
}

TEST_F(Start, D11_HiddenTheAppHasAllInTheOneFile) {
  const auto tract = demo();
  const std::string log = tract.string() + "-wal";
  start(kTablet, QString::fromStdString(tract.string()));
  desk().submit([this] { return tree(); });
  settle();
  const std::size_t trees = desk().data().trees.size();
  ASSERT_GT(std::filesystem::file_size(log), 0U) << "there is nothing to bring over";
  emit qGuiApp->applicationStateChanged(Qt::ApplicationHidden);
  ASSERT_TRUE(waitFor([&log] { return std::filesystem::file_size(log) == 0; }));
  std::filesystem::copy_file(tract, folder_ / "alone.gpkg");
  SystemClock clock;
  const auto alone = TractDesk::read(folder_ / "alone.gpkg", {clock, system_random(), "test"});
  ASSERT_TRUE(alone);
  EXPECT_EQ(alone->live.data().trees.size(), trees);
}

TEST_F(Start, D13_ASoundFileIsCheckedInSilence) {
  start();
  ASSERT_TRUE(waitFor([this] { return desk().sound(); }));
  settle();
  EXPECT_FALSE(shows("DAMAGED"));
  EXPECT_FALSE(desk().readOnly());
  EXPECT_EQ(model().problem(), "");
}

TEST_F(Start, D13_DamageIsToldAtOnceOnEveryPageAndNothingMoreIsWritten) {
  start(kTablet, damaged());
  ASSERT_TRUE(waitFor([this] { return desk().damage().has_value(); }));
  settle();
  for (const auto page : {AppModel::Page::Tract, AppModel::Page::Tally, AppModel::Page::Marks}) {
    show(page);
    EXPECT_TRUE(shows("DAMAGED")) << static_cast<int>(page);
  }
  picture(QStringLiteral("damaged"));
  EXPECT_NE(workspace().tally()->closed(), "");
  const auto before = desk().data().trees.size();
  std::optional<Status> told;
  desk().submit([this] { return tree(); }, [&told](const Status& done) { told = done; });
  settle();
  ASSERT_TRUE(told.has_value());
  EXPECT_EQ(told->error().code, ErrorCode::damaged);
  EXPECT_EQ(desk().data().trees.size(), before);
  model().copyForFriend();
  ASSERT_TRUE(waitFor([this] { return model().problem() != ""; }));
  EXPECT_EQ(model().fileNames(), QStringList{"demo.gpkg"}) << "no damaged copy is handed out";
}

class OpenDesk : public testing::Test {
 protected:
  OpenDesk() : settings_(QString::fromStdString((folder_ / "settings.ini").string())) {
    const TractDesk::Clocks clocks{clock_, system_random(), "test"};
    EXPECT_TRUE(make_demo_tract(folder_ / "hollow.gpkg", clocks));
    auto read = TractDesk::read(folder_ / "hollow.gpkg", clocks);
    EXPECT_TRUE(read);
    workspace_.emplace(std::make_unique<TractDesk>(*std::move(read), clocks), settings_, locator_);
  }
  TractDesk& desk() { return workspace_->tract(); }
  Result<Action> tree() {
    const TreeDraft draft{.facts = {.species = SpeciesCode{802}, .dbh = dbh_in(14.0)}};
    return tally_tree(desk().live(), desk().knowledge(), desk().ids(), desk().data().plots[0].id,
                      draft);
  }
  void settle() {
    ASSERT_TRUE(QTest::qWaitFor([this] { return !desk().busy(); }, kPatienceMs));
  }

  TempDir folder_;
  SlowClock clock_;
  Result<PaperApplication> paper_ = PaperApplication::start();
  Settings settings_;
  Locator locator_;
  std::optional<Workspace> workspace_;
};

TEST_F(OpenDesk, D3_NeverWaitsForASlowDisk) {
  clock_.slow = true;
  const auto before = desk().data().trees.size();
  const Answering answering;
  for (int i = 0; i < 3; ++i) desk().submit([this] { return tree(); });
  EXPECT_EQ(desk().data().trees.size(), before) << "on disk before it is shown";
  settle();
  EXPECT_EQ(desk().data().trees.size(), before + 3);
  EXPECT_GE(desk().lastCommit().count(), 500'000) << "the disk was slow indeed";
  EXPECT_LT(answering.longest(), 100);
}

TEST_F(OpenDesk, WorksOnWhileALongDecisionIsWorkedOutAndLosesNeither) {
  std::atomic<int> runs = 0;
  std::atomic<bool> on_screen = false;
  std::atomic<std::size_t> seen = 0;
  const auto before = desk().data().trees.size();
  const Answering answering;
  desk().submitLong([&](const TractData& data, IdSource&) -> Result<Action> {
    on_screen = on_screen || QThread::currentThread() == qApp->thread();
    if (++runs == 1) QThread::msleep(500);
    seen = data.trees.size();
    Tract tract = data.tract;
    tract.name = "Decided";
    return Action{"decide", {tract}};
  });
  desk().submit([this] { return tree(); });
  ASSERT_TRUE(QTest::qWaitFor([&] { return desk().data().trees.size() == before + 1; }, 400))
      << "a tree waits for no decision";
  settle();
  EXPECT_FALSE(on_screen);
  EXPECT_EQ(runs, 2) << "worked out again from what had changed meanwhile";
  EXPECT_EQ(seen, before + 1);
  EXPECT_EQ(desk().data().tract.name, "Decided");
  EXPECT_LT(answering.longest(), 100);
}

TEST_F(OpenDesk, ASnapshotDoesNotChange) {
  const auto held = desk().snapshot();
  const auto before = held->trees.size();
  desk().submit([this] { return tree(); });
  settle();
  EXPECT_EQ(held->trees.size(), before);
  EXPECT_EQ(desk().data().trees.size(), before + 1);
}

TEST_F(OpenDesk, D7_NothingIsHandedOutBeforeTheFileIsChecked) {
  EXPECT_FALSE(desk().sound()) << "nobody looked yet";
  bool sound_when_copied = false;
  std::optional<Status> copied;
  desk().copyTo(folder_ / "copy.gpkg", [&](const Status& done) {
    sound_when_copied = desk().sound();
    copied = done;
  });
  EXPECT_FALSE(std::filesystem::exists(folder_ / "copy.gpkg"));
  ASSERT_TRUE(QTest::qWaitFor([&] { return copied.has_value(); }, kPatienceMs));
  EXPECT_TRUE(*copied);
  EXPECT_TRUE(sound_when_copied);
}

TEST_F(OpenDesk, D7_APacketIsMadeOfACheckedFile) {
  workspace_->marks()->setShown(true);
  PacketViewModel& packet = *workspace_->marks()->packet();
  packet.setOpen(true);
  packet.decideAll();
  ASSERT_TRUE(QTest::qWaitFor(
      [&] { return !desk().busy() && !packet.busy() && packet.pages() > 0; }, kPatienceMs));
  EXPECT_FALSE(desk().sound());
  const std::filesystem::path folder = packet.folder();
  packet.make();
  ASSERT_TRUE(QTest::qWaitFor([&] { return !packet.busy(); }, kPatienceMs));
  EXPECT_TRUE(desk().sound());
  EXPECT_TRUE(std::filesystem::exists(folder / "logger.pdf"));
  EXPECT_NE(packet.folder(), folder) << "the next one does not write over it";
}

}  // namespace
}  // namespace oaklight::test
