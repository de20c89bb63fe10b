#pragma once

#include "core/model/species.hpp"
#include "core/paper/picture.hpp"

namespace oaklight {

/// The three groups that the pictures tell apart: what feeds the place, and the rest.
enum class FoodGroup { oak, mast, rest };
inline constexpr auto kFoodGroups = {FoodGroup::oak, FoodGroup::mast, FoodGroup::rest};

/// An oak; another tree with nuts or fruit; any other. nullptr is any other.
FoodGroup group_of(const Species* species);

/// "Oaks", "Other nut and fruit trees", "All others".
QString words_of(FoodGroup group);

/// Oaks solid, other mast hatched, the rest open.
Pattern pattern_of(FoodGroup group);

/// The entries of a key for these groups.
std::vector<KeyEntry> key_of(const std::vector<FoodGroup>& groups);

}  // namespace oaklight
