#pragma once

#include <string>
#include <vector>

#include "core/release/traits.hpp"

namespace oaklight {

/// Why a tree stays whatever it crowds.
enum class Keep : std::uint8_t {
  no,  ///< not on the keep list
  dead,
  nearly_dead,
  den,
  nest,
  hollow,
  bark_plates,
  roost_hickory,
  legacy,
  big_old,
  rare_species,
  scarce_species,  ///< unless it touches a better crop tree of its own kind
  fruit,
  bank,
  bank_for_good,  ///< a bank tree that cannot be killed standing either
  line,
  unsure_line,  ///< so near an unconfirmed neighbour line that it may not be the owner's
};

/// The reason in words that follow the tree's name ("is a den tree"), and the rules behind it.
struct KeepWords {
  std::string text;
  std::vector<std::string> rules;
  std::string would_change;  ///< what would take it off the list
};
[[nodiscard]] KeepWords words_of(Keep keep);

/// Whether the tree, dead and standing, could fall on a road, trail, power line or building
/// (X6.02). Where nobody recorded its place on a mapped tract, it could.
[[nodiscard]] bool target_in_reach(const ReleaseInput& input, std::size_t tree);

/// Step 4: the trees that no later step may take, one entry for each tree of the graph (R3.68,
/// section R5). Where many would qualify, the largest are kept first.
[[nodiscard]] std::vector<Keep> keep_list(const ReleaseInput& input,
                                          const std::vector<Traits>& traits);

}  // namespace oaklight
