#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <QSet>
#include <QStringList>
#include <vector>

#include "core/session/question_words.hpp"
#include "mobile/desk/background.hpp"
#include "mobile/desk/tract_desk.hpp"

/// Files of other tablets put together with the open one: which, what they bring, and what is then
/// left to decide, one question at a time.
class JoinViewModel : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Workspace owns it")
  Q_PROPERTY(QStringList files READ files NOTIFY changed)     ///< that could be joined, by name
  Q_PROPERTY(QStringList chosen READ chosen NOTIFY changed)   ///< for each of them "chosen" or ""
  Q_PROPERTY(QStringList rows READ rows NOTIFY changed)       ///< what they bring, a line each
  Q_PROPERTY(bool ready READ ready NOTIFY changed)            ///< there is something to join
  Q_PROPERTY(bool otherTract READ otherTract NOTIFY changed)  ///< refused: of another tract
  Q_PROPERTY(QString problem READ problem NOTIFY changed)
  Q_PROPERTY(QString notice READ notice NOTIFY changed)                   ///< what was done
  Q_PROPERTY(int open READ open NOTIFY questionsChanged)                  ///< questions left
  Q_PROPERTY(QString openWords READ openWords NOTIFY questionsChanged)    ///< "2 to decide"; ""
  Q_PROPERTY(QStringList question READ question NOTIFY questionsChanged)  ///< title, what to do
  Q_PROPERTY(QStringList sides READ sides NOTIFY questionsChanged)        ///< each told in lines
  Q_PROPERTY(Answer answer READ answer NOTIFY questionsChanged)

 public:
  /// How the question that shows is answered.
  enum class Answer { None, Side, Name, NameOrOne };
  Q_ENUM(Answer)

  explicit JoinViewModel(TractDesk& desk, QObject* parent = nullptr);

  [[nodiscard]] QStringList files() const;
  [[nodiscard]] QStringList chosen() const;
  [[nodiscard]] QStringList rows() const { return rows_; }
  [[nodiscard]] bool ready() const { return ready_ && !desk_.readOnly(); }
  [[nodiscard]] bool otherTract() const { return other_tract_; }
  [[nodiscard]] QString problem() const { return problem_; }
  [[nodiscard]] QString notice() const { return notice_; }
  [[nodiscard]] int open() const { return static_cast<int>(questions_.size()); }
  [[nodiscard]] QString openWords() const;
  [[nodiscard]] QStringList question() const;
  [[nodiscard]] QStringList sides() const;
  [[nodiscard]] Answer answer() const;
  [[nodiscard]] bool busy() const { return looking_.busy() || asking_.busy(); }

  /// Looks anew which files there are and what is open.
  Q_INVOKABLE void begin();
  Q_INVOKABLE void end();
  /// A file of the list, chosen or not.
  Q_INVOKABLE void toggle(int row);
  /// A file elsewhere, by its whole path.
  Q_INVOKABLE void addFile(const QString& path);
  /// The person says that all are of one tract.
  Q_INVOKABLE void takeAsOneTract();
  Q_INVOKABLE void join();
  /// Another question shows.
  Q_INVOKABLE void next();
  /// This side of the question holds.
  Q_INVOKABLE void decide(int side);
  /// Gives the record of this side another name or tag.
  Q_INVOKABLE void nameAnew(int side, const QString& name);
  /// The second stand or cruise is the first.
  Q_INVOKABLE void putTogether();

 signals:
  void changed();
  void questionsChanged();

 private:
  void look();
  void ask();
  void say(const QString& problem, const QString& notice);
  void answered(const oaklight::Status& done);
  [[nodiscard]] const oaklight::Question* shown() const;
  [[nodiscard]] std::vector<std::filesystem::path> paths() const;
  [[nodiscard]] oaklight::OtherTract other() const {
    return one_tract_ ? oaklight::OtherTract::take : oaklight::OtherTract::refuse;
  }

  TractDesk& desk_;
  bool shows_ = false;
  QStringList elsewhere_;
  QSet<QString> chosen_;  ///< whole paths
  QStringList rows_;
  bool ready_ = false;
  bool one_tract_ = false;
  bool other_tract_ = false;
  QString problem_;
  QString notice_;
  std::vector<oaklight::Question> questions_;
  std::size_t at_ = 0;
  Background looking_, asking_;
};
