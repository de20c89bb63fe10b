#include "mobile/desk/app_window.hpp"

#include <QAccessible>
#include <QDir>
#include <QFont>
#include <QGuiApplication>
#include <QIcon>
#include <QMetaEnum>
#include <QQmlComponent>
#include <QQuickStyle>
#include <QQuickWindow>
#include <QSaveFile>
#include <QScreen>
#include <QStandardPaths>
#include <QTimer>
#include <iostream>

#include "mobile/desk/control_list.hpp"
#include "mobile/look/icon_provider.hpp"

namespace {

oaklight::SystemClock system_clock;

QString folder_of(const AppOptions& options) {
  return options.folder.isEmpty()
             ? QStandardPaths::writableLocation(QStandardPaths::AppDataLocation)
             : QDir(options.folder).absolutePath();
}

AppModel::Surroundings surroundings_of(const AppOptions& options) {
  return {folder_of(options),
          {system_clock, oaklight::system_random(), QSysInfo::machineHostName().toStdString()}};
}

QIcon app_icon() {
  QIcon icon;
  IconProvider drawings;
  for (const int side : {16, 32, 48, 128, 256}) {
    icon.addPixmap(QPixmap::fromImage(
        drawings.requestImage(QStringLiteral("oaklight"), nullptr, QSize(side, side))));
  }
  return icon;
}

/// Keeps a file in step with the controls of a window: written beside it and renamed, so that a
/// reader never meets half of it.
void list_controls(const QQuickWindow& window, const QString& path, QTimer& timer) {
  QAccessible::setActive(true);
  QObject::connect(&timer, &QTimer::timeout, &timer, [&window, path, last = QString()]() mutable {
    const QString lines = control_lines(window);
    if (lines == last) return;
    last = lines;
    QSaveFile file(path);
    if (file.open(QIODevice::WriteOnly) && file.write(lines.toUtf8()) >= 0) file.commit();
  });
  timer.start(50);
}

/// The engine's theme, before any page asks for it.
Theme* theme_of(QQmlEngine& engine) {
  QQmlComponent ask(&engine);
  ask.setData("import QtQml\nimport Oaklight\nQtObject { property QtObject theme: Theme }", {});
  const std::unique_ptr<QObject> answer(ask.create());
  return answer == nullptr ? nullptr : answer->property("theme").value<Theme*>();
}

}  // namespace

AppWindow::AppWindow(const AppOptions& options)
    : options_(options),
      paper_(oaklight::PaperApplication::start()),
      settings_(QDir(folder_of(options)).filePath(QStringLiteral("settings.ini"))),
      model_(settings_, surroundings_of(options)) {
  QGuiApplication::setFont(QFont(QString::fromLatin1(oaklight::kTypeface)));
  QGuiApplication::setWindowIcon(app_icon());
  QQuickStyle::setStyle(QStringLiteral("Basic"));
  QObject::connect(&engine_, &QQmlEngine::warnings, &engine_,
                   [this](const QList<QQmlError>& found) {
                     for (const QQmlError& warning : found) warnings_ << warning.toString();
                   });
  translate();
  QObject::connect(&settings_, &Settings::changed, &engine_, [this] { translate(); });
}

AppWindow::~AppWindow() {
  // The pages go before the models that they show.
  delete window_;
}

bool AppWindow::load() {
  options_.tract.isEmpty() ? model_.openLast() : model_.openFile(options_.tract);
  engine_.addImageProvider(QStringLiteral("icon"), new IconProvider);  // the engine owns it
  engine_.addImportPath(QStringLiteral("qrc:/qt/qml"));
  theme_ = theme_of(engine_);
  if (theme_ == nullptr) return false;
  theme_->follow(settings_);
  engine_.setInitialProperties({{QStringLiteral("app"), QVariant::fromValue(&model_)}});
  engine_.load(QUrl(QStringLiteral("qrc:/qt/qml/Oaklight/qml/Main.qml")));
  if (engine_.rootObjects().isEmpty()) return false;
  window_ = qobject_cast<QQuickWindow*>(engine_.rootObjects().first());
  if (window_ == nullptr) return false;
  QObject::connect(window_, &QQuickWindow::widthChanged, &engine_, [this] { resize(); });
  QObject::connect(window_, &QQuickWindow::heightChanged, &engine_, [this] { resize(); });
  resize();
  return true;
}

void AppWindow::resize() {
  const double of_screen = window_->screen()->physicalDotsPerInch() / 25.4;
  theme_->setWindow({static_cast<double>(window_->width()), static_cast<double>(window_->height()),
                     options_.pixelsPerMm > 0.0 ? options_.pixelsPerMm : of_screen});
}

void AppWindow::translate() {
  if (settings_.language() == language_) return;
  language_ = settings_.language();
  const auto change = [this](QTranslator& translator, QLatin1String file) {
    QCoreApplication::removeTranslator(&translator);
    if (translator.load(QStringLiteral(":/i18n/%1_%2").arg(file, language_)))
      QCoreApplication::installTranslator(&translator);
  };
  change(screens_, QLatin1String("oaklight"));
  change(words_, QLatin1String("oaklight_words"));
  engine_.retranslate();
  model_.retranslate();
}

int run_app(QGuiApplication& app, const AppOptions& options) {
  AppWindow shown(options);
  bool loaded = shown.load();
  if (loaded && options.selfTest) {
    const auto pages = QMetaEnum::fromType<AppModel::Page>();
    for (int i = 0; i < pages.keyCount(); ++i) {
      shown.model().setPage(static_cast<AppModel::Page>(pages.value(i)));
      QCoreApplication::processEvents();
    }
  } else if (loaded) {
    shown.window()->show();
    QTimer lister;
    if (!options.controls.isEmpty()) list_controls(*shown.window(), options.controls, lister);
    return app.exec();
  }
  for (const QString& warning : shown.warnings()) std::cerr << warning.toStdString() << '\n';
  loaded = loaded && shown.warnings().isEmpty();
  std::cout << (loaded ? "every page loads\n" : "a page does not load\n");
  return loaded ? 0 : 1;
}
