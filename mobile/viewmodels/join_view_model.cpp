#include "mobile/viewmodels/join_view_model.hpp"

#include <QCoreApplication>
#include <QDir>
#include <QFileInfo>
#include <algorithm>

#include "core/session/join_work.hpp"
#include "mobile/viewmodels/words.hpp"

using oaklight::Change;
using oaklight::DamageCheck;
using oaklight::JoinReport;
using oaklight::OpenMode;
using oaklight::Question;
using oaklight::QuestionKind;
using oaklight::Result;
using oaklight::TractStore;

namespace {

QString path_of(const std::filesystem::path& path) { return QString::fromStdString(path.string()); }

QString joined_words(const std::string& text) {
  return QCoreApplication::translate("Joined", text.c_str());
}

/// A value in the language of the screen; numbers and what people wrote stay as they are.
QString value_words(const oaklight::SaidField& field, const oaklight::Form& form) {
  QStringList labels;
  for (const std::string& word : field.chosen) {
    for (const oaklight::ChoiceList& list : form.choices) {
      const auto choice = std::ranges::find(list.choices, word, &oaklight::Choice::word);
      if (choice == list.choices.end()) continue;
      labels << form_words(choice->label);
      break;
    }
  }
  if (!labels.isEmpty() && labels.size() == std::ssize(field.chosen))
    return labels.join(QStringLiteral(", "));
  const QString species = QCoreApplication::translate("Species", field.value.c_str());
  return field.what == "species" ? species : joined_words(field.value);
}

/// A store of its own that only looks, beside the one that writes.
Result<TractStore> looker(const std::filesystem::path& path,
                          const oaklight::StoreContext& context) {
  return TractStore::open(path, OpenMode::read_only, context, DamageCheck::by_caller);
}

/// Copies that this program keeps are not files of other tablets.
bool is_kept_copy(const QString& name) { return name.contains(QLatin1String(".before-")); }

/// The file that an error is about, and what is wrong with it.
QString words_of_file(const oaklight::Error& error) {
  const QString file = QString::fromStdString(error.where.substr(0, error.where.find(": ")));
  const QString name = file.endsWith(QLatin1String(".gpkg")) ? QFileInfo(file).fileName() : file;
  return (name.isEmpty() ? QString() : name + QStringLiteral(": ")) + sentence_of(error);
}

}  // namespace

JoinViewModel::JoinViewModel(TractDesk& desk, QObject* parent) : QObject(parent), desk_(desk) {
  // An undone decision is open again. Reading the whole history at each tap would be too much.
  connect(&desk, &TractDesk::undoStateChanged, this, [this] {
    if (shows_) ask();
  });
  ask();
}

void JoinViewModel::begin() {
  shows_ = true;
  say({}, {});
  one_tract_ = false;
  look();
  ask();
}

void JoinViewModel::end() { shows_ = false; }

QStringList JoinViewModel::files() const {
  const QFileInfo ours(path_of(desk_.path()));
  QStringList names;
  for (const QFileInfo& file : ours.absoluteDir().entryInfoList(
           {QStringLiteral("*.gpkg")}, QDir::Files, QDir::Name | QDir::IgnoreCase)) {
    if (file != ours && !is_kept_copy(file.fileName())) names << file.fileName();
  }
  return names + elsewhere_;
}

QStringList JoinViewModel::chosen() const {
  QStringList words;
  for (const QString& name : files()) words << (chosen_.contains(name) ? tr("chosen") : QString());
  return words;
}

std::vector<std::filesystem::path> JoinViewModel::paths() const {
  std::vector<std::filesystem::path> paths;
  for (const QString& name : files()) {
    if (chosen_.contains(name))
      paths.push_back(desk_.path().parent_path() / std::filesystem::path(name.toStdU16String()));
  }
  return paths;
}

void JoinViewModel::toggle(int row) {
  const QStringList names = files();
  if (row < 0 || row >= names.size()) return;
  if (!chosen_.remove(names[row])) chosen_.insert(names[row]);
  say({}, {});
  look();
}

void JoinViewModel::addFile(const QString& path) {
  const QString trimmed = path.trimmed();
  if (trimmed.isEmpty() || elsewhere_.contains(trimmed)) return;
  elsewhere_ << trimmed;
  chosen_.insert(trimmed);
  say({}, {});
  look();
}

void JoinViewModel::takeAsOneTract() {
  one_tract_ = true;
  look();
}

/// What the chosen files would bring.
void JoinViewModel::look() {
  rows_.clear();
  ready_ = other_tract_ = false;
  looking_.drop();
  emit changed();
  if (chosen_.isEmpty()) return;
  looking_.ask([this, ours = desk_.path(), paths = paths(), other = other(),
                context = desk_.context()]() -> Background::Answer {
    const auto store = looker(ours, context);
    auto report = std::make_shared<Result<JoinReport>>(store ? store->preview_join(paths, other)
                                                             : Result<JoinReport>(store.error()));
    return [this, report] {
      if (!*report) {
        other_tract_ = report->error().code == oaklight::ErrorCode::contradiction;
        return say(words_of_file(report->error()), {});
      }
      for (const oaklight::JoinedFile& file : (*report)->files) {
        rows_ << tr("%1: %2 records and %3 actions that are not here yet")
                     .arg(QFileInfo(path_of(file.path)).fileName())
                     .arg(file.records)
                     .arg(file.actions);
      }
      rows_ << tr("Afterwards to decide: %1").arg((*report)->questions.size());
      ready_ = true;
      problem_.clear();
      emit changed();
    };
  });
}

void JoinViewModel::join() {
  if (!ready()) return;
  ready_ = false;
  emit changed();
  desk_.whenSound([this](const oaklight::Status& sound) {
    if (!sound) return say(sentence_of(sound.error()), {});
    auto report = std::make_shared<JoinReport>();
    desk_.submitWork(
        [report, paths = paths(),
         other = other()](TractStore& store) -> Result<std::vector<Change>> {
          auto joined = store.join(paths, other);
          if (!joined) return joined.error();
          *report = *std::move(joined);
          return report->records;
        },
        [this, report](const oaklight::Status& done) {
          if (!done) return say(words_of_file(done.error()), {});
          chosen_.clear();
          rows_.clear();
          QString notice =
              tr("Joined: %1 records came in, %2 changed.").arg(report->added).arg(report->changed);
          if (!report->copy.empty()) {
            notice += QLatin1Char(' ') +
                      tr("The file as it was: %1").arg(QFileInfo(path_of(report->copy)).fileName());
          }
          if (report->forms > 0) {
            notice += QLatin1Char(' ') +
                      tr("Forms changed too: they hold when the tract is opened again.");
          }
          say({}, notice);
          ask();
        });
  });
}

/// What is open in the file.
void JoinViewModel::ask() {
  asking_.ask([this, ours = desk_.path(), context = desk_.context()]() -> Background::Answer {
    const auto store = looker(ours, context);
    auto open = std::make_shared<Result<std::vector<Question>>>(
        store ? store->questions() : Result<std::vector<Question>>(store.error()));
    return [this, open] {
      if (!*open) return;  // damage is told by whoever looks for it
      if (questions_ == **open) return;
      questions_ = **open;
      at_ = std::min(at_, questions_.empty() ? 0 : questions_.size() - 1);
      emit questionsChanged();
    };
  });
}

const Question* JoinViewModel::shown() const {
  return at_ < questions_.size() ? &questions_[at_] : nullptr;
}

QString JoinViewModel::openWords() const {
  if (questions_.empty()) return {};
  return questions_.size() == 1 ? tr("1 question from joined files")
                                : tr("%1 questions from joined files").arg(questions_.size());
}

QStringList JoinViewModel::question() const {
  const Question* question = shown();
  if (question == nullptr) return {};
  const auto said = oaklight::words_of(*question, desk_.knowledge().species());
  const QString record =
      joined_words(said.record) + QLatin1Char(' ') + QString::fromStdString(said.name);
  QString title;
  switch (question->kind) {
    case QuestionKind::both_changed:
      title = tr("%1: both changed");
      break;
    case QuestionKind::removed_in_use:
      title = tr("%1: removed by one, used by another");
      break;
    case QuestionKind::used_twice:
      title = tr("%1: used twice");
      break;
  }
  return {title.arg(record.trimmed()), joined_words(said.mend)};
}

QStringList JoinViewModel::sides() const {
  const Question* question = shown();
  if (question == nullptr) return {};
  const auto& species = desk_.knowledge().species();
  QStringList sides;
  for (const oaklight::SaidSide& side : oaklight::words_of(*question, species).sides) {
    QStringList lines;
    lines << QString::fromStdString(side.who + ", " + side.when);
    lines << (side.removed ? tr("REMOVED") : QString::fromStdString(side.doing));
    if (!side.removed || question->kind == QuestionKind::used_twice) {
      for (const oaklight::SaidField& field : side.fields) {
        const QString value = value_words(field, desk_.knowledge().form);
        lines << joined_words(field.what) + QStringLiteral(": ") +
                     (value.isEmpty() ? QStringLiteral("\u2013") : value);
      }
    }
    sides << lines.join(QLatin1Char('\n'));
  }
  return sides;
}

JoinViewModel::Answer JoinViewModel::answer() const {
  const Question* question = shown();
  if (question == nullptr) return Answer::None;
  if (question->kind != QuestionKind::used_twice) return Answer::Side;
  const bool can_be_one = question->table == "stand" || question->table == "cruise";
  return can_be_one ? Answer::NameOrOne : Answer::Name;
}

void JoinViewModel::next() {
  if (questions_.size() < 2) return;
  at_ = (at_ + 1) % questions_.size();
  say({}, {});
  emit questionsChanged();
}

void JoinViewModel::answered(const oaklight::Status& done) {
  done ? say({}, tr("Decided. Undo opens it again.")) : say(sentence_of(done.error()), {});
  ask();
}

void JoinViewModel::decide(int side) {
  const Question* question = shown();
  if (question == nullptr || side < 0) return;
  desk_.submitWork(
      [question = *question, side](TractStore& store) {
        return store.decide(question, static_cast<std::size_t>(side));
      },
      [this](const oaklight::Status& done) { answered(done); });
}

void JoinViewModel::nameAnew(int side, const QString& name) {
  const Question* question = shown();
  if (question == nullptr || side < 0) return;
  desk_.submit(
      [this, question = *question, side, name = name.toStdString()] {
        return oaklight::name_anew(desk_.live(), question, static_cast<std::size_t>(side), name);
      },
      [this](const oaklight::Status& done) { answered(done); });
}

void JoinViewModel::putTogether() {
  const Question* question = shown();
  if (question == nullptr) return;
  desk_.submit(
      [this, question = *question] { return oaklight::put_together(desk_.live(), question, 1); },
      [this](const oaklight::Status& done) { answered(done); });
}

void JoinViewModel::say(const QString& problem, const QString& notice) {
  problem_ = problem;
  notice_ = notice;
  emit changed();
}
