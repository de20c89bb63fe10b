#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/model/mark.hpp"
#include "core/release/acorns.hpp"
#include "core/release/mast.hpp"
#include "core/release/release_graph.hpp"
#include "core/release/settings.hpp"
#include "core/stand/stand_density.hpp"

namespace oaklight {

/// What the recommendation knows beside the trees: data files, read once.
struct ReleaseKnowledge {
  SpeciesTable species;
  FoodTable food;
  RuleBook rules;
  ReleaseSettings settings;  ///< of rules
};

/// Reads the two data files; rules that an older rule file lacks are the program's own. Errors: as
/// FoodTable, RuleBook and ReleaseSettings.
Result<ReleaseKnowledge> release_knowledge(SpeciesTable species, std::string_view rule_json,
                                           std::string_view food_csv);

/// What is known of the stand around the trees. Nothing (nullopt, an empty map) is "not known", and
/// a rule that needs it says so instead of guessing.
struct StandFacts {
  Goal goal = Goal::mast;
  bool grouse = false;                 ///< the owner wants ruffed grouse
  std::optional<StandDensity> before;  ///< from the plots
  bool sampled = false;  ///< `before` is an estimate from plots, not a count of all trees
  /// Where the stocking that guards count lies with 95 % confidence; nothing when one plot tells no
  /// error.
  std::optional<std::pair<Percent, Percent>> stocking_interval;
  bool within_guide = true;      ///< the upland oak guide was made for such a stand
  std::optional<Acres> covered;  ///< ground that the candidate trees stand on
  std::optional<int> age_years;
  std::optional<Feet> site_index;                     ///< oak, base age 50
  std::optional<TreesPerAcre> advance_oak;            ///< oak stems of 4.5 ft and more
  std::optional<TreesPerAcre> acceptable_crop_trees;  ///< trees that pass the crop tree filters
  std::optional<TreesPerAcre> roost_hickories;        ///< live, of the size of rule R5.20
  std::optional<TreesPerAcre> fruit_trees;            ///< soft mast, of the rank of rule X3.01
  std::map<SpeciesCode, SquareFeetPerAcre> ba_by_species;
  bool unconfirmed_lines = false;  ///< the tract has a neighbour line that nobody confirmed
};

/// How near a tree stands to lines of the map. Nothing is "not known": no such line is mapped, or
/// the tree has no position.
struct MapNearby {
  bool unplaced = false;  ///< lines are mapped, and nobody recorded where the tree stands
  std::optional<Feet> unconfirmed_line;  ///< neighbour line that nobody confirmed
  std::optional<Feet> way;               ///< road, trail or power line
};

/// Everything that one recommendation is made from.
struct ReleaseInput {
  ReleaseKnowledge knowledge;
  ReleaseGraph graph;
  StandFacts stand;
  std::map<Uuid, MapNearby> nearby;  ///< by tree; trees without a position are left out
  std::vector<AcornCount> acorns;
  std::vector<AcornYear> acorn_years;
};

/// The job that the stand needs.
enum class Treatment {
  release,
  wait,                ///< already as open as it may be
  midstory,            ///< take the trees under the canopy, so that young oaks get light
  regeneration,        ///< the question is the next stand
  too_few_crop_trees,  ///< nothing worth releasing
  no_gain,             ///< no crop tree can be released within the guards
  measure_first,       ///< the guards cannot be tested yet
};
template <>
inline constexpr auto kWords<Treatment> =
    std::to_array<Word<Treatment>>({{Treatment::release, "release"},
                                    {Treatment::wait, "wait"},
                                    {Treatment::midstory, "midstory"},
                                    {Treatment::regeneration, "regeneration"},
                                    {Treatment::too_few_crop_trees, "too_few_crop_trees"},
                                    {Treatment::no_gain, "no_gain"},
                                    {Treatment::measure_first, "measure_first"}});

struct Advice {
  Treatment treatment = Treatment::release;
  std::string text;  ///< plain sentences for the owner
  std::vector<std::string> rules;
};

/// One floor or ceiling of the stand, and where the plan leaves it.
struct GuardState {
  std::string rule;   ///< "R4.01"
  std::string name;   ///< "stocking"
  std::string unit;   ///< "%", "ft2/ac", "trees/ac"
  bool floor = true;  ///< may not fall under the limit; otherwise may not rise over it
  double limit = 0.0;
  double before = 0.0;
  double after = 0.0;
  bool holds = true;
};

/// How much light one crop crown has.
struct Light {
  int sides_free = 0;
  int sides_shared = 0;   ///< closed only by another crop tree of its pair
  int sides_unknown = 0;  ///< nobody looked, or contact is in doubt
  /// Share of the crown's edge that nothing crowds, by bearing from the stem: from crowns drawn as
  /// circles on a map, from the outlines where the crop tree's four radii were taped, else a
  /// quarter for each free side on a card.
  Percent open;
};

struct TreeVerdict {
  Uuid tree;
  std::string tag;
  Verdict verdict = Verdict::look_again;
  bool crop = false;      ///< proposed as a crop tree by the crew, or chosen on a map
  bool released = false;  ///< a crop tree that this plan releases
  std::string reason;     ///< one plain sentence
  std::string what_would_change_it;
  std::vector<std::string> rules;
  std::optional<Light> before, after;  ///< crop trees
};

/// What one step of the pipeline did, and why.
struct StepLog {
  std::string step;
  std::vector<std::string> lines;
};

/// How good the choice of trees is, in points of worth x sides freed (choose.hpp). Of the choice
/// that was tried, also where the advice is to leave the stand alone.
struct Optimality {
  bool proven = true;          ///< no choice within the guards gives more
  std::int64_t objective = 0;  ///< points of this choice
  std::int64_t bound = 0;      ///< points that no choice can pass; the objective when proven

  /// Share of the bound that may be missed at most.
  [[nodiscard]] double gap() const {
    return bound > 0 ? static_cast<double>(bound - objective) / static_cast<double>(bound) : 0.0;
  }
};

struct ReleasePlan {
  Advice advice;
  Optimality optimality;
  std::vector<TreeVerdict> trees;  ///< in the order of the graph
  std::vector<StepLog> steps;
  std::vector<GuardState> guards;               ///< of the plan; empty when they cannot be tested
  std::vector<GuardState> guards_of_full_plan;  ///< before any crop tree was dropped for a guard
  std::optional<StandDensity> before, after;
  std::string rule_version;
};

/// Recommends what happens to each tree, in the order of decisions of which a later one never
/// undoes an earlier: right job, keep list, crop trees, pairs, competitors, cut list, stand test,
/// sides after, verdicts. Hazard and season come from cautions.hpp, method and product from
/// marks.hpp.
///
/// returns  one verdict for each tree of the graph; the same for the same trees in any order
/// assumes  input.graph was built with input.knowledge.settings.contact
ReleasePlan recommend(const ReleaseInput& input);

}  // namespace oaklight
