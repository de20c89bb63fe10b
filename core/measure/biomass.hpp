#pragma once

#include <string_view>

#include "core/units/reading.hpp"

namespace oaklight {

/// Oven-dry mass of one live tree and of its parts. The first four parts add up to above_ground;
/// roots come on top of it.
struct Biomass {
  Kilograms above_ground;
  Kilograms foliage;
  Kilograms stem_wood;
  Kilograms stem_bark;
  Kilograms branches;
  Kilograms coarse_roots;
};

/// Dry biomass by the national equations for groups of species.
///
/// group    Species::jenkins_group, e.g. "soft_maple_birch"
/// errors   unknown_reference: no such group;
///          outside_table: a group without an equation on DBH ("woodland"), a stem under 2.5 cm or
///          thicker than the group's largest sampled tree
/// accuracy group coefficients from memory; species equations of other authors differ by up to 20 %
///          at 12 in
/// source   Jenkins, Chojnacky, Heath and Birdsey 2003, Forest Science 49(1):12-35, from memory but
///          for the foliage ratios (read in Fire Ecology 13(1), table 3)
[[nodiscard]] Result<Biomass> dry_biomass(Dbh dbh, std::string_view group);

}  // namespace oaklight
