// The tablet app: reads its options, makes the app model, shows the window.
#include <QCommandLineParser>
#include <QGuiApplication>
#include <QQmlApplicationEngine>
#include <QQuickStyle>
#include <QQuickWindow>
#include <QStandardPaths>
#include <QtQml/QQmlExtensionPlugin>
#include <iostream>

#include "mobile/desk/app_window.hpp"

Q_IMPORT_QML_PLUGIN(OaklightPlugin)

int main(int argc, char* argv[]) {
  QGuiApplication app(argc, argv);
  QCoreApplication::setApplicationName(QStringLiteral("oaklight-tablet"));
  QCoreApplication::setApplicationVersion(QStringLiteral(OAKLIGHT_VERSION));

  QCommandLineParser parser;
  parser.setApplicationDescription(
      QStringLiteral("Tally trees, decide which oaks get light, mark what goes."));
  parser.addHelpOption();
  parser.addVersionOption();
  const QCommandLineOption self_test(QStringLiteral("self-test"),
                                     QStringLiteral("Load every page, then quit."));
  const QCommandLineOption folder(QStringLiteral("folder"),
                                  QStringLiteral("Keep settings and tract files in FOLDER."),
                                  QStringLiteral("FOLDER"));
  const QCommandLineOption density(QStringLiteral("pixels-per-mm"),
                                   QStringLiteral("Do not trust the screen's own size."),
                                   QStringLiteral("N"));
  const QCommandLineOption controls(
      QStringLiteral("controls"),
      QStringLiteral("Say in FILE where each control is, whenever there is a FILE.ask."),
      QStringLiteral("FILE"));
  const QCommandLineOption position(
      QStringLiteral("position"),
      QStringLiteral("Take positions from WHERE: a serial device, socket://host:port, a file of "
                     "NMEA sentences, or none."),
      QStringLiteral("WHERE"));
  parser.addOptions({self_test, folder, density, controls, position});
  parser.addPositionalArgument(QStringLiteral("tract"), QStringLiteral("Tract file to open."),
                               QStringLiteral("[tract.gpkg]"));
  parser.process(app);

  AppOptions options;
  options.folder = parser.value(folder);
  options.pixelsPerMm = parser.value(density).toDouble();
  options.controls = parser.value(controls);
  options.receiver = parser.value(position);
  options.selfTest = parser.isSet(self_test);
  if (!parser.positionalArguments().isEmpty()) options.tract = parser.positionalArguments().first();
  return run_app(app, options);
}
