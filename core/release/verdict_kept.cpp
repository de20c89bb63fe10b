#include <algorithm>

#include "core/release/verdicts.hpp"
#include "core/release/wording.hpp"

namespace oaklight {
namespace {

/// The contacts of one neighbour, sorted by what they ask of it.
struct Asked {
  const CrownContact* doubt = nullptr;       ///< with a crop tree that is, or may be, released
  const CrownContact* unsure = nullptr;      ///< would go if that crop tree is released
  const CrownContact* stands = nullptr;      ///< crowds a released crop tree
  Role role = Role::clear;                   ///< of stands
  const CrownContact* unreleased = nullptr;  ///< crowds a crop tree that is not released
  Role unreleased_role = Role::clear;
  const CrownContact* clear = nullptr;  ///< takes no light
};

/// No crop tree for now, but only because something about it is not recorded.
bool waits_for_facts(const Workings& work, std::uint32_t crop) {
  const std::vector<CropFault>& faults = work.crops.faults[crop];
  return !faults.empty() && std::all_of(faults.begin(), faults.end(), is_gap);
}

/// Whether this crop tree is released, or may be after a second look.
bool counts(const Workings& work, const CrownContact& c) {
  return work.choice.selection.standing[c.crop] == Standing::released ||
         work.choice.dropped[c.crop].cause == Dropped::Cause::unsure ||
         waits_for_facts(work, c.crop);
}

Asked asked_of(const Workings& work, std::uint32_t tree) {
  Asked asked;
  for (const std::uint32_t i : work.input.graph.towards(tree)) {
    const CrownContact& c = work.input.graph.contacts()[i];
    const Role role = work.problem.roles[i];
    const bool released = work.choice.selection.standing[c.crop] == Standing::released;
    if (role == Role::clear) {
      if (asked.clear == nullptr) asked.clear = &c;
    } else if (role == Role::doubt) {
      if (counts(work, c) && asked.doubt == nullptr) asked.doubt = &c;
    } else if (released) {
      if (asked.stands == nullptr) {
        asked.stands = &c;
        asked.role = role;
      }
    } else if (goes(role) && counts(work, c)) {
      if (asked.unsure == nullptr) asked.unsure = &c;
    } else if (asked.unreleased == nullptr) {
      asked.unreleased = &c;
      asked.unreleased_role = role;
    }
  }
  return asked;
}

/// "it closes the south side of the white oak 14".
std::string closes(const Workings& work, const CrownContact& c) {
  return "it closes the " + side_words(c.sides) + " of " + the_tree(work, c.crop);
}

void explain_keep_list(const Workings& work, std::uint32_t tree, const Asked& asked,
                       TreeVerdict& verdict) {
  const KeepWords words = words_of(work.keeps[tree]);
  verdict.verdict = Verdict::keep;
  verdict.reason = "Keep: it " + words.text;
  if (asked.stands != nullptr) {
    verdict.reason += ", though " + closes(work, *asked.stands);
  }
  verdict.reason += ".";
  verdict.what_would_change_it = words.would_change;
  add_rules(verdict.rules, words.rules);
}

void explain_gap(CropFault fault, TreeVerdict& verdict) {
  verdict.verdict = Verdict::look_again;
  verdict.reason = "Look again: " + words_of(fault).text +
                   ", so nobody can say whether it is fit to be a crop tree.";
  verdict.what_would_change_it =
      fault == CropFault::species_unknown ? "Its species, recorded." : "Its crown class, recorded.";
  verdict.rules = words_of(fault).rules;
}

void explain_doubt(const Workings& work, std::uint32_t tree, const CrownContact& c,
                   TreeVerdict& verdict) {
  verdict.verdict = Verdict::look_again;
  const bool known = work.traits[tree].known_species();
  if (!known) {
    verdict.reason =
        "Look again: its species is not known, and its " + contact_words(work, {&c}) + ".";
    verdict.what_would_change_it = "Its species, recorded.";
  } else if (c.closeness == Closeness::touching) {
    verdict.reason = "Look again: its " + contact_words(work, {&c}) +
                     ", and whether it is the poorer of the two cannot be told while its crown "
                     "class is not recorded.";
    verdict.what_would_change_it = "Its crown class, recorded.";
  } else {
    verdict.reason =
        "Look again: its " + contact_words(work, {&c}) + ", and nobody has looked up to see.";
    verdict.what_would_change_it = "A look up, best with the leaves out.";
  }
  add_rules(verdict.rules, contact_rules(work.input, c));
  add_rules(verdict.rules, {"R1.55"});
}

void explain_unsure(const Workings& work, const CrownContact& c, TreeVerdict& verdict) {
  const std::string crop = the_tree(work, c.crop);
  verdict.verdict = Verdict::look_again;
  verdict.reason = "Look again: its " + contact_words(work, {&c});
  add_rules(verdict.rules, contact_rules(work.input, c));
  if (waits_for_facts(work, c.crop)) {
    verdict.reason += ", and whether that is a crop tree is not settled.";
    verdict.what_would_change_it = "The missing facts of " + crop + ", recorded.";
    add_rules(verdict.rules, {"R1.02"});
    return;
  }
  verdict.reason += ", which is released only if its other sides prove free.";
  verdict.what_would_change_it = "A look at the sides of " + crop + " that nobody has seen.";
  add_rules(verdict.rules, {"R1.55", "R1.61"});
}

/// " (2 counted so far)"; "" where nobody counted.
std::string counted_so_far(const AcornRecord& record) {
  return record.years == 0 ? "" : " (" + std::to_string(record.years) + " counted so far)";
}

/// It crowds a released crop tree and stays nevertheless.
void explain_standing(const Workings& work, std::uint32_t tree, const Asked& asked,
                      TreeVerdict& verdict) {
  const CrownContact& c = *asked.stands;
  const std::string crop = the_tree(work, c.crop);
  const std::string needed = side_count(work.input.knowledge.settings.sides.free_min);
  verdict.verdict = Verdict::keep;
  if (work.choice.selection.held[tree]) {
    const bool white = work.traits[tree].group() == OakGroup::white;
    verdict.reason = "Keep: " + closes(work, c) + ", but without it too few " +
                     (white ? "white" : "red") + " oaks would be left.";
    verdict.what_would_change_it =
        "A larger share of its group among the oaks of this stand would.";
    verdict.rules = {"R3.60", "R3.62"};
    return;
  }
  switch (asked.role) {
    case Role::food_tree:
    case Role::conifer:
      verdict.reason = std::string("Keep: it ") +
                       (asked.role == Role::conifer ? "gives winter cover" : "feeds animals too") +
                       ", and " + crop + " gets its sides without it.";
      verdict.what_would_change_it =
          "It would go if " + crop + " could not have " + needed + " free beside it.";
      verdict.rules = asked.role == Role::conifer ? std::vector<std::string>{"R1.61", "R5.31"}
                                                  : std::vector<std::string>{"R1.61", "X3.01"};
      return;
    case Role::sound_oak:
      verdict.reason = "Keep: a sound oak; " + closes(work, c) +
                       ", but nobody has shown that it is the poorer of the two.";
      verdict.what_would_change_it = "A card of its own would, as the two may be a pair; or " +
                                     std::to_string(work.input.knowledge.settings.acorns.years) +
                                     " autumns of counts in which it bears little" +
                                     counted_so_far(work.traits[tree].acorns) + ".";
      verdict.rules = {"R3.36", "R3.39"};
      return;
    default:
      verdict.reason = "Keep: its " + contact_words(work, {&c}) +
                       ", but taking it frees no side, because other trees there stay.";
      verdict.what_would_change_it = "If the other trees on that side went, it would go too.";
      verdict.rules = {"R1.60", "R6.05"};
  }
}

void explain_clear(const Workings& work, std::uint32_t tree, const CrownContact& c,
                   TreeVerdict& verdict) {
  const std::string crop = the_tree(work, c.crop);
  verdict.verdict = Verdict::keep;
  switch (c.basis) {
    case ContactBasis::overtopped:
      verdict.reason =
          "Keep: it stands under the canopy, takes no light from " + crop + " and shades its stem.";
      break;
    case ContactBasis::seen_below:
      verdict.reason = "Keep: its top stays below the crown of " + crop + ", so it takes no light.";
      break;
    case ContactBasis::one_crown:
      verdict.reason = "Keep: it is the twin of " + crop +
                       " with a tight fork between them: the two are one crown, and cutting one "
                       "would split the other.";
      verdict.what_would_change_it = "A second look that finds a wide, low joint.";
      verdict.rules = contact_rules(work.input, c);
      return;
    case ContactBasis::far_enough:
      verdict.reason = "Keep: it stands too far from " + crop + " to take its light.";
      break;
    default:
      verdict.reason = "Keep: its crown does not touch that of " + crop + ", so it takes no light.";
  }
  verdict.what_would_change_it = "It would go if its crown reached that of " + crop + ".";
  add_rules(verdict.rules, contact_rules(work.input, c));
  add_rules(verdict.rules, {"R6.05"});
  if (work.traits[tree].food.kind == FoodKind::cover) add_rules(verdict.rules, {"R5.31"});
}

/// It crowds a crop tree that is not released.
void explain_unreleased(const Workings& work, const Asked& asked, TreeVerdict& verdict) {
  const CrownContact& c = *asked.unreleased;
  const std::string crop = the_tree(work, c.crop);
  verdict.reason =
      "Keep: its " + contact_words(work, {&c}) + ", but that tree is not released this time.";
  verdict.rules = {"R1.74", "R6.05"};
  if (!goes(asked.unreleased_role) && !goes_if_needed(asked.unreleased_role)) {
    verdict.what_would_change_it =
        "Little: a sound oak stays until its own crown or acorns prove poor.";
    add_rules(verdict.rules, {"R3.39"});
  } else if (work.crops.worth[c.crop] == 0) {
    verdict.what_would_change_it = "It would go if " + crop + " were fit to be a crop tree.";
  } else {
    verdict.what_would_change_it = "It would go if " + crop + " were released.";
    const Dropped& dropped = work.choice.dropped[c.crop];
    if (dropped.cause != Dropped::Cause::guard) return;
    const GuardState& g = dropped.guard;
    verdict.what_would_change_it += " What saves it is the guard on " + g.name +
                                    ": that release would "
                                    "leave " +
                                    plain_number(g.after) + " " + g.unit + ", and the " +
                                    (g.floor ? "floor" : "ceiling") + " is " +
                                    plain_number(g.limit) + ".";
    add_rules(verdict.rules, {g.rule});
  }
}

void explain_rest(const Workings& work, const Asked& asked, TreeVerdict& verdict) {
  verdict.verdict = Verdict::keep;
  if (asked.unreleased != nullptr) {
    explain_unreleased(work, asked, verdict);
    return;
  }
  verdict.reason = "Keep: it crowds no crop tree that is released.";
  verdict.what_would_change_it = "A crop tree beside it would.";
  verdict.rules = {"R6.05"};
}

/// A keep reason of number, not of the tree itself: where the tree crowds nobody, that says more.
bool only_by_number(Keep keep) { return keep == Keep::scarce_species || keep == Keep::fruit; }

/// "no crop tree, because its stem or roots are failing".
void put_fault_first(const std::vector<CropFault>& faults, TreeVerdict& verdict) {
  const FaultWords fault = words_of(faults.front());
  verdict.reason = "Keep: no crop tree, because " + fault.text + "; " +
                   verdict.reason.substr(verdict.reason.find(": ") + 2);
  verdict.what_would_change_it = "A second look that finds no such fault.";
  add_rules(verdict.rules, fault.rules);
}

}  // namespace

void explain_kept(const Workings& work, std::uint32_t tree, TreeVerdict& verdict) {
  const Asked asked = asked_of(work, tree);
  const std::vector<CropFault>& faults = work.crops.faults[tree];
  const Keep keep = work.keeps[tree];
  const bool crowds_nobody = asked.stands == nullptr && asked.unreleased == nullptr &&
                             asked.unsure == nullptr && asked.clear != nullptr;
  if (only_by_number(keep) && crowds_nobody) {
    explain_clear(work, tree, *asked.clear, verdict);
    add_rules(verdict.rules, words_of(keep).rules);
  } else if (keep != Keep::no && keep != Keep::bank) {
    explain_keep_list(work, tree, asked, verdict);
  } else if (verdict.crop && !faults.empty() && is_gap(faults.front())) {
    explain_gap(faults.front(), verdict);
    return;
  } else if (asked.doubt != nullptr) {
    explain_doubt(work, tree, *asked.doubt, verdict);
    return;
  } else if (asked.unsure != nullptr) {
    explain_unsure(work, *asked.unsure, verdict);
    return;
  } else if (keep == Keep::bank) {
    explain_keep_list(work, tree, asked, verdict);
  } else if (asked.stands != nullptr) {
    explain_standing(work, tree, asked, verdict);
  } else if (asked.unreleased == nullptr && asked.clear != nullptr) {
    explain_clear(work, tree, *asked.clear, verdict);
  } else {
    explain_rest(work, asked, verdict);
  }
  if (verdict.crop && !faults.empty()) put_fault_first(faults, verdict);
}

}  // namespace oaklight
