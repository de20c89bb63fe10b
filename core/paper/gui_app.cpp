#include "core/paper/gui_app.hpp"

#include <QFontDatabase>
#include <QGuiApplication>

// Qt's macro must stand outside any namespace.
static void open_font_files() { Q_INIT_RESOURCE(oaklight_fonts); }

namespace oaklight {
namespace {

QtMessageHandler previous_handler = nullptr;

/// Without a window system there is no runtime folder, and nobody needs one here.
void drop_runtime_folder_warning(QtMsgType type, const QMessageLogContext& context,
                                 const QString& text) {
  if (!text.startsWith(QLatin1String("QStandardPaths: XDG_RUNTIME_DIR"))) {
    previous_handler(type, context, text);
  }
}

std::unique_ptr<QGuiApplication> make_application() {
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  static int argc = 1;
  static char name[] = "oaklight";
  static char* argv[] = {name, nullptr};
  previous_handler = qInstallMessageHandler(drop_runtime_folder_warning);
  auto app = std::make_unique<QGuiApplication>(argc, argv);
  qInstallMessageHandler(previous_handler);
  return app;
}

/// Once for each application: Qt forgets typefaces together with it.
bool load_typeface(QCoreApplication& app) {
  constexpr const char* kLoaded = "oaklight_typeface";
  if (app.property(kLoaded).toBool()) return true;
  open_font_files();
  for (const char* file :
       {":/oaklight/fonts/NotoSans-Regular.ttf", ":/oaklight/fonts/NotoSans-Bold.ttf"}) {
    if (QFontDatabase::addApplicationFont(QString::fromLatin1(file)) < 0) return false;
  }
  app.setProperty(kLoaded, true);
  return true;
}

}  // namespace

PaperApplication::PaperApplication()
    : own_(QCoreApplication::instance() == nullptr ? make_application() : nullptr) {}
PaperApplication::PaperApplication(PaperApplication&&) noexcept = default;
PaperApplication::~PaperApplication() = default;

Result<PaperApplication> PaperApplication::start() {
  PaperApplication app;
  if (qobject_cast<QGuiApplication*>(QCoreApplication::instance()) == nullptr) {
    return Error{ErrorCode::cannot_write,
                 "This program runs Qt without graphics, so nothing can be painted.", "paper",
                 "Start it with a QGuiApplication."};
  }
  if (!load_typeface(*QCoreApplication::instance())) {
    return Error{ErrorCode::cannot_write, "The built-in typeface cannot be loaded.", "paper",
                 "Reinstall the program."};
  }
  return app;
}

}  // namespace oaklight
