#include "mobile/viewmodels/app_model.hpp"

#include <QDir>
#include <QFileInfo>
#include <QMetaEnum>
#include <QRegularExpression>

#include "core/session/files.hpp"
#include "core/store/rescue.hpp"
#include "mobile/desk/demo_tract.hpp"
#include "mobile/viewmodels/words.hpp"

using oaklight::Result;

namespace {

std::filesystem::path path_of(const QString& path) {
  return std::filesystem::path(path.toStdU16String());
}

/// A name for a tract file that no file of that folder has yet.
QString free_name(const QDir& folder, const QString& wanted) {
  QString name = wanted;
  for (int number = 2; folder.exists(name + QStringLiteral(".gpkg")); ++number)
    name = wanted + QLatin1Char('-') + QString::number(number);
  return folder.filePath(name + QStringLiteral(".gpkg"));
}

QString demo_path(const QDir& folder) { return folder.filePath(QStringLiteral("demo.gpkg")); }

/// The demo tract, made where there is none, or only one that this program does not read.
Result<ReadTract> read_demo(const QDir& folder, const TractDesk::Clocks& clocks) {
  const QString path = demo_path(folder);
  if (QFileInfo::exists(path)) {
    if (auto read = TractDesk::read(path_of(path), clocks)) return read;
  }
  QDir().mkpath(folder.path());
  const auto fresh = path_of(free_name(folder, QFileInfo(path).completeBaseName()));
  if (const auto made = make_demo_tract(fresh, clocks); !made) return made.error();
  return TractDesk::read(fresh, clocks);
}

/// A name that every file system takes: letters, digits, and a dash for all else.
QString file_name_of(const QString& title) {
  QString name = title.trimmed();
  static const QRegularExpression other(QStringLiteral("[^\\p{L}\\p{N}]+"));
  name.replace(other, QStringLiteral("-"));
  return name.isEmpty() ? QStringLiteral("tract") : name;
}

/// What a rescue kept and lost, a line each.
std::string rescue_text(const oaklight::RescueReport& report) {
  std::string text;
  for (const std::string& note : report.notes) text += note + "\n";
  for (const oaklight::RescuedTable& table : report.tables)
    text += table.table + ": " + std::to_string(table.kept) + "\n";
  for (const oaklight::Error& lost : report.lost) text += "LOST " + to_text(lost) + "\n";
  return text;
}

}  // namespace

AppModel::AppModel(Settings& settings, Surroundings surroundings, QObject* parent)
    : QObject(parent), settings_(settings), surroundings_(std::move(surroundings)) {
  useReceiver();
  connect(&settings, &Settings::changed, this, &AppModel::useReceiver);
}
AppModel::~AppModel() = default;

/// The receiver that was named, unless it is in use already.
void AppModel::useReceiver() {
  const QString& named = surroundings_.receiver;
  const QString where = named.isEmpty() ? settings_.receiver() : named;
  if (where == receiver_) return;
  receiver_ = where;
  locator_.use(std::make_unique<Receiver>(where));
}

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
  const QString last = settings_.recentFiles().value(0);
  auto why = std::make_shared<QString>();
  const auto read = [why, last, folder = QDir(surroundings_.folder),
                     clocks = surroundings_.clocks]() -> Result<ReadTract> {
    if (!last.isEmpty() && QFileInfo::exists(last)) {
      auto tract = TractDesk::read(path_of(last), clocks);
      if (tract) return tract;
      *why = QFileInfo(last).fileName() + QStringLiteral(": ") + sentence_of(tract.error());
    }
    return read_demo(folder, clocks);
  };
  // The demo tract must not pass for one's own.
  open(read, [this, why] { say(*why, {}); });
}

void AppModel::openFile(const QString& path) {
  if (isOpen(path)) return say({}, {});
  open([path, clocks = surroundings_.clocks] { return TractDesk::read(path_of(path), clocks); });
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

bool AppModel::isOpen(const QString& path) const {
  return workspace_ != nullptr &&
         QFileInfo(path) == QFileInfo(QString::fromStdString(workspace_->tract().path().string()));
}

void AppModel::openDemo() {
  if (isOpen(demo_path(QDir(surroundings_.folder)))) return say({}, {});
  open([folder = QDir(surroundings_.folder), clocks = surroundings_.clocks] {
    return read_demo(folder, clocks);
  });
}

void AppModel::createTract(const QString& name) {
  const QString title = name.trimmed();
  open(
      [title, folder = QDir(surroundings_.folder), clocks = surroundings_.clocks] {
        QDir().mkpath(folder.path());
        return TractDesk::create(path_of(free_name(folder, file_name_of(title))), clocks);
      },
      [this, title] { nameTract(title); });
}

void AppModel::open(Read read, Opened opened) {
  if (opening_) return;
  setOpening(true);
  reading_.ask([this, read = std::move(read), opened = std::move(opened)]() -> Background::Answer {
    auto tract = std::make_shared<Result<ReadTract>>(read());
    return [this, tract, opened] {
      if (!*tract) {
        say(sentence_of(tract->error()), {});
      } else {
        take(*std::move(*tract));
        if (opened) opened();
      }
      setOpening(false);
    };
  });
}

/// Into a new file beside the damaged one, with what could not be kept in a text beside both.
void AppModel::rescue() {
  const QFileInfo damaged(QString::fromStdString(workspace_->tract().path().string()));
  const QString target =
      free_name(damaged.dir(), damaged.completeBaseName() + QStringLiteral("-rescued"));
  auto lost = std::make_shared<std::size_t>(0);
  const auto read = [from = path_of(damaged.filePath()), to = path_of(target), lost,
                     clocks = surroundings_.clocks]() -> Result<ReadTract> {
    const oaklight::StoreContext context{clocks.clock, clocks.random, clocks.device};
    const auto report = oaklight::rescue_tract(from, to, context, oaklight::LockHolder::caller);
    if (!report) return report.error();
    *lost = report->lost.size();
    const auto told = oaklight::write_whole_file(to.string() + ".txt", rescue_text(*report));
    if (!told) return told.error();
    return TractDesk::read(to, clocks);
  };
  open(read, [this, target, lost] {
    *lost == 0 ? say({}, tr("Rescued whole: %1").arg(target))
               : say(tr("Rescued, but not whole. What is lost stands in %1.txt").arg(target), {});
    emit filesChanged();
  });
}

void AppModel::nameTract(const QString& name) {
  TractDesk& open = workspace_->tract();
  open.submit([&open, name]() -> Result<oaklight::Action> {
    oaklight::Tract tract = open.data().tract;
    tract.name = name.toStdString();
    return oaklight::Action{"name the tract", {tract}};
  });
}

void AppModel::setOpening(bool opening) {
  if (opening_ == opening) return;
  opening_ = opening;
  emit openingChanged();
}

void AppModel::copyForFriend() {
  if (workspace_ == nullptr) return;
  const QString base =
      QFileInfo(QString::fromStdString(workspace_->tract().path().string())).completeBaseName();
  const QString target = free_name(QDir(surroundings_.folder), base + QStringLiteral("-copy"));
  workspace_->tract().copyTo(path_of(target), [this, target](const oaklight::Status& copied) {
    copied ? say({}, tr("A copy to give away: %1").arg(target))
           : say(sentence_of(copied.error()), {});
    emit filesChanged();
  });
}

void AppModel::take(ReadTract tract) {
  settings_.addRecentFile(QString::fromStdString(tract.store.path().string()));
  auto desk = std::make_unique<TractDesk>(std::move(tract), surroundings_.clocks);
  // The old pages go before their tract does.
  const auto old =
      std::exchange(workspace_, std::make_unique<Workspace>(std::move(desk), settings_, locator_));
  connect(&workspace_->tract(), &TractDesk::changed, this, &AppModel::lookForMarks);
  connect(workspace_->desk(), &DeskViewModel::rescueAsked, this, &AppModel::rescue);
  emit workspaceChanged();
  lookForMarks();
  say({}, {});
}

void AppModel::say(const QString& problem, const QString& notice) {
  problem_ = problem;
  notice_ = notice;
  emit problemChanged();
}
