#pragma once

#include <optional>
#include <string>

#include "core/model/ids.hpp"
#include "core/model/place.hpp"
#include "core/model/species.hpp"
#include "core/units/reading.hpp"

namespace oaklight {

/// What was found after the cut by whoever walked up to it.
enum class Finding {
  as_marked,   ///< done as the list says: a stump, or a tree killed standing
  standing,    ///< on the list, and nothing was done to it
  hung,        ///< cut, and hung up in another tree or on its own hinge: nobody goes under it
  not_marked,  ///< cut, and not on the list
  hurt,        ///< a tree to be left, and wounded
};
template <>
inline constexpr auto kWords<Finding> =
    std::to_array<Word<Finding>>({{Finding::as_marked, "as_marked"},
                                  {Finding::standing, "standing"},
                                  {Finding::hung, "hung"},
                                  {Finding::not_marked, "not_marked"},
                                  {Finding::hurt, "hurt"}});

/// How bad the worst wound of a leave tree is. Bare wood, not scuffed bark; the sizes are those of
/// rules R7.45 and R7.44.
enum class Wound {
  small,   ///< bare wood up to 10 in2
  medium,  ///< more than that, and less than a large one
  large,   ///< 100 in2 of bare wood or more, or half of the girth
  broken,  ///< snapped, bent over or uprooted
};
template <>
inline constexpr auto kWords<Wound> = std::to_array<Word<Wound>>({{Wound::small, "small"},
                                                                  {Wound::medium, "medium"},
                                                                  {Wound::large, "large"},
                                                                  {Wound::broken, "broken"}});

enum class WoundPlace { stem, root, crown };
template <>
inline constexpr auto kWords<WoundPlace> = std::to_array<Word<WoundPlace>>(
    {{WoundPlace::stem, "stem"}, {WoundPlace::root, "root"}, {WoundPlace::crown, "crown"}});

/// One thing found after the cut. Nothing (nullopt) is "not recorded", never zero.
struct Stump {
  StumpId id;
  /// The tree of the walk that it is; nothing: it wears no tag, which only a tree cut without a
  /// mark and a hurt tree may do.
  std::optional<WalkTreeId> tree;
  std::optional<StandId> stand;  ///< where there is no tree that tells it
  Finding finding = Finding::as_marked;
  std::optional<SpeciesCode> species;  ///< where there is no tree that tells it
  std::optional<StumpDiameter> over_bark;
  std::optional<StumpDiameter> under_bark;
  std::optional<TapedLength> height;  ///< of the cut above the ground
  std::optional<Wound> wound;         ///< of hurt trees only
  std::optional<WoundPlace> wound_place;
  std::optional<Position> position;
  std::string seen_on;  ///< ISO 8601 day, "2027-02-20"; "" not recorded
  std::string note;
};

}  // namespace oaklight
