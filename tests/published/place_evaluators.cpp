#include <cmath>
#include <numbers>

#include "core/place/declination.hpp"
#include "tests/published/evaluator.hpp"

namespace oaklight::test {
namespace {

MagneticField field(const Inputs& in) {
  const Position at{Degrees{number(in, "lat")}, Degrees{number(in, "lon")}};
  return magnetic_field(at, Metres{1000.0 * number(in, "height_km")}, number(in, "year"));
}

}  // namespace

Evaluators place_evaluators() {
  Evaluators all;
  all["field_north"] = [](const Inputs& in) { return field(in).north; };
  all["field_east"] = [](const Inputs& in) { return field(in).east; };
  all["field_down"] = [](const Inputs& in) { return field(in).down; };
  all["declination"] = [](const Inputs& in) {
    const MagneticField f = field(in);
    return std::atan2(f.east, f.north) * 180.0 / std::numbers::pi;
  };
  return all;
}

}  // namespace oaklight::test
