#pragma once

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <vector>

/// A paragraph under a heading.
struct NoteRow {
  QString heading;  ///< "" continues the one above
  QString text;
  friend bool operator==(const NoteRow&, const NoteRow&) = default;
};

/// How something was found out, for a sheet.
class NoteListModel : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("a view model owns it")

 public:
  enum Role { HeadingRole = Qt::UserRole, TextRole };

  explicit NoteListModel(QObject* parent = nullptr) : QAbstractListModel(parent) {}

  void set(std::vector<NoteRow> rows);

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

 private:
  std::vector<NoteRow> rows_;
};
