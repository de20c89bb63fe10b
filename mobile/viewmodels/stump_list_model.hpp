#pragma once

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <memory>
#include <vector>

#include "core/session/stump_view.hpp"

/// One row of the walk after the cut: a tree of the list, or one that was to be left.
struct StumpRow {
  oaklight::WalkTreeId id;
  QString tag, tree, icon, state, detail;
  bool listed = true;
};

/// The trees of the walk after the cut, those to look at first.
class StumpListModel : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("a view model owns it")

 public:
  enum Role { TagRole = Qt::UserRole, TreeRole, IconRole, StateRole, DetailRole };

  explicit StumpListModel(QObject* parent = nullptr) : QAbstractListModel(parent) {}

  void set(std::vector<StumpRow> rows);
  /// nullptr when there is no such row.
  [[nodiscard]] const StumpRow* at(int row) const;
  [[nodiscard]] const StumpRow* find(oaklight::WalkTreeId id) const;

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

 private:
  std::vector<StumpRow> rows_;
};
