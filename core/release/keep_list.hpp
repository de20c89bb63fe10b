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

/// Step 4: the trees that no later step may take, one entry for each tree of the graph (R3.68,
/// section R5). Where many would qualify, the largest are kept first.
[[nodiscard]] std::vector<Keep> keep_list(const ReleaseInput& input,
                                          const std::vector<Traits>& traits);

}  // namespace oaklight
