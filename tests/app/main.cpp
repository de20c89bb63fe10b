// Runs the app's tests without a screen. Anything that Qt warns of fails the test that runs.
#include <gtest/gtest.h>

#include <QAccessible>
#include <QGuiApplication>
#include <QtQml/QQmlExtensionPlugin>

Q_IMPORT_QML_PLUGIN(OaklightPlugin)

namespace {

void fail_on_warning(QtMsgType type, const QMessageLogContext&, const QString& text) {
  if (type == QtDebugMsg || type == QtInfoMsg) return;
  if (text.startsWith(QLatin1String("QStandardPaths: XDG_RUNTIME_DIR"))) return;
  ADD_FAILURE() << "Qt says: " << text.toStdString();
}

}  // namespace

int main(int argc, char* argv[]) {
  for (const char* variable : {"QT_QPA_PLATFORM", "QT_QUICK_BACKEND"}) {
    if (qEnvironmentVariableIsEmpty(variable))
      qputenv(variable, std::string_view(variable) == "QT_QPA_PLATFORM" ? "offscreen" : "software");
  }
  testing::InitGoogleTest(&argc, argv);
  const QGuiApplication app(argc, argv);
  qInstallMessageHandler(fail_on_warning);
  QAccessible::setActive(true);
  return RUN_ALL_TESTS();
}
