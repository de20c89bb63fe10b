#pragma once

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <vector>

#include "core/model/species.hpp"

/// Species to touch, in an order that stays as it is while a plot is worked.
class SpeciesListModel : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("a view model owns it")
  Q_PROPERTY(int count READ count NOTIFY countChanged)

 public:
  enum Role { NameRole = Qt::UserRole, CellRole, OtherNamesRole, MastRole };

  explicit SpeciesListModel(QObject* parent = nullptr) : QAbstractListModel(parent) {}

  [[nodiscard]] int count() const { return rowCount(); }
  void set(std::vector<const oaklight::Species*> species);
  /// The language changed: the same species have other names.
  void retranslate();
  /// nullptr when there is no such row.
  [[nodiscard]] const oaklight::Species* at(int row) const;
  /// -1 when it is not in the list.
  [[nodiscard]] int rowOf(oaklight::SpeciesCode code) const;

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

 signals:
  void countChanged();

 private:
  std::vector<const oaklight::Species*> species_;
};
