#include "core/units/reading.hpp"

#include "core/base/number_text.hpp"

namespace oaklight {

Result<Dbh> Dbh::from_tenths(std::int32_t tenths, UnitSystem system) {
  const bool us = system == UnitSystem::us;
  const std::int32_t top = us ? kMaxTenthInches : kMaxTenthCentimetres;
  if (tenths < 1 || tenths > top) {
    const std::string unit = us ? " in" : " cm";
    return Error{ErrorCode::out_of_range,
                 "DBH " + number_text(tenths / 10.0, 1) + unit + " is outside 0.1 to " +
                     number_text(top / 10.0, 1) + unit + ".",
                 "dbh", "Check the decimal point."};
  }
  return Dbh{tenths, system};
}

Result<StumpDiameter> StumpDiameter::from_tenths(std::int32_t tenths, UnitSystem system) {
  const auto tape = Dbh::from_tenths(tenths, system);
  if (tape) return StumpDiameter{*tape};
  Error error = tape.error();
  error.what.replace(0, std::string("DBH").size(), "Stump diameter");
  error.where = "stump";
  return error;
}

Result<TapedLength> TapedLength::from_hundredths(std::int32_t hundredths, UnitSystem system) {
  const bool us = system == UnitSystem::us;
  const std::int32_t top = us ? kMaxHundredthFeet : kMaxHundredthMetres;
  if (hundredths < 0 || hundredths > top) {
    const std::string unit = us ? " ft" : " m";
    return Error{ErrorCode::out_of_range,
                 "Length " + number_text(hundredths / 100.0, 2) + unit + " is outside 0 to " +
                     number_text(top / 100.0, 0) + unit + ".",
                 "", "Check the decimal point."};
  }
  return TapedLength{hundredths, system};
}

}  // namespace oaklight
