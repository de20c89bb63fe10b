#pragma once

#include <cstdint>
#include <initializer_list>

#include "core/model/words.hpp"

namespace oaklight {

/// What a cruiser sees on a tree beyond species and size. Each is a fact to observe, not a
/// judgement: what follows from it is decided by the release rules and the hazard cautions.
enum class Condition : std::uint8_t {
  den,            ///< cavity in use or usable by wildlife
  nest,           ///< nest with eggs, young or adults
  roost_bark,     ///< loose bark plates that bats may use
  cavity_low,     ///< hollow within 6 ft of the ground
  cavity_high,    ///< hollow above 6 ft
  conk,           ///< fungus fruiting on the stem: decay inside
  canker,         ///< canker or open scar on the main stem
  basal_wound,    ///< wound over a third of the girth at the base
  crack,          ///< open crack or split in the lower stem
  lightning,      ///< lightning or fire seam
  root_lift,      ///< root plate raised or roots severed
  broken_top,     ///< top broken or hanging
  loose_limb,     ///< limb broken loose overhead
  dead_top,       ///< dead limbs of 3 in or more
  lean_10,        ///< leans 10 to 15 degrees
  lean_15,        ///< leans more than 15 degrees
  v_fork,         ///< tight fork with bark between
  u_fork,         ///< wide fork
  clump,          ///< shares its base with other stems
  epicormic,      ///< new branches on the butt log
  crooked,        ///< sweep or crook, no straight log
  vines,          ///< vines in this crown only
  vines_across,   ///< vines that cross to another crown
  hung_tree,      ///< another tree is lodged in it
  wilt,           ///< oak with summer wilt or bleeding
  borer_signs,    ///< bark flecks or exit holes of a borer
  beech_bark,     ///< beech bark disease
  metal,          ///< wire or nails in the stem
  line_tree,      ///< stands on a property line, or is blazed or painted as one
  wire_near,      ///< overhead line within two tree lengths
  road_near,      ///< road or trail within two tree lengths
  building_near,  ///< building or blind within two tree lengths
  bank_tree,      ///< grows on the bank of a stream
  legacy,         ///< old or outstanding tree the owner keeps
  high_joint,     ///< sprout that joins its old stump more than 6 in above the ground
};

template <>
inline constexpr auto kWords<Condition> = std::to_array<Word<Condition>>({
    {Condition::den, "den"},
    {Condition::nest, "nest"},
    {Condition::roost_bark, "roost_bark"},
    {Condition::cavity_low, "cavity_low"},
    {Condition::cavity_high, "cavity_high"},
    {Condition::conk, "conk"},
    {Condition::canker, "canker"},
    {Condition::basal_wound, "basal_wound"},
    {Condition::crack, "crack"},
    {Condition::lightning, "lightning"},
    {Condition::root_lift, "root_lift"},
    {Condition::broken_top, "broken_top"},
    {Condition::loose_limb, "loose_limb"},
    {Condition::dead_top, "dead_top"},
    {Condition::lean_10, "lean_10"},
    {Condition::lean_15, "lean_15"},
    {Condition::v_fork, "v_fork"},
    {Condition::u_fork, "u_fork"},
    {Condition::clump, "clump"},
    {Condition::epicormic, "epicormic"},
    {Condition::crooked, "crooked"},
    {Condition::vines, "vines"},
    {Condition::vines_across, "vines_across"},
    {Condition::hung_tree, "hung_tree"},
    {Condition::wilt, "wilt"},
    {Condition::borer_signs, "borer_signs"},
    {Condition::beech_bark, "beech_bark"},
    {Condition::metal, "metal"},
    {Condition::line_tree, "line_tree"},
    {Condition::wire_near, "wire_near"},
    {Condition::road_near, "road_near"},
    {Condition::building_near, "building_near"},
    {Condition::bank_tree, "bank_tree"},
    {Condition::legacy, "legacy"},
    {Condition::high_joint, "high_joint"},
});

/// A set of conditions.
class Conditions {
 public:
  constexpr Conditions() = default;
  constexpr Conditions(std::initializer_list<Condition> list) {
    for (const Condition c : list) add(c);
  }
  constexpr void add(Condition c) { bits_ |= bit(c); }
  /// The same set with one condition in it or out of it.
  [[nodiscard]] constexpr Conditions with(Condition c, bool in) const {
    Conditions other = *this;
    other.bits_ = in ? bits_ | bit(c) : bits_ & ~bit(c);
    return other;
  }
  [[nodiscard]] constexpr bool has(Condition c) const { return (bits_ & bit(c)) != 0; }
  [[nodiscard]] constexpr bool empty() const { return bits_ == 0; }
  friend constexpr bool operator==(Conditions, Conditions) = default;

 private:
  static constexpr std::uint64_t bit(Condition c) {
    return std::uint64_t{1} << static_cast<int>(c);
  }
  std::uint64_t bits_ = 0;
};

}  // namespace oaklight
