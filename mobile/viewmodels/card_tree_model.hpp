#pragma once

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <optional>
#include <vector>

#include "core/session/card_view.hpp"
#include "mobile/desk/tract_desk.hpp"

/// The trees of one card: the crop tree first, then its neighbours, each with its verdict.
class CardTreeModel : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("a view model owns it")

 public:
  enum Role {
    TitleRole = Qt::UserRole,  ///< "15 red maple 10.0 in"
    StandingRole,              ///< "touches, N"; "crop tree"
    IconRole,                  ///< of the verdict
    VerdictRole,
    OriginRole,  ///< "decided by hand"; "recommended, not decided yet"; "decided"
    ReasonRole,
    RulesRole,
    ChangeRole,  ///< what would change it; "" when a person decided
    ByHandRole,
  };

  /// One row, as plain values.
  struct Row {
    oaklight::WalkTreeId tree;
    std::optional<oaklight::ContactId> contact;  ///< nothing: the crop tree
    oaklight::Verdict verdict = oaklight::Verdict::look_again;
    bool by_hand = false;
    QString title, standing, origin, reason, rules, change;
    friend bool operator==(const Row&, const Row&) = default;
  };

  explicit CardTreeModel(QObject* parent = nullptr) : QAbstractListModel(parent) {}

  /// Rows that stay keep their place on the screen.
  void set(std::vector<Row> rows);
  /// nullptr when there is no such row.
  [[nodiscard]] const Row* at(int row) const;
  Q_INVOKABLE [[nodiscard]] QString titleOf(int row) const;
  /// How a row stands now: "Take, decided by the rules"; its icon; and why.
  Q_INVOKABLE [[nodiscard]] QString nowOf(int row) const;
  Q_INVOKABLE [[nodiscard]] QString iconOf(int row) const;
  Q_INVOKABLE [[nodiscard]] QString reasonOf(int row) const;
  Q_INVOKABLE [[nodiscard]] bool isCrop(int row) const;
  Q_INVOKABLE [[nodiscard]] bool isByHand(int row) const;

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

 private:
  std::vector<Row> rows_;
};

/// The rows of a card.
std::vector<CardTreeModel::Row> rows_of(const oaklight::CardView& card,
                                        const oaklight::TractKnowledge& knowledge);
