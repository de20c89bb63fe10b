#pragma once

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <vector>

#include "core/model/species.hpp"
#include "mobile/desk/current_plot.hpp"
#include "mobile/desk/tract_desk.hpp"
#include "mobile/look/settings.hpp"

/// The seedling count of the plot: a row a species, a cell a height class. Nothing counted is not
/// zero: the first tap on minus says "looked, and none".
class SeedlingViewModel : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Workspace owns it")
  Q_PROPERTY(QStringList heights READ heights CONSTANT)
  Q_PROPERTY(QString plotSize READ plotSize NOTIFY plotChanged)  ///< "" when the cruise tells none

 public:
  enum Role { NameRole = Qt::UserRole, CountsRole };

  SeedlingViewModel(TractDesk& desk, CurrentPlot& plot, Settings& settings,
                    QObject* parent = nullptr);

  [[nodiscard]] QStringList heights() const;
  [[nodiscard]] QString plotSize() const;

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

  Q_INVOKABLE void more(int row, int height);
  Q_INVOKABLE void less(int row, int height);
  /// A species that is not in the list yet.
  void add(oaklight::SpeciesCode code);

 signals:
  void plotChanged();

 private:
  void fill();
  void step(int row, int height, int by);

  TractDesk& desk_;
  CurrentPlot& plot_;
  Settings& settings_;
  std::vector<const oaklight::Species*> species_;
};
