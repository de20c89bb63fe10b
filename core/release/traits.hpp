#pragma once

#include <vector>

#include "core/release/plan.hpp"

namespace oaklight {

/// What the steps ask of one tree again and again.
struct Traits {
  const Species* species = nullptr;  ///< nullptr: not in the table
  Food food;
  AcornRecord acorns;
  bool counted = false;  ///< by the stocking guards (R2.27)

  /// False where nobody told the species, also by the table's own rows for unknown trees.
  [[nodiscard]] bool known_species() const {
    return species != nullptr && species->genus() != "Tree";
  }
  [[nodiscard]] bool is_oak() const { return species != nullptr && species->is_oak(); }
  [[nodiscard]] bool is_ash() const { return species != nullptr && species->genus() == "Fraxinus"; }
  [[nodiscard]] bool invasive() const { return species != nullptr && species->invasive; }
  [[nodiscard]] OakGroup group() const {
    return species == nullptr ? OakGroup::none : species->oak_group;
  }
};

/// One for each tree of the graph. Points into the input's species table.
[[nodiscard]] std::vector<Traits> traits_of(const ReleaseInput& input);

/// Whether a list of species codes holds this one.
[[nodiscard]] bool listed(const std::vector<SpeciesCode>& codes, SpeciesCode code);

}  // namespace oaklight
