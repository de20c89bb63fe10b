#pragma once

#include <QObject>
#include <filesystem>

#include "mobile/desk/background.hpp"
#include "mobile/desk/current_plot.hpp"
#include "mobile/desk/tract_desk.hpp"
#include "mobile/look/settings.hpp"

/// Keeps copies of the open tract by itself (core/store/snapshots): when a plot is left, when the
/// app is, and when a tract is opened that changed after its last copy. On a thread and a
/// connection of its own, so that no tap waits for it. The demo tract is not worth any.
class SnapshotKeeper : public QObject {
  Q_OBJECT

 public:
  SnapshotKeeper(TractDesk& desk, const CurrentPlot& plot, Settings& settings,
                 QObject* parent = nullptr);

  /// Keeps one now.
  void take();
  [[nodiscard]] bool busy() const { return work_.busy(); }

 signals:
  void kept();
  /// Why there is no copy, or none where the person wanted it.
  void failed(const oaklight::Error& error);

 private:
  void follow(const std::vector<oaklight::Change>& changes);
  void takeIfBehind();
  [[nodiscard]] bool wanted() const;
  [[nodiscard]] std::filesystem::path chosen() const;

  TractDesk& desk_;
  Settings& settings_;
  bool changed_ = false;  ///< since the last copy
  Background work_;
};
