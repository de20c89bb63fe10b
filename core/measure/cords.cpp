#include "core/measure/cords.hpp"

#include <algorithm>
#include <array>

#include "core/base/number_text.hpp"
#include "core/measure/basal_area.hpp"

namespace oaklight {
namespace {

struct CordRow {
  double dbh;    // inches
  double cords;  // in one tree
};
// Patmos 2005, University of New Hampshire Cooperative Extension: cords to a 4-in top. Retrieved.
constexpr std::array<CordRow, 12> kCords{{{5, 0.02},
                                          {6, 0.05},
                                          {7, 0.08},
                                          {8, 0.12},
                                          {9, 0.17},
                                          {10, 0.21},
                                          {11, 0.25},
                                          {12, 0.30},
                                          {14, 0.40},
                                          {16, 0.50},
                                          {18, 0.65},
                                          {22, 1.00}}};

struct WeightRow {
  CordKind kind;
  double green, seasoned;  // pounds
};
// Wisconsin Administrative Code NR 46.30(1)(g)1, weights per cord. Retrieved.
constexpr std::array<WeightRow, 15> kWeights{{{CordKind::aspen, 4500, 4300},
                                              {CordKind::paper_birch, 4800, 4600},
                                              {CordKind::yellow_birch, 5350, 5150},
                                              {CordKind::basswood, 3850, 3650},
                                              {CordKind::red_oak, 5500, 5350},
                                              {CordKind::white_oak, 5850, 5650},
                                              {CordKind::mixed_hardwood, 5300, 4900},
                                              {CordKind::hemlock, 4800, 4650},
                                              {CordKind::white_pine, 4200, 4000},
                                              {CordKind::red_pine, 4500, 4400},
                                              {CordKind::jack_pine, 4250, 4100},
                                              {CordKind::balsam_fir, 4250, 4050},
                                              {CordKind::spruce, 4000, 3820},
                                              {CordKind::tamarack, 4650, 4450},
                                              {CordKind::cedar, 3150, 3050}}};

struct SpeciesKind {
  int fia;
  CordKind kind;
};
constexpr std::array<SpeciesKind, 12> kOwnKind{{{743, CordKind::aspen},
                                                {746, CordKind::aspen},
                                                {375, CordKind::paper_birch},
                                                {371, CordKind::yellow_birch},
                                                {951, CordKind::basswood},
                                                {261, CordKind::hemlock},
                                                {129, CordKind::white_pine},
                                                {125, CordKind::red_pine},
                                                {105, CordKind::jack_pine},
                                                {12, CordKind::balsam_fir},
                                                {71, CordKind::tamarack},
                                                {241, CordKind::cedar}}};

}  // namespace

CubicFeet stem_cubic_feet(Dbh dbh, Feet total_height) {
  return CubicFeet{0.42 * basal_area(dbh.inches()).value * total_height.value};
}

bool too_thin_for_firewood(Dbh dbh) { return dbh.inches().value < kCords.front().dbh; }

Result<Cords> firewood_cords(Dbh dbh) {
  const double d = dbh.inches().value;
  if (too_thin_for_firewood(dbh) || d > kCords.back().dbh) {
    return Error{ErrorCode::outside_table,
                 "DBH " + number_text(d, 1) + " in is outside the cord table.", "cords",
                 "Cords are told for 5 to 22 in."};
  }
  const auto above =
      std::find_if(kCords.begin(), kCords.end(), [d](const CordRow& row) { return row.dbh >= d; });
  if (above->dbh == d) return Cords{above->cords};
  const auto below = above - 1;
  const double share = (d - below->dbh) / (above->dbh - below->dbh);
  return Cords{below->cords + share * (above->cords - below->cords)};
}

Result<double> trees_per_cord(Dbh dbh) {
  const auto cords = firewood_cords(dbh);
  if (!cords) return cords.error();
  return Cords{1.0} / *cords;
}

CubicFeet pulpwood_shortcut(Dbh dbh) {
  return CubicFeet{4.0 * std::max(0.0, dbh.inches().value - 6.0)};
}

std::optional<CordKind> cord_kind(const Species& species) {
  for (const SpeciesKind& row : kOwnKind) {
    if (row.fia == species.code.fia) return row.kind;
  }
  if (species.oak_group == OakGroup::red) return CordKind::red_oak;
  if (species.oak_group == OakGroup::white) return CordKind::white_oak;
  if (species.genus() == "Picea") return CordKind::spruce;
  if (species.leaf == LeafType::hardwood) return CordKind::mixed_hardwood;
  return std::nullopt;
}

Pounds cord_weight(CordKind kind, Dryness dryness) {
  const auto row = std::find_if(kWeights.begin(), kWeights.end(),
                                [kind](const WeightRow& r) { return r.kind == kind; });
  return Pounds{dryness == Dryness::green ? row->green : row->seasoned};
}

}  // namespace oaklight
