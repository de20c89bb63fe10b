#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>

#include "core/model/species.hpp"
#include "mobile/viewmodels/species_list_model.hpp"

/// Search over every species that the tract knows, by common, local or scientific name.
class SpeciesSearchViewModel : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Workspace owns it")
  Q_PROPERTY(QString text READ text WRITE setText NOTIFY textChanged)
  Q_PROPERTY(SpeciesListModel* found READ found CONSTANT)

 public:
  /// table  must outlive it
  explicit SpeciesSearchViewModel(const oaklight::SpeciesTable& table, QObject* parent = nullptr);

  [[nodiscard]] QString text() const { return text_; }
  void setText(const QString& text);
  [[nodiscard]] SpeciesListModel* found() { return &found_; }
  /// The species of a row of found; nothing when there is no such row.
  [[nodiscard]] std::optional<oaklight::SpeciesCode> codeAt(int row) const;

 signals:
  void textChanged();

 private:
  const oaklight::SpeciesTable& table_;
  QString text_;
  SpeciesListModel found_;
};
