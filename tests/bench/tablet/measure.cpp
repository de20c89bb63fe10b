// Measures the tablet app on one tract file; `run` says how and prints what comes of it.
//   bench_tablet empty                  an empty Qt Quick window, for comparison
//   bench_tablet start TRACT FOLDER     until the first picture of the tract
//   bench_tablet work TRACT FOLDER      after it: all pages, the longest list scrolled, trees
//   tallied
//   bench_tablet day TRACT FOLDER TREES many trees, plot after plot, as in days of work without end
// Times of a start are readings of the clock CLOCK_MONOTONIC, which whoever started it can read
// too.
#include <malloc.h>
#include <time.h>

#include <QEventLoop>
#include <QGuiApplication>
#include <QMetaEnum>
#include <QQuickItem>
#include <QQuickWindow>
#include <QSettings>
#include <QTimer>
#include <QtQml/QQmlExtensionPlugin>
#include <QtTest/QTest>
#include <chrono>
#include <fstream>
#include <functional>
#include <iostream>
#include <nlohmann/json.hpp>

#include "core/session/plot_work.hpp"
#include "mobile/desk/app_window.hpp"
#include "mobile/desk/control_list.hpp"
#include "mobile/items/picture_item.hpp"

Q_IMPORT_QML_PLUGIN(OaklightPlugin)

namespace {

using Json = nlohmann::ordered_json;
using Clock = std::chrono::steady_clock;

constexpr int kTaps = 300;
constexpr int kFrames = 300;
constexpr int kTreesOfAPlot = 30;
constexpr int kPlotsOfALine = 33;  // about a thousand trees
constexpr int kHeldMs = 40;        // longer than a drop of rain
constexpr double kPixelsPerMm = 5.9;

std::int64_t monotonic_ns() {
  timespec now{};
  clock_gettime(CLOCK_MONOTONIC, &now);
  return now.tv_sec * 1'000'000'000LL + now.tv_nsec;
}

/// What this process has had of the processors, which a busy machine does not lengthen much.
double processor_ms() {
  timespec used{};
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &used);
  return static_cast<double>(used.tv_sec) * 1e3 + static_cast<double>(used.tv_nsec) / 1e6;
}

double ms_since(Clock::time_point begin) {
  return std::chrono::duration<double, std::milli>(Clock::now() - begin).count();
}

/// A line of /proc/self/status, in megabytes: "VmRSS", "VmHWM".
double megabytes(const std::string& name) {
  std::ifstream status("/proc/self/status");
  for (std::string word; status >> word;) {
    double kilobytes = 0.0;
    if (word == name + ":" && status >> kilobytes) return kilobytes / 1024.0;
  }
  return 0.0;
}

void say(Json line) {
  line["rss_mb"] = megabytes("VmRSS");
  line["peak_mb"] = megabytes("VmHWM");
  std::cout << line.dump() << std::endl;
}

/// Lets the app live until a frame was shown in which something holds.
void until_shown(QQuickWindow& window, const std::function<bool()>& holds) {
  QEventLoop loop;
  const auto seen = QObject::connect(&window, &QQuickWindow::frameSwapped, &loop, [&] {
    if (holds()) loop.quit();
  });
  window.update();
  loop.exec();
  QObject::disconnect(seen);
}

void rest(int ms) {
  QEventLoop loop;
  QTimer::singleShot(ms, &loop, &QEventLoop::quit);
  loop.exec();
}

void until_idle(AppWindow& app) {
  do rest(50);
  while (app.busy());
  rest(50);
}

template <class Wanted>
Wanted* find(QQuickItem* item, const std::function<bool(Wanted&)>& fits) {
  if (!item->isVisible()) return nullptr;
  if (auto* wanted = qobject_cast<Wanted*>(item); wanted != nullptr && fits(*wanted)) return wanted;
  for (QQuickItem* child : item->childItems()) {
    if (Wanted* found = find(child, fits)) return found;
  }
  return nullptr;
}

/// The tract's map has its place and its drawing, and what is left to do stands beside it. The
/// software renderer paints in the thread that asks, so a frame just shown holds both.
bool tract_stands(AppWindow& app) {
  Workspace* open = app.model().workspace();
  if (open == nullptr) return false;
  QQuickItem* root = app.window()->contentItem();
  const QString todo = open->tractView()->todo();
  return find<PictureItem>(root,
                           [](PictureItem& map) {
                             return map.width() > 100.0 && map.height() > 100.0 &&
                                    !map.picture().isEmpty();
                           }) != nullptr &&
         find<QQuickItem>(root, [&todo](QQuickItem& item) {
           return item.inherits("QQuickText") && item.property("text").toString() == todo;
         }) != nullptr;
}

int empty() {
  QQuickWindow window;
  window.resize(1280, 800);
  window.show();
  until_shown(window, [] { return true; });
  say({{"at", "empty"}, {"first_picture_ns", monotonic_ns()}});
  return 0;
}

Json of(std::vector<double> values) {
  std::ranges::sort(values);
  const auto at = [&](double part) {
    return values[static_cast<std::size_t>(part * static_cast<double>(values.size() - 1))];
  };
  return {{"p50", at(0.5)}, {"p99", at(0.99)}, {"most", values.back()}};
}

void visit_pages(AppWindow& app) {
  const auto pages = QMetaEnum::fromType<AppModel::Page>();
  for (int i = 0; i < pages.keyCount(); ++i) {
    const auto begin = Clock::now();
    app.model().setPage(static_cast<AppModel::Page>(pages.value(i)));
    const double made = ms_since(begin);
    until_shown(*app.window(), [] { return true; });
    const double shown = ms_since(begin);
    until_idle(app);
    say({{"at", "page"},
         {"page", pages.key(i)},
         {"made_ms", made},
         {"shown_ms", shown},
         {"idle_ms", ms_since(begin)}});
  }
}

/// The list with the most rows of those that show.
QQuickItem* longest_list(QQuickItem* root) {
  QQuickItem* longest = nullptr;
  find<QQuickItem>(root, [&longest](QQuickItem& item) {
    if (item.inherits("QQuickListView") &&
        (longest == nullptr || item.property("count").toInt() > longest->property("count").toInt()))
      longest = &item;
    return false;
  });
  return longest;
}

/// Moves the list by so many pixels a frame, and times each frame from the move until it is shown.
void scroll(AppWindow& app, const char* page, double pixels) {
  QQuickItem* list = longest_list(app.window()->contentItem());
  if (list == nullptr) return;
  std::vector<double> frames;
  for (int i = 0; i < kFrames; ++i) {
    const auto begin = Clock::now();
    list->setProperty("contentY", list->property("contentY").toDouble() + pixels);
    until_shown(*app.window(), [] { return true; });
    frames.push_back(ms_since(begin));
  }
  say({{"at", "scroll"},
       {"page", page},
       {"rows", list->property("count").toInt()},
       {"pixels_a_frame", pixels},
       {"ms", of(frames)}});
}

QQuickItem* control(AppWindow& app, const QString& name) {
  QQuickItem* found = nullptr;
  for (const Control& one : controls_of(*app.window())) {
    if (one.name == name) found = one.item;
  }
  return found;
}

QPoint middle_of(QQuickItem* item) {
  if (item == nullptr) throw std::runtime_error("a control is not shown");
  return item->mapToScene(QPointF(item->width() / 2, item->height() / 2)).toPoint();
}

/// A finger at the page Tally that taps diameter classes of one species.
class Finger {
 public:
  explicit Finger(AppWindow& app) : app_(app), open_(*app.model().workspace()) { come(); }

  /// Shows the page, and finds out where its cells are.
  void come() {
    app_.model().setPage(AppModel::Page::Tally);
    until_idle(app_);
    open_.tally()->pin(0);
    rest(100);
    cells_.clear();
    for (const char* size : {"8", "10", "12", "14", "16"}) {
      cells_.push_back(
          middle_of(control(app_, QStringLiteral("%1, diameter class").arg(QLatin1String(size)))));
    }
  }
  /// Taps until `trees` more are recorded, and times each from the lift until the tree is in the
  /// picture.
  void tally(int trees) {
    for (int tap = 0; tap < trees; ++tap) {
      const std::size_t before = this->trees();
      const double used = processor_ms();
      const double took = touch(cells_[static_cast<std::size_t>(tap) % cells_.size()],
                                [&] { return this->trees() > before; });
      const double disk = static_cast<double>(open_.tract().lastCommit().count()) / 1000.0;
      whole_.push_back(took);
      commit_.push_back(disk);
      ours_.push_back(took - disk);
      processor_.push_back(processor_ms() - used);
    }
  }
  void undo() {
    const std::size_t before = trees();
    touch(middle_of(control(app_, QStringLiteral("Undo"))), [&] { return trees() < before; });
  }
  [[nodiscard]] std::size_t trees() const { return open_.tract().data().trees.size(); }
  /// Of the taps since it was asked last.
  Json times() {
    Json line{{"trees", trees()},
              {"taps", whole_.size()},
              {"tap_to_picture_ms", of(std::exchange(whole_, {}))},
              {"commit_ms", of(std::exchange(commit_, {}))},
              {"without_commit_ms", of(std::exchange(ours_, {}))},
              {"processor_ms", of(std::exchange(processor_, {}))}};
    return line;
  }

 private:
  double touch(QPoint at, const std::function<bool()>& done) {
    QTest::touchEvent(app_.window(), finger_).press(0, at);
    rest(kHeldMs);
    const auto lifted = Clock::now();
    QTest::touchEvent(app_.window(), finger_).release(0, at);
    until_shown(*app_.window(), done);
    return ms_since(lifted);
  }

  AppWindow& app_;
  Workspace& open_;
  QPointingDevice* finger_ = QTest::createTouchDevice();
  std::vector<QPoint> cells_;
  std::vector<double> whole_, commit_, ours_, processor_;
};

void tally(AppWindow& app) {
  Finger finger(app);
  finger.tally(kTaps);
  Json line{{"at", "tap"}};
  line.update(finger.times());
  say(line);
}

std::size_t objects_of(AppWindow& app) {
  return static_cast<std::size_t>(app.window()->findChildren<QObject*>().size() +
                                  app.engine().findChildren<QObject*>().size() +
                                  app.model().findChildren<QObject*>().size());
}

/// Plot after plot is tallied; at each some trees are undone and the other pages are looked at.
void whole_day(AppWindow& app, int trees) {
  const auto pages = {AppModel::Page::Walk, AppModel::Page::Tract, AppModel::Page::Stand};
  TractDesk& desk = app.model().workspace()->tract();
  Finger finger(app);
  for (int plot = 0; static_cast<int>(finger.trees()) < trees; ++plot) {
    desk.submit([&desk] {
      const oaklight::Plot& other = desk.data().plots.front();
      return oaklight::add_plots(desk.live(), desk.knowledge(), desk.ids(), other.stand,
                                 other.cruise, 1);
    });
    until_idle(app);
    app.model().workspace()->plot().set(desk.data().plots.back().id);
    finger.come();
    finger.tally(kTreesOfAPlot);
    finger.undo();
    finger.tally(1);
    for (const auto page : pages) {
      app.model().setPage(page);
      until_idle(app);
    }
    if ((plot + 1) % kPlotsOfALine != 0) continue;
    Json line{{"at", "day"}, {"plots", plot + 1}};
    line.update(finger.times());
    line["heap_mb"] = static_cast<double>(mallinfo2().uordblks) / 1e6;
    line["objects"] = objects_of(app);
    say(line);
  }
}

int with_app(const QString& what, const QString& tract, const QString& folder, int trees) {
  QSettings(folder + QStringLiteral("/settings.ini"), QSettings::IniFormat)
      .setValue(QStringLiteral("intro_seen"), true);
  AppOptions options;
  options.folder = folder;
  options.tract = tract;
  options.pixelsPerMm = kPixelsPerMm;
  AppWindow app(options);
  if (!app.load()) return 1;
  app.window()->show();
  until_shown(*app.window(), [&app] { return tract_stands(app); });
  const std::int64_t shown = monotonic_ns();
  const bool checked = app.model().workspace()->tract().sound();
  say({{"at", "start"}, {"first_picture_ns", shown}, {"checked_before", checked}});
  if (qEnvironmentVariableIsSet("OAKLIGHT_BENCH_PICTURE"))
    app.window()->grabWindow().save(qEnvironmentVariable("OAKLIGHT_BENCH_PICTURE"));
  if (what == QStringLiteral("start")) return 0;
  const auto begin = Clock::now();
  while (!app.model().workspace()->tract().sound()) rest(5);
  say({{"at", "check"}, {"checked_after_ms", ms_since(begin)}});
  if (what == QStringLiteral("day")) {
    whole_day(app, trees);
    return app.warnings().isEmpty() ? 0 : 1;
  }
  visit_pages(app);
  app.model().setPage(AppModel::Page::Marks);
  until_idle(app);
  scroll(app, "Marks", 40.0);
  scroll(app, "Marks", 5000.0);
  tally(app);
  return app.warnings().isEmpty() ? 0 : 1;
}

}  // namespace

int main(int argc, char* argv[]) {
  qputenv("QT_QPA_PLATFORM", "offscreen");
  qputenv("QT_QUICK_BACKEND", "software");
  QGuiApplication app(argc, argv);
  const QStringList call = QGuiApplication::arguments();
  if (call.value(1) == QStringLiteral("empty")) return empty();
  if (call.size() < 4) return 2;
  return with_app(call[1], call[2], call[3], call.value(4).toInt());
}
