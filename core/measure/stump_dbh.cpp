#include "core/measure/stump_dbh.hpp"

#include <array>
#include <cmath>

namespace oaklight {
namespace {

constexpr double kBreastHeightFeet = 4.5;

// Bark as a share of the diameter follows from its share of the volume: with p % of bark on the
// wood, under over over bark is 1 / sqrt(1 + p / 100). Miles and Smith 2009 print p = 10.9 for the
// maples, 11.0 birches, 9.2 cherries (0.95); 15 to 16 for chestnut, hickories and pines (0.93).
// Oaks are taken with the thick-barked ones, from memory.
constexpr std::string_view kThinSource =
    "form Raile 1982, flare from memory; bark after Miles and Smith 2009, retrieved";
constexpr std::string_view kThickSource =
    "form Raile 1982, flare from memory; bark after Miles and Smith 2009, retrieved for hickory "
    "and "
    "pine, from memory for oak and others";
constexpr StumpTaper kThinBarked{"thin-barked hardwood", 0.09, 0.06, 0.12, 0.95, kThinSource};
constexpr StumpTaper kThickBarked{"thick-barked hardwood", 0.09, 0.06, 0.12, 0.93, kThickSource};
constexpr StumpTaper kSoftwood{"softwood", 0.11, 0.07, 0.15, 0.93, kThickSource};

constexpr std::array<std::string_view, 6> kThinBarkedGenera = {"Acer",  "Betula",   "Prunus",
                                                               "Fagus", "Carpinus", "Ostrya"};

/// The trees of the paper's kind: trees of the national inventory.
constexpr Inches kThinnest{5.0};
constexpr Inches kThickest{30.0};

double widening(double flare, double height_feet) {
  return 1.0 + flare * (kBreastHeightFeet - height_feet) / (height_feet + 1.0);
}

Error no_diameter() {
  return {ErrorCode::missing_value, "The stump has no diameter.", "stump",
          "Measure it over the bark, or under it where the bark is gone."};
}

}  // namespace

const StumpTaper& stump_taper(const Species* species) {
  if (species == nullptr) return kThickBarked;
  if (species->leaf == LeafType::softwood) return kSoftwood;
  for (const std::string_view genus : kThinBarkedGenera) {
    if (species->genus() == genus) return kThinBarked;
  }
  return kThickBarked;
}

Result<StumpDbh> dbh_from_stump(const StumpReading& stump, const Species* species) {
  if (!stump.over_bark && !stump.under_bark) return no_diameter();
  const StumpTaper& taper = stump_taper(species);
  const Inches over = stump.over_bark ? stump.over_bark->inches()
                                      : Inches{stump.under_bark->inches().value / taper.bark};
  const Feet height = stump.height ? stump.height->feet() : kUsualStump;
  if (!(height.value < kBreastHeightFeet)) {
    return Error{ErrorCode::out_of_range, "The stump is as high as breast height.", "height",
                 "Check the height: it is given in feet or metres, not in inches."};
  }
  // The lower and the more flared the stump, the thinner was the tree above it.
  const Feet lowest = stump.height ? height : kLowStump;
  const Feet highest = stump.height ? height : kHighStump;
  StumpDbh found;
  found.dbh = Inches{over.value / widening(taper.flare, height.value)};
  found.low = Inches{over.value / widening(taper.flare_high, lowest.value)};
  found.high = Inches{over.value / widening(taper.flare_low, highest.value)};
  found.height_assumed = !stump.height;
  found.beyond_data = found.dbh < kThinnest || found.dbh > kThickest;
  return found;
}

}  // namespace oaklight
