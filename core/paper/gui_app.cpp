#include "core/paper/gui_app.hpp"

#include <QFontDatabase>
#include <QGuiApplication>
#include <QtGlobal>
#include <cstdlib>

// Qt's macro must stand outside any namespace.
static void load_font_files() { Q_INIT_RESOURCE(oaklight_fonts); }

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

void make_application() {
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  static int argc = 1;
  static char name[] = "oaklight";
  static char* argv[] = {name, nullptr};
  // Never deleted: Qt's application must outlive each font and painter, also those in statics.
  previous_handler = qInstallMessageHandler(drop_runtime_folder_warning);
  static const auto* const app = new QGuiApplication(argc, argv);
  (void)app;
  qInstallMessageHandler(previous_handler);
}

bool load_typeface() {
  load_font_files();
  for (const char* file :
       {":/oaklight/fonts/NotoSans-Regular.ttf", ":/oaklight/fonts/NotoSans-Bold.ttf"}) {
    if (QFontDatabase::addApplicationFont(QString::fromLatin1(file)) < 0) return false;
  }
  return true;
}

}  // namespace

Status ensure_gui_app() {
  if (QCoreApplication::instance() == nullptr) make_application();
  if (qobject_cast<QGuiApplication*>(QCoreApplication::instance()) == nullptr) {
    return Error{ErrorCode::cannot_write,
                 "This program runs Qt without graphics, so nothing can be painted.", "paper",
                 "Start it with a QGuiApplication."};
  }
  static const bool loaded = load_typeface();
  if (!loaded) {
    return Error{ErrorCode::cannot_write, "The built-in typeface cannot be loaded.", "paper",
                 "Reinstall the program."};
  }
  return Done{};
}

}  // namespace oaklight
