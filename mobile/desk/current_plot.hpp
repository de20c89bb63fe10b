#pragma once

#include <QObject>
#include <optional>

#include "core/model/ids.hpp"

/// The plot at which the person stands: chosen on Tract or Walk, worked on Tally.
class CurrentPlot : public QObject {
  Q_OBJECT

 public:
  explicit CurrentPlot(QObject* parent = nullptr) : QObject(parent) {}

  [[nodiscard]] const std::optional<oaklight::PlotId>& id() const { return id_; }
  void set(std::optional<oaklight::PlotId> id) {
    if (id_ == id) return;
    id_ = id;
    emit changed();
  }

 signals:
  void changed();

 private:
  std::optional<oaklight::PlotId> id_;
};
