#include "core/release/crop_trees.hpp"

#include <algorithm>
#include <cmath>

namespace oaklight {
namespace {

constexpr Feet kHalfLog{8.0};  // definition of the half log in which merchantable height is read

bool wants_timber(Goal goal) { return goal == Goal::timber; }
bool wants_food(Goal goal) { return goal == Goal::mast || goal == Goal::mixed; }

bool small_food_tree(const TreeFacts& facts, const ReleaseSettings& settings) {
  return listed(settings.crop.small_food_trees, facts.species);
}

bool in_canopy(const TreeFacts& facts, Goal goal, const ReleaseSettings& settings) {
  const auto& classes = settings.crop.classes;
  if (std::find(classes.begin(), classes.end(), *facts.crown_class) != classes.end()) return true;
  return !wants_timber(goal) && facts.crown_class == CrownClass::intermediate &&
         small_food_tree(facts, settings);
}

bool at_risk(const TreeFacts& facts, const ReleaseSettings& settings) {
  return std::any_of(settings.crop.risks.begin(), settings.crop.risks.end(),
                     [&](Condition c) { return facts.conditions.has(c); });
}

/// A tight fork; twins kept as one crown pass where timber is not the goal.
bool bad_fork(const TreeFacts& facts, Goal goal) {
  const bool twins = facts.conditions.has(Condition::clump) && !wants_timber(goal);
  return facts.conditions.has(Condition::v_fork) && !twins;
}

bool bad_stem(const TreeFacts& facts, const ReleaseSettings& settings) {
  const bool short_log = facts.half_logs && kHalfLog * *facts.half_logs < settings.crop.clean_log;
  return short_log || facts.conditions.has(Condition::crooked) ||
         facts.conditions.has(Condition::epicormic);
}

bool feeds(const TreeFacts& facts, const Traits& traits, const ReleaseSettings& settings) {
  return facts.conditions.has(Condition::den) ||
         (traits.food.is_mast() && traits.food.rank >= settings.crop.food_rank_min);
}

bool sells(const Traits& traits) {
  return traits.species != nullptr && traits.species->timber_value &&
         *traits.species->timber_value != Level::low;
}

void add_goal_faults(const TreeFacts& facts, const Traits& traits, Goal goal,
                     const ReleaseSettings& settings, std::vector<CropFault>& faults) {
  if (wants_timber(goal)) {
    if (bad_stem(facts, settings)) faults.push_back(CropFault::stem);
    if (facts.dbh.inches() > settings.crop.timber_dbh_max) faults.push_back(CropFault::too_thick);
    if (!sells(traits)) faults.push_back(CropFault::sells_nothing);
  }
  const bool food = feeds(facts, traits, settings);
  if (goal == Goal::mast && !food) faults.push_back(CropFault::feeds_nothing);
  if (goal == Goal::mixed && !food && !sells(traits)) faults.push_back(CropFault::feeds_nothing);
  if (wants_food(goal) && traits.acorns.proven_poor) faults.push_back(CropFault::poor_producer);
}

/// 0 .. 1: how full and healthy the crown is, by what was recorded.
double health(const TreeFacts& facts, const CropTreeSettings& crop) {
  double lost = 0.0;
  if (facts.dieback) {
    const double range = (crop.dieback_max - crop.dieback_free).value;
    if (range > 0.0) lost = std::max(lost, (*facts.dieback - crop.dieback_free).value / range);
  }
  if (facts.live_crown) {
    const double range = (crop.live_crown_wanted - crop.live_crown_min).value;
    if (range > 0.0)
      lost = std::max(lost, (crop.live_crown_wanted - *facts.live_crown).value / range);
  }
  return 1.0 - std::clamp(lost, 0.0, 1.0);
}

double crown_score(const TreeFacts& facts, const WorthSettings& worth) {
  if (!facts.crown_class) return 0.0;
  switch (*facts.crown_class) {
    case CrownClass::open_grown:
      return worth.crown[0];
    case CrownClass::dominant:
      return worth.crown[1];
    case CrownClass::codominant:
      return worth.crown[2];
    case CrownClass::intermediate:
      return worth.crown[3];
    case CrownClass::overtopped:
      break;
  }
  return 0.0;
}

double timber_score(const Traits& traits, const WorthSettings& worth) {
  if (traits.species == nullptr || !traits.species->timber_value) return worth.timber[3];
  return worth.timber[static_cast<std::size_t>(*traits.species->timber_value)];
}

/// The acorn group that holds less; none when the stand is not measured or the groups are even.
OakGroup scarcer_group(const StandFacts& stand) {
  if (!stand.before) return OakGroup::none;
  if (stand.before->ba_white_oak < stand.before->ba_red_oak) return OakGroup::white;
  if (stand.before->ba_red_oak < stand.before->ba_white_oak) return OakGroup::red;
  return OakGroup::none;
}

}  // namespace

std::vector<CropFault> crop_faults(const TreeFacts& facts, const Traits& traits, Goal goal,
                                   const ReleaseSettings& settings) {
  const CropTreeSettings& crop = settings.crop;
  if (facts.status == TreeStatus::dead) return {CropFault::dead};
  std::vector<CropFault> faults;
  if (!traits.known_species()) faults.push_back(CropFault::species_unknown);
  if (!facts.crown_class) {
    faults.push_back(CropFault::crown_class_unknown);
  } else if (!in_canopy(facts, goal, settings)) {
    faults.push_back(CropFault::crown_class);
  }
  if (facts.live_crown && *facts.live_crown < crop.live_crown_min) {
    faults.push_back(CropFault::live_crown);
  }
  if (facts.dieback && *facts.dieback >= crop.dieback_max) faults.push_back(CropFault::dieback);
  if (bad_fork(facts, goal)) faults.push_back(CropFault::fork);
  if (facts.conditions.has(Condition::high_joint)) faults.push_back(CropFault::sprout);
  if (at_risk(facts, settings)) faults.push_back(CropFault::risk);
  const bool small = small_food_tree(facts, settings);
  if (!small && facts.dbh.inches() < crop.dbh_min) faults.push_back(CropFault::too_thin);
  if (!small && facts.height && facts.height->feet() < crop.height_min) {
    faults.push_back(CropFault::too_low);
  }
  if (traits.invasive()) faults.push_back(CropFault::invasive);
  add_goal_faults(facts, traits, goal, settings, faults);
  return faults;
}

int crop_worth(const TreeFacts& facts, const Traits& traits, Goal goal, OakGroup scarce_group,
               const ReleaseSettings& settings) {
  constexpr double kTopFoodRank = 10.0;
  constexpr double kWhole = 100.0;  // percent
  const WorthSettings& worth = settings.worth;
  const WorthWeights& w = worth.weights(goal);
  const double size =
      std::min(1.0, facts.dbh.inches().value / std::max(worth.full_size.value, 1.0));
  const bool scarce = scarce_group != OakGroup::none && traits.group() == scarce_group;
  const double producer = worth.producer[static_cast<std::size_t>(traits.acorns.producer)];
  const double points = w.food * traits.food.rank / kTopFoodRank + w.producer * producer / kWhole +
                        w.crown * crown_score(facts, worth) / kWhole + w.size * size +
                        w.timber * timber_score(traits, worth) / kWhole +
                        w.health * health(facts, settings.crop) + (scarce ? w.scarcity : 0.0);
  return std::max(1, static_cast<int>(std::lround(points)));
}

CropTrees crop_trees(const ReleaseInput& input, const std::vector<Traits>& traits) {
  const ReleaseSettings& settings = input.knowledge.settings;
  const auto& trees = input.graph.trees();
  const Goal goal = input.stand.goal;
  const OakGroup scarce = scarcer_group(input.stand);
  CropTrees result;
  result.worth.assign(trees.size(), 0);
  result.faults.resize(trees.size());
  for (std::uint32_t i = 0; i < trees.size(); ++i) {
    if (!trees[i].proposed) continue;
    result.faults[i] = crop_faults(trees[i].facts, traits[i], goal, settings);
    if (trees[i].facts.conditions.has(Condition::line_tree)) continue;  // not ours to release
    if (!result.faults[i].empty()) continue;
    result.worth[i] = crop_worth(trees[i].facts, traits[i], goal, scarce, settings);
    result.ranked.push_back(i);
  }
  // Trees are in the order of tag and id, so a stable sort settles ties by them.
  std::stable_sort(
      result.ranked.begin(), result.ranked.end(),
      [&](std::uint32_t a, std::uint32_t b) { return result.worth[a] > result.worth[b]; });
  return result;
}

FaultWords words_of(CropFault fault) {
  switch (fault) {
    case CropFault::dead:
      return {"it is dead", {"R1.58"}};
    case CropFault::species_unknown:
      return {"its species is not known", {"R1.13"}};
    case CropFault::crown_class_unknown:
      return {"its place in the canopy is not recorded", {"R1.02"}};
    case CropFault::crown_class:
      return {"its crown is below the main canopy", {"R1.02", "R1.04"}};
    case CropFault::live_crown:
      return {"its live crown is too short", {"R1.06"}};
    case CropFault::dieback:
      return {"too much of its crown is dying back", {"R1.08"}};
    case CropFault::fork:
      return {"its fork is tight and may split", {"R1.09"}};
    case CropFault::sprout:
      return {"it sprang from high up on an old stump, whose rot goes into it", {"R6.60"}};
    case CropFault::stem:
      return {"its stem holds no straight, clean log", {"R1.10", "R4.23"}};
    case CropFault::risk:
      return {"its stem or roots are failing", {"R1.12"}};
    case CropFault::too_thin:
      return {"it is too thin for a first release", {"R1.19"}};
    case CropFault::too_low:
      return {"it is not tall enough yet", {"R1.18"}};
    case CropFault::too_thick:
      return {"it is too thick to repay a release with timber", {"R1.20"}};
    case CropFault::feeds_nothing:
      return {"it bears neither nuts nor fruit worth releasing", {"R1.13", "X3.03"}};
    case CropFault::sells_nothing:
      return {"its species has little timber value", {"R1.10"}};
    case CropFault::invasive:
      return {"it is invasive", {"R6.01"}};
    case CropFault::poor_producer:
      return {"it bore few acorns in every surveyed autumn, a good one among them",
              {"R3.36", "R3.39"}};
  }
  return {};
}

}  // namespace oaklight
