#include "core/release/step_logs.hpp"

#include <algorithm>
#include <set>

#include "core/release/wording.hpp"

namespace oaklight {
namespace {

bool by_name(const Workings& work) {
  return work.input.graph.source() == ReleaseGraph::Source::cards;
}

std::string name(const Workings& work, std::size_t tree) {
  return tree_name(work.input.graph.trees()[tree], work.input.knowledge.species);
}

/// One line a tree on cards, a count on a map. line_of gives "" for a tree that has no line.
template <class LineOf>
StepLog log_of(const Workings& work, std::string step, const std::string& counted, LineOf line_of) {
  StepLog log{std::move(step), {}};
  std::size_t count = 0;
  for (std::uint32_t i = 0; i < work.input.graph.trees().size(); ++i) {
    std::string line = line_of(i);
    if (line.empty()) continue;
    ++count;
    if (by_name(work)) log.lines.push_back(std::move(line));
  }
  if (!by_name(work) || count == 0)
    log.lines.push_back(std::to_string(count) + " " + counted + ".");
  return log;
}

std::string crop_line(const Workings& work, std::uint32_t tree) {
  if (!work.input.graph.trees()[tree].proposed) return {};
  if (work.crops.worth[tree] > 0) {
    return name(work, tree) + ": fit, worth " + std::to_string(work.crops.worth[tree]) +
           " points of 1000.";
  }
  if (!by_name(work)) return {};
  std::vector<std::string> whys;
  for (const CropFault fault : work.crops.faults[tree]) whys.push_back(words_of(fault).text);
  if (whys.empty()) whys.emplace_back("it stands on a property line");
  return name(work, tree) + ": not fit, because " + joined(whys) + ".";
}

std::string pair_line(const Workings& work, std::uint32_t tree) {
  const Dropped& dropped = work.choice.dropped[tree];
  if (dropped.cause == Dropped::Cause::better) {
    return name(work, tree) + ": dropped, as it meets the better " + name(work, dropped.better) +
           " and they cannot be a pair.";
  }
  if (work.choice.selection.standing[tree] != Standing::released) return {};
  for (const std::uint32_t i : work.input.graph.around(tree)) {
    const CrownContact& c = work.input.graph.contacts()[i];
    if (c.neighbour > tree && work.problem.roles[i] == Role::fellow &&
        fate_of(work.problem, work.choice.selection, i) == Fate::shares) {
      return name(work, tree) + " and " + name(work, c.neighbour) + ": one unit.";
    }
  }
  return {};
}

std::string light_words(const Light& light) {
  std::string text = side_count(light.sides_free) + " free";
  if (light.sides_shared > 0) text += ", " + std::to_string(light.sides_shared) + " shared";
  if (light.sides_unknown > 0) text += ", " + std::to_string(light.sides_unknown) + " not known";
  return text;
}

std::string guard_line(const GuardState& g) {
  return g.name + " " + plain_number(g.after) + " " + g.unit + ", " +
         (g.floor ? "floor " : "ceiling ") + plain_number(g.limit) + " (" + g.rule +
         "): " + (g.holds ? "holds." : "broken.");
}

StepLog stand_test(const Workings& work) {
  StepLog log{"stand test", {}};
  if (work.choice.guards.empty()) {
    log.lines.emplace_back("Not tested: plots or the acres covered are missing.");
    return log;
  }
  if (!all_hold(work.choice.guards_of_full_plan)) {
    log.lines.emplace_back("With every fit crop tree released:");
    for (const GuardState& g : work.choice.guards_of_full_plan) log.lines.push_back(guard_line(g));
  }
  std::size_t waiting = 0;
  for (const std::uint32_t crop : work.crops.ranked) {
    if (work.choice.dropped[crop].cause != Dropped::Cause::guard) continue;
    ++waiting;
    if (by_name(work)) {
      log.lines.push_back(name(work, crop) + ": dropped, with the trees taken for it alone.");
    }
  }
  if (!by_name(work)) log.lines.push_back(std::to_string(waiting) + " crop trees dropped.");
  log.lines.emplace_back("As planned:");
  for (const GuardState& g : work.choice.guards) log.lines.push_back(guard_line(g));
  return log;
}

/// What to watch on a released tree; "" when nothing.
std::string watch_line(const Workings& work, std::uint32_t tree) {
  const TreeFacts& facts = work.input.graph.trees()[tree].facts;
  const WatchSettings& watch = work.input.knowledge.settings.watch;
  std::string words;
  const bool white = work.traits[tree].group() == OakGroup::white;
  if (work.input.stand.goal == Goal::timber && white && facts.live_crown &&
      *facts.live_crown < watch.two_steps_below) {
    words +=
        " its live crown is short for a white oak grown for timber, so better free it in two "
        "steps some years apart (R4.24);";
  }
  const std::vector<bool> nothing_gone(work.choice.taken.size(), false);
  const Sides opened =
      without(crown_sides(work.problem, work.choice.selection, work.choice.taken, tree).free,
              crown_sides(work.problem, work.choice.selection, nothing_gone, tree).free);
  if (listed(watch.thin_barked, facts.species) &&
      (opened.has(Side::south) || opened.has(Side::west))) {
    words += " its bark is thin, and the afternoon sun will reach it (R4.25);";
  }
  constexpr double kInchesPerFoot = 12.0;
  if (facts.height && facts.height->feet().value * kInchesPerFoot >
                          watch.slender_above * facts.dbh.inches().value) {
    words += " it is slender for its height, and may bend or break once it stands free (R4.27);";
  }
  if (words.empty()) return words;
  words.back() = '.';
  return name(work, tree) + ":" + words;
}

/// Of cards only: on a map nobody looks for one tree.
StepLog watch_log(const Workings& work, const std::vector<TreeVerdict>& verdicts) {
  StepLog log{"watch", {}};
  for (std::uint32_t i = 0; by_name(work) && i < verdicts.size(); ++i) {
    std::string line = verdicts[i].released ? watch_line(work, i) : std::string();
    if (!line.empty()) log.lines.push_back(std::move(line));
  }
  return log;
}

/// Oak species among the released crop trees, beside those that could be (R3.61).
std::string oak_species_line(const Workings& work, const std::vector<TreeVerdict>& verdicts) {
  std::set<SpeciesCode> fit;
  std::set<SpeciesCode> released;
  for (std::uint32_t i = 0; i < verdicts.size(); ++i) {
    if (!work.traits[i].is_oak() || work.crops.worth[i] == 0) continue;
    fit.insert(work.input.graph.trees()[i].facts.species);
    if (verdicts[i].released) released.insert(work.input.graph.trees()[i].facts.species);
  }
  const auto wanted = std::min(
      fit.size(), static_cast<std::size_t>(work.input.knowledge.settings.guards.oak_species));
  if (fit.empty() || released.size() >= wanted) return {};
  return "Only " + std::to_string(released.size()) + " of " + std::to_string(fit.size()) +
         " oak species fit to be crop trees are released, and " + std::to_string(wanted) +
         " are wanted (R3.61); where two trees are alike, mark the other kind.";
}

StepLog verdict_counts(const std::vector<TreeVerdict>& verdicts) {
  StepLog log{"verdicts", {}};
  for (const auto& [verdict, word] : kWords<Verdict>) {
    const auto count = std::count_if(verdicts.begin(), verdicts.end(),
                                     [&](const TreeVerdict& v) { return v.verdict == verdict; });
    log.lines.push_back(std::string(word) + ": " + std::to_string(count));
  }
  return log;
}

}  // namespace

std::vector<StepLog> step_logs(const Workings& work, const std::vector<TreeVerdict>& verdicts) {
  std::vector<StepLog> logs;
  logs.push_back({"right job", {work.advice.text}});
  logs.push_back(log_of(work, "keep list", "trees kept", [&](std::uint32_t i) {
    const Keep keep = work.keeps[i];
    return keep == Keep::no ? std::string() : name(work, i) + " " + words_of(keep).text + ".";
  }));
  logs.push_back(log_of(work, "crop trees", "trees fit to be crop trees",
                        [&](std::uint32_t i) { return crop_line(work, i); }));
  logs.push_back(log_of(work, "pairs", "pairs and trees that give way",
                        [&](std::uint32_t i) { return pair_line(work, i); }));
  logs.push_back(log_of(work, "competitors", "crop trees looked at", [&](std::uint32_t i) {
    const auto& light = verdicts[i].before;
    return light ? name(work, i) + ": " + light_words(*light) + " before." : std::string();
  }));
  logs.push_back(log_of(work, "cut list", "trees that crowd them", [&](std::uint32_t i) {
    return work.choice.taken[i] ? verdicts[i].reason.empty()
                                      ? std::string()
                                      : name(work, i) + ": " + verdicts[i].reason
                                : std::string();
  }));
  logs.push_back(stand_test(work));
  logs.push_back(log_of(work, "sides after", "crop trees released", [&](std::uint32_t i) {
    return verdicts[i].released ? name(work, i) + ": " + light_words(*verdicts[i].after) + "."
                                : std::string();
  }));
  if (StepLog watch = watch_log(work, verdicts); !watch.lines.empty()) {
    logs.push_back(std::move(watch));
  }
  if (auto line = oak_species_line(work, verdicts); !line.empty()) {
    logs.push_back({"variety", {std::move(line)}});
  }
  logs.push_back(verdict_counts(verdicts));
  return logs;
}

}  // namespace oaklight
