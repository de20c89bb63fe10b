#include "core/release/keep_list.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/release/cautions.hpp"

namespace oaklight {
namespace {

/// Share of the stand's basal area in this species; nothing when it is not known.
std::optional<Percent> share_of(SpeciesCode code, const StandFacts& stand) {
  if (!stand.before || stand.before->ba.value <= 0.0) return std::nullopt;
  const auto it = stand.ba_by_species.find(code);
  if (it == stand.ba_by_species.end()) return std::nullopt;
  return percent(it->second / stand.before->ba);
}

bool keeps_roost_hickory(const TreeFacts& facts, const StandFacts& stand,
                         const KeepSettings& keep) {
  return listed(keep.roost_hickory_species, facts.species) &&
         facts.dbh.inches() > keep.roost_hickory_above &&
         !(stand.roost_hickories && *stand.roost_hickories > keep.roost_hickories);
}

/// What one tree's own record says, strongest first.
Keep own_reason(const TreeFacts& facts, const Traits& traits, const StandFacts& stand,
                const KeepSettings& keep) {
  const Inches dbh = facts.dbh.inches();
  const auto has = [&](Condition c) { return facts.conditions.has(c); };
  if (has(Condition::line_tree)) return Keep::line;
  if (facts.status == TreeStatus::dead) return Keep::dead;
  if (has(Condition::nest)) return Keep::nest;
  if (has(Condition::den)) return Keep::den;
  if (traits.invasive()) return Keep::no;
  if (has(Condition::legacy)) return Keep::legacy;
  if (traits.food.always_keep) return Keep::rare_species;
  if (has(Condition::cavity_high) && dbh >= keep.cavity_from) return Keep::hollow;
  if (has(Condition::cavity_low) && dbh >= keep.any_hollow_from) return Keep::hollow;
  if (has(Condition::roost_bark) && dbh >= keep.cavity_from) return Keep::bark_plates;
  if (keeps_roost_hickory(facts, stand, keep)) return Keep::roost_hickory;
  if (facts.live_crown && *facts.live_crown < keep.snag_live_crown) return Keep::nearly_dead;
  if (has(Condition::bank_tree)) return Keep::bank;
  const auto share = share_of(facts.species, stand);
  if (share && *share < keep.scarce_below && traits.food.rank >= keep.scarce_rank) {
    return Keep::scarce_species;
  }
  return Keep::no;
}

/// Trees that a quota asks for on the ground covered; all of them where the ground is not known.
std::size_t quota(TreesPerAcre wanted, const StandFacts& stand, std::size_t all) {
  if (!stand.covered) return all;
  constexpr double kSlack = 1e-9;  // 30 an acre on 0.1 ac is 3, not 4
  return static_cast<std::size_t>(std::ceil(wanted.value * stand.covered->value - kSlack));
}

/// Gives `reason` to the largest of `trees`, `count` of them, unless they are kept already.
void keep_largest(const ReleaseGraph& graph, std::vector<std::size_t> trees, std::size_t count,
                  Keep reason, std::vector<Keep>& keeps) {
  std::stable_sort(trees.begin(), trees.end(), [&](std::size_t a, std::size_t b) {
    return graph.trees()[a].facts.dbh.inches() > graph.trees()[b].facts.dbh.inches();
  });
  for (std::size_t i = 0; i < std::min(count, trees.size()); ++i) {
    if (keeps[trees[i]] == Keep::no) keeps[trees[i]] = reason;
  }
}

void keep_big_old(const ReleaseInput& input, const std::vector<Traits>& traits,
                  std::vector<Keep>& keeps) {
  const KeepSettings& keep = input.knowledge.settings.keep;
  std::vector<std::size_t> big;
  for (std::size_t i = 0; i < keeps.size(); ++i) {
    const TreeFacts& facts = input.graph.trees()[i].facts;
    if (facts.status == TreeStatus::live && !traits[i].invasive() &&
        facts.dbh.inches() > keep.legacy_above) {
      big.push_back(i);
    }
  }
  const std::size_t count = quota(keep.legacy, input.stand, big.size());
  keep_largest(input.graph, std::move(big), count, Keep::big_old, keeps);
}

void keep_fruit(const ReleaseInput& input, const std::vector<Traits>& traits,
                std::vector<Keep>& keeps) {
  const KeepSettings& keep = input.knowledge.settings.keep;
  std::vector<std::size_t> fruit;
  for (std::size_t i = 0; i < keeps.size(); ++i) {
    const Food& food = traits[i].food;
    if (input.graph.trees()[i].facts.status == TreeStatus::live && food.kind == FoodKind::soft &&
        food.rank >= keep.food_tree_rank) {
      fruit.push_back(i);
    }
  }
  std::size_t count = quota(keep.fruit_trees, input.stand, fruit.size());
  if (input.stand.fruit_trees && input.stand.covered) {
    // Fruit trees that the cards do not show stay anyway and count for the quota.
    const double on_ground = (*input.stand.fruit_trees * *input.stand.covered).value;
    const double others = std::max(0.0, on_ground - static_cast<double>(fruit.size()));
    count = static_cast<std::size_t>(std::max(0.0, std::ceil(static_cast<double>(count) - others)));
  }
  keep_largest(input.graph, std::move(fruit), count, Keep::fruit, keeps);
}

/// Whether killing the tree standing could hurt somebody: an ash loses its top early, and a hollow
/// stem folds during the cut (cautions GIRDLE_ASH, GIRDLE_HOLLOW and GIRDLE_TARGET).
bool unsafe_to_kill_standing(const ReleaseInput& input, std::size_t tree, const Traits& traits) {
  const Conditions& seen = input.graph.trees()[tree].facts.conditions;
  return traits.is_ash() || seen.has(Condition::cavity_low) || seen.has(Condition::cavity_high) ||
         seen.has(Condition::conk) || target_in_reach(input, tree);
}

/// Whether the tree may stand on the neighbour's side of a line that nobody confirmed.
bool may_be_the_neighbours(const ReleaseInput& input, const Uuid& tree) {
  const auto near = input.nearby.find(tree);
  if (near == input.nearby.end()) return false;
  if (near->second.unplaced) return input.stand.unconfirmed_lines;
  return near->second.unconfirmed_line &&
         *near->second.unconfirmed_line < input.knowledge.settings.keep.unconfirmed_line;
}

}  // namespace

std::vector<Keep> keep_list(const ReleaseInput& input, const std::vector<Traits>& traits) {
  std::vector<Keep> keeps;
  keeps.reserve(traits.size());
  for (std::size_t i = 0; i < traits.size(); ++i) {
    keeps.push_back(own_reason(input.graph.trees()[i].facts, traits[i], input.stand,
                               input.knowledge.settings.keep));
    if (keeps.back() == Keep::bank && unsafe_to_kill_standing(input, i, traits[i])) {
      keeps.back() = Keep::bank_for_good;
    }
    if (may_be_the_neighbours(input, input.graph.trees()[i].id)) keeps.back() = Keep::unsure_line;
  }
  keep_big_old(input, traits, keeps);
  keep_fruit(input, traits, keeps);
  return keeps;
}

bool target_in_reach(const ReleaseInput& input, std::size_t tree) {
  const ReleaseTree& record = input.graph.trees()[tree];
  const Conditions& seen = record.facts.conditions;
  if (seen.has(Condition::road_near) || seen.has(Condition::wire_near) ||
      seen.has(Condition::building_near)) {
    return true;
  }
  const auto near = input.nearby.find(record.id);
  if (near == input.nearby.end()) return false;
  if (near->second.unplaced) return true;
  if (!near->second.way) return false;
  const Feet height = record.facts.height ? record.facts.height->feet()
                                          : input.knowledge.settings.cautions.default_height;
  return *near->second.way < height * input.knowledge.settings.removal.standing_lengths;
}

KeepWords words_of(Keep keep) {
  switch (keep) {
    case Keep::no:
      break;
    case Keep::dead:
      return {"is dead, so it takes no light, and it houses birds and bats",
              {"R1.58", "R5.03", "R5.21"},
              "Only a real hazard would bring it down, and then by a trained feller or a machine."};
    case Keep::nearly_dead:
      return {"is nearly dead and serves as a snag",
              {"R5.16", "R5.21"},
              "A second look that finds a full live crown would."};
    case Keep::den:
      return {"is a den tree", {"R5.08"}, "Only an empty den, found so in every season, would."};
    case Keep::nest:
      return {"holds a nest", {"R5.08"}, "A nest that is given up for good would."};
    case Keep::hollow:
      return {"is hollow, and hollow trees are scarce homes",
              {"R5.05", "R5.10"},
              "A second look that finds no hollow would."};
    case Keep::bark_plates:
      return {"has loose bark plates where bats may roost",
              {"R5.05", "R5.21"},
              "A second look that finds tight bark would."};
    case Keep::roost_hickory:
      return {"is a shaggy hickory: bats roost under its bark, and its nuts feed squirrels",
              {"R5.20"},
              "Plots that show plenty of such hickories an acre would."};
    case Keep::legacy:
      return {"is a tree that the owner keeps", {"R5.12"}, "Only the owner's word would."};
    case Keep::big_old:
      return {"is one of the few big old trees of the place",
              {"R5.12"},
              "More trees of its size on the same ground would."};
    case Keep::rare_species:
      return {"belongs to a species that has become rare",
              {"R5.32"},
              "Nothing short of its death would."};
    case Keep::scarce_species:
      return {"belongs to a species that is scarce in this stand",
              {"R5.32"},
              "Plots that show more of its species would."};
    case Keep::fruit:
      return {"is one of the few fruit trees to keep",
              {"R3.68"},
              "More fruit trees on the same ground would."};
    case Keep::bank:
      return {"stands on the bank of a stream, and its roots hold it",
              {"R5.41"},
              "A crop tree that finds its light in no other way would, killed standing so that the "
              "roots stay."};
    case Keep::bank_for_good:
      return {
          "stands on the bank of a stream, its roots hold it, and it could not be killed "
          "standing without danger",
          {"R5.41", "X6.02"},
          "Nothing short of a forester's own plan for the bank would."};
    case Keep::line:
      return {"stands on a property line and belongs to two owners",
              {"X5.01"},
              "A written word from both owners would."};
    case Keep::unsure_line:
      return {"may stand so near a line that nobody confirmed that it is the neighbor's",
              {"X5.03"},
              "A line that is surveyed, or agreed with the neighbour, would."};
  }
  return {};
}

}  // namespace oaklight
