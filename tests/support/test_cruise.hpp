#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/mark.hpp"

namespace oaklight::test {

/// Puts a cruise together record by record, with ids that rise in the order of the calls.
class TestCruise {
 public:
  explicit TestCruise(Design design = PointDesign{});

  StandId stand(const std::string& name, double acres);
  PlotId plot(StandId stand, PlotStatus status = PlotStatus::measured);
  Tree& tree(PlotId plot, int fia, double dbh_in);
  Regen& regen(PlotId plot, int fia, RegenHeight height, int count);
  /// A second cruise; plots that follow belong to it.
  Cruise& next_cruise(Design design);

  TractData data;

 private:
  std::uint32_t last_ = 0;
};

/// White oak 802, northern red oak 833, black oak 837, hickory 400, red maple 316, sugar maple 318,
/// yellow-poplar 621, beech 531; all but beech and red maple sawn from 11 in.
SpeciesTable test_species();

/// The invented cruise of tests/golden/oracle.
struct OracleCruise {
  TractData data;
  std::vector<std::string> letters;               ///< "WO" ..., by tree
  std::vector<std::optional<double>> cubic_feet;  ///< by tree
  std::vector<bool> measured;                     ///< by plot: volumes were taken
};
OracleCruise read_oracle_points();  ///< stands A, B, C
OracleCruise read_oracle_fixed();   ///< stand D
/// The second visit to A, B and C. No cubic feet there.
OracleCruise read_oracle_later();
/// "WO" is 802. 0 for letters that are not in the cruise.
int fia_of(const std::string& letters);

}  // namespace oaklight::test
