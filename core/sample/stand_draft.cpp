#include "core/sample/stand_draft.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <string_view>

#include "core/measure/plot_geometry.hpp"

namespace oaklight {
namespace {

std::optional<Acres> regen_plot(const Cruise& cruise) {
  if (!cruise.regen_area) return std::nullopt;
  const UnitSystem system = std::visit([](const auto& d) { return d.system; }, cruise.design);
  return system == UnitSystem::us
             ? Acres{*cruise.regen_area}
             : to_acres(SquareMetres{*cruise.regen_area * kSquareMetresPerHectare});
}

}  // namespace

std::string plot_path(const StandDraft& draft, const Plot& plot) {
  return "stand/" + draft.sample.stand->name + "/plot/" + plot.label;
}

void take_design(StandDraft& draft, const Plot& plot, const Cruise& cruise) {
  StandSample& s = draft.sample;
  if (draft.cruise == nullptr) {
    draft.cruise = &cruise;
    s.design = cruise.design;
    s.min_dbh = cruise.min_dbh;
    s.regen_plot = regen_plot(cruise);
    if (const auto checked = check_design(s.design); !checked) draft.blame(checked.error());
    if (s.regen_plot && !(s.regen_plot->value > 0.0)) {
      draft.blame({ErrorCode::out_of_range, "The regeneration plot has no area.", "regen_plot",
                   "Give its size, e.g. 0.001 acre, or leave it out."});
    }
  } else if (!same_design(*draft.cruise, cruise)) {
    draft.blame({ErrorCode::mixed_designs,
                 "The plots of stand " + s.stand->name + " were laid out by different designs.",
                 plot_path(draft, plot),
                 "Estimate one design at a time: give each its own stand, or leave one out. Two "
                 "designs for thick and for thin trees go together where they have the same plots "
                 "and different smallest trees."});
  }
}

int least_of(const Cruise& cruise) { return cruise.min_dbh ? cruise.min_dbh->hundredth_mm() : 0; }

std::optional<DesignPair> pair_of(const Laid& laid) {
  std::vector<const Cruise*> designs;
  std::map<const Cruise*, std::set<std::string_view>> visited;
  for (const auto& [plot, cruise] : laid) {
    const auto same = [&](const Cruise* c) { return same_design(*c, *cruise); };
    auto design = std::ranges::find_if(designs, same);
    if (design == designs.end()) design = designs.insert(designs.end(), cruise);
    if (in_sample(*plot) && !visited[*design].insert(plot->label).second) return std::nullopt;
  }
  if (designs.size() != 2 || least_of(*designs[0]) == least_of(*designs[1])) return std::nullopt;
  const bool first = least_of(*designs[0]) > least_of(*designs[1]);
  const DesignPair pair{designs[first ? 0 : 1], designs[first ? 1 : 0]};
  if (visited[pair.thick] != visited[pair.thin]) return std::nullopt;
  return pair;
}

void take_pair(StandDraft& draft, const Plot& plot, const DesignPair& pair) {
  take_design(draft, plot, *pair.thick);
  StandSample& s = draft.sample;
  draft.thin = pair.thin;
  s.thin_design = pair.thin->design;
  s.thick_from = s.min_dbh;
  s.min_dbh = pair.thin->min_dbh;
  if (!s.regen_plot) s.regen_plot = regen_plot(*pair.thin);
  if (const auto checked = check_design(*s.thin_design); !checked) draft.blame(checked.error());
}

}  // namespace oaklight
