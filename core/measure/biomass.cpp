#include "core/measure/biomass.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "core/base/number_text.hpp"

namespace oaklight {
namespace {

/// share of above-ground mass = exp(a + b / d), d in cm.
struct Ratio {
  double a, b;
  [[nodiscard]] double at(double d) const { return std::exp(a + b / d); }
};
struct Ratios {
  Ratio foliage, roots, bark, wood;
};
// Jenkins et al. 2003: foliage read in Fire Ecology 13(1) table 3; the others from memory.
constexpr Ratios kHardwood{
    {-4.0813, 5.8816}, {-1.6911, 0.8160}, {-2.0129, -1.6805}, {-0.3065, -5.4240}};
constexpr Ratios kSoftwood{
    {-2.9584, 4.4766}, {-1.5619, 0.6614}, {-2.0980, -1.1432}, {-0.3737, -1.8055}};

/// kg = exp(b0 + b1 ln d), d in cm, from kMinDiameter to max_cm.
struct Group {
  std::string_view name;
  double b0, b1, max_cm;
  const Ratios* ratios;
};
// Jenkins et al. 2003, from memory.
constexpr std::array<Group, 8> kGroups{
    {{"aspen_alder_cottonwood_willow", -2.2094, 2.3867, 70, &kHardwood},
     {"soft_maple_birch", -1.9123, 2.3651, 66, &kHardwood},
     {"mixed_hardwood", -2.4800, 2.4835, 56, &kHardwood},
     {"hard_maple_oak_hickory_beech", -2.0127, 2.4342, 73, &kHardwood},
     {"cedar_larch", -2.0336, 2.2592, 250, &kSoftwood},
     {"fir_hemlock", -2.5384, 2.4814, 230, &kSoftwood},
     {"pine", -2.5356, 2.4349, 180, &kSoftwood},
     {"spruce", -2.0773, 2.3323, 250, &kSoftwood}}};
// Shrubs and small woodland trees are measured at the root collar, which nobody tapes here.
constexpr std::string_view kNoEquation = "woodland";

constexpr double kMinDiameter = 2.5;  // cm

}  // namespace

Result<Biomass> dry_biomass(Dbh dbh, std::string_view group) {
  const auto found = std::find_if(kGroups.begin(), kGroups.end(),
                                  [group](const Group& g) { return g.name == group; });
  if (found == kGroups.end()) {
    if (group == kNoEquation) {
      return Error{ErrorCode::outside_table, "Woodland shrubs have no equation on DBH.", "biomass",
                   "Count their stems instead."};
    }
    return Error{ErrorCode::unknown_reference,
                 "\"" + std::string(group) + "\" is not a biomass group.", "jenkins_group",
                 "Correct the group in the species table."};
  }
  const double d = dbh.hundredth_mm() / 1000.0;
  if (d < kMinDiameter || d > found->max_cm) {
    return Error{ErrorCode::outside_table,
                 "DBH " + number_text(d, 1) + " cm is outside the biomass equation.", "biomass",
                 "It holds from " + number_text(kMinDiameter, 1) + " to " +
                     number_text(found->max_cm, 0) + " cm for this group."};
  }
  const double total = std::exp(found->b0 + found->b1 * std::log(d));
  const Ratios& r = *found->ratios;
  const double foliage = r.foliage.at(d);
  const double bark = r.bark.at(d);
  const double wood = r.wood.at(d);
  return Biomass{.above_ground = Kilograms{total},
                 .foliage = Kilograms{total * foliage},
                 .stem_wood = Kilograms{total * wood},
                 .stem_bark = Kilograms{total * bark},
                 .branches = Kilograms{total * (1.0 - foliage - bark - wood)},
                 .coarse_roots = Kilograms{total * r.roots.at(d)}};
}

}  // namespace oaklight
