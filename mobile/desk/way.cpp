#include "mobile/desk/way.hpp"

#include <algorithm>

using oaklight::LiveTract;
using oaklight::PlotId;

WayStart way_start(const LiveTract& live, std::optional<PlotId> stood,
                   const std::optional<oaklight::Position>& here) {
  WayStart start;
  if (here) {
    start.kind = WayStart::Kind::here;
    start.from.here = here;
    return start;
  }
  const auto& trees = live.data().trees;
  // Ids rise with time, so the last tree of the list is the one tallied last.
  if (!stood && !trees.empty()) stood = trees.back().plot;
  start.plot = stood ? live.find(*stood) : nullptr;
  if (start.plot != nullptr) {
    start.kind = WayStart::Kind::plot;
    start.from.last_plot = stood;
  } else if (live.data().tract.landing) {
    start.kind = WayStart::Kind::landing;
    start.from.here = live.data().tract.landing;
  }
  return start;
}

bool reach_beyond_tally(const std::vector<oaklight::Change>& changes) {
  return std::ranges::any_of(changes, [](const oaklight::Change& change) {
    return !std::holds_alternative<oaklight::Tree>(change) &&
           !std::holds_alternative<oaklight::Regen>(change);
  });
}
