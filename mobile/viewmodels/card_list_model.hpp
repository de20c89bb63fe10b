#pragma once

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <vector>

#include "mobile/desk/tract_desk.hpp"
#include "mobile/viewmodels/stand_decision.hpp"

/// The crop tree cards of one stand. A row shows what is recorded at once, and its light when that
/// is computed.
class CardListModel : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("a view model owns it")
  Q_PROPERTY(int count READ count NOTIFY countChanged)

 public:
  enum Role { TagRole = Qt::UserRole, TreeRole, BeforeRole, AfterRole, SidesRole };

  explicit CardListModel(const TractDesk& desk, QObject* parent = nullptr)
      : QAbstractListModel(parent), desk_(desk) {}

  /// The rows of a stand, from what is recorded now.
  void follow(oaklight::StandId stand);
  void set(std::shared_ptr<const StandDecision> decision);
  [[nodiscard]] int count() const { return rowCount(); }
  /// Nil when there is no such row.
  [[nodiscard]] oaklight::WalkTreeId at(int row) const;

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

 signals:
  void countChanged();

 private:
  [[nodiscard]] QVariant figure(std::size_t row, int role) const;

  const TractDesk& desk_;
  std::vector<oaklight::WalkTreeId> crops_;
  std::shared_ptr<const StandDecision> decision_;
};
