#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/sample/group_tally.hpp"

namespace oaklight {

/// The part of the live basal area that some trees hold.
struct BasalAreaShare {
  Percent share;
  std::optional<Percent> se;  ///< nothing when a stand has a single plot
};

struct SpeciesShare {
  SpeciesCode species;
  BasalAreaShare part;
};

/// What an area is made of, by basal area of its live trees.
struct Composition {
  std::vector<SpeciesShare> species;  ///< largest share first; ties by code
  BasalAreaShare oak;                 ///< white, red and oaks of no told group
  BasalAreaShare white_oak;           ///< white oak group
  BasalAreaShare red_oak;
  BasalAreaShare hickory;
};

/// Composition of one stand, or of several weighted by acres. A share is a ratio of two sums over
/// plots, not a count of trees: the trees of a plot come together.
///
/// errors   no_data without live trees; unknown_species; as ratio_of_sums
/// source   Cochran 1977, chapter 6 (from memory)
Result<Composition> composition(std::span<const StandSample* const> stands,
                                const SpeciesTable& species);

}  // namespace oaklight
