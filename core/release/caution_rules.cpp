// When each caution applies. One row of kRules is one code of forms/hazard_cautions.csv; the words
// of its column applies_when say the same for people.
#include <algorithm>
#include <array>
#include <cmath>

#include "core/release/cautions.hpp"

namespace oaklight {
namespace {

bool has(const TreeCase& tree, Condition condition) { return tree.facts.conditions.has(condition); }

bool is_genus(const TreeCase& tree, std::string_view genus) {
  return tree.species.genus() == genus;
}

bool is_live(const TreeFacts& facts) { return facts.status == TreeStatus::live; }

bool over(std::optional<Percent> share, Percent limit) { return share && *share > limit; }

/// Height as far as it is known.
std::optional<Feet> height_of(const TreeFacts& facts) {
  return facts.height ? std::optional(facts.height->feet()) : std::nullopt;
}

bool in_reach(const TreeCase& tree, std::optional<Feet> distance) {
  return distance && *distance <= two_lengths(height_of(tree.facts), tree.limits);
}

/// Either tree may bring the other down, so the taller one sets the distance.
bool in_reach(const TreeCase& tree, const std::vector<NearTree>& others) {
  return std::any_of(others.begin(), others.end(), [&](const NearTree& other) {
    return in_reach(tree, other.distance) ||
           other.distance <= two_lengths(other.height, tree.limits);
  });
}

bool wire_in_reach(const TreeCase& tree) {
  return has(tree, Condition::wire_near) || in_reach(tree, tree.around.power_line);
}

bool way_in_reach(const TreeCase& tree) {
  return has(tree, Condition::road_near) || in_reach(tree, tree.around.way);
}

bool target_in_reach(const TreeCase& tree) {
  return wire_in_reach(tree) || way_in_reach(tree) || has(tree, Condition::building_near);
}

bool is_hollow(const TreeCase& tree) {
  return has(tree, Condition::cavity_low) || has(tree, Condition::cavity_high) ||
         has(tree, Condition::den);
}

/// Where bats may spend the day. A tree with under a tenth of live crown counts as a snag (agency
/// guideline for Indiana bat summer habitat, retrieved).
bool offers_roost(const TreeCase& tree) {
  const auto crown = tree.facts.live_crown;
  return is_hollow(tree) || has(tree, Condition::roost_bark) || has(tree, Condition::crack) ||
         has(tree, Condition::dead_top) || !is_live(tree.facts) ||
         (crown && *crown < tree.limits.snag_live_crown);
}

bool is_girdled(const TreeCase& tree) { return tree.plan.method == Method::girdle; }

bool is_sick_ash(const TreeCase& tree) {
  const auto dieback = tree.facts.dieback;
  const bool thin = dieback && *dieback >= tree.limits.ash_sick && *dieback <= tree.limits.ash_dead;
  return is_genus(tree, "Fraxinus") && is_live(tree.facts) &&
         (thin || has(tree, Condition::borer_signs)) &&
         !is_dead_ash(tree.facts, tree.species, tree.limits);
}

/// A live ash at whose crown nobody looked, or nobody wrote it down.
bool is_unseen_ash(const TreeCase& tree) {
  return is_genus(tree, "Fraxinus") && is_live(tree.facts) && !tree.facts.dieback;
}

bool splits_with_ease(const TreeCase& tree) {
  return is_genus(tree, "Fraxinus") || is_genus(tree, "Carya") || is_genus(tree, "Prunus") ||
         is_genus(tree, "Robinia");
}

bool on_slope(const TreeCase& tree) {
  return tree.around.slope && *tree.around.slope >= tree.limits.sloped &&
         *tree.around.slope <= tree.limits.steep;
}

bool near_water(const TreeCase& tree) {
  return has(tree, Condition::bank_tree) ||
         (tree.around.stream && *tree.around.stream < tree.limits.stream_buffer);
}

using OfTree = bool (*)(const TreeCase&);
using OfJob = bool (*)(const JobFacts&);

/// A rule with what decides it; of the two functions at most one is there.
struct Row {
  CautionRule rule;
  OfTree of_tree = nullptr;
  OfJob of_job = nullptr;
};

template <Condition condition>
bool shows(const TreeCase& tree) {
  return has(tree, condition);
}

constexpr Row tree_rule(std::string_view code, OfTree applies) {
  return {{code, CautionUse::tree, ""}, applies, nullptr};
}
constexpr Row job_rule(std::string_view code, OfJob applies) {
  return {{code, CautionUse::job, ""}, nullptr, applies};
}
constexpr Row day_rule(std::string_view code) { return {{code, CautionUse::day, ""}}; }
constexpr Row look_rule(std::string_view code, std::string_view reason) {
  return {{code, CautionUse::look, reason}};
}
constexpr Row unused_rule(std::string_view code, std::string_view reason) {
  return {{code, CautionUse::unused, reason}};
}

constexpr std::string_view kMulti = "MULTI";
constexpr std::string_view kNearDeadAsh = "NEAR_DEAD_ASH";
constexpr std::string_view kNoHingeCut = "no method of the program is a hinge cut";
constexpr std::string_view kNoHerbicide = "the program plans no herbicide";

constexpr auto kRules = std::to_array<Row>({
    // What the tree itself shows
    tree_rule("DEAD_ASH",
              [](const TreeCase& t) { return is_dead_ash(t.facts, t.species, t.limits); }),
    tree_rule("ASH_SICK", is_sick_ash),
    tree_rule("ASH_UNSEEN", is_unseen_ash),
    tree_rule("DEAD_TREE",
              [](const TreeCase& t) { return !is_live(t.facts) && !is_genus(t, "Fraxinus"); }),
    tree_rule("BROKEN_TOP", shows<Condition::broken_top>),
    tree_rule("WIDOWMAKER",
              [](const TreeCase& t) {
                return has(t, Condition::loose_limb) || t.around.loose_limb_beside;
              }),
    tree_rule("DEAD_TOP", shows<Condition::dead_top>),
    tree_rule("LOOSE_BARK", shows<Condition::roost_bark>),
    tree_rule("CAVITY_BUTT", shows<Condition::cavity_low>),
    tree_rule("CAVITY_HIGH",
              [](const TreeCase& t) {
                return has(t, Condition::cavity_high) ||
                       (has(t, Condition::den) && !has(t, Condition::cavity_low));
              }),
    tree_rule("ROT_CONK", shows<Condition::conk>),
    tree_rule("ROOT_LIFT", shows<Condition::root_lift>),
    tree_rule("CRACK_SPLIT", shows<Condition::crack>),
    tree_rule("CANKER_HINGE",
              [](const TreeCase& t) {
                return has(t, Condition::canker) || has(t, Condition::basal_wound);
              }),
    tree_rule("FIRE_LIGHTNING", shows<Condition::lightning>),
    tree_rule("LEAN_10", shows<Condition::lean_10>),
    tree_rule("LEAN_15", shows<Condition::lean_15>),
    tree_rule(
        "FORKED",
        [](const TreeCase& t) { return has(t, Condition::v_fork) || has(t, Condition::u_fork); }),
    tree_rule("CLUMP", shows<Condition::clump>),
    tree_rule("VINES_TIED", shows<Condition::vines_across>),
    tree_rule("VINES_OWN",
              [](const TreeCase& t) {
                return has(t, Condition::vines) && !has(t, Condition::vines_across);
              }),
    tree_rule("HUNG_IN", shows<Condition::hung_tree>),
    tree_rule("DBH_24",
              [](const TreeCase& t) { return t.facts.dbh.inches() >= t.limits.very_large; }),
    tree_rule("DBH_18",
              [](const TreeCase& t) {
                const Inches dbh = t.facts.dbh.inches();
                return dbh >= t.limits.large && dbh < t.limits.very_large;
              }),
    tree_rule("SPLIT_SPECIES", splits_with_ease),
    tree_rule("METAL", shows<Condition::metal>),
    tree_rule("LINE_TREE", shows<Condition::line_tree>),
    tree_rule("SHAGBARK",
              [](const TreeCase& t) { return t.species.scientific_name == "Carya ovata"; }),
    tree_rule("NEST", shows<Condition::nest>),
    tree_rule("OAK_WILTED",
              [](const TreeCase& t) { return t.species.is_oak() && has(t, Condition::wilt); }),
    tree_rule("BAT_TREE",
              [](const TreeCase& t) { return t.plan.bats_may_roost && offers_roost(t); }),
    tree_rule("DEN_TREE",
              [](const TreeCase& t) { return has(t, Condition::den) && !target_in_reach(t); }),
    // What is around it
    tree_rule(kNearDeadAsh, [](const TreeCase& t) { return in_reach(t, t.around.dead_ashes); }),
    tree_rule("HUNG_NEAR", [](const TreeCase& t) { return in_reach(t, t.around.hung_trees); }),
    tree_rule("SLOPE_35", [](const TreeCase& t) { return over(t.around.slope, t.limits.steep); }),
    tree_rule("SLOPE_15", on_slope),
    tree_rule("NO_SLOPE", [](const TreeCase& t) { return !t.around.slope; }),
    tree_rule("NO_PLACE", [](const TreeCase& t) { return t.around.unplaced; }),
    tree_rule("POWER_LINE", wire_in_reach),
    tree_rule("ROAD_TRAIL", way_in_reach),
    tree_rule("BUILDING", shows<Condition::building_near>),
    tree_rule("STREAM", near_water),
    tree_rule("NEAR_LINE",
              [](const TreeCase& t) {
                const auto line = t.around.unconfirmed_line;
                return line && *line < t.limits.line;
              }),
    // What is planned for it
    tree_rule("GIRDLE_TARGET",
              [](const TreeCase& t) { return is_girdled(t) && target_in_reach(t); }),
    tree_rule("GIRDLE_ASH",
              [](const TreeCase& t) { return is_girdled(t) && is_genus(t, "Fraxinus"); }),
    tree_rule("GIRDLE_HOLLOW",
              [](const TreeCase& t) {
                return is_girdled(t) && (is_hollow(t) || has(t, Condition::conk));
              }),
    tree_rule("GIRDLE_DEPTH", is_girdled),
    // Counted from the others, in every_caution_for
    tree_rule(kMulti, nullptr),

    // The whole job
    job_rule("OAK_WILT_DATE", [](const JobFacts& j) { return j.oak_wilt_season; }),
    job_rule("OAK_BARK", [](const JobFacts& j) { return j.keep_trees; }),
    job_rule("FIREWOOD_MOVE", [](const JobFacts& j) { return j.firewood; }),
    job_rule("ASH_WOOD", [](const JobFacts& j) { return j.ash; }),
    job_rule("INVASIVE_SEED", [](const JobFacts& j) { return j.invasive_plants; }),
    // States with a regulated area: notice of 2018 (retrieved); SC from memory.
    job_rule("ALB_AREA",
             [](const JobFacts& j) {
               return j.state == "MA" || j.state == "NY" || j.state == "OH" || j.state == "SC";
             }),
    job_rule("HIRE_CHECK", [](const JobFacts&) { return true; }),
    job_rule("PERMIT", [](const JobFacts&) { return true; }),

    // The start of each day
    day_rule("ALONE"),
    day_rule("UNTRAINED"),
    day_rule("NO_GEAR"),
    day_rule("MINOR"),
    day_rule("CREW_CLOSE"),
    day_rule("WIND"),
    day_rule("STORM"),
    day_rule("SNOW_ICE"),
    day_rule("BAD_EXIT"),
    day_rule("NO_SIGNAL"),

    // Needs a fact that nobody records yet
    look_rule("GIRDLED_OLD", "no field for trees killed in earlier years"),
    look_rule("SPRING_POLE", "loaded wood appears as the work goes on"),
    look_rule("ROOT_WAD", "fallen trees are not recorded"),
    look_rule("LEAN_TARGET",
              "the direction of a lean is not recorded; a target in reach is a stop "
              "by itself"),
    look_rule("CROWN_LOCK", "crowns that touch are recorded, limbs that interlock are not"),
    look_rule("NO_LANE", "lanes to fall into are not recorded"),
    look_rule("BAR_SHORT", "the saw is the reader's"),
    look_rule("HUNT_STAND", "not told apart from buildings, whose caution is printed"),
    look_rule("EASEMENT", "easements are not mapped"),
    look_rule("CULTURAL", "old sites are not mapped, so that no list shows where they are"),
    look_rule("WETLAND", "seeps and pools are not mapped"),
    look_rule("BAT_CAVE", "caves and mines are not mapped"),
    look_rule("EAGLE", "eagle nests are not mapped"),
    look_rule("STINGING", "bees and wasps come and go"),
    look_rule("POISON_IVY", "vines are recorded without their kind"),
    look_rule("FENCE", "fences are not mapped"),
    look_rule("EGG_MASS", "insect eggs come and go"),

    // Work that the program does not plan
    unused_rule("HINGE_CUT_10", kNoHingeCut),
    unused_rule("HINGE_CUT", kNoHingeCut),
    unused_rule("HERB_LABEL", kNoHerbicide),
    unused_rule("HERB_HIRE", kNoHerbicide),
    unused_rule("HERB_FLASH", kNoHerbicide),
    unused_rule("HERB_WATER", kNoHerbicide),
});

constexpr auto kCautionRules = [] {
  std::array<CautionRule, kRules.size()> rules{};
  for (std::size_t i = 0; i < kRules.size(); ++i) rules[i] = kRules[i].rule;
  return rules;
}();

/// The rule of a table entry; CautionTable::read saw to it that there is one.
const Row& row_of(const CautionEntry& entry) {
  return *std::find_if(kRules.begin(), kRules.end(),
                       [&](const Row& row) { return row.rule.code == entry.caution.code; });
}

/// " It is tree 248." for the dead ashes in reach that have a name, the nearest first. No distance:
/// of a tallied tree, and on a card that nobody taped, only the least that it can be is known.
std::string which_ashes(const TreeCase& tree) {
  std::vector<NearTree> ashes = tree.around.dead_ashes;
  std::stable_sort(ashes.begin(), ashes.end(),
                   [](const NearTree& a, const NearTree& b) { return a.distance < b.distance; });
  std::string names;
  for (const NearTree& ash : ashes) {
    if (ash.name.empty() || !in_reach(tree, std::vector<NearTree>{ash})) continue;
    names += (names.empty() ? " It is " : " and ") + ash.name;
  }
  return names.empty() ? "" : names + ".";
}

/// What a falling tree would hit: wires and people are told before the tree's own faults.
bool is_target(const Caution& caution) {
  return caution.code == "POWER_LINE" || caution.code == "ROAD_TRAIL" || caution.code == "BUILDING";
}

void sort_stops_first(std::vector<Caution>& cautions) {
  const auto rank = [](const Caution& caution) {
    return std::pair(caution.severity, caution.severity == Severity::stop && is_target(caution));
  };
  std::stable_sort(cautions.begin(), cautions.end(),
                   [&](const Caution& a, const Caution& b) { return rank(a) > rank(b); });
}

}  // namespace

std::span<const CautionRule> caution_rules() { return kCautionRules; }

bool is_dead_ash(const TreeFacts& facts, const Species& species, const CautionLimits& limits) {
  return species.genus() == "Fraxinus" && (!is_live(facts) || over(facts.dieback, limits.ash_dead));
}

Feet two_lengths(std::optional<Feet> height, const CautionLimits& limits) {
  return Feet{std::ceil(limits.lengths * height.value_or(limits.default_height).value)};
}

std::vector<Caution> every_caution_for(const TreeCase& tree, const CautionTable& table) {
  std::vector<Caution> found;
  for (const CautionEntry& entry : table.entries()) {
    const Row& row = row_of(entry);
    if (row.of_tree == nullptr || !row.of_tree(tree)) continue;
    found.push_back(entry.caution);
    if (row.rule.code == kNearDeadAsh) found.back().text += which_ashes(tree);
  }
  sort_stops_first(found);
  const auto care = std::count_if(found.begin(), found.end(), [](const Caution& caution) {
    return caution.severity == Severity::extra_care;
  });
  const bool stopped = !found.empty() && found.front().severity == Severity::stop;
  // A stop of its own says more than a count does.
  if (care >= 2 && !stopped) {
    found.insert(found.begin(), table.entry(kMulti).caution);
    sort_stops_first(found);
  }
  return found;
}

std::vector<Caution> cautions_for(const TreeCase& tree, const CautionTable& table) {
  constexpr std::ptrdiff_t kMostBesideStops = 3;
  std::vector<Caution> cautions = every_caution_for(tree, table);
  const auto stops = std::count_if(cautions.begin(), cautions.end(), [](const Caution& caution) {
    return caution.severity == Severity::stop;
  });
  const auto printed = static_cast<std::size_t>(stops + kMostBesideStops);
  if (cautions.size() > printed) cautions.resize(printed);
  return cautions;
}

std::vector<Caution> job_cautions(const JobFacts& job, const CautionTable& table) {
  std::vector<Caution> found;
  for (const CautionEntry& entry : table.entries()) {
    const Row& row = row_of(entry);
    const bool applies = row.of_job != nullptr && row.of_job(job);
    if (applies || row.rule.use == CautionUse::day) found.push_back(entry.caution);
  }
  sort_stops_first(found);
  return found;
}

std::vector<std::string> hazards_to_look_for(const CautionTable& table) {
  std::vector<std::string> hazards;
  for (const CautionEntry& entry : table.entries()) {
    if (row_of(entry).rule.use == CautionUse::look) hazards.push_back(entry.observation);
  }
  return hazards;
}

}  // namespace oaklight
