#include "core/release/groundwork.hpp"
#include "core/release/plan.hpp"
#include "core/release/right_job.hpp"
#include "core/release/step_logs.hpp"

namespace oaklight {
namespace {

bool any_released(const ReleaseChoice& choice) {
  for (const Standing standing : choice.selection.standing) {
    if (standing == Standing::released) return true;
  }
  return false;
}

/// Nothing is released after all: the choice was tried, and the stand or the cards refused it.
Advice no_gain(const ReleaseChoice& choice) {
  for (const GuardState& state : choice.guards_of_full_plan) {
    if (state.holds) continue;
    return {Treatment::no_gain,
            "No release now: not even the best crop tree can be freed without breaking a limit of "
            "the stand (" +
                state.name + ").",
            {state.rule, "R4.12", "R4.16"}};
  }
  return {Treatment::no_gain,
          "No release now: none of the trees looked at can be given enough free sides.",
          {"R1.61", "R1.73"}};
}

bool anything_unsure(const ReleaseChoice& choice) {
  for (const Dropped& dropped : choice.dropped) {
    if (dropped.cause == Dropped::Cause::unsure) return true;
  }
  return false;
}

/// The choice of a stand that is left alone.
ReleaseChoice nothing_taken(const ReleaseProblem& problem, const ReleaseChoice& tried) {
  const std::size_t count = problem.graph.trees().size();
  ReleaseChoice nothing{Selection(count),
                        std::vector<bool>(count, false),
                        std::vector<Dropped>(count),
                        {},
                        {},
                        tried.guards_of_full_plan,
                        tried.optimality};
  if (problem.guards) nothing.guards = check_guards(*problem.guards, nothing.cut);
  return nothing;
}

}  // namespace

Result<ReleaseKnowledge> release_knowledge(SpeciesTable species, std::string_view rule_json,
                                           std::string_view food_csv) {
  auto rules = RuleBook::from_json(rule_json, "release.rule.json");
  if (!rules) return rules.error();
  const auto own = RuleBook::shipped();
  if (!own) return own.error();
  rules->add_missing(*own);
  auto settings = ReleaseSettings::from(*rules);
  if (!settings) return settings.error();
  auto food = FoodTable::from_csv(food_csv, "species/mast_rank.csv");
  if (!food) return food.error();
  return ReleaseKnowledge{std::move(species), std::move(*food), std::move(*rules),
                          std::move(*settings)};
}

ReleasePlan recommend(const ReleaseInput& input) {
  const ReleaseSettings& settings = input.knowledge.settings;
  Advice advice = is_release_right_job(input.stand, settings);
  const Groundwork ground(input);
  const ReleaseChoice tried = choose(ground.problem);
  const bool release_now = advice.treatment == Treatment::release;
  if (release_now && !any_released(tried) && !anything_unsure(tried)) advice = no_gain(tried);
  // Where the stand refuses the job, the plan that it was spared is not shown as one.
  const bool refused =
      advice.treatment != Treatment::release && advice.treatment != Treatment::measure_first;
  const ReleaseChoice choice = refused ? nothing_taken(ground.problem, tried) : tried;

  ReleasePlan plan;
  const Workings work{input,          ground.traits, ground.keeps, ground.crops,
                      ground.problem, choice,        advice};
  plan.trees = verdicts(work);
  plan.steps = step_logs(work, plan.trees);
  plan.advice = advice;
  plan.optimality = choice.optimality;
  plan.guards = choice.guards;
  plan.guards_of_full_plan = choice.guards_of_full_plan;
  plan.before = input.stand.before;
  if (ground.problem.guards) plan.after = density_after(*ground.problem.guards, choice.cut);
  plan.rule_version = input.knowledge.rules.version();
  return plan;
}

}  // namespace oaklight
