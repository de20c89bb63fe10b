#include "core/release/verdicts.hpp"
#include "core/release/wording.hpp"

namespace oaklight {
namespace {

/// Neighbours that stay and close sides: "the basswood 3 stays on the south side".
std::string what_stays(const Workings& work, std::uint32_t crop) {
  std::vector<std::string> parts;
  for (const std::uint32_t i : work.input.graph.around(crop)) {
    const CrownContact& c = work.input.graph.contacts()[i];
    if (!crowds(work.problem.roles[i]) || work.choice.taken[c.neighbour]) continue;
    if (fate_of(work.problem, work.choice.selection, i) != Fate::stays) continue;
    parts.push_back(the_tree(work, c.neighbour) + " on the " + side_words(c.sides));
  }
  return joined(parts);
}

/// ", a good acorn producer (14.7 on a branch tip, mean of 3 autumns)"; "" without a record.
std::string producer_words(const AcornRecord& record, std::vector<std::string>& rules) {
  if (record.producer == Producer::no_record) return {};
  const char* kind = "poor";
  if (record.producer == Producer::excellent) kind = "excellent";
  if (record.producer == Producer::good) kind = "good";
  if (record.producer == Producer::fair) kind = "fair";
  const std::string autumns =
      std::to_string(record.years) + (record.years == 1 ? " autumn" : " autumns");
  add_rules(rules, {"R3.36"});
  add_rules(rules, record.per_tip ? std::vector<std::string>{"R3.41", "R3.42", "R3.43"}
                                  : std::vector<std::string>{"R3.45", "R3.48"});
  const std::string counted =
      record.per_tip ? plain_number(*record.per_tip) + " acorns on a branch tip, mean of " + autumns
                     : "timed counts in " + autumns;
  return std::string(kind == std::string_view("excellent") ? ", an " : ", a ") + kind +
         " acorn producer (" + counted + ")";
}

void explain_released(const Workings& work, std::uint32_t tree, TreeVerdict& verdict) {
  verdict.verdict = Verdict::keep;
  const int before = verdict.before->sides_free;
  const int after = verdict.after->sides_free;
  verdict.rules = {"R1.60", "R1.61", "R1.62", "R2.15"};
  const std::string producer = producer_words(work.traits[tree].acorns, verdict.rules);
  verdict.reason = "Keep: crop tree" + producer + "; " + side_count(after) + " of its crown " +
                   (after == 1 ? "is" : "are") + " free after the work, " + std::to_string(before) +
                   " before";
  std::vector<std::string> partners;
  for (const std::uint32_t i : work.input.graph.around(tree)) {
    const CrownContact& c = work.input.graph.contacts()[i];
    if (work.problem.roles[i] != Role::clear &&
        fate_of(work.problem, work.choice.selection, i) == Fate::shares) {
      partners.push_back("the " + side_words(c.sides) + " with " + the_tree(work, c.neighbour));
    }
  }
  if (!partners.empty()) {
    verdict.reason += ", and it shares " + joined(partners);
    add_rules(verdict.rules, {"R1.64", "R1.65", "R1.67"});
  }
  verdict.reason += ".";
  const std::string stays = what_stays(work, tree);
  verdict.what_would_change_it =
      "A failing stem or a dying crown, found before the cut, would end its turn, and the trees "
      "taken for it would stay." +
      (stays.empty() ? "" : " Kept beside it on purpose: " + stays + ".");
}

void explain_waiting(const Workings& work, std::uint32_t tree, TreeVerdict& verdict) {
  const GuardState& g = work.choice.dropped[tree].guard;
  verdict.verdict = Verdict::keep;
  verdict.reason =
      "Keep: a good crop tree that waits for the next entry; released too, it would "
      "leave " +
      g.name + " at " + plain_number(g.after) + " " + g.unit + ", and the " +
      (g.floor ? "floor" : "ceiling") + " is " + plain_number(g.limit) + " " + g.unit + ".";
  verdict.what_would_change_it =
      "A fuller stand would, or fewer of the crop trees released instead.";
  verdict.rules = {g.rule, "R4.12", "R4.16", "R1.73", "R1.74"};
}

void explain_short_of_sides(const Workings& work, std::uint32_t tree, TreeVerdict& verdict) {
  const Outcome outcome = outcome_of(work.problem, work.choice.selection, tree);
  const int needed = work.input.knowledge.settings.sides.free_min;
  const std::string stays = what_stays(work, tree);
  verdict.rules = {"R1.61", "R1.73"};
  if (outcome.might_reach && !outcome.reaches) {
    verdict.verdict = Verdict::look_again;
    verdict.reason = "Look again: " + side_count(outcome.free.count()) +
                     " can be freed for sure, " + std::to_string(needed) +
                     " are needed, and nobody can tell about the " + side_words(outcome.unknown) +
                     ".";
    verdict.what_would_change_it = "A look up at the " + side_words(outcome.unknown) + ".";
    add_rules(verdict.rules, {"R1.55"});
    return;
  }
  verdict.verdict = Verdict::keep;
  verdict.reason = "Keep: no release this time, because only " + side_count(outcome.free.count()) +
                   " can be freed and " + std::to_string(needed) + " are needed" +
                   (stays.empty() ? "." : "; there stays " + stays + ".");
  verdict.what_would_change_it =
      stays.empty() ? "More sides that can be freed would." : "One of these gone would.";
}

}  // namespace

bool explain_crop(const Workings& work, std::uint32_t tree, TreeVerdict& verdict) {
  if (work.crops.worth[tree] == 0) return false;
  const Dropped& dropped = work.choice.dropped[tree];
  switch (dropped.cause) {
    case Dropped::Cause::no:
      explain_released(work, tree, verdict);
      return true;
    case Dropped::Cause::guard:
      explain_waiting(work, tree, verdict);
      return true;
    case Dropped::Cause::sides:
    case Dropped::Cause::unsure:
      explain_short_of_sides(work, tree, verdict);
      return true;
    case Dropped::Cause::better:
      break;
  }
  verdict.verdict = Verdict::keep;
  const bool worth_more = work.crops.worth[dropped.better] > work.crops.worth[tree];
  verdict.reason = "Keep: no crop tree this time, because it grows into the crown of " +
                   the_tree(work, dropped.better) + ", which " +
                   (worth_more ? "is worth more" : "makes the better plan for the whole stand") +
                   ", and the two cannot be released as a pair.";
  verdict.what_would_change_it =
      "If " + the_tree(work, dropped.better) + " were no crop tree, this one could be.";
  verdict.rules = {"R1.25", "R1.66", "R1.67", "R2.09", "R2.25"};
  return true;
}

}  // namespace oaklight
