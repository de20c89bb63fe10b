#pragma once

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <vector>

/// One figure as it is read: large value, its unit, its error, and what must be known beside it.
struct FigureRow {
  QString key;  ///< of its source note
  QString name;
  QString value;
  QString unit;
  QString error;   ///< "± 12.1 (14 %)"; "" when none can be told
  QString remark;  ///< "n = 1: no error can be told"; "" when there is nothing to say
  friend bool operator==(const FigureRow&, const FigureRow&) = default;
};

/// The figures of a stand.
class FigureListModel : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("a view model owns it")

 public:
  enum Role { NameRole = Qt::UserRole, ValueRole, UnitRole, ErrorRole, RemarkRole, SpokenRole };

  explicit FigureListModel(QObject* parent = nullptr) : QAbstractListModel(parent) {}

  /// Rows that are still there stay the same objects on the screen, so that nothing flickers.
  void set(std::vector<FigureRow> rows);
  /// nullptr when there is no such row.
  [[nodiscard]] const FigureRow* at(int row) const;

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

 private:
  std::vector<FigureRow> rows_;
};
