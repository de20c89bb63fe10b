#include "core/measure/plot_geometry.hpp"

#include <cmath>
#include <numbers>

#include "core/base/number_text.hpp"
#include "core/measure/basal_area.hpp"

namespace oaklight {
namespace {

template <class... F>
struct Overload : F... {
  using F::operator()...;
};
template <class... F>
Overload(F...) -> Overload<F...>;

/// Distances closer than this are the same distance: far below what a tape shows, far above what
/// double arithmetic rounds.
constexpr Feet kSameDistance{1e-6};

Error out_of_range(std::string what, std::string where, std::string fix) {
  return {ErrorCode::out_of_range, std::move(what), std::move(where), std::move(fix)};
}

Status check(const PointDesign& design) {
  const double baf = design.baf().value;
  if (baf > 0.0 && baf < kSquareFeetPerAcre) return Done{};
  const bool us = design.system == UnitSystem::us;
  return out_of_range("A basal area factor of " + number_text(design.factor, 2) +
                          (us ? " ft2/ac" : " m2/ha") + " can't be used.",
                      "baf", us ? "Usual factors are 5 to 40." : "Usual factors are 1 to 9.");
}

Status check(const FixedDesign& design) {
  if (!(design.area > 0.0) || !std::isfinite(design.area)) {
    return out_of_range("The plot has no area.", "plot_area", "Give its size, e.g. 0.1 acre.");
  }
  if (design.small_area.has_value() != design.small_below.has_value()) {
    return Error{
        ErrorCode::missing_value,
        "A small plot needs both its area and the DBH below which trees are tallied on it.",
        design.small_area ? "small_below" : "small_plot_area", "Give both or neither."};
  }
  if (design.small_area && !(*design.small_area > 0.0 && *design.small_area < design.area)) {
    return out_of_range("The small plot is not smaller than the plot around it.", "small_plot_area",
                        "Check the two areas.");
  }
  return Done{};
}

/// The plot that holds trees of this size.
Acres area_for(const FixedDesign& design, Dbh dbh) {
  const bool small = design.small_area && design.small_below &&
                     dbh.hundredth_mm() < design.small_below->hundredth_mm();
  return small ? *design.small_acres() : design.acres();
}

/// Half a stem's diameter.
Feet half_stem(Inches dbh) { return to_feet(dbh) / 2.0; }

}  // namespace

Status check_design(const Design& design) {
  return std::visit([](const auto& d) { return check(d); }, design);
}

FeetPerInch plot_radius_factor(SquareFeetPerAcre baf, TapedTo to) {
  // Basal area g = kBasalAreaFactor d^2, plot area pi r^2, and g / (pi r^2) = baf / 43,560.
  const double to_centre =
      std::sqrt(kBasalAreaFactor * kSquareFeetPerAcre / (std::numbers::pi * baf.value));
  const double back = to == TapedTo::face ? half_stem(Inches{1.0}).value : 0.0;
  return FeetPerInch{to_centre - back};
}

Feet plot_radius(Acres area) {
  return Feet{std::sqrt(to_square_feet(area).value / std::numbers::pi)};
}

Feet limiting_distance(const Design& design, Dbh dbh, TapedTo to) {
  return std::visit(
      Overload{[&](const PointDesign& d) {
                 return Feet{plot_radius_factor(d.baf(), to).value * dbh.inches().value};
               },
               [&](const FixedDesign& d) {
                 const Feet radius = plot_radius(area_for(d, dbh));
                 return to == TapedTo::face ? radius - half_stem(dbh.inches()) : radius;
               }},
      design);
}

Feet along_slope(Feet level, Slope slope) { return level / slope.cosine(); }

Feet level_distance(Feet taped, Slope slope) { return taped * slope.cosine(); }

Feet radius_on_slope(Feet radius, Slope slope) { return radius / std::sqrt(slope.cosine()); }

BorderlineCall check_borderline(const Design& design, const BorderlineTree& tree) {
  const Feet limit = limiting_distance(design, tree.dbh, tree.to);
  const Feet margin = limit - level_distance(tree.taped.feet(), tree.slope);
  return {margin > -kSameDistance, limit, along_slope(limit, tree.slope), margin};
}

TreesPerAcre tree_factor(const Design& design, Dbh dbh) {
  return std::visit(Overload{[&](const PointDesign& d) {
                               return TreesPerAcre{d.baf().value / basal_area(dbh.inches()).value};
                             },
                             [&](const FixedDesign& d) { return Trees{1.0} / area_for(d, dbh); }},
                    design);
}

TreesPerAcre trees_stood_for(const Design& design, const Tree& tree) {
  return tree_factor(design, tree.facts.dbh) * static_cast<double>(tree.stems * tree.edge_count);
}

}  // namespace oaklight
