#include "core/session/plot_figures.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "core/base/number_text.hpp"
#include "core/measure/basal_area.hpp"
#include "core/measure/plot_geometry.hpp"
#include "core/model/plot_task.hpp"
#include "core/session/local.hpp"
#include "core/session/records_named.hpp"
#include "core/session/stand_part.hpp"

namespace oaklight {
namespace {

/// What one tally record stands for on an acre. At a point each stem is the basal area factor.
SquareFeetPerAcre ba_of(const Design& design, const Tree& tree) {
  if (const auto* point = std::get_if<PointDesign>(&design)) {
    return point->baf() * static_cast<double>(tree.stems * tree.edge_count);
  }
  return SquareFeetPerAcre{trees_stood_for(design, tree).value *
                           basal_area(tree.facts.dbh.inches()).value};
}

/// Classes are counted in a whole unit that both edges fall on: tenths of the tape.
struct Width {
  std::int32_t tenths = 20;
  UnitSystem system = UnitSystem::us;
};

Width width_of(TallyClasses classes) {
  switch (classes) {
    case TallyClasses::one_inch:
      return {10, UnitSystem::us};
    case TallyClasses::two_inches:
      return {20, UnitSystem::us};
    case TallyClasses::five_centimetres:
      break;
  }
  return {50, UnitSystem::metric};
}

TallyClass class_at(std::int32_t middle, Width width) {
  // Lower edge inside, upper edge outside; readings are whole tenths.
  const std::int32_t least = middle - width.tenths / 2;
  const std::int32_t most = least + width.tenths - 1;
  const auto dbh = [&](std::int32_t tenths) {
    return Dbh::from_tenths(tenths, width.system).value();
  };
  const std::string unit = width.system == UnitSystem::us ? " in" : " cm";
  return {dbh(middle), dbh(least), dbh(most), number_text(middle / 10.0, 0),
          number_text(least / 10.0, 1) + " to " + number_text(most / 10.0, 1) + unit};
}

}  // namespace

Result<PlotFigures> plot_figures(const LiveTract& live, PlotId id) {
  const Plot* plot = live.find(id);
  if (plot == nullptr) return no_such("plot", to_text(id));
  const Cruise* cruise = live.find(plot->cruise);
  if (cruise == nullptr) return no_such("cruise", to_text(plot->cruise));
  if (const Status sound = check_design(cruise->design); !sound) return sound.error();
  PlotFigures figures;
  figures.system = std::visit([](const auto& design) { return design.system; }, cruise->design);
  SquareFeetPerAcre ba;
  TreesPerAcre trees;
  for (const Tree* tree : live.trees_of(id)) {
    const bool alive = tree->facts.status == TreeStatus::live;
    ++figures.records;
    figures.stems += tree->stems;
    figures.live_stems += alive ? tree->stems : 0;
    if (cruise->min_dbh && tree->facts.dbh.hundredth_mm() < cruise->min_dbh->hundredth_mm()) {
      ++figures.left_out;
      continue;
    }
    if (!alive) continue;
    ba += ba_of(cruise->design, *tree);
    trees += trees_stood_for(cruise->design, *tree);
  }
  const std::vector<SpeciesCount> counted = taken_at(*plot).counted;
  for (const SpeciesCount& one : counted) {
    figures.records += 1;
    figures.stems += one.stems;
    figures.live_stems += one.stems;
    if (const auto* point = std::get_if<PointDesign>(&cruise->design)) {
      ba += point->baf() * static_cast<double>(one.stems);
    }
  }
  if (plot->status == PlotStatus::measured || plot->status == PlotStatus::empty) {
    figures.ba = ba;
    if (counted.empty()) figures.trees = trees;
  }
  return figures;
}

Result<AreaEstimate> running_figures(const LiveTract& live, const TractKnowledge& knowledge,
                                     StandId stand, const EstimateOptions& options) {
  const auto part = stand_plots(live, stand);
  if (!part) return part.error();
  const auto sample = stand_sample(*part, stand);
  if (!sample) return sample.error();
  const std::array<const StandSample*, 1> one = {&*sample};
  return area_estimate(one, knowledge.species(), with_local(options, live.data(), knowledge));
}

std::vector<TallyClass> tally_classes(TallyClasses classes, std::optional<Dbh> min_dbh, Dbh most) {
  const Width width = width_of(classes);
  std::vector<TallyClass> list;
  // The first class reaches down to the smallest stem; a class of 0 would hold no usable middle.
  for (std::int32_t middle = width.tenths;; middle += width.tenths) {
    const auto dbh = Dbh::from_tenths(middle, width.system);
    if (!dbh || dbh->hundredth_mm() > most.hundredth_mm()) return list;
    if (!Dbh::from_tenths(middle + width.tenths / 2 - 1, width.system)) return list;
    if (min_dbh && dbh->hundredth_mm() < min_dbh->hundredth_mm()) continue;
    list.push_back(class_at(middle, width));
  }
}

std::string ba_text(SquareFeetPerAcre ba, UnitSystem system) {
  if (system == UnitSystem::us) return number_text(ba.value, 1) + " ft2/ac";
  const SquareFeetPerAcre one = PointDesign{1.0, UnitSystem::metric}.baf();  // 1 m2/ha
  return number_text(ba / one, 1) + " m2/ha";
}

std::string area_text(Acres area, UnitSystem system) {
  if (system == UnitSystem::us) return number_text(area.value, 1) + " ac";
  return number_text(to_hectares(area).value, 2) + " ha";
}

}  // namespace oaklight
