#pragma once

#include <cmath>

#include "core/units/reading.hpp"

namespace oaklight::test {

/// Readings written as a person says them; a value outside the type's range is a bug of the test.
inline Dbh dbh_in(double inches) {
  return Dbh::from_tenths(static_cast<std::int32_t>(std::lround(inches * 10)), UnitSystem::us)
      .value();
}
inline Dbh dbh_cm(double centimetres) {
  return Dbh::from_tenths(static_cast<std::int32_t>(std::lround(centimetres * 10)),
                          UnitSystem::metric)
      .value();
}
inline StumpDiameter stump_in(double inches) {
  return StumpDiameter::from_tenths(static_cast<std::int32_t>(std::lround(inches * 10)),
                                    UnitSystem::us)
      .value();
}
inline StumpDiameter stump_cm(double centimetres) {
  return StumpDiameter::from_tenths(static_cast<std::int32_t>(std::lround(centimetres * 10)),
                                    UnitSystem::metric)
      .value();
}
inline TapedLength tape_ft(double feet) {
  return TapedLength::from_hundredths(static_cast<std::int32_t>(std::lround(feet * 100)),
                                      UnitSystem::us)
      .value();
}
inline TapedLength tape_m(double metres) {
  return TapedLength::from_hundredths(static_cast<std::int32_t>(std::lround(metres * 100)),
                                      UnitSystem::metric)
      .value();
}

}  // namespace oaklight::test
