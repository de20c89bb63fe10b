#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/model/tree.hpp"
#include "core/place/geodesy.hpp"

namespace oaklight::test {

/// One stem of a map.
struct Stem {
  LocalFeet at;  ///< from the map's south-west corner
  Inches dbh;    ///< as the map has it; 12 in where the map has no diameters
  Tree tree;     ///< the same as a tape reads it, to a tenth
  std::string kind;
};

/// Every stem of a rectangle of ground. The maps are data of others under their own licence: they
/// are written at test time by R from packages that are installed, and not kept here.
struct StemMap {
  std::string name;
  Feet width, height;
  std::vector<Stem> stems;

  [[nodiscard]] Acres acres() const { return to_acres(SquareFeet{width.value * height.value}); }
};

/// longleaf, lansing, waka or spruces; read once. Fails the test when R cannot write it.
const StemMap& stem_map(const std::string& name);

/// A felled tree with what it held.
struct FelledTree {
  Inches dbh;
  double cubic_feet = 0.0;
};
const std::vector<FelledTree>& black_cherries();

/// Whether R and its packages are there. Without them tests of whole populations skip.
bool maps_are_installed();

/// Which stems.
using PickStem = std::function<bool(const Stem&)>;
PickStem any_stem();
PickStem of_kind(const std::string& kind);  ///< "oaks": all three kinds of oak; "all": any
PickStem at_least(Inches dbh);

/// All stems of the map that belong: what a cruise should find.
struct Census {
  SquareFeetPerAcre ba;
  TreesPerAcre trees;
};
Census census_of(const StemMap& map, const PickStem& pick);

}  // namespace oaklight::test
