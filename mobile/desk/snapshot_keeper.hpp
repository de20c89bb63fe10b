#pragma once

#include <QObject>
#include <filesystem>

#include "mobile/desk/background.hpp"
#include "mobile/desk/current_plot.hpp"
#include "mobile/desk/tract_desk.hpp"

/// Keeps copies of the open tract by itself (core/store/snapshots): when a plot is left, when the
/// app is, and when a tract is opened that changed after its last copy. On a thread and a
/// connection of its own, so that no tap waits for it. The demo tract is not worth any.
class SnapshotKeeper : public QObject {
  Q_OBJECT

 public:
  SnapshotKeeper(TractDesk& desk, const CurrentPlot& plot, TractDesk::Clocks clocks,
                 QObject* parent = nullptr);

  /// Keeps one now.
  void take();
  [[nodiscard]] bool busy() const { return work_.busy(); }

 signals:
  void kept();
  /// Why there is no copy.
  void failed(const oaklight::Error& error);

 private:
  void follow(const std::vector<oaklight::Change>& changes);
  void takeIfBehind();
  [[nodiscard]] bool wanted() const;

  TractDesk& desk_;
  TractDesk::Clocks clocks_;
  bool changed_ = false;  ///< since the last copy
  Background work_;
};
