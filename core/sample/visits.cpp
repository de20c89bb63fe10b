#include "core/sample/visits.hpp"

#include <algorithm>
#include <map>
#include <string>
#include <vector>

#include "core/sample/stand_sample.hpp"

namespace oaklight {
namespace {

/// One cruise in one stand, as far as it matters here.
struct Visit {
  const Cruise* cruise = nullptr;
  std::set<std::string_view> labels;
  bool begun = false;
};

using Visits = std::map<StandId, std::map<CruiseId, Visit>>;

Visits visits_of(const TractData& data) {
  std::map<CruiseId, const Cruise*> cruises;
  for (const Cruise& c : data.cruises) cruises.emplace(c.id, &c);
  Visits visits;
  for (const Plot& plot : data.plots) {
    const auto cruise = cruises.find(plot.cruise);
    if (cruise == cruises.end()) continue;
    Visit& visit = visits[plot.stand][plot.cruise];
    visit.cruise = cruise->second;
    if (!plot.label.empty()) visit.labels.insert(plot.label);
    visit.begun = visit.begun || in_sample(plot);
  }
  return visits;
}

/// Whether b went to plots of a on a later day (days are ISO 8601: they sort as text).
bool revisits(const Visit& a, const Visit& b) {
  if (a.cruise->date.empty() || a.cruise->date >= b.cruise->date) return false;
  return std::ranges::any_of(a.labels, [&](std::string_view l) { return b.labels.contains(l); });
}

/// The tract with those plots that `stays` wants, and what was recorded on them.
template <class Stays>
TractData with_plots(const TractData& data, Stays stays) {
  TractData part = data;
  std::erase_if(part.plots, [&](const Plot& plot) { return !stays(plot); });
  std::set<PlotId> there;
  for (const Plot& plot : part.plots) there.insert(plot.id);
  std::erase_if(part.trees, [&](const Tree& tree) { return !there.contains(tree.plot); });
  std::erase_if(part.regens, [&](const Regen& regen) { return !there.contains(regen.plot); });
  return part;
}

}  // namespace

VisitsLeftOut visits_left_out(const TractData& data) {
  VisitsLeftOut left_out;
  for (const auto& [stand, visits] : visits_of(data)) {
    for (const auto& [a, earlier] : visits) {
      for (const auto& [b, later] : visits) {
        if (!revisits(earlier, later)) continue;
        left_out.emplace(stand, later.begun ? a : b);
      }
    }
  }
  return left_out;
}

TractData before_newest_visit(const TractData& data) {
  const VisitsLeftOut left_out = visits_left_out(data);
  VisitsLeftOut newest;
  for (const auto& [stand, visits] : visits_of(data)) {
    for (const auto& [a, earlier] : visits) {
      for (const auto& [b, later] : visits) {
        if (revisits(earlier, later) && !left_out.contains({stand, b})) newest.emplace(stand, b);
      }
    }
  }
  return with_plots(data, [&](const Plot& plot) {
    return !newest.contains({plot.stand, plot.cruise});
  });
}

TractData of_cruise(const TractData& data, std::string_view name) {
  std::set<CruiseId> named;
  for (const Cruise& c : data.cruises) {
    if (c.name == name) named.insert(c.id);
  }
  return with_plots(data, [&](const Plot& plot) { return named.contains(plot.cruise); });
}

}  // namespace oaklight
