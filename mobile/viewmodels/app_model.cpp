#include "mobile/viewmodels/app_model.hpp"

#include <QDir>
#include <QFileInfo>
#include <QMetaEnum>
#include <QRegularExpression>

#include "mobile/desk/demo_tract.hpp"
#include "mobile/viewmodels/words.hpp"

namespace {

std::filesystem::path path_of(const QString& path) {
  return std::filesystem::path(path.toStdU16String());
}

/// A name that every file system takes: letters, digits, and a dash for all else.
QString file_name_of(const QString& title) {
  QString name = title.trimmed();
  static const QRegularExpression other(QStringLiteral("[^\\p{L}\\p{N}]+"));
  name.replace(other, QStringLiteral("-"));
  return name.isEmpty() ? QStringLiteral("tract") : name;
}

}  // namespace

AppModel::AppModel(Settings& settings, Surroundings surroundings, QObject* parent)
    : QObject(parent), settings_(settings), surroundings_(std::move(surroundings)) {}
AppModel::~AppModel() = default;

void AppModel::setPage(Page page) {
  if (page_ == page) return;
  const bool stumps = page_ == Page::Stumps || page == Page::Stumps;
  page_ = page;
  if (stumps && !marked_) emit pageNamesChanged();
  emit pageChanged();
}

QStringList AppModel::pageNames() const {
  const QString stumps = marked_ || page_ == Page::Stumps ? tr("Stumps") : QString();
  return {tr("Tract"), tr("Walk"),  tr("Tally"), tr("Stand"),
          tr("Light"), tr("Marks"), stumps,      tr("Setup")};
}

QString AppModel::pageSource() const {
  return QStringLiteral("pages/%1Page.qml")
      .arg(QString::fromLatin1(QMetaEnum::fromType<Page>().valueToKey(static_cast<int>(page_))));
}

QString AppModel::pageIcon(int page) const {
  return QString::fromLatin1(QMetaEnum::fromType<Page>().valueToKey(page)).toLower();
}

void AppModel::lookForMarks() {
  const bool marked = workspace_ != nullptr && !workspace_->tract().data().marks.empty();
  if (marked == marked_) return;
  marked_ = marked;
  emit pageNamesChanged();
}

void AppModel::retranslate() { emit pageNamesChanged(); }

QStringList AppModel::recentNames() const {
  QStringList names;
  for (const QString& path : settings_.recentFiles()) names << QFileInfo(path).completeBaseName();
  return names;
}

void AppModel::openLast() {
  const QStringList recent = settings_.recentFiles();
  if (!recent.isEmpty() && QFileInfo::exists(recent.front())) openFile(recent.front());
  if (workspace_ == nullptr) openDemo();
}

void AppModel::openFile(const QString& path) {
  if (workspace_ != nullptr &&
      QFileInfo(path) == QFileInfo(QString::fromStdString(workspace_->tract().path().string()))) {
    return say({}, {});
  }
  take(TractDesk::open(path_of(path), surroundings_.clocks));
}

void AppModel::openRecent(int row) {
  const QStringList recent = settings_.recentFiles();
  if (row >= 0 && row < recent.size()) openFile(recent[row]);
}

QStringList AppModel::fileNames() const {
  return QDir(surroundings_.folder)
      .entryList({QStringLiteral("*.gpkg")}, QDir::Files, QDir::Name | QDir::IgnoreCase);
}

void AppModel::openNamed(int row) {
  const QStringList names = fileNames();
  if (row >= 0 && row < names.size()) openFile(QDir(surroundings_.folder).filePath(names[row]));
}

void AppModel::lookForFiles() {
  say({}, {});
  emit filesChanged();
}

void AppModel::openDemo() {
  const QString demo = QStringLiteral("demo");
  const QString path = QDir(surroundings_.folder).filePath(demo + QStringLiteral(".gpkg"));
  if (QFileInfo::exists(path)) {
    openFile(path);
    if (problem_.isEmpty()) return;
  }
  // None is there, or one that an older program made and this one does not read.
  QDir().mkpath(surroundings_.folder);
  const QString fresh = freeName(demo);
  const auto made = make_demo_tract(path_of(fresh), surroundings_.clocks);
  if (!made) return say(sentence_of(made.error()), {});
  openFile(fresh);
}

void AppModel::createTract(const QString& name) {
  QDir().mkpath(surroundings_.folder);
  auto desk = TractDesk::create(path_of(freeName(file_name_of(name))), surroundings_.clocks);
  const bool made = desk.has_value();
  take(std::move(desk));
  if (!made || name.trimmed().isEmpty()) return;
  TractDesk& open = workspace_->tract();
  open.submit([&open, name]() -> oaklight::Result<oaklight::Action> {
    oaklight::Tract tract = open.data().tract;
    tract.name = name.trimmed().toStdString();
    return oaklight::Action{"name the tract", {tract}};
  });
}

void AppModel::copyForFriend() {
  if (workspace_ == nullptr) return;
  const QString base =
      QFileInfo(QString::fromStdString(workspace_->tract().path().string())).completeBaseName();
  const QString target = freeName(base + QStringLiteral("-copy"));
  workspace_->tract().copyTo(path_of(target), [this, target](const oaklight::Status& copied) {
    copied ? say({}, tr("A copy to give away: %1").arg(target))
           : say(sentence_of(copied.error()), {});
    emit filesChanged();
  });
}

void AppModel::take(oaklight::Result<std::unique_ptr<TractDesk>> desk) {
  if (!desk) return say(sentence_of(desk.error()), {});
  settings_.addRecentFile(QString::fromStdString((*desk)->path().string()));
  // The old pages go before their tract does.
  const auto old =
      std::exchange(workspace_, std::make_unique<Workspace>(*std::move(desk), settings_));
  connect(&workspace_->tract(), &TractDesk::changed, this, &AppModel::lookForMarks);
  emit workspaceChanged();
  lookForMarks();
  say({}, {});
}

void AppModel::say(const QString& problem, const QString& notice) {
  problem_ = problem;
  notice_ = notice;
  emit problemChanged();
}

QString AppModel::freeName(const QString& wanted) const {
  const QDir folder(surroundings_.folder);
  QString name = wanted;
  for (int number = 2; folder.exists(name + QStringLiteral(".gpkg")); ++number)
    name = wanted + QLatin1Char('-') + QString::number(number);
  return folder.filePath(name + QStringLiteral(".gpkg"));
}
