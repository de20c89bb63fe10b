#include "core/measure/crown_width.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/measure/stocking.hpp"

namespace oaklight {

Feet crowded_crown_radius(Inches dbh) {
  StockingSums one_tree_an_acre;
  one_tree_an_acre.add(dbh, TreesPerAcre{1.0});
  const double share_of_acre = fraction(upland_oak_stocking(one_tree_an_acre));
  const double ground = std::max(0.0, share_of_acre) * kSquareFeetPerAcre;
  return Feet{std::sqrt(ground / std::numbers::pi)};
}

}  // namespace oaklight
