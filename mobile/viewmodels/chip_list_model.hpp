#pragma once

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <string>
#include <vector>

/// Something that is on or off, with a word for people.
struct Chip {
  std::string group;  ///< heading; chips of one group stand together
  std::string word;   ///< what the form calls it
  QString label;
  QString help;
  bool on = false;
};

/// Chips to tap. The order never changes; only what is on does.
class ChipListModel : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("a view model owns it")

 public:
  enum Role { LabelRole = Qt::UserRole, HelpRole, GroupRole, FirstRole, OnRole };

  explicit ChipListModel(QObject* parent = nullptr) : QAbstractListModel(parent) {}

  void set(std::vector<Chip> chips);
  void setOn(int row, bool on);
  /// nullptr when there is no such row.
  [[nodiscard]] const Chip* at(int row) const;

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

 private:
  std::vector<Chip> chips_;
};
