#include "core/release/guards.hpp"

#include <algorithm>

#include "core/measure/basal_area.hpp"
#include "core/stand/stand_stocking.hpp"

namespace oaklight {
namespace {

constexpr const char* kWhite = "white oaks among the oaks";
constexpr const char* kRed = "red oaks among the oaks";

/// Sums of a few hundred terms differ from the exact figure by less than this; a stand exactly at a
/// floor must not fail it.
constexpr double kRounding = 1e-9;

StockingSums per_acre(const StockingSums& sums, Acres covered) {
  return {sums.trees / covered.value, sums.diameters / covered.value,
          sums.squared_diameters / covered.value};
}

StockingSums minus(const StockingSums& a, const StockingSums& b) {
  return {a.trees - b.trees, a.diameters - b.diameters, a.squared_diameters - b.squared_diameters};
}

double share(SquareFeetPerAcre part, SquareFeetPerAcre whole) {
  return whole.value > 0.0 ? percent(part / whole).value : 0.0;
}

GuardState floor_of(std::string rule, std::string name, std::string unit, double limit,
                    double before, double after) {
  return {std::move(rule), std::move(name), std::move(unit), true,
          limit,           before,          after,           after >= limit - kRounding};
}

GuardState ceiling_of(std::string rule, std::string name, std::string unit, double limit,
                      double after) {
  return {std::move(rule), std::move(name),           std::move(unit), false, limit, 0.0,
          after,           after <= limit + kRounding};
}

/// Guards on shares of the oaks. The limit is the rule's, or what stands there now where that is
/// less.
void add_balance(const Guards& guards, const StandDensity& after, std::vector<GuardState>& states) {
  const StandDensity& before = guards.before;
  if (before.ba_white_oak.value > 0.0 && before.ba_red_oak.value > 0.0) {
    const auto group = [&](const char* name, SquareFeetPerAcre was, SquareFeetPerAcre is) {
      const double had = share(was, before.ba_oak);
      const double limit = std::min(had, guards.limits.oak_group_min.value);
      states.push_back(
          floor_of("R3.60", name, "% of oak basal area", limit, had, share(is, after.ba_oak)));
    };
    group(kWhite, before.ba_white_oak, after.ba_white_oak);
    group(kRed, before.ba_red_oak, after.ba_red_oak);
  }
  const double oak_had = share(before.ba_oak, before.ba);
  const double oak_limit = guards.limits.oak_min.value;
  if (guards.goal == Goal::mast && oak_had >= oak_limit) {
    states.push_back(floor_of("R3.62", "oaks in the stand", "% of basal area", oak_limit, oak_had,
                              share(after.ba_oak, after.ba)));
  }
}

}  // namespace

void CutTally::take(const TreeFacts& facts, const Traits& traits, double sign) {
  if (facts.status == TreeStatus::dead) return;  // never in the sums it would come off
  const Inches dbh = facts.dbh.inches();
  const SquareFeet own = sign * basal_area(dbh);
  live.add(dbh, TreesPerAcre{sign});
  if (traits.counted) counted.add(dbh, TreesPerAcre{sign});
  ba += own;
  if (traits.is_oak()) ba_oak += own;
  if (traits.group() == OakGroup::white) ba_white_oak += own;
  if (traits.group() == OakGroup::red) ba_red_oak += own;
}

void CutTally::release(const TreeFacts& facts, double sign) {
  crops.add(facts.dbh.inches(), TreesPerAcre{sign});
}

StandDensity density_after(const Guards& guards, const CutTally& cut) {
  StandDensity after = guards.before;
  after.live = minus(after.live, per_acre(cut.live, guards.covered));
  after.guard = minus(after.guard, per_acre(cut.counted, guards.covered));
  after.ba -= cut.ba / guards.covered;
  after.ba_oak -= cut.ba_oak / guards.covered;
  after.ba_white_oak -= cut.ba_white_oak / guards.covered;
  after.ba_red_oak -= cut.ba_red_oak / guards.covered;
  return after;
}

std::vector<GuardState> check_guards(const Guards& guards, const CutTally& cut) {
  const StandDensity& before = guards.before;
  const StandDensity after = density_after(guards, cut);
  const double stocking_before = upland_oak_stocking(before.guard).value;
  const double stocking_after = upland_oak_stocking(after.guard).value;
  const StockingSums crops = per_acre(cut.crops, guards.covered);
  std::vector<GuardState> states = {
      floor_of("R4.01", "stocking", "%", guards.limits.stocking_floor.value, stocking_before,
               stocking_after),
      floor_of("R4.03", "stocking at the B line", "%", guards.limits.b_line.value, stocking_before,
               stocking_after),
      floor_of("R4.09", "basal area", "ft2/ac", guards.limits.ba_floor.value, before.ba.value,
               after.ba.value),
      ceiling_of("R4.11", "share removed", "% of basal area", guards.limits.removal_max.value,
                 share(before.ba - after.ba, before.ba)),
      ceiling_of("R1.32", "crop trees", "trees/ac", guards.counts.max.value, crops.trees),
      ceiling_of("R1.41", "crowns of the crop trees", "% of the ground",
                 guards.counts.crowns_max.value, crown_competition(crops).value),
  };
  add_balance(guards, after, states);
  return states;
}

bool all_hold(const std::vector<GuardState>& states) {
  return std::all_of(states.begin(), states.end(), [](const GuardState& s) { return s.holds; });
}

bool lacks(const GuardState& state, OakGroup group) {
  if (state.holds) return false;
  if (state.rule == "R3.60") return state.name == (group == OakGroup::white ? kWhite : kRed);
  return state.rule == "R3.62";
}

bool balance_holds(const Guards& guards, const CutTally& oaks_taken) {
  std::vector<GuardState> states;
  add_balance(guards, density_after(guards, oaks_taken), states);
  return all_hold(states);
}

}  // namespace oaklight
