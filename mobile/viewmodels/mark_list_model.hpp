#pragma once

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

#include "core/session/marks_view.hpp"

/// Which marks are shown.
struct MarkFilter {
  std::optional<oaklight::Verdict> verdict;
  bool undecided = false;  ///< only trees without a mark
  std::optional<oaklight::Reader> reader;
  std::string tag;  ///< part of it
};

/// The marks as rows of a list, however many: the words of a row are made when it is seen.
class MarkListModel : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("a view model owns it")
  Q_PROPERTY(int count READ count NOTIFY countChanged)

 public:
  enum Role { TagRole = Qt::UserRole, TreeRole, IconRole, VerdictRole, WorkRole, PlacedRole };

  /// knowledge  must outlive it
  explicit MarkListModel(const oaklight::TractKnowledge& knowledge, QObject* parent = nullptr)
      : QAbstractListModel(parent), knowledge_(knowledge) {}

  void set(std::shared_ptr<const oaklight::MarksView> view, const MarkFilter& filter);
  [[nodiscard]] int count() const { return rowCount(); }
  /// nullptr when there is no such row.
  [[nodiscard]] const oaklight::MarkRow* at(int row) const;
  [[nodiscard]] const std::shared_ptr<const oaklight::MarksView>& view() const { return view_; }

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

 signals:
  void countChanged();

 private:
  const oaklight::TractKnowledge& knowledge_;
  std::shared_ptr<const oaklight::MarksView> view_;
  std::vector<std::uint32_t> rows_;  ///< of the view
};

/// "fell by hand, firewood, for the firewood cutter".
QString work_words(const oaklight::Mark& mark);
