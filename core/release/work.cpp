#include "core/release/work.hpp"

#include <algorithm>
#include <cmath>

#include "core/release/verdicts.hpp"
#include "core/release/wording.hpp"

namespace oaklight {
namespace {

bool is_genus(const WorkCase& tree, std::string_view genus) {
  return tree.species != nullptr && tree.species->genus() == genus;
}
bool is_oak(const WorkCase& tree) { return tree.species != nullptr && tree.species->is_oak(); }
bool is_red_cedar(const WorkCase& tree) {
  return tree.species != nullptr && tree.species->scientific_name == "Juniperus virginiana";
}

/// One piece of an answer.
struct Part {
  std::string text;
  std::vector<std::string> rules;
};

class Judge {
 public:
  Judge(const WorkCase& tree, const ReleaseSettings& settings)
      : tree_(tree), settings_(settings), work_(settings.work) {}

  WorkAdvice advice() {
    find_dangers();
    judge_herbicide();
    judge_ways();
    return std::move(advice_);
  }

 private:
  bool has(Condition condition) const { return tree_.facts.conditions.has(condition); }
  bool is_aspen() const { return listed(settings_.removal.aspens, tree_.facts.species); }
  bool dead_ash() const {
    return tree_.species != nullptr && is_dead_ash(tree_.facts, *tree_.species, settings_.cautions);
  }

  /// Water in the zone of rule R5.39; a tree that nobody placed may stand in it.
  bool near_water() const {
    return has(Condition::bank_tree) ||
           (tree_.around.stream && *tree_.around.stream < work_.stream_zone);
  }

  bool machine_may_come() const {
    const bool steep = tree_.around.slope && *tree_.around.slope > work_.machine_slope;
    return !near_water() && !steep;
  }

  bool safe_to_leave_dead() const {
    return !is_genus(tree_, "Fraxinus") && !has(Condition::cavity_low) &&
           !has(Condition::cavity_high) && !has(Condition::conk) && !tree_.target_near;
  }

  Feet reach(std::optional<Feet> height) const {
    return Feet{
        std::ceil(work_.danger_lengths * height.value_or(settings_.cautions.default_height).value)};
  }

  void add_dangers(const std::vector<NearTree>& trees, const std::string& what) {
    const auto own = tree_.facts.height ? std::optional(tree_.facts.height->feet()) : std::nullopt;
    for (const NearTree& other : trees) {
      const Feet limit = std::max(reach(own), reach(other.height));
      if (other.distance > limit) continue;
      advice_.open.push_back(what + (other.name.empty() ? "" : " (" + other.name + ")") +
                             " stands within " + plain_number(limit.value) + " ft");
    }
  }

  void find_dangers() {
    add_dangers(tree_.around.dead_ashes, "a dead ash");
    add_dangers(tree_.around.hung_trees, "a tree that holds another one up");
    if (tree_.around.loose_limb_beside) advice_.open.emplace_back("a loose limb hangs beside it");
  }

  Part herbicide_part() {
    if (is_oak(tree_) || is_red_cedar(tree_)) {
      return {"No herbicide on an oak or a red cedar: fell it, or girdle it twice.", {"R6.35"}};
    }
    if (is_aspen()) {
      return {"No herbicide: its roots join it to the whole clone.", {"R6.14", "R6.50"}};
    }
    if (has(Condition::clump)) {
      return {"No herbicide: it shares its roots with the other stems of its clump.", {"R6.50"}};
    }
    if (tree_.kin && *tree_.kin < work_.roots_near) {
      const std::string how_far = tree_.kin->value > 0.0
                                      ? "stands " + plain_number(tree_.kin->value) + " ft off"
                                      : "may stand close, as nobody measured how far";
      return {"No herbicide: a crop tree of its own kind " + how_far + ", and roots may be joined.",
              {"R6.50"}};
    }
    if (near_water()) {
      return {"No herbicide here: water is near.", {"R5.39"}};
    }
    advice_.herbicide = true;
    Part part{
        "Herbicide is allowed where the label names this use, by a person with the license that "
        "the state asks for; on a stump only its outer ring, within " +
            std::to_string(work_.stump_minutes) + " minutes.",
        {"R6.43", "R6.44"}};
    if (tree_.kin && *tree_.kin < work_.roots_far) {
      part.text += " With care: a crop tree of its own kind stands " +
                   plain_number(tree_.kin->value) + " ft off.";
      part.rules.emplace_back("R6.50");
    }
    return part;
  }

  void judge_herbicide() {
    if (tree_.verdict != Verdict::take && tree_.verdict != Verdict::kill_standing) return;
    const Part part = herbicide_part();
    advice_.herbicide_words = part.text;
    add_rules(advice_.rules, part.rules);
  }

  void say(std::vector<Way> ways, std::string words, std::vector<std::string> rules) {
    advice_.ways = std::move(ways);
    advice_.way_words = std::move(words);
    add_rules(advice_.rules, rules);
  }

  void judge_ways() {
    if (dead_ash()) {
      machine_or_leave(
          "It is a dead or dying ash, which snaps without warning: nobody cuts it by hand.",
          {"R6.16", "R6.18"});
    } else if (tree_.verdict == Verdict::look_again) {
      say({Way::leave}, "Leave it until somebody has looked again.", {});
    } else if (tree_.verdict == Verdict::keep) {
      say({Way::leave}, "Leave it.", {});
    } else if (!advice_.open.empty()) {
      machine_or_leave("Nobody works here by hand while " + joined(advice_.open) + ".", {"R5.15"});
    } else if (tree_.verdict == Verdict::kill_standing || has(Condition::bank_tree)) {
      kill_standing();
    } else {
      take();
    }
  }

  void machine_or_leave(const std::string& why, const std::vector<std::string>& rules) {
    const bool fells = tree_.verdict == Verdict::take && !has(Condition::bank_tree);
    add_rules(advice_.rules, rules);
    if (fells && machine_may_come()) {
      say({Way::machine_fell, Way::leave},
          why + " A machine with a guarded cab takes it, or it is left.", {});
    } else {
      say({Way::leave}, why + " It is left.", {});
    }
  }

  std::string girdle_words() const {
    return "two saw cuts round the stem, about " + plain_number(work_.girdle_depth) +
           " in deep and " + plain_number(work_.girdle_apart[0]) + " to " +
           plain_number(work_.girdle_apart[1]) + " in apart, without herbicide; it dies in " +
           plain_number(work_.years_to_die[0]) + " to " + plain_number(work_.years_to_die[1]) +
           " years and is then a danger tree: mark it";
  }

  void kill_standing() {
    if (!safe_to_leave_dead()) {
      say({Way::leave}, "It may be neither felled nor left standing dead here: it is left.",
          {"X6.02"});
      return;
    }
    say({Way::girdle, Way::leave}, "Girdle it: " + girdle_words() + ".",
        {"R6.30", "R6.31", "R6.37"});
  }

  void take() {
    const Inches dbh = tree_.facts.dbh.inches();
    advice_.ways = {Way::fell};
    std::string also;
    const bool sale_size = dbh >= work_.sale_from;
    if (sale_size && machine_may_come()) advice_.ways.push_back(Way::machine_fell);
    if (!sale_size && dbh >= work_.by_hand_below && dbh >= work_.frill_from && advice_.herbicide) {
      advice_.ways.push_back(Way::frill);
      add_rules(advice_.rules, {"R6.42"});
    }
    if (dbh >= work_.by_hand_below && safe_to_leave_dead()) {
      advice_.ways.push_back(Way::girdle);
      also = " It may be girdled instead: " + girdle_words() + ".";
      add_rules(advice_.rules, {"R6.30", "R6.31", "R6.37"});
    }
    advice_.way_words = "Fell it." + also;
    add_rules(advice_.rules, {"R6.64"});
    if (near_water()) {
      advice_.way_words += " Fell it away from the water; no machine comes within " +
                           plain_number(work_.stream_zone.value) + " ft of it.";
      add_rules(advice_.rules, {"R5.39"});
    } else if (!machine_may_come()) {
      advice_.way_words += " Too steep for a machine.";
      add_rules(advice_.rules, {"R4.30"});
    }
  }

  const WorkCase& tree_;
  const ReleaseSettings& settings_;
  const WorkSettings& work_;
  WorkAdvice advice_;
};

std::string verb_of(Way way) {
  switch (way) {
    case Way::leave:
      return "left";
    case Way::fell:
      return "felled by hand";
    case Way::machine_fell:
      return "felled by a machine";
    case Way::girdle:
      return "girdled";
    case Way::frill:
      break;
  }
  return "killed through the bark";
}

/// The rule of a season issue.
std::vector<std::string> rules_of(const std::vector<SeasonWindow>& windows) {
  std::vector<std::string> rules;
  for (const SeasonWindow& window : windows) {
    if (window.issue.starts_with("oak_wilt")) add_rules(rules, {"R6.71", "R6.80"});
    if (window.issue.starts_with("bat_")) add_rules(rules, {"R5.22"});
    if (window.issue.starts_with("bark_slip")) add_rules(rules, {"R6.82"});
  }
  return rules;
}

}  // namespace

WorkAdvice work_advice(const WorkCase& tree, const ReleaseSettings& settings) {
  return Judge(tree, settings).advice();
}

std::vector<Objection> work_objections(const WorkCase& tree, const std::string& tag,
                                       const WorkOrder& order,
                                       std::span<const SeasonWindow> windows,
                                       const ReleaseSettings& settings) {
  std::vector<Objection> found;
  const WorkAdvice advice = work_advice(tree, settings);
  if (std::find(advice.ways.begin(), advice.ways.end(), order.way) == advice.ways.end()) {
    std::vector<std::string> rules = advice.rules;
    if (listed(settings.removal.aspens, tree.facts.species)) add_rules(rules, {"R6.14"});
    if (tree.facts.conditions.has(Condition::bank_tree)) add_rules(rules, {"R5.41"});
    found.push_back({tag, "It may not be " + verb_of(order.way) + ". " + advice.way_words, rules});
  }
  if (order.herbicide && !advice.herbicide) {
    found.push_back({tag, advice.herbicide_words, advice.rules});
  }
  if (order.way != Way::leave && order.day && order.written_reason.empty()) {
    const DayAdvice day = day_advice(windows, work_kind(tree, order.way), *order.day);
    if (!day.held_by.empty()) {
      found.push_back(
          {tag, day_words(day, *order.day) + " An exception is written down with its reason.",
           rules_of(day.held_by)});
    }
  }
  return found;
}

WorkKind work_kind(const WorkCase& tree, Way way) {
  const bool sap = tree.species != nullptr &&
                   (tree.species->genus() == "Acer" || tree.species->genus() == "Betula");
  return {.felling = way == Way::fell || way == Way::machine_fell,
          .oak_near = tree.beside_oak,
          .oak = is_oak(tree),
          .sap_matters = way == Way::frill && sap};
}

}  // namespace oaklight
