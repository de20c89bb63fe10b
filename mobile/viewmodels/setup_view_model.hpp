#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <QStringList>

#include "mobile/desk/tract_desk.hpp"
#include "mobile/look/settings.hpp"

/// Choices of Setup that are more than on or off, and what the app is.
class SetupViewModel : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Workspace owns it")
  Q_PROPERTY(QStringList languages READ languages CONSTANT)
  Q_PROPERTY(int language READ language WRITE setLanguage NOTIFY changed)
  Q_PROPERTY(QString paces READ paces NOTIFY changed)
  Q_PROPERTY(QString pacesLabel READ pacesLabel NOTIFY changed)
  Q_PROPERTY(QString pacesProblem READ pacesProblem NOTIFY pacesProblemChanged)
  Q_PROPERTY(QStringList errors READ errors CONSTANT)  ///< allowed, of the mean
  Q_PROPERTY(int error READ error WRITE setError NOTIFY changed)
  Q_PROPERTY(QStringList tallySets READ tallySets CONSTANT)
  Q_PROPERTY(int tallySet READ tallySet WRITE setTallySet NOTIFY changed)
  Q_PROPERTY(QStringList limits READ limits NOTIFY changed)  ///< of a good position
  Q_PROPERTY(int limit READ limit WRITE setLimit NOTIFY changed)
  Q_PROPERTY(QStringList about READ about NOTIFY changed)  ///< paragraphs

 public:
  SetupViewModel(TractDesk& desk, Settings& settings, QObject* parent = nullptr);

  [[nodiscard]] QStringList languages() const;
  [[nodiscard]] int language() const;
  void setLanguage(int row);
  [[nodiscard]] QString paces() const;
  [[nodiscard]] QString pacesLabel() const;
  [[nodiscard]] QString pacesProblem() const { return paces_problem_; }
  [[nodiscard]] QStringList errors() const;
  [[nodiscard]] int error() const;
  void setError(int row);
  [[nodiscard]] QStringList tallySets() const;
  [[nodiscard]] int tallySet() const;
  void setTallySet(int row);
  [[nodiscard]] QStringList limits() const;
  [[nodiscard]] int limit() const;
  void setLimit(int row);
  [[nodiscard]] QStringList about() const;

  /// Takes a count that a walker can have; else pacesProblem says why not.
  Q_INVOKABLE void typePaces(const QString& text);

 signals:
  void changed();
  void pacesProblemChanged();

 private:
  TractDesk& desk_;
  Settings& settings_;
  QString paces_problem_;
};
