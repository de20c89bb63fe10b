#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <QStringList>
#include <optional>
#include <vector>

#include "core/model/plot_task.hpp"
#include "mobile/desk/tract_desk.hpp"
#include "mobile/look/settings.hpp"

/// Whether a plot is a count point or a measure point, and what was counted at it.
class PointViewModel : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Workspace and WalkViewModel own it")
  /// "Count point", "Measure point"; "" where the cruise has no count points.
  Q_PROPERTY(QString kind READ kind NOTIFY changed)
  Q_PROPERTY(QString plotName READ plotName NOTIFY changed)
  Q_PROPERTY(bool counting READ counting NOTIFY changed)
  /// Whether a person may say which it is: at a point, in a file that is written to.
  Q_PROPERTY(bool may READ may NOTIFY changed)
  Q_PROPERTY(QStringList counted READ counted NOTIFY changed)  ///< "white oak: 4", newest first
  Q_PROPERTY(QStringList countedLately READ countedLately NOTIFY changed)  ///< the first of them
  Q_PROPERTY(QString problem READ problem NOTIFY changed)  ///< why it stayed as it was

 public:
  PointViewModel(TractDesk& desk, Settings& settings, QObject* parent = nullptr);

  [[nodiscard]] QString kind() const;
  [[nodiscard]] QString plotName() const;
  [[nodiscard]] bool counting() const;
  [[nodiscard]] bool may() const;
  [[nodiscard]] QStringList counted() const;
  [[nodiscard]] QStringList countedLately() const;
  [[nodiscard]] QString problem() const { return problem_; }

  /// The plot of which it speaks.
  void of(std::optional<oaklight::PlotId> plot);
  /// Makes it a count point, or a measure point. taken() follows when it is on disk.
  Q_INVOKABLE void makeCounting(bool counting);
  /// One more or one less of the species in that line of counted.
  Q_INVOKABLE void count(int row, bool more);

 signals:
  void changed();
  void taken();

 private:
  [[nodiscard]] const oaklight::Plot* plot() const;
  [[nodiscard]] bool isPoint() const;
  [[nodiscard]] std::vector<oaklight::SpeciesCount> lines() const;
  void submit(TractDesk::Maker make, bool tell);

  TractDesk& desk_;
  std::optional<oaklight::PlotId> plot_;
  QString problem_;
};
