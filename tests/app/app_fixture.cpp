#include "tests/app/app_fixture.hpp"

#include <QDir>
#include <QFontMetricsF>
#include <QRegularExpression>
#include <QtTest/QTest>
#include <algorithm>

#include "tests/support/places.hpp"

namespace oaklight::test {
namespace {

// Longer than a drop of rain, shorter than patience: see TouchField.
constexpr int kHeldMs = 40;
constexpr int kPatienceMs = 10'000;

/// Whether a text of one size wraps within a word, where the word gives no place to.
bool breaks_a_word(const QQuickItem& text) {
  constexpr int kFixedSize = 0;  // of Text.fontSizeMode
  if (text.property("fontSizeMode").toInt() != kFixedSize) return false;
  const QFontMetricsF metrics(text.property("font").value<QFont>());
  static const QRegularExpression places(QStringLiteral("[\\s\\x{00AD}/-]+"));
  const QStringList words = text.property("text").toString().split(places);
  return text.property("lineCount").toInt() > 1 &&
         std::ranges::any_of(words, [&](const auto& word) {
           return metrics.horizontalAdvance(word) > text.width() + 1.5;
         });
}

/// What stands on the glass and is not all there: cut with dots, or larger than its room,
/// or broken within a word.
void find_cut_words(const QQuickItem& item, QStringList& cut) {
  if (!item.isVisible()) return;
  if (item.inherits("QQuickText") && !item.property("text").toString().isEmpty()) {
    const bool dots = item.property("truncated").toBool();
    const bool wide = item.property("contentWidth").toDouble() > item.width() + 1.5;
    const bool high = item.property("contentHeight").toDouble() > item.height() + 1.5;
    if (dots || wide || high || breaks_a_word(item)) cut << item.property("text").toString();
  }
  for (const QQuickItem* child : item.childItems()) find_cut_words(*child, cut);
}

}  // namespace

App::App() : finger_(QTest::createTouchDevice()) {}
App::~App() { stop(); }

void App::start(const Screen& screen, const QString& tract) {
  const QString folder = QString::fromStdString(folder_.path().string());
  AppOptions options;
  options.folder = folder;
  options.tract = tract;
  options.pixelsPerMm = screen.pixels_per_mm;
  options.receiver = QString::fromLatin1(Receiver::kNone);
  app_ = std::make_unique<AppWindow>(options);
  app_->settings().setIntroSeen(true);
  ASSERT_TRUE(app_->load()) << app_->warnings().join(QLatin1Char('\n')).toStdString();
  window().resize(screen.size);
  window().show();
  ASSERT_TRUE(QTest::qWaitForWindowExposed(&window()));
  settle();
}

void App::stop() { app_.reset(); }

void App::show(AppModel::Page page) {
  model().setPage(page);
  settle();
}

QPoint App::middleOf(QQuickItem* item) {
  return item->mapToScene(QPointF(item->width() / 2, item->height() / 2)).toPoint();
}

QQuickItem* App::find(const QString& name) {
  QQuickItem* found = nullptr;
  for (const Control& control : controls_of(window())) {
    if (control.name == name) found = control.item;  // the last one painted lies on top
  }
  return found;
}

void App::tapAt(QPoint at) {
  ++taps_;
  QTest::touchEvent(&window(), finger_).press(0, at);
  QTest::qWait(kHeldMs);
  QTest::touchEvent(&window(), finger_).release(0, at);
  settle();
}

void App::tap(QQuickItem* item) {
  ASSERT_NE(item, nullptr);
  tapAt(middleOf(item));
}

void App::tap(const QString& name) {
  QQuickItem* item = find(name);
  ASSERT_NE(item, nullptr) << "no control is named " << name.toStdString();
  tap(item);
}

void App::slide(const QString& from, const QString& to) {
  QQuickItem* first = find(from);
  ASSERT_NE(first, nullptr) << "no control is named " << from.toStdString();
  ++taps_;
  const QPoint begin = middleOf(first);
  QTest::touchEvent(&window(), finger_).press(0, begin);
  QTest::qWait(kHeldMs);
  QQuickItem* last = find(to);  // it may open only now
  ASSERT_NE(last, nullptr) << "no control is named " << to.toStdString() << " among\n"
                           << control_lines(window()).toStdString();
  const QPoint end = middleOf(last);
  QTest::touchEvent(&window(), finger_).move(0, (begin + end) / 2);
  QTest::touchEvent(&window(), finger_).move(0, end);
  QTest::touchEvent(&window(), finger_).release(0, end);
  settle();
}

void App::settle() {
  waitFor(
      [this] { return !model().opening() && (model().workspace() == nullptr || !desk().busy()); });
  // Layouts place things with the next frame: wait until every control stands still.
  QString before;
  for (int i = 0; i < 50; ++i) {
    QTest::qWait(20);
    const QString now = control_lines(window());
    if (now == before) break;
    before = now;
  }
}

bool App::waitFor(const std::function<bool()>& holds) {
  return QTest::qWaitFor(holds, kPatienceMs);
}

QStringList App::cut_words() {
  QStringList cut;
  find_cut_words(*window().contentItem(), cut);
  return cut;
}

QImage App::picture(const QString& name) {
  const QImage image = window().grabWindow();
  const QString folder = QString::fromStdString(build_path("pictures"));
  QDir().mkpath(folder);
  EXPECT_TRUE(image.save(QStringLiteral("%1/%2.png").arg(folder, name)));
  return image;
}

}  // namespace oaklight::test
