#include "core/session/sheet_set.hpp"

#include <algorithm>
#include <map>

#include "core/base/number_text.hpp"

namespace oaklight {
namespace {

/// As few decimals as show the number: 10, 0.1, 0.001.
std::string short_number(double value) {
  for (int decimals = 0; decimals < 6; ++decimals) {
    const std::string text = number_text(value, decimals);
    const auto back = number_from_text(text);
    if (back && *back == value) return text;
  }
  return number_text(value, 6);
}

std::string in_system(Dbh dbh, UnitSystem system) {
  const Inches inches = dbh.inches();
  return number_text(system == UnitSystem::us ? inches.value : to_centimetres(inches).value, 1);
}

/// The newest cruise: by day, then by id.
const Cruise* newest_cruise(const TractData& data) {
  const auto found = std::ranges::max_element(
      data.cruises, {}, [](const Cruise& cruise) { return std::pair(cruise.date, cruise.id); });
  return found == data.cruises.end() ? nullptr : &*found;
}

void give_design(const Cruise& cruise, SheetSet& set) {
  set.system = std::visit([](const auto& design) { return design.system; }, cruise.design);
  set.min_dbh = cruise.min_dbh;
  set.seedlings = cruise.regen_area.has_value();
  set.given["cruise"] = cruise.name;
  if (const auto* point = std::get_if<PointDesign>(&cruise.design)) {
    set.given["baf"] = short_number(point->factor);
  } else {
    const auto& fixed = std::get<FixedDesign>(cruise.design);
    set.given["plot_area"] = short_number(fixed.area);
    if (fixed.small_area) set.given["small_plot_area"] = short_number(*fixed.small_area);
    if (fixed.small_below) set.given["small_below"] = in_system(*fixed.small_below, set.system);
  }
  if (cruise.min_dbh) set.given["min_dbh"] = in_system(*cruise.min_dbh, set.system);
  if (cruise.regen_area) set.given["regen_plot_area"] = short_number(*cruise.regen_area);
}

/// Names for the columns of the tally, the species met most first.
std::vector<std::string> species_of(const TractData& data, const TractKnowledge& knowledge) {
  std::map<SpeciesCode, int> met;
  for (const Tree& tree : data.trees) met[tree.facts.species] += tree.stems;
  std::vector<std::pair<int, SpeciesCode>> order;
  for (const auto& [species, stems] : met) order.emplace_back(-stems, species);
  std::ranges::sort(order);
  if (order.empty() && !knowledge.sets.empty()) {
    for (const SpeciesCode code : knowledge.sets.front().species) order.emplace_back(0, code);
  }
  std::vector<std::string> names;
  for (const auto& [stems, code] : order) {
    if (const Species* species = knowledge.species().find(code)) {
      names.push_back(species->common_name);
    }
  }
  return names;
}

}  // namespace

Result<SheetSet> sheet_set(const TractData& data, const TractKnowledge& knowledge, bool each_plot) {
  SheetSet set{.form = knowledge.form,
               .tract = data.tract.name,
               .demo = data.tract.demo,
               .given = {},
               .species = species_of(data, knowledge),
               .min_dbh = {},
               .plots = {}};
  const Cruise* cruise = newest_cruise(data);
  if (cruise != nullptr) give_design(*cruise, set);
  if (!each_plot) return set;
  std::map<StandId, std::string> stands;
  for (const Stand& stand : data.stands) stands.emplace(stand.id, stand.name);
  for (const Plot& plot : data.plots) {
    if (plot.status != PlotStatus::planned || cruise == nullptr || plot.cruise != cruise->id) {
      continue;
    }
    set.plots.emplace_back(stands[plot.stand], plot.label);
  }
  std::ranges::sort(set.plots);
  if (set.plots.empty()) {
    return Error{ErrorCode::no_data, "No plot of the newest cruise is still to be visited.",
                 "plots", "Lay out plots first, or print blank sheets without --each-plot."};
  }
  return set;
}

}  // namespace oaklight
