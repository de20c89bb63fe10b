#pragma once

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <vector>

#include "core/session/live_tract.hpp"

/// "Upland, plot 7".
QString name_of(const oaklight::LiveTract& live, const oaklight::Plot& plot);
/// "to do", "done", "empty", "skipped", in the language of the screen.
QString status_words(oaklight::PlotStatus status);
/// Name of the icon whose shape stands beside that word.
QString icon_of(oaklight::PlotStatus status);

/// One plot as a list shows it.
struct PlotRow {
  oaklight::PlotId id;
  QString name;
  oaklight::PlotStatus status = oaklight::PlotStatus::planned;
  QString detail;  ///< the way there, or why it was skipped
  bool chosen = false;
  friend bool operator==(const PlotRow&, const PlotRow&) = default;
};

/// All plots of the tract by stand and label, each with its status as a shape and a word.
class PlotListModel : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("a view model owns it")

 public:
  enum Role { NameRole = Qt::UserRole, StatusRole, MarkRole, DetailRole, ChosenRole };

  explicit PlotListModel(QObject* parent = nullptr) : QAbstractListModel(parent) {}

  /// A list of the same plots stays where it was scrolled to.
  void set(std::vector<PlotRow> rows);
  /// The language changed.
  void retell();
  /// nullptr when there is no such row.
  [[nodiscard]] const PlotRow* at(int row) const;

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

 private:
  std::vector<PlotRow> rows_;
};
