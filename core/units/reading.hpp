#pragma once

#include <compare>
#include <cstdint>

#include "core/base/result.hpp"
#include "core/units/units.hpp"

namespace oaklight {

/// The units in which a crew reads its instruments; kept with each record, so that a stored reading
/// is what the tape showed and not a conversion of it.
enum class UnitSystem {
  us,      ///< DBH in inches, distances and heights in feet
  metric,  ///< DBH in centimetres, distances and heights in metres
};

/// Diameter at breast height exactly as the tape reads it: whole tenths of an inch or of a
/// centimetre. Every Dbh that exists lies in 0.1 .. 200.0 in, or 0.1 .. 508.0 cm; only from_tenths
/// can make one.
class Dbh {
 public:
  static constexpr std::int32_t kMaxTenthInches = 2000;
  static constexpr std::int32_t kMaxTenthCentimetres = 5080;

  /// Errors: out_of_range.
  static Result<Dbh> from_tenths(std::int32_t tenths, UnitSystem system);

  [[nodiscard]] constexpr std::int32_t tenths() const { return tenths_; }
  [[nodiscard]] constexpr UnitSystem system() const { return system_; }
  /// The reading in hundredths of a millimetre, a unit in which both tapes are whole numbers, so
  /// that sizes of either system are compared exactly. 0.1 in is 2.54 mm by definition.
  [[nodiscard]] constexpr std::int32_t hundredth_mm() const {
    return tenths_ * (system_ == UnitSystem::us ? 254 : 100);
  }
  /// What is computed with. One division of whole numbers, so that 25.4 cm is 10 in exactly.
  [[nodiscard]] constexpr Inches inches() const { return Inches{hundredth_mm() / 2540.0}; }
  friend constexpr bool operator==(Dbh, Dbh) = default;

 private:
  constexpr Dbh(std::int32_t tenths, UnitSystem system) : tenths_(tenths), system_(system) {}
  std::int32_t tenths_;
  UnitSystem system_;
};

/// Diameter of a stump exactly as the tape reads it, in the range of the same tape. A stump is
/// wider than its tree was at breast height, so the two readings are two types and never mix.
class StumpDiameter {
 public:
  /// Errors: out_of_range.
  static Result<StumpDiameter> from_tenths(std::int32_t tenths, UnitSystem system);

  [[nodiscard]] constexpr std::int32_t tenths() const { return tape_.tenths(); }
  [[nodiscard]] constexpr UnitSystem system() const { return tape_.system(); }
  [[nodiscard]] constexpr Inches inches() const { return tape_.inches(); }
  friend constexpr bool operator==(StumpDiameter, StumpDiameter) = default;

 private:
  constexpr explicit StumpDiameter(Dbh tape) : tape_(tape) {}
  Dbh tape_;
};

/// A distance or height exactly as taped: whole hundredths of a foot or of a metre (a centimetre).
/// Every TapedLength that exists lies in 0 .. 1000 ft or 0 .. 305 m.
class TapedLength {
 public:
  static constexpr std::int32_t kMaxHundredthFeet = 100'000;
  static constexpr std::int32_t kMaxHundredthMetres = 30'500;

  /// Errors: out_of_range.
  static Result<TapedLength> from_hundredths(std::int32_t hundredths, UnitSystem system);

  [[nodiscard]] constexpr std::int32_t hundredths() const { return hundredths_; }
  [[nodiscard]] constexpr UnitSystem system() const { return system_; }
  [[nodiscard]] constexpr Feet feet() const {
    const double shown = hundredths_ / 100.0;
    return system_ == UnitSystem::us ? Feet{shown} : to_feet(Metres{shown});
  }
  friend constexpr bool operator==(TapedLength, TapedLength) = default;

 private:
  constexpr TapedLength(std::int32_t hundredths, UnitSystem system)
      : hundredths_(hundredths), system_(system) {}
  std::int32_t hundredths_;
  UnitSystem system_;
};

}  // namespace oaklight
