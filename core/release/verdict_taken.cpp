#include <optional>

#include "core/release/cautions.hpp"
#include "core/release/verdicts.hpp"
#include "core/release/wording.hpp"

namespace oaklight {
namespace {

/// Contacts of this tree with released crop trees that it crowds.
std::vector<const CrownContact*> crowded_by(const Workings& work, std::uint32_t tree) {
  std::vector<const CrownContact*> list;
  for (const std::uint32_t i : work.input.graph.towards(tree)) {
    const CrownContact& c = work.input.graph.contacts()[i];
    if (crowds(work.problem.roles[i]) &&
        work.choice.selection.standing[c.crop] == Standing::released) {
      list.push_back(&c);
    }
  }
  return list;
}

Role role_of(const Workings& work, const CrownContact* contact) {
  const auto index = static_cast<std::size_t>(contact - work.input.graph.contacts().data());
  return work.problem.roles[index];
}

/// What the tree is, where that matters: "it is dying back (40 %), and ".
struct Lead {
  std::string text;
  std::vector<std::string> rules;
};

Lead lead_of(const Workings& work, std::uint32_t tree, Role role) {
  const Traits& traits = work.traits[tree];
  const TreeFacts& facts = work.input.graph.trees()[tree].facts;
  const ReleaseSettings& settings = work.input.knowledge.settings;
  switch (role) {
    case Role::failing: {
      Lead lead{failing_words(facts, settings) + ", and ", {"R6.01"}};
      if (traits.is_ash()) lead.rules.emplace_back("R6.18");
      if (facts.conditions.has(Condition::high_joint)) lead.rules.emplace_back("R6.60");
      return lead;
    }
    case Role::poor_oak: {
      if (traits.acorns.proven_poor) {
        return {"it bore few acorns in every surveyed autumn, a good one among them, and ",
                {"R3.36", "R3.39", "R6.01"}};
      }
      const auto faults = crop_faults(facts, traits, work.input.stand.goal, settings);
      const FaultWords fault = words_of(faults.front());
      Lead lead{"it is the poorer of two oaks because " + fault.text + ", and ", {"R6.01"}};
      add_rules(lead.rules, fault.rules);
      return lead;
    }
    case Role::sprout:
      return {"it is a stem too many on the stump that it shares with the crop tree, and ",
              {"R6.58", "R6.59", "R6.61"}};
    case Role::food_tree:
      return {"it feeds animals too, but the crop tree cannot get its sides otherwise: ",
              {"R1.61", "R6.01", "X3.01"}};
    case Role::conifer:
      return {"it gives winter cover, but it is in the way: ", {"R1.61", "R5.31"}};
    case Role::fellow:
      return {"it is the poorer of two good trees that cannot both have their sides: ",
              {"R1.61", "R1.67"}};
    default:
      return {"", {"R6.01"}};
  }
}

/// "without it that side is free", from the sides after the work.
std::string gain_words(const Workings& work, const std::vector<const CrownContact*>& contacts) {
  int freed = 0;
  int named = 0;
  Sides shared;
  Sides unknown;
  for (const CrownContact* c : contacts) {
    const CrownSides after =
        crown_sides(work.problem, work.choice.selection, work.choice.taken, c->crop);
    named += c->sides.count();
    freed += common(c->sides, after.free).count();
    shared.add(common(c->sides, after.shared));
    unknown.add(common(c->sides, after.unknown));
  }
  if (freed == named) {
    return named == 1 ? "without it that side is free" : "without it those sides are free";
  }
  if (freed > 0)
    return "without it " + side_count(freed) + " of these " + (freed == 1 ? "is free" : "are free");
  if (!unknown.empty()) return "without it that side may prove free";
  return "without it only a fellow crop tree shares that side";
}

std::string left_standing(const Workings& work, const std::vector<const CrownContact*>& contacts) {
  std::vector<std::string> parts;
  for (const CrownContact* c : contacts) {
    const int now =
        crown_sides(work.problem, work.choice.selection, work.choice.taken, c->crop).free.count();
    const int then =
        crown_sides(work.problem, work.choice.selection, work.choice.taken, c->crop, c->neighbour)
            .free.count();
    parts.push_back(the_tree(work, c->crop) + " would have " + side_count(then) +
                    " free instead of " + std::to_string(now));
  }
  return "If it stayed, " + joined(parts) + ".";
}

bool is_aspen(const Workings& work, std::uint32_t tree) {
  return listed(work.input.knowledge.settings.removal.aspens,
                work.input.graph.trees()[tree].facts.species);
}

void explain_invasive(TreeVerdict& verdict) {
  verdict.reason = "Take: it is invasive, and the light let in would multiply it.";
  verdict.what_would_change_it = "Another name for it: check the species.";
  verdict.rules = {"R1.56", "R6.01", "R6.23"};
}

}  // namespace

void explain_taken(const Workings& work, std::uint32_t tree, TreeVerdict& verdict) {
  verdict.verdict = Verdict::take;
  const std::vector<const CrownContact*> contacts = crowded_by(work, tree);
  if (contacts.empty() || work.traits[tree].invasive()) {
    explain_invasive(verdict);
    return;
  }
  const Role role = role_of(work, contacts.front());
  const Lead lead = lead_of(work, tree, role);
  for (const CrownContact* c : contacts) {
    add_rules(verdict.rules, contact_rules(work.input, *c));
    if (c->closeness == Closeness::doubtful) add_rules(verdict.rules, {"R1.54"});
  }
  add_rules(verdict.rules, lead.rules);
  std::string why = lead.text + "its " + contact_words(work, contacts);
  if (role == Role::bank) {
    verdict.verdict = Verdict::kill_standing;
    verdict.reason = "Kill standing: " + why +
                     ", which cannot do without that side; the roots hold the bank, so it is not "
                     "felled.";
    add_rules(verdict.rules, {"R1.61", "R5.41"});
  } else if (is_aspen(work, tree) && target_in_reach(work.input, tree)) {
    verdict.reason =
        "Take: " + why +
        "; it will sucker from its roots, but a dead tree may not be left standing here.";
    add_rules(verdict.rules, {"R6.14", "X6.02"});
  } else if (is_aspen(work, tree)) {
    verdict.verdict = Verdict::kill_standing;
    verdict.reason = "Kill standing: " + why +
                     "; felled alive it would sucker from its roots, so it is killed first and "
                     "felled about " +
                     std::to_string(work.input.knowledge.settings.removal.aspen_years) +
                     " years later.";
    add_rules(verdict.rules, {"R6.14"});
  } else {
    verdict.reason = "Take: " + why + "; " + gain_words(work, contacts) + ".";
  }
  verdict.what_would_change_it = left_standing(work, contacts);
}

}  // namespace oaklight
