#pragma once

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <vector>

#include "core/session/card_view.hpp"

/// The floors and ceilings of a stand, in words and as a bar with its limit.
class GuardListModel : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("a view model owns it")
  Q_PROPERTY(int count READ count NOTIFY countChanged)
  Q_PROPERTY(int calm READ calm NOTIFY countChanged)  ///< that hold with room to spare

 public:
  /// share and limit are parts of the bar, 0 to 1; standing is "holds", "near" or "broken", and
  /// words say the same.
  enum Role { WordsRole = Qt::UserRole, StateRole, StateWordsRole, ShareRole, LimitRole, RuleRole };

  explicit GuardListModel(QObject* parent = nullptr) : QAbstractListModel(parent) {}

  void set(std::vector<oaklight::GuardView> guards);
  [[nodiscard]] int count() const { return rowCount(); }
  [[nodiscard]] int calm() const;

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

 signals:
  void countChanged();

 private:
  std::vector<oaklight::GuardView> guards_;
};
