#pragma once

#include <string>
#include <vector>

#include "core/model/place.hpp"
#include "core/model/species.hpp"
#include "core/release/release_graph.hpp"

namespace oaklight {

/// "a, b and c".
[[nodiscard]] std::string joined(const std::vector<std::string>& parts);

/// "north side", "north and east sides".
[[nodiscard]] std::string side_words(Sides sides);

/// "white oak 14"; "white oak" without a tag; "tree 14" when the species is not in the table.
[[nodiscard]] std::string tree_name(const ReleaseTree& tree, const SpeciesTable& species);

/// "1 side", "3 sides".
[[nodiscard]] std::string side_count(int sides);

/// Without needless zeros: "60", "57.5".
[[nodiscard]] std::string plain_number(double value);

}  // namespace oaklight
