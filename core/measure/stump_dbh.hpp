#pragma once

#include <optional>
#include <string_view>

#include "core/model/species.hpp"
#include "core/units/reading.hpp"

namespace oaklight {

/// How a kind of tree widens from breast height to its stump, in the form of Raile 1982:
///   over bark at height h:  DBH (1 + flare (4.5 - h) / (h + 1)), h in feet
///   under bark:             bark times that
struct StumpTaper {
  std::string_view name;  ///< of the kind: "thin-barked hardwood"
  double flare;
  double flare_low, flare_high;  ///< between which most trees of the kind lie
  double bark;                   ///< diameter under bark over diameter over bark
  std::string_view source;       ///< of the coefficients, with their status
};

/// The kind that a species belongs to; nothing known of it: the hardwoods.
[[nodiscard]] const StumpTaper& stump_taper(const Species* species);

/// What was read on a stump; at least one of the diameters.
struct StumpReading {
  std::optional<StumpDiameter> over_bark;
  std::optional<StumpDiameter> under_bark;  ///< asked only where over_bark is not known
  std::optional<TapedLength> height;        ///< of the cut above the ground
};

/// The diameter that a tree had at breast height, as its stump tells it.
struct StumpDbh {
  Inches dbh;
  Inches low, high;             ///< between which it lies for most trees of the kind
  bool height_assumed = false;  ///< nobody measured the stump's height
  bool beyond_data = false;     ///< thinner or thicker than the trees the form was made from
};

/// Height of a stump that nobody measured, and between which it then lies. Source: felling
/// specifications ask for 6 to 12 in at most (rule R6.49); the lower end is common practice.
inline constexpr Feet kUsualStump{0.5};
inline constexpr Feet kLowStump{0.25};
inline constexpr Feet kHighStump{1.0};

/// An estimate of DBH from a stump. It is no measurement: the range is wide, and a court or a
/// contract may ask for another way.
///
/// species  nullptr: not known
/// errors   missing_value without a diameter; out_of_range for a stump of 4.5 ft and higher, which
///          would reach breast height
/// source   form: Raile 1982, Estimating stump volume, USDA Forest Service Research Paper NC-224,
///          as the national inventory uses it (Woodall et al. 2011, NRS-88). Flare: from memory,
///          rounded, no row of the paper was seen. Bark: from the bark volumes of Miles and Smith
///          2009, NRS-38, for maple, birch, cherry, hickory and pine.
Result<StumpDbh> dbh_from_stump(const StumpReading& stump, const Species* species);

}  // namespace oaklight
