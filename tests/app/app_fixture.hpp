#pragma once

#include <gtest/gtest.h>

#include <QPointingDevice>
#include <QQuickItem>
#include <QQuickWindow>
#include <memory>

#include "mobile/desk/app_window.hpp"
#include "mobile/desk/control_list.hpp"
#include "tests/support/temp_dir.hpp"

namespace oaklight::test {

/// A screen to test on, in logical pixels.
struct Screen {
  const char* name;
  QSize size;
  double pixels_per_mm;
};
inline constexpr double kTabletPixelsPerMm =
    5.9;                                          // 1280 pixels over the 218 mm of a 10.1 in tablet
inline constexpr double kPhonePixelsPerMm = 6.3;  // 412 pixels over the 65 mm of a phone
inline const Screen kTablet{"tablet", {1280, 800}, kTabletPixelsPerMm};
inline const Screen kTabletUpright{"upright", {800, 1280}, kTabletPixelsPerMm};
inline const Screen kPhone{"phone", {412, 915}, kPhonePixelsPerMm};

/// The whole app in a folder of its own, touched as a finger would.
class App : public testing::Test {
 protected:
  App();
  ~App() override;

  /// Starts on the demo tract, or on a file; the first-run help was seen.
  void start(const Screen& screen = kTablet, const QString& tract = {});
  /// Ends the app without ceremony; start() finds what it left.
  void stop();

  AppModel& model() { return app_->model(); }
  Workspace& workspace() { return *app_->model().workspace(); }
  TractDesk& desk() { return workspace().tract(); }
  Theme& theme() { return app_->theme(); }
  Settings& app_settings() { return app_->settings(); }
  QQuickWindow& window() { return *app_->window(); }
  void show(AppModel::Page page);
  /// What the QML engine complained of since the start.
  QStringList warnings() { return app_->warnings(); }

  /// The visible control of that accessible name; nullptr when there is none.
  QQuickItem* find(const QString& name);
  static QPoint middleOf(QQuickItem* item);

  // Touches, each counted as one tap; a missing control fails the test.
  void tap(const QString& name);
  void tap(QQuickItem* item);
  void tapAt(QPoint at);
  void slide(const QString& from, const QString& to);
  QPointingDevice* finger() { return finger_; }
  [[nodiscard]] int taps() const { return taps_; }

  /// Waits until what was done is on disk and on the screen.
  void settle();
  /// Waits until something holds, at most some seconds; false when it does not come to hold.
  bool waitFor(const std::function<bool()>& holds);

  /// Words on the glass that are not all there.
  QStringList cut_words();
  /// A picture of the window in the build folder, for people to look at.
  QImage picture(const QString& name);

  TempDir folder_;

 private:
  std::unique_ptr<AppWindow> app_;
  QPointingDevice* finger_ = nullptr;
  int taps_ = 0;
};

}  // namespace oaklight::test
