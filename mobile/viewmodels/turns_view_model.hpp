#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <QStringList>
#include <optional>

#include "mobile/desk/tract_desk.hpp"
#include "mobile/look/settings.hpp"

/// Which points of a cruise are measured and which only counted: all measured, or every k-th.
class TurnsViewModel : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Workspace owns it")
  Q_PROPERTY(bool asked READ asked NOTIFY changed)  ///< the cruise is by points
  Q_PROPERTY(QStringList options READ options NOTIFY changed)
  Q_PROPERTY(int chosen READ chosen WRITE setChosen NOTIFY changed)
  /// How the points of the cruise set up last are measured now: "1 point in 3 is measured".
  Q_PROPERTY(QString now READ now NOTIFY changed)
  Q_PROPERTY(bool left READ left NOTIFY changed)           ///< that cruise has points to do
  Q_PROPERTY(QString problem READ problem NOTIFY changed)  ///< why it was not kept

 public:
  TurnsViewModel(TractDesk& desk, Settings& settings, QObject* parent = nullptr);

  [[nodiscard]] bool asked() const;
  [[nodiscard]] QStringList options() const;
  [[nodiscard]] int chosen() const;
  void setChosen(int row);
  [[nodiscard]] QString now() const;
  [[nodiscard]] bool left() const;
  [[nodiscard]] QString problem() const { return problem_; }

  /// Begins with how the cruise set up last is measured now, or another cruise.
  Q_INVOKABLE void begin() { beginWith(last()); }
  void beginWith(std::optional<oaklight::CruiseId> cruise);
  /// Every how many points; 1 for a cruise of fixed plots.
  [[nodiscard]] int every() const { return asked() ? every_ : 1; }
  /// Gives the points still to do their turns. kept() follows when that is on disk.
  Q_INVOKABLE void keep();

 signals:
  void changed();
  void kept();
  /// Another turn was chosen.
  void chose();

 private:
  [[nodiscard]] std::optional<oaklight::CruiseId> last() const;
  [[nodiscard]] std::vector<int> offered() const;

  TractDesk& desk_;
  std::optional<oaklight::CruiseId> cruise_;
  int every_ = 1;
  QString problem_;
};
