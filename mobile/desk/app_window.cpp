#include "mobile/desk/app_window.hpp"

#include <QDir>
#include <QFont>
#include <QGuiApplication>
#include <QIcon>
#include <QMetaEnum>
#include <QQmlComponent>
#include <QQuickStyle>
#include <QQuickWindow>
#include <QScreen>
#include <QStandardPaths>
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

AppModel::Surroundings surroundings_of(const AppOptions& options, Settings& settings) {
  const QString device = QSysInfo::machineHostName() + QLatin1Char(' ') + settings.deviceMark();
  return {folder_of(options),
          {system_clock, oaklight::system_random(), device.toStdString()},
          options.receiver};
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
      model_(settings_, surroundings_of(options, settings_)) {
  QGuiApplication::setFont(QFont(QString::fromLatin1(oaklight::kTypeface)));
  QGuiApplication::setWindowIcon(app_icon());
  QQuickStyle::setStyle(QStringLiteral("Basic"));
  QObject::connect(&engine_, &QQmlEngine::warnings, &engine_,
                   [this](const QList<QQmlError>& found) {
                     for (const QQmlError& warning : found) warnings_ << warning.toString();
                   });
  translate();
  QObject::connect(qGuiApp, &QGuiApplication::applicationStateChanged, &engine_,
                   [this](Qt::ApplicationState state) {
                     Workspace* open = model_.workspace();
                     if (open != nullptr && state != Qt::ApplicationActive) open->tract().settle();
                   });
  // Ahead of the theme, which follows the settings from load() on.
  QObject::connect(&settings_, &Settings::changed, &engine_, [this] {
    polishLayouts();
    translate();
  });
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
  // The first picture of a tract stands before its file is read through for damage.
  QObject::connect(window_, &QQuickWindow::frameSwapped, &engine_, [this] {
    if (Workspace* open = model_.workspace()) open->tract().lookForDamage();
  });
  resize();
  return true;
}

/// A layout of Qt 6.4 forgets what was taken out of it only when it is next polished, and what is
/// not shown, as a closed sheet, is not polished. Laid out to a new size before that, it touches
/// rows that are no more, and the app dies. So before sizes change each layout whose rows are not
/// those of the last time is polished. Not the others: a layout says "polish loop" when it is
/// polished over and over.
void AppWindow::polishLayouts() {
  if (window_ == nullptr) return;
  std::map<const QQuickItem*, QList<QQuickItem*>> rows;
  for (QQuickItem* item : window_->findChildren<QQuickItem*>()) {
    if (!item->inherits("QQuickLayout")) continue;
    // What a button is made of never changes.
    const QQuickItem* around = item->parentItem();
    if (around != nullptr && around->inherits("QQuickAbstractButton")) continue;
    const QList<QQuickItem*> now = item->childItems();
    const auto before = rows_.find(item);
    if (before == rows_.end() || before->second != now) item->ensurePolished();
    rows.emplace(item, now);
  }
  rows_ = std::move(rows);
}

void AppWindow::resize() {
  polishLayouts();
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

bool AppWindow::busy() {
  Workspace* open = model_.workspace();
  return model_.opening() ||
         (open != nullptr &&
          (open->tract().busy() || open->walk()->route()->busy() || open->stand()->busy() ||
           open->light()->busy() || open->marks()->busy() || open->marks()->packet()->busy() ||
           open->marks()->stumps()->busy() || open->marks()->stumpReport()->busy()));
}

int run_app(QGuiApplication& app, const AppOptions& options) {
  AppWindow shown(options);
  bool loaded = shown.load();
  if (loaded && options.selfTest) {
    while (shown.model().opening()) QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
    const auto pages = QMetaEnum::fromType<AppModel::Page>();
    for (int i = 0; i < pages.keyCount(); ++i) {
      shown.model().setPage(static_cast<AppModel::Page>(pages.value(i)));
      QCoreApplication::processEvents();
    }
  } else if (loaded) {
    shown.window()->show();
    std::unique_ptr<ControlAnswers> answers;
    if (!options.controls.isEmpty()) {
      answers = std::make_unique<ControlAnswers>(*shown.window(), options.controls,
                                                 [&shown] { return shown.busy(); });
    }
    return app.exec();
  }
  for (const QString& warning : shown.warnings()) std::cerr << warning.toStdString() << '\n';
  loaded = loaded && shown.warnings().isEmpty();
  std::cout << (loaded ? "every page loads\n" : "a page does not load\n");
  return loaded ? 0 : 1;
}
