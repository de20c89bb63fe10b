#pragma once

#include <optional>
#include <vector>

#include "core/session/live_tract.hpp"
#include "core/session/walk.hpp"

/// Where the way to a plot begins.
struct WayStart {
  enum class Kind { nowhere, here, plot, landing };
  Kind kind = Kind::nowhere;
  const oaklight::Plot* plot = nullptr;  ///< kind plot; holds until records change
  oaklight::WalkFrom from;
};

/// From where the receiver says; else from the plot at which somebody stood last; else from that of
/// the tree tallied last; else from the landing.
///
/// stood    the plot visited last since the tract was opened; nothing: none yet
/// here     the device's own position; nothing: not known
WayStart way_start(const oaklight::LiveTract& live, std::optional<oaklight::PlotId> stood,
                   const std::optional<oaklight::Position>& here = {});

/// Whether these changes can alter more than the tally of a plot: anything but trees and seedlings.
bool reach_beyond_tally(const std::vector<oaklight::Change>& changes);
