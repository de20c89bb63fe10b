#pragma once

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <QStringList>

#include "mobile/desk/tract_desk.hpp"

/// What is recorded of the tract as a whole, field by field: its name, and what an ambulance needs
/// to find it. A draft until it is saved.
class TractFactsModel : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("TractViewModel owns it")
  Q_PROPERTY(QString problem READ problem NOTIFY problemChanged)

 public:
  enum Role { LabelRole = Qt::UserRole, HelpRole, ValueRole };

  explicit TractFactsModel(TractDesk& desk, QObject* parent = nullptr);

  /// Begins a draft from what is recorded now.
  Q_INVOKABLE void begin();
  Q_INVOKABLE void type(int row, const QString& text);
  /// saved() follows when it is on disk; else problem says why.
  Q_INVOKABLE void save();

  [[nodiscard]] QString problem() const { return problem_; }
  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

 signals:
  void problemChanged();
  void saved();

 private:
  TractDesk& desk_;
  QStringList draft_;
  QString problem_;
};
