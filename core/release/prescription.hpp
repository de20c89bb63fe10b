#pragma once

#include <span>
#include <vector>

#include "core/measure/dbh_class.hpp"
#include "core/release/plan.hpp"
#include "core/sample/estimate.hpp"

namespace oaklight {

/// One fixed plot of a prescription: stem-mapped and decided, or visited and found empty.
struct DecidedPlot {
  Acres acres;
  std::vector<TreeFacts> trees;  ///< in the order of the verdicts; none on an empty plot
  std::vector<TreeVerdict> verdicts;
};

/// What is to be removed of one species, size and product.
struct RemovalLine {
  SpeciesCode species;
  DbhClass dbh_class;  ///< of two inches: 6 is 5.0 to 6.9 in
  Product product = Product::none;
  Estimate<TreesPerAcre> trees;
  Estimate<SquareFeetPerAcre> ba;
};

/// What a release would do to a stand, an acre, told from plots: never a list of trees (the marking
/// walk gives that).
struct Prescription {
  int plots = 0;                          ///< decided or empty
  Estimate<TreesPerAcre> crop_trees;      ///< released
  Estimate<TreesPerAcre> removals;        ///< taken or killed standing
  Estimate<SquareFeetPerAcre> ba_before;  ///< live trees
  Estimate<SquareFeetPerAcre> ba_after;
  Estimate<Percent> stocking_before;  ///< of the trees that guards count
  Estimate<Percent> stocking_after;
  std::vector<RemovalLine> lines;  ///< most trees first; equals by species, class, product
};

/// Means of one stand's plots with their errors; plots are a simple random sample of the stand.
///
/// errors   too_few_plots without plots
/// assumes  no other kind of plot is in the sample: a plot without a map tells nothing of contacts
Result<Prescription> prescription(std::span<const DecidedPlot> plots,
                                  const ReleaseKnowledge& knowledge, Confidence confidence);

}  // namespace oaklight
