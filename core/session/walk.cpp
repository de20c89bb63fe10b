#include "core/session/walk.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "core/session/records_named.hpp"

namespace oaklight {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// The run of digits that begins a text, without leading zeros.
std::string_view digits_of(std::string_view text) {
  std::size_t end = 0;
  while (end < text.size() && is_digit(text[end])) ++end;
  text = text.substr(0, end);
  while (text.size() > 1 && text.front() == '0') text.remove_prefix(1);
  return text;
}

std::string_view after_digits(std::string_view text) {
  while (!text.empty() && is_digit(text.front())) text.remove_prefix(1);
  return text;
}

std::optional<Position> start_of(const LiveTract& live, const WalkFrom& from) {
  if (from.here) return from.here;
  const Plot* last = from.last_plot ? live.find(*from.last_plot) : nullptr;
  return last == nullptr ? std::nullopt : last->position;
}

WalkStop stop_at(const Plot& plot, const std::optional<Position>& start) {
  WalkStop stop{plot.id, plot.stand, plot.label, {}};
  if (start && plot.position) stop.leg = leg_between(*start, *plot.position);
  return stop;
}

bool wanted(const Plot& plot, std::optional<StandId> stand) {
  return !stand || plot.stand == *stand;
}

}  // namespace

Result<int> paces_for(Feet distance, const PaceCount& count) {
  // A pace is a double or a single step; nobody takes fewer or more of either (common practice).
  const bool us = count.system == UnitSystem::us;
  const double least = us ? 10.0 : 30.0;
  const double most = us ? 100.0 : 330.0;
  if (!(count.paces >= least && count.paces <= most)) {
    return Error{ErrorCode::out_of_range, "This is no count of paces that a walker has.",
                 us ? "paces_per_100_ft" : "paces_per_100_m",
                 us ? "Walk 100 ft and count." : "Walk 100 m and count."};
  }
  const Feet counted_over = us ? Feet{100.0} : to_feet(Metres{100.0});
  return static_cast<int>(std::lround(count.paces * (distance / counted_over)));
}

std::vector<WalkStop> walk_order(const LiveTract& live, std::optional<StandId> stand,
                                 const WalkFrom& from) {
  const auto start = start_of(live, from);
  std::vector<WalkStop> stops;
  for (const Plot& plot : live.data().plots) {
    if (plot.status != PlotStatus::planned || !wanted(plot, stand)) continue;
    stops.push_back(stop_at(plot, start));
  }
  const auto far = [](const WalkStop& stop) {
    return stop.leg ? stop.leg->distance.value : std::numeric_limits<double>::infinity();
  };
  const auto stand_name = [&](const WalkStop& stop) {
    const Stand* record = live.find(stop.stand);
    return record == nullptr ? std::string() : record->name;
  };
  std::ranges::stable_sort(stops, [&](const WalkStop& a, const WalkStop& b) {
    if (far(a) != far(b)) return far(a) < far(b);
    if (a.stand != b.stand) return natural_less(stand_name(a), stand_name(b));
    return natural_less(a.label, b.label);
  });
  return stops;
}

std::optional<WalkStop> next_stop(const LiveTract& live, std::optional<StandId> stand,
                                  const WalkFrom& from) {
  const auto stops = walk_order(live, stand, from);
  return stops.empty() ? std::nullopt : std::optional(stops.front());
}

Result<WalkStop> way_to(const LiveTract& live, PlotId id, const WalkFrom& from) {
  const Plot* plot = live.find(id);
  if (plot == nullptr) return no_such("plot", to_text(id));
  return stop_at(*plot, start_of(live, from));
}

WalkProgress walk_progress(const LiveTract& live, std::optional<StandId> stand) {
  WalkProgress progress;
  for (const Plot& plot : live.data().plots) {
    if (!wanted(plot, stand)) continue;
    switch (plot.status) {
      case PlotStatus::measured:
        ++progress.measured;
        break;
      case PlotStatus::empty:
        ++progress.empty;
        break;
      case PlotStatus::skipped:
        ++progress.skipped;
        break;
      case PlotStatus::planned:
        ++progress.planned;
        break;
    }
  }
  const int open = progress.done() + progress.planned;
  if (open > 0) progress.share = percent(static_cast<double>(progress.done()) / open);
  return progress;
}

std::string compass_point(Degrees azimuth) {
  constexpr std::array<const char*, 16> kPoints = {"N",  "NNE", "NE", "ENE", "E",  "ESE",
                                                   "SE", "SSE", "S",  "SSW", "SW", "WSW",
                                                   "W",  "WNW", "NW", "NNW"};
  const double turn = std::fmod(std::fmod(azimuth.value, 360.0) + 360.0, 360.0);
  const auto nearest = static_cast<std::size_t>(std::lround(turn / 22.5));
  return kPoints[nearest % kPoints.size()];
}

bool natural_less(std::string_view a, std::string_view b) {
  while (!a.empty() && !b.empty()) {
    if (is_digit(a.front()) && is_digit(b.front())) {
      const std::string_view x = digits_of(a);
      const std::string_view y = digits_of(b);
      if (x.size() != y.size()) return x.size() < y.size();
      if (x != y) return x < y;
      a = after_digits(a);
      b = after_digits(b);
      continue;
    }
    if (a.front() != b.front()) return a.front() < b.front();
    a.remove_prefix(1);
    b.remove_prefix(1);
  }
  return a.empty() && !b.empty();
}

}  // namespace oaklight
