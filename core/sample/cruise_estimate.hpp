#pragma once

#include <optional>
#include <vector>

#include "core/sample/group_tally.hpp"
#include "core/sample/plots_needed.hpp"
#include "core/sample/regeneration.hpp"

namespace oaklight {

/// Live trees of one species, one diameter class, or one class of one species.
struct SpeciesFigures {
  SpeciesCode species;
  GroupFigures figures;
  /// Share of the plots with a live tree of it. It depends on the plots' kind and size, so there is
  /// none where these differ.
  std::optional<ShareEstimate> on_plots;
};
struct ClassFigures {
  DbhClass dbh_class;
  GroupFigures figures;
};
struct SpeciesClassFigures {
  SpeciesCode species;
  DbhClass dbh_class;
  GroupFigures figures;
};

/// Plots for the error allowed, and how many of them are still to be visited.
struct PlotNeed {
  PlotPlan plan;  ///< by stand in the order of CruiseEstimate::stands, or for the one stand
  int more = 0;
};

/// The plots that one stand needs for the error allowed, from its basal area so far.
///
/// population  as in mean_estimate
/// errors      too_few_plots while the spread between plots is not known; of plots_needed
Result<PlotNeed> need_of_one(const Stand& stand, const Estimate<SquareFeetPerAcre>& ba,
                             std::optional<double> population, const EstimateOptions& options);

/// What plots say of one area: a stand, or all cruised stands weighted by acres. Each interval
/// stands for itself: 95 % holds for each, not for all of them together.
struct AreaEstimate {
  Acres acres;
  int plots = 0;          ///< in the sample
  int measure_plots = 0;  ///< of them, not count points of double sampling
  int empty_plots = 0;    ///< of them, without any tree; they count as 0
  int planned = 0;        ///< not visited yet
  int skipped = 0;        ///< given up
  int below_min = 0;      ///< records left out because they are under the smallest tree tallied
  GroupFigures live;
  GroupFigures dead;                       ///< standing dead, never part of the other figures
  std::vector<SpeciesFigures> by_species;  ///< live, by species code
  std::vector<ClassFigures> by_class;      ///< live, by diameter
  std::vector<SpeciesClassFigures> by_species_class;
  std::optional<RegenFigures> regen;  ///< nothing when not all stands have regeneration plots
  Result<PlotNeed> need;              ///< for basal area
};

struct StandEstimate {
  StandId stand;
  Result<AreaEstimate> figures;
};

struct CruiseEstimate {
  std::vector<StandEstimate> stands;  ///< those with plots, in the order of the tract
  std::vector<StandId> not_cruised;   ///< the others: no figure covers them
  Result<AreaEstimate> all;           ///< over all cruised stands, by acres
};

/// Per-acre figures with errors of every cruised stand and of all together.
///
/// errors   of the whole: as cruised_stands.
///          of a stand: as cruised_stands; unknown_species.
///          of all: the first error of a stand, since a stand without figures is not a stand
///          without trees; no_data when nothing was cruised; mixed_designs when stands differ in
///          the smallest tree tallied; out_of_range for a stand without acres
/// assumes  plots within a stand are a simple random sample. A systematic grid is computed as if it
///          were one, which tends to overstate the error
/// accuracy of trees per acre from points: poor where small stems are tallied
Result<CruiseEstimate> cruise_estimate(const TractData& data, const SpeciesTable& species,
                                       const EstimateOptions& options);

/// The same from samples that were taken of it.
CruiseEstimate cruise_estimate(const TractData& data, const std::vector<CruisedStand>& cruised,
                               const SpeciesTable& species, const EstimateOptions& options);

/// The figures of one area. Errors: as cruise_estimate says of a stand and of all.
Result<AreaEstimate> area_estimate(std::span<const StandSample* const> stands,
                                   const SpeciesTable& species, const EstimateOptions& options);

}  // namespace oaklight
