#pragma once

#include "core/base/result.hpp"
#include "core/units/units.hpp"

namespace oaklight {

/// A reading of a topographic (66-ft) clinometer scale: feet of rise over one chain of 66 ft.
using ChainFeet = Quantity<struct ChainFeetUnit>;

/// Height of a tree from level distance and clinometer readings to tip and base, percent scale. A
/// base below eye level reads negative, one above it positive.
///
/// errors   out_of_range: distance not above 0; contradiction: the tip not above the base
/// assumes  the tree stands straight, or is sighted square to its lean; standing at least as far
/// off
///          as the tree is tall keeps the error small
/// source   DeYoung, Forest Measurements, section 2.3
[[nodiscard]] Result<Feet> height_by_percent(Feet level_distance, Percent tip, Percent base);

/// The same by the 66-ft topographic scale. Source: DeYoung, section 2.4.
[[nodiscard]] Result<Feet> height_by_chain(Feet level_distance, ChainFeet tip, ChainFeet base);

/// What becomes of a part of a half log at the top.
enum class HalfLogRounding { down, nearest };

/// Merchantable height in half logs: the wood from a 1-ft stump to the merchantable top, where each
/// 16-ft log takes 16.3 ft with its trim.
///
/// top       of the merchantable stem above ground
/// returns   half logs of 8 ft; 0 for a stem shorter than that
/// errors    out_of_range: a top below 0 or above 300 ft
/// source    "Girard form class", encyclopedia article (17.3 ft to the top of log 1); rounding down
///           is the careful habit (from memory), to the nearest as in a student contest handout
[[nodiscard]] Result<int> half_logs_to(Feet top, HalfLogRounding rounding = HalfLogRounding::down);

}  // namespace oaklight
