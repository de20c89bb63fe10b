#include "mobile/desk/snapshot_keeper.hpp"

#include <QGuiApplication>
#include <QTimer>
#include <algorithm>
#include <system_error>
#include <utility>

#include "core/store/snapshots.hpp"

using oaklight::Change;
using oaklight::Plot;
using oaklight::PlotStatus;

namespace {

namespace fs = std::filesystem;

// The first picture and the look for damage go before.
constexpr int kAfterOpeningMs = 2'000;

/// A plot on which there is nothing more to do; one with trees ends when the person leaves it.
bool ends_plot(const Change& change) {
  const auto* plot = std::get_if<Plot>(&change);
  return plot != nullptr &&
         (plot->status == PlotStatus::empty || plot->status == PlotStatus::skipped);
}

/// Whether the file was written to after its last copy, by the times of the disk.
bool is_behind(const fs::path& tract) {
  const auto all = oaklight::snapshots_of(tract, oaklight::snapshot_folder(tract));
  if (all.empty()) return true;
  std::error_code unknown;
  const auto copied = fs::last_write_time(all.back().path, unknown);
  const auto written = fs::last_write_time(tract, unknown);
  return unknown || written > copied;
}

}  // namespace

SnapshotKeeper::SnapshotKeeper(TractDesk& desk, const CurrentPlot& plot, TractDesk::Clocks clocks,
                               QObject* parent)
    : QObject(parent), desk_(desk), clocks_(std::move(clocks)) {
  connect(&desk, &TractDesk::changed, this, &SnapshotKeeper::follow);
  connect(&plot, &CurrentPlot::changed, this, [this] {
    if (changed_) take();
  });
  if (auto* app = qobject_cast<QGuiApplication*>(QCoreApplication::instance())) {
    connect(app, &QGuiApplication::applicationStateChanged, this, [this](Qt::ApplicationState now) {
      if (now != Qt::ApplicationActive && changed_) take();
    });
  }
  QTimer::singleShot(kAfterOpeningMs, this, &SnapshotKeeper::takeIfBehind);
}

bool SnapshotKeeper::wanted() const { return !desk_.readOnly() && !desk_.data().tract.demo; }

void SnapshotKeeper::follow(const std::vector<Change>& changes) {
  changed_ = true;
  if (std::any_of(changes.begin(), changes.end(), ends_plot)) take();
}

void SnapshotKeeper::takeIfBehind() {
  if (wanted() && is_behind(desk_.path())) take();
}

void SnapshotKeeper::take() {
  if (!wanted()) return;
  changed_ = false;
  const oaklight::StoreContext context{clocks_.clock, clocks_.random, clocks_.device};
  work_.ask([this, tract = desk_.path(), context]() -> Background::Answer {
    const auto made = oaklight::take_snapshot(tract, oaklight::snapshot_folder(tract), context);
    return [this, made] {
      if (made) {
        emit kept();
        return;
      }
      changed_ = true;
      oaklight::Error error = made.error();
      error.what = tr("No copy of the tract was kept: %1")
                       .arg(QString::fromStdString(error.what))
                       .toStdString();
      emit failed(error);
    };
  });
}
