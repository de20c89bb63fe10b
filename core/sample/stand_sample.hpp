#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/mark.hpp"

namespace oaklight {

/// One tally record and what it stands for on an average acre of ground around its plot.
struct TalliedTree {
  const Tree* tree = nullptr;
  int plot = 0;          ///< index into StandSample::plots
  TreesPerAcre trees;    ///< its factor, times like stems, times edge count
  SquareFeetPerAcre ba;  ///< of those trees; at a point exactly the basal area factor a stem
  bool on_small_plot = false;
  bool measured = true;  ///< on a plot where all is measured, not at a count point
};

/// Live trees of one species that were counted at a point, and whose sizes nobody took.
struct CountedStems {
  SpeciesCode species;
  int plot = 0;
  int stems = 0;
  SquareFeetPerAcre ba;  ///< the basal area factor a stem
};

/// One regeneration count and its plot.
struct CountedRegen {
  const Regen* regen = nullptr;
  int plot = 0;
};

/// The plots of one stand that are in the sample, with all that was tallied on them. Points into
/// the TractData it was made from, which must outlive it.
struct StandSample {
  const Stand* stand = nullptr;
  Design design;
  /// Of the thinner trees, where two designs share the plots: one for trees of thick_from and more
  /// and this one for the rest, at the same places.
  std::optional<Design> thin_design;
  std::optional<Dbh> thick_from;
  std::optional<Dbh> min_dbh;       ///< smallest tree tallied
  std::optional<Acres> regen_plot;  ///< nothing: seedlings were not counted
  std::vector<const Plot*> plots;   ///< measured and empty ones, in order of id
  int planned = 0;                  ///< plots not visited yet
  int skipped = 0;                  ///< plots given up, with a reason
  int below_min = 0;                ///< records under min_dbh: left out, as not all were looked for
  std::vector<TalliedTree> trees;   ///< by plot, then by id
  std::vector<CountedRegen> regens;   ///< by plot, then by id
  std::vector<bool> measured;         ///< by plot: false at a count point of double sampling
  std::vector<CountedStems> counted;  ///< at count points, by plot

  [[nodiscard]] int measure_plots() const;
  /// Some plots are count points.
  [[nodiscard]] bool double_sampled() const {
    return measure_plots() < static_cast<int>(plots.size());
  }
  /// Each live tree of the sample has its size.
  [[nodiscard]] bool all_sized() const { return counted.empty(); }
};

/// A stand in which a cruise has plots.
struct CruisedStand {
  const Stand* stand = nullptr;
  Result<StandSample> sample;
};

/// The samples of all stands with plots, in the order of data.stands; the others are not cruised.
/// Same answer for any order of records in data.
///
/// errors   of the whole: unknown_reference for a plot without its stand or cruise, or a record
///          without its plot; duplicate for two plots of one id.
///          of a stand: no_data when no plot was visited; mixed_designs when its plots differ in
///          design, smallest tree or regeneration plot, unless two designs with different smallest
///          trees were worked at the same places (plots of the same labels, no later visit): then a
///          tree counts in the design of the thicker trees from its smallest tree up, and below
///          that in the other one; out_of_range or missing_value for a design
///          that can't be computed with; duplicate for two plots of one label (two visits?);
///          contradiction for records on a plot that is planned, skipped or (trees only) empty, for
///          seedlings at a count point, for trees counted without a size elsewhere than at a count
///          point of point sampling, for stems or an edge count that no tally gives, or a count
///          below 0; missing_value for seedlings without the size of their plot
/// assumes  plots were laid out level (distances corrected for slope in the field); a measured plot
///          without a tree counts like an empty one
Result<std::vector<CruisedStand>> cruised_stands(const TractData& data);

/// The sample of one stand. Errors: as cruised_stands; no_data also when it has no plots.
Result<StandSample> stand_sample(const TractData& data, StandId stand);

/// The row of a tree's or a seedling's species. Errors: unknown_species.
Result<const Species*> known_species(const SpeciesTable& table, SpeciesCode code,
                                     const StandSample& sample);

/// Fixed plots that would tile the stand: its acres over those of the plot, the small one for a
/// group with trees from it. Nothing for points, which have no such number.
[[nodiscard]] std::optional<double> plots_to_tile(const StandSample& sample, bool small_plot);

}  // namespace oaklight
