#pragma once

#include <cmath>
#include <numbers>

#include "core/units/quantity.hpp"

namespace oaklight {

// Lengths
using Inches = Quantity<struct InchesUnit>;
using Feet = Quantity<struct FeetUnit>;
using Centimetres = Quantity<struct CentimetresUnit>;
using Metres = Quantity<struct MetresUnit>;
// Areas
using SquareFeet = Quantity<struct SquareFeetUnit>;
using SquareMetres = Quantity<struct SquareMetresUnit>;
using Acres = Quantity<struct AcresUnit>;
using Hectares = Quantity<struct HectaresUnit>;
// Wood
using BoardFeet = Quantity<struct BoardFeetUnit>;
using CubicFeet = Quantity<struct CubicFeetUnit>;
using Cords = Quantity<struct CordsUnit>;
using Kilograms = Quantity<struct KilogramsUnit>;
using Pounds = Quantity<struct PoundsUnit>;
// Counts, shares, angles
using Trees = Quantity<struct TreesUnit>;
using Percent = Quantity<struct PercentUnit>;
using Degrees = Quantity<struct DegreesUnit>;

/// Something for each acre of ground.
template <class Unit>
struct PerAcreOf {};
template <class Q>
struct PerAcreType;
template <class Unit>
struct PerAcreType<Quantity<Unit>> {
  using type = Quantity<PerAcreOf<Unit>>;
};
template <class Q>
using PerAcre = typename PerAcreType<Q>::type;

using SquareFeetPerAcre = PerAcre<SquareFeet>;
using TreesPerAcre = PerAcre<Trees>;
using BoardFeetPerAcre = PerAcre<BoardFeet>;
using CubicFeetPerAcre = PerAcre<CubicFeet>;
using CordsPerAcre = PerAcre<Cords>;

/// Per acre times acres is a total; a total over acres is per acre.
template <class Unit>
constexpr Quantity<Unit> operator*(Quantity<PerAcreOf<Unit>> density, Acres area) {
  return Quantity<Unit>{density.value * area.value};
}
template <class Unit>
constexpr Quantity<PerAcreOf<Unit>> operator/(Quantity<Unit> total, Acres area) {
  return Quantity<PerAcreOf<Unit>>{total.value / area.value};
}

// Definitions: 1 ft = 12 in = 0.3048 m and 1 in = 2.54 cm (international yard and pound, 1959);
// 1 acre = 43,560 ft2 (66 ft x 660 ft); 1 ha = 10,000 m2.
inline constexpr double kInchesPerFoot = 12.0;
inline constexpr double kMetresPerFoot = 0.3048;
inline constexpr double kCentimetresPerInch = 2.54;
inline constexpr double kSquareFeetPerAcre = 66.0 * 660.0;
inline constexpr double kSquareMetresPerHectare = 100.0 * 100.0;

constexpr Feet to_feet(Inches x) { return Feet{x.value / kInchesPerFoot}; }
constexpr Inches to_inches(Feet x) { return Inches{x.value * kInchesPerFoot}; }
constexpr Metres to_metres(Feet x) { return Metres{x.value * kMetresPerFoot}; }
constexpr Feet to_feet(Metres x) { return Feet{x.value / kMetresPerFoot}; }
constexpr Centimetres to_centimetres(Inches x) {
  return Centimetres{x.value * kCentimetresPerInch};
}
constexpr Inches to_inches(Centimetres x) { return Inches{x.value / kCentimetresPerInch}; }
constexpr SquareFeet to_square_feet(Acres x) { return SquareFeet{x.value * kSquareFeetPerAcre}; }
constexpr Acres to_acres(SquareFeet x) { return Acres{x.value / kSquareFeetPerAcre}; }
constexpr SquareMetres to_square_metres(Acres x) {
  return SquareMetres{x.value * kSquareFeetPerAcre * kMetresPerFoot * kMetresPerFoot};
}
constexpr Acres to_acres(SquareMetres x) {
  return Acres{x.value / (kSquareFeetPerAcre * kMetresPerFoot * kMetresPerFoot)};
}
constexpr Hectares to_hectares(Acres x) {
  return Hectares{to_square_metres(x).value / kSquareMetresPerHectare};
}

/// 60 % is 0.6.
constexpr double fraction(Percent x) { return x.value / 100.0; }
constexpr Percent percent(double share) { return Percent{100.0 * share}; }

inline double radians(Degrees x) { return x.value * std::numbers::pi / 180.0; }

/// Rise over run of ground or line of sight, in percent: 30 % rises 30 ft over 100 ft level.
struct Slope {
  Percent rise;

  /// Level distance over distance along the slope, cos(theta) = 1 / sqrt(1 + rise^2). Source:
  /// geometry.
  [[nodiscard]] double cosine() const {
    const double s = fraction(rise);
    return 1.0 / std::sqrt(1.0 + s * s);
  }
};

/// The slope of a line at this angle to the level; up is positive.
inline Slope slope_of(Degrees angle) { return {percent(std::tan(radians(angle)))}; }

}  // namespace oaklight
