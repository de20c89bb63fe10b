#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <optional>

#include "core/session/live_stand.hpp"
#include "mobile/desk/current_plot.hpp"
#include "mobile/desk/tract_desk.hpp"
#include "mobile/look/settings.hpp"

/// How the stand of the plot at hand stands so far, for whoever works there: one line, brought up
/// to date with each tap.
class StandNowViewModel : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Workspace owns it")
  /// "Stand: 84.0 ± 9.1 ft²/ac, 7 plots"; "" before its first plot.
  Q_PROPERTY(QString text READ text NOTIFY changed)
  /// How many more plots the error that is allowed asks for; "" where that is not known.
  Q_PROPERTY(QString need READ need NOTIFY changed)

 public:
  StandNowViewModel(TractDesk& desk, CurrentPlot& plot, Settings& settings,
                    QObject* parent = nullptr);

  [[nodiscard]] QString text();
  [[nodiscard]] QString need();

 signals:
  void changed();

 private:
  struct Shown {
    QString text, need;
    friend bool operator==(const Shown&, const Shown&) = default;
  };
  /// Nothing is computed before somebody looks.
  const Shown& shown();
  void refresh();
  [[nodiscard]] Shown say();

  TractDesk& desk_;
  CurrentPlot& plot_;
  Settings& settings_;
  std::optional<oaklight::LiveStand> kept_;
  std::optional<Shown> shown_;
};
