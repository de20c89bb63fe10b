#pragma once

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <vector>

#include "core/model/tract.hpp"

/// One stand as the page Tract shows it, and as its sheet takes it to be changed.
struct StandRow {
  oaklight::StandId id;
  QString name;
  QString facts;   ///< "52.0 ac; 22 done, 1 to do"
  QString area;    ///< to be typed over: "52"
  QString walked;  ///< likewise; "" when it was not walked
  int goal = 0;    ///< place in the list of goals
  friend bool operator==(const StandRow&, const StandRow&) = default;
};

class StandListModel : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("a view model owns it")

 public:
  enum Role { NameRole = Qt::UserRole, FactsRole };

  explicit StandListModel(QObject* parent = nullptr) : QAbstractListModel(parent) {}

  void set(std::vector<StandRow> rows);
  // For the sheet on which a stand is changed; "" and 0 when there is no such row.
  Q_INVOKABLE [[nodiscard]] QString nameAt(int row) const;
  Q_INVOKABLE [[nodiscard]] QString areaAt(int row) const;
  Q_INVOKABLE [[nodiscard]] QString walkedAt(int row) const;
  Q_INVOKABLE [[nodiscard]] int goalAt(int row) const;
  /// nullptr when there is no such row.
  [[nodiscard]] const StandRow* at(int row) const;

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

 private:
  std::vector<StandRow> rows_;
};
