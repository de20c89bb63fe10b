#include "core/release/verdicts.hpp"

#include <algorithm>

#include "core/release/wording.hpp"

namespace oaklight {
namespace {

/// The plan is not tested against the stand, so nothing is to be cut on its word.
void hold_until_measured(TreeVerdict& verdict) {
  verdict.verdict = Verdict::look_again;
  const std::string::size_type colon = verdict.reason.find(": ");
  verdict.reason = "Look again: " + verdict.reason.substr(colon + 2) +
                   " Whether the stand can spare it is not known yet.";
  verdict.what_would_change_it =
      "Plots measured in this stand, and the acres that the walk covered.";
  add_rules(verdict.rules, {"R4.01", "R4.12"});
}

std::string nothing_cut_because(Treatment treatment) {
  switch (treatment) {
    case Treatment::wait:
      return "the stand is already as open as it may be";
    case Treatment::midstory:
      return "this stand needs its midstory taken out, not its canopy";
    case Treatment::regeneration:
      return "the question here is the next stand";
    case Treatment::too_few_crop_trees:
      return "too few trees here are worth releasing";
    case Treatment::no_gain:
      return "no crop tree can be released within the limits of the stand";
    case Treatment::release:
    case Treatment::measure_first:
      break;
  }
  return {};
}

/// The stand is not to be released: every tree stays.
void explain_refusal(const Workings& work, std::uint32_t tree, TreeVerdict& verdict) {
  verdict.verdict = Verdict::keep;
  const Keep keep = work.keeps[tree];
  if (keep != Keep::no) {
    const KeepWords words = words_of(keep);
    verdict.reason = "Keep: it " + words.text + ".";
    verdict.what_would_change_it = words.would_change;
    verdict.rules = words.rules;
    return;
  }
  verdict.reason =
      "Keep: nothing is cut here now, because " + nothing_cut_because(work.advice.treatment) + ".";
  verdict.what_would_change_it = "Another answer to the question whether to release this stand.";
  verdict.rules = work.advice.rules;
}

bool refused(const Workings& work) {
  return work.advice.treatment != Treatment::release &&
         work.advice.treatment != Treatment::measure_first;
}

TreeVerdict verdict_of(const Workings& work, std::uint32_t tree,
                       const std::vector<bool>& nothing_gone) {
  const ReleaseTree& t = work.input.graph.trees()[tree];
  TreeVerdict verdict;
  verdict.tree = t.id;
  verdict.tag = t.tag;
  verdict.crop = t.proposed && (work.input.graph.source() == ReleaseGraph::Source::cards ||
                                work.choice.selection.standing[tree] == Standing::released);
  if (verdict.crop || work.crops.worth[tree] > 0) {
    verdict.before = light_of(work.problem, work.choice.selection, nothing_gone, tree);
    verdict.after = refused(work)
                        ? verdict.before
                        : light_of(work.problem, work.choice.selection, work.choice.taken, tree);
  }
  if (refused(work)) {
    explain_refusal(work, tree, verdict);
    return verdict;
  }
  verdict.released = work.choice.selection.standing[tree] == Standing::released;
  if (work.choice.taken[tree]) {
    explain_taken(work, tree, verdict);
    if (work.advice.treatment == Treatment::measure_first) hold_until_measured(verdict);
  } else if (!explain_crop(work, tree, verdict)) {
    explain_kept(work, tree, verdict);
  }
  return verdict;
}

std::string verb_of(ContactBasis basis) {
  switch (basis) {
    case ContactBasis::seen_over:
      return "reaches over";
    case ContactBasis::near_enough:
      return "meets, by size and distance, that of";
    case ContactBasis::look_up:
    case ContactBasis::no_crown_class:
    case ContactBasis::no_side:
      return "may touch";
    default:
      return "touches";
  }
}

}  // namespace

std::vector<TreeVerdict> verdicts(const Workings& work) {
  const std::size_t count = work.input.graph.trees().size();
  const std::vector<bool> nothing_gone(count, false);
  std::vector<TreeVerdict> list;
  list.reserve(count);
  for (std::uint32_t i = 0; i < count; ++i) list.push_back(verdict_of(work, i, nothing_gone));
  return list;
}

std::string the_tree(const Workings& work, std::uint32_t tree) {
  return "the " + tree_name(work.input.graph.trees()[tree], work.input.knowledge.species);
}

std::string contact_words(const Workings& work, const std::vector<const CrownContact*>& contacts) {
  std::vector<std::string> parts;
  std::string last_verb;
  for (const CrownContact* c : contacts) {
    const std::string verb = verb_of(c->basis);
    std::string part = verb == last_verb ? "" : verb + " ";
    part += the_tree(work, c->crop);
    if (!c->sides.empty()) part += " on the " + side_words(c->sides);
    parts.push_back(std::move(part));
    last_verb = verb;
  }
  return "crown " + joined(parts);
}

std::vector<std::string> contact_rules(const ReleaseInput& input, const CrownContact& contact) {
  const TreeFacts& facts = input.graph.trees()[contact.neighbour].facts;
  std::vector<std::string> rules;
  switch (contact.basis) {
    case ContactBasis::seen_touching:
    case ContactBasis::seen_over:
      rules = {"R1.50", "R2.01"};
      if (facts.crown_class == CrownClass::intermediate) rules.emplace_back("R1.57");
      break;
    case ContactBasis::near_enough:
      rules = {"R1.50", "R2.10"};
      if (input.graph.source() == ReleaseGraph::Source::map) {
        rules = {"R1.50", "R1.52", "R2.08"};
      }
      break;
    case ContactBasis::seen_below:
    case ContactBasis::seen_clear:
      rules = {"R1.51", "R2.01"};
      break;
    case ContactBasis::look_up:
    case ContactBasis::no_side:
      rules = {"R2.11"};
      break;
    case ContactBasis::no_crown_class:
      rules = {"R2.11", "R2.14"};
      break;
    case ContactBasis::far_enough:
      rules = {"R1.51", "R2.12"};
      break;
    case ContactBasis::overtopped:
      rules = {"R1.56", "R2.14"};
      break;
    case ContactBasis::dead:
      rules = {"R1.58"};
      break;
    case ContactBasis::one_crown:
      rules = {"R6.62"};
      break;
  }
  return rules;
}

void add_rules(std::vector<std::string>& rules, const std::vector<std::string>& more) {
  for (const std::string& rule : more) {
    if (std::find(rules.begin(), rules.end(), rule) == rules.end()) rules.push_back(rule);
  }
}

}  // namespace oaklight
