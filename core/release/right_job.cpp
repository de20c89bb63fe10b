#include "core/release/right_job.hpp"

#include "core/release/wording.hpp"

namespace oaklight {
namespace {

Advice measure_first(std::string text) {
  return {Treatment::measure_first, std::move(text), {"R4.01", "R4.03", "R4.11", "R4.12"}};
}

/// "59.7 % stocking against a floor of 60 %".
std::string floor_words(Percent stocking, Percent floor) {
  return plain_number(stocking.value) + " % stocking against a floor of " +
         plain_number(floor.value) + " %";
}

/// The stand is old and no fuller than a release would leave it: what comes after it?
Advice next_stand(const StandFacts& stand, const ReleaseSettings& settings, Percent stocking) {
  const RegenerationSettings& r = settings.regeneration;
  std::string text = "Release is refused: this stand is " + std::to_string(*stand.age_years) +
                     " years old and already as open as a release would leave it (" +
                     floor_words(stocking, settings.guards.stocking_floor) +
                     "), so the question is the next stand.";
  std::vector<std::string> rules = {"R4.57", "R4.01", "R2.27"};
  if (stand.site_index && *stand.site_index >= r.site_index) {
    text += " On ground as good as this, young oaks must stand ready before the canopy is opened.";
    rules.emplace_back("R4.50");
  }
  if (stand.advance_oak && *stand.advance_oak >= r.advance_oak) {
    text += " Young oaks stand ready; ask a forester for a regeneration plan.";
    rules.emplace_back("R4.55");
    return {Treatment::regeneration, text, rules};
  }
  text += stand.advance_oak ? " Only " + plain_number(stand.advance_oak->value) +
                                  " young oaks an acre are above 4.5 ft, where about " +
                                  plain_number(r.advance_oak.value) + " are needed."
                            : " Count the young oaks: about " + plain_number(r.advance_oak.value) +
                                  " an acre above 4.5 ft are needed.";
  rules.emplace_back("R4.55");
  const double midstory = stand.before->live.trees - stand.before->guard.trees;
  if (midstory <= 0.0) {
    text += " Ask a forester for a regeneration plan before any tree is cut.";
    return {Treatment::regeneration, text, rules};
  }
  text += " Leave the canopy alone and take out the midstory (" + plain_number(midstory) +
          " stems an acre stand below the canopy; those of " + plain_number(r.midstory_from.value) +
          " to " + plain_number(r.midstory_to.value) +
          " in that are neither oak nor food trees, at least " +
          plain_number(r.midstory_share.value) +
          " % of them), best in a good acorn year. Crown release alone would feed the midstory.";
  rules.insert(rules.end(), {"R4.52", "R4.54", "R4.59"});
  return {Treatment::midstory, text, rules};
}

/// Too few trees worth the work; nothing when there are enough, or nobody counted.
std::optional<Advice> too_few(const StandFacts& stand, const ReleaseSettings& settings) {
  if (!stand.acceptable_crop_trees) return std::nullopt;
  const bool food_only = stand.goal == Goal::mast;
  const TreesPerAcre least = food_only ? settings.count.worthwhile_food : settings.count.worthwhile;
  if (*stand.acceptable_crop_trees >= least) return std::nullopt;
  return Advice{Treatment::too_few_crop_trees,
                "Release is refused: only " + plain_number(stand.acceptable_crop_trees->value) +
                    " trees an acre are fit to be crop trees, where " + plain_number(least.value) +
                    " make the work worthwhile. Think about the next stand instead.",
                {food_only ? "R1.37" : "R4.58"}};
}

/// How sure the stocking is that all of this rests on.
std::string sampling_words(const StandFacts& stand, Percent floor) {
  std::string text;
  if (stand.stocking_interval) {
    const auto& [lo, hi] = *stand.stocking_interval;
    text += " The plots put it between " + plain_number(lo.value) + " and " +
            plain_number(hi.value) + " % (95 times in 100)";
    text += lo < floor
                ? "; the floor lies inside that range, so measure more plots before a heavy cut."
                : ".";
  }
  if (!stand.within_guide) {
    text +=
        " The stocking guide was made for upland oak and hickory; in this stand it is a rough "
        "guess.";
  }
  return text;
}

}  // namespace

Advice is_release_right_job(const StandFacts& stand, const ReleaseSettings& settings) {
  if (!stand.before) {
    return measure_first(
        "Measure plots in this stand first: without them nobody can say how much it may lose.");
  }
  if (stand.sampled && !stand.stocking_interval) {
    return measure_first(
        "Measure more plots in this stand first: from one plot nobody can say how far off the "
        "figures "
        "are.");
  }
  if (!stand.covered || stand.covered->value <= 0.0) {
    return measure_first(
        "Record how many acres the marking walk covered: without that nobody can say how much an "
        "acre loses.");
  }
  const GuardSettings& guards = settings.guards;
  const Percent stocking = upland_oak_stocking(stand.before->guard);
  const bool at_floor = stocking <= guards.stocking_floor || stocking <= guards.b_line;
  const bool old = stand.age_years && *stand.age_years > settings.regeneration.age_years;
  if (old && stocking <= settings.regeneration.stocking) {
    return next_stand(stand, settings, stocking);
  }
  if (at_floor) {
    return {Treatment::wait,
            "Release is refused: the stand is already at its floor (" +
                floor_words(stocking, guards.stocking_floor) +
                "). Come back when it has grown fuller; about " +
                plain_number(guards.usual_start.value) + " % is the usual start.",
            {"R4.01", "R4.03", "R4.08"}};
  }
  if (stand.before->ba <= guards.ba_floor) {
    return {Treatment::wait,
            "Release is refused: the stand holds " + plain_number(stand.before->ba.value) +
                " ft2/ac of basal area, and " + plain_number(guards.ba_floor.value) +
                " is the least to keep. Come back when it has grown.",
            {"R4.09"}};
  }
  if (auto advice = too_few(stand, settings)) return *advice;
  std::string text = "Release is the right job: " + plain_number(stocking.value) +
                     " % stocking leaves room above the floor of " +
                     plain_number(guards.stocking_floor.value) + " %.";
  std::vector<std::string> rules = {"R4.01"};
  if (stocking < guards.usual_start) {
    text += " The room is small: an improvement cut usually starts above " +
            plain_number(guards.usual_start.value) + " %.";
    rules.emplace_back("R4.08");
  }
  text += sampling_words(stand, guards.stocking_floor);
  return {Treatment::release, text, rules};
}

}  // namespace oaklight
