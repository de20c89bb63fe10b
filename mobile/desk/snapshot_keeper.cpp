#include "mobile/desk/snapshot_keeper.hpp"

#include <QGuiApplication>
#include <QTimer>
#include <algorithm>
#include <system_error>

#include "core/store/snapshots.hpp"

using oaklight::Change;
using oaklight::Error;
using oaklight::ErrorCode;
using oaklight::Plot;
using oaklight::PlotStatus;
using oaklight::Result;
using oaklight::Snapshot;

namespace {

namespace fs = std::filesystem;

// The first picture and the look for damage go before.
constexpr int kAfterOpeningMs = 2'000;

struct Kept {
  bool made = false;
  std::optional<Error> error;
};

/// Where the person wanted it, and on this device when that fails: a copy here is better than none.
Kept keep(const fs::path& tract, const fs::path& chosen, const oaklight::StoreContext& context) {
  const fs::path here = oaklight::snapshot_folder(tract);
  if (chosen.empty() || chosen == here) {
    const auto made = oaklight::take_snapshot(tract, here, context);
    return made ? Kept{true, {}} : Kept{false, made.error()};
  }
  // Never made: a folder of that name on this device would pass for the card that is not in.
  std::error_code none;
  const bool there = fs::is_directory(chosen, none);
  const auto made =
      there ? oaklight::take_snapshot(tract, chosen, context)
            : Result<Snapshot>(Error{ErrorCode::cannot_write, "The folder is not there.",
                                     chosen.string(), "Is the card in?"});
  if (made) return {true, {}};
  const bool instead = made.error().code != ErrorCode::damaged &&
                       oaklight::take_snapshot(tract, here, context).has_value();
  Error error = made.error();
  error.where = chosen.string();
  if (instead) error.fix += " A copy was kept on this device instead.";
  return {instead, error};
}

/// A plot on which there is nothing more to do; one with trees ends when the person leaves it.
bool ends_plot(const Change& change) {
  const auto* plot = std::get_if<Plot>(&change);
  return plot != nullptr &&
         (plot->status == PlotStatus::empty || plot->status == PlotStatus::skipped);
}

/// Whether the file was written to after its last copy, by the times of the disk.
bool is_behind(const fs::path& tract, const fs::path& folder) {
  const auto all = oaklight::snapshots_of(tract, folder);
  if (all.empty()) return true;
  std::error_code unknown;
  const auto copied = fs::last_write_time(all.back().path, unknown);
  const auto written = fs::last_write_time(tract, unknown);
  return unknown || written > copied;
}

}  // namespace

SnapshotKeeper::SnapshotKeeper(TractDesk& desk, const CurrentPlot& plot, Settings& settings,
                               QObject* parent)
    : QObject(parent), desk_(desk), settings_(settings) {
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

fs::path SnapshotKeeper::chosen() const { return settings_.snapshotFolder().toStdU16String(); }

void SnapshotKeeper::follow(const std::vector<Change>& changes) {
  changed_ = true;
  if (std::any_of(changes.begin(), changes.end(), ends_plot)) take();
}

void SnapshotKeeper::takeIfBehind() {
  if (!wanted()) return;
  const fs::path folder = chosen().empty() ? oaklight::snapshot_folder(desk_.path()) : chosen();
  if (is_behind(desk_.path(), folder)) take();
}

void SnapshotKeeper::take() {
  if (!wanted()) return;
  changed_ = false;
  work_.ask([this, tract = desk_.path(), folder = chosen(),
             context = desk_.context()]() -> Background::Answer {
    const Kept done = keep(tract, folder, context);
    return [this, done] {
      if (!done.made) changed_ = true;
      if (done.error) {
        Error error = *done.error;
        error.what = tr("No copy of the tract was kept: %1")
                         .arg(QString::fromStdString(error.what))
                         .toStdString();
        emit failed(error);
      }
      if (done.made) emit kept();
    };
  });
}
