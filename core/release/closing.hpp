#pragma once

#include <array>
#include <optional>
#include <span>

#include "core/model/place.hpp"
#include "core/release/rules.hpp"
#include "core/units/units.hpp"

namespace oaklight {

/// What happens in the years after a release. ReleaseSettings::from refuses a book without it.
struct YearSettings {
  double lag_years = 0.0;                      ///< R1.80
  Feet crown_growth_least, crown_growth_most;  ///< R1.85, a year, of one crown's edge
  int sides_again = 0;                         ///< R1.87
  int acorn_trees = 0;                         ///< R3.48, for an index of one species

  /// errors   missing_rule, out_of_range: as ReleaseSettings::from
  static Result<YearSettings> from(const RuleBook& book);
};

/// A neighbour that went, and the sides of the crop crown on which it stood.
struct OpenedGap {
  Sides sides;
  Inches dbh;  ///< of the neighbour
};

/// Years after the work, from the fastest to the slowest crown growth that is published.
struct YearsRange {
  double soonest = 0.0;
  double latest = 0.0;
};

/// The rules behind years_until_look.
inline constexpr std::array<const char*, 3> kClosingRules = {"R1.85", "R1.86", "R1.87"};

/// How long until so few sides of a crop crown are free that somebody should look again (R1.87).
///
/// A side that was opened closes when the crop crown and the crown beyond have grown across the
/// gap, each at R1.85, so after gap / (2 x growth) years (R1.86). The gap is not measured: it is
/// taken as the crowded crown width of the neighbour that went (R2.08), since what stood behind it
/// touched it; of several on one side the thinnest.
///
/// free     sides that are free after the work
/// gaps     neighbours that went
/// returns  0 to 0 when no more than R1.87 sides are free already; nothing when too few of the free
///          sides were opened by the work (what has nothing near it is not known to close), or when
///          the rule says that crowns do not grow
/// source   R1.85, R1.86: Trimble and Tryon 1966, Journal of Forestry 64:104-108 (from memory);
///          that the gap is the neighbour's crown is judgement
[[nodiscard]] std::optional<YearsRange> years_until_look(Sides free,
                                                         std::span<const OpenedGap> gaps,
                                                         const YearSettings& settings);

/// Years in which one gap closes. Source: R1.86.
[[nodiscard]] YearsRange years_to_close(Feet gap, const YearSettings& settings);

}  // namespace oaklight
