#pragma once

#include <QList>
#include <QQmlApplicationEngine>
#include <QString>
#include <QTranslator>
#include <map>
#include <memory>

#include "core/paper/gui_app.hpp"
#include "mobile/look/settings.hpp"
#include "mobile/look/theme.hpp"
#include "mobile/viewmodels/app_model.hpp"

class QGuiApplication;
class QQuickItem;
class QQuickWindow;

/// How the app is started.
struct AppOptions {
  QString folder;  ///< for settings and tract files; "": where this system keeps such things
  QString tract;   ///< file to open; "": the last one, or the demo tract
  double pixelsPerMm = 0.0;  ///< logical pixels; 0: as the screen says
  QString controls;          ///< file that answers where each control is, for tests; "": none
  QString receiver;          ///< of positions (receiver.hpp); "": as Setup says
  bool selfTest = false;
};

/// The whole app behind one window: settings, theme, models, pages. Tests make one too.
/// assumes  a QGuiApplication lives
class AppWindow {
 public:
  explicit AppWindow(const AppOptions& options);
  ~AppWindow();
  AppWindow(const AppWindow&) = delete;
  AppWindow& operator=(const AppWindow&) = delete;

  /// Loads the pages. False when they do not load; what was wrong is in warnings().
  bool load();
  [[nodiscard]] QQuickWindow* window() const { return window_; }
  [[nodiscard]] AppModel& model() { return model_; }
  [[nodiscard]] Settings& settings() { return settings_; }
  [[nodiscard]] Theme& theme() const { return *theme_; }
  [[nodiscard]] QQmlApplicationEngine& engine() { return engine_; }
  /// What the QML engine complained of; a sound app leaves it empty.
  [[nodiscard]] const QStringList& warnings() const { return warnings_; }
  /// Something is being saved or computed, and what is shown may change by itself.
  [[nodiscard]] bool busy();

 private:
  void polishLayouts();
  void resize();
  void translate();

  AppOptions options_;
  oaklight::Result<oaklight::PaperApplication> paper_;
  Settings settings_;
  AppModel model_;
  QTranslator screens_;  ///< texts of the screens
  QTranslator words_;    ///< labels of the forms, species
  QString language_;
  QStringList warnings_;
  QQmlApplicationEngine engine_;
  Theme* theme_ = nullptr;  ///< the engine's
  QQuickWindow* window_ = nullptr;
  std::map<const QQuickItem*, QList<QQuickItem*>> rows_;  ///< of each layout, when last polished
};

/// Shows the window until it is closed, or loads every page and quits.
/// returns  the exit code: 0; 1 when a page does not load or warns
int run_app(QGuiApplication& app, const AppOptions& options);
