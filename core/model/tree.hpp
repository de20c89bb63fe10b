#pragma once

#include <optional>
#include <string>

#include "core/model/condition.hpp"
#include "core/model/ids.hpp"
#include "core/model/place.hpp"
#include "core/model/species.hpp"
#include "core/units/reading.hpp"

namespace oaklight {

enum class TreeStatus { live, dead };
template <>
inline constexpr auto kWords<TreeStatus> =
    std::to_array<Word<TreeStatus>>({{TreeStatus::live, "live"}, {TreeStatus::dead, "dead"}});

/// Crown class as foresters use it (the five classes of the national core field guide).
enum class CrownClass { open_grown, dominant, codominant, intermediate, overtopped };
template <>
inline constexpr auto kWords<CrownClass> =
    std::to_array<Word<CrownClass>>({{CrownClass::open_grown, "open_grown"},
                                     {CrownClass::dominant, "dominant"},
                                     {CrownClass::codominant, "codominant"},
                                     {CrownClass::intermediate, "intermediate"},
                                     {CrownClass::overtopped, "overtopped"}});

/// What was seen and read on one standing tree, wherever it was met. Nothing (nullopt) is "not
/// recorded", never zero.
struct TreeFacts {
  SpeciesCode species;
  Dbh dbh;
  TreeStatus status = TreeStatus::live;
  std::optional<CrownClass> crown_class;
  std::optional<Percent> live_crown;  ///< live crown ratio, percent of height
  std::optional<Percent> dieback;     ///< dead fine branches, percent of crown
  std::optional<TapedLength> height;  ///< total height
  std::optional<int> half_logs;       ///< merchantable height in half logs of 8 ft; 5 is 2 1/2 logs
  Conditions conditions;
  std::string note;
};

/// One tree tallied on a plot.
struct Tree {
  TreeId id;
  PlotId plot;
  TreeFacts facts;
  int stems = 1;                        ///< like stems that this record stands for
  int edge_count = 1;                   ///< times it counts by mirage or walkthrough: 1, 2 or 4
  std::optional<Degrees> azimuth;       ///< from plot centre, true north
  std::optional<TapedLength> distance;  ///< level, plot centre to tree centre
  std::string tag;                      ///< "" when it wears none
};

/// How far a crown reaches from the middle of its stem to each side, level, as taped under it. A
/// side of 0 was looked at and has no crown.
struct CrownRadii {
  std::optional<TapedLength> north, east, south, west;

  [[nodiscard]] bool complete() const { return north && east && south && west; }
  friend bool operator==(const CrownRadii&, const CrownRadii&) = default;
};

/// One tree met on the marking walk: a crop tree or a neighbour of one. A neighbour of two crop
/// trees is one WalkTree; its tag says that it is the same tree.
struct WalkTree {
  WalkTreeId id;
  StandId stand;
  std::string tag;  ///< unique in the tract
  TreeFacts facts;
  bool crop = false;  ///< the cruiser proposes it as a crop tree
  Sides looked;       ///< crop trees: sides at which somebody looked up
  std::optional<Position> position;
  std::optional<Percent> slope;
  CrownRadii crown = {};
};

/// How a neighbour's crown stands to the crop tree's crown, as seen by a person looking up.
enum class Seen {
  touches,     ///< crowns touch, or the gap is under two feet
  over,        ///< reaches over the crop crown
  below,       ///< stays under the crop crown
  none,        ///< clear gap
  not_looked,  ///< nobody looked: judge by size and distance
};
template <>
inline constexpr auto kWords<Seen> = std::to_array<Word<Seen>>({{Seen::touches, "touches"},
                                                                {Seen::over, "over"},
                                                                {Seen::below, "below"},
                                                                {Seen::none, "none"},
                                                                {Seen::not_looked, "not_looked"}});

/// One neighbour on the card of one crop tree.
struct Contact {
  ContactId id;
  WalkTreeId crop;
  WalkTreeId neighbour;
  Sides sides;  ///< sides of the crop crown on which it stands; empty: take them from the azimuth
  Seen seen = Seen::not_looked;
  std::optional<TapedLength> distance;  ///< level, stem to stem
  std::optional<Degrees> azimuth;       ///< from crop tree to neighbour, true north
};

}  // namespace oaklight
