#include "core/session/card_view.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "core/release/crown_contact.hpp"
#include "core/release/groundwork.hpp"
#include "core/release/stand_facts.hpp"
#include "core/session/plot_work.hpp"
#include "core/session/records_named.hpp"
#include "core/session/stand_part.hpp"

namespace oaklight {
namespace {

bool is_cut(Verdict verdict) {
  return verdict == Verdict::take || verdict == Verdict::kill_standing;
}

/// Which crop trees are released together, read back from a plan: two that meet are one unit
/// (R1.65), and a side between them is shared.
Selection selection_of(const ReleaseProblem& problem, const ReleasePlan& plan) {
  const std::size_t count = plan.trees.size();
  Selection selection(count);
  for (std::uint32_t i = 0; i < count; ++i) {
    if (!plan.trees[i].released) continue;
    selection.standing[i] = Standing::released;
    selection.group[i] = i;
  }
  const auto released = [&](std::uint32_t tree) {
    return selection.standing[tree] == Standing::released;
  };
  // The smaller number spreads through each unit; units are of a few trees.
  for (bool changed = true; changed;) {
    changed = false;
    for (std::uint32_t i = 0; i < problem.graph.contacts().size(); ++i) {
      const CrownContact& c = problem.graph.contacts()[i];
      const bool meet = problem.roles[i] == Role::fellow || c.will_meet;
      if (!meet || !released(c.crop) || !released(c.neighbour)) continue;
      auto& a = selection.group[c.crop];
      auto& b = selection.group[c.neighbour];
      changed = changed || a != b;
      a = b = std::min(a, b);
    }
  }
  return selection;
}

/// A stand decided once, for any number of its cards.
class DecidedStand {
 public:
  DecidedStand(const LiveTract& live, const TractKnowledge& knowledge, StandId stand,
               ReleaseInput input)
      : live_(live),
        knowledge_(knowledge),
        stand_(stand),
        input_(std::move(input)),
        plan_(recommend(input_)),
        ground_(input_),
        selection_(selection_of(ground_.problem, plan_)),
        none_(plan_.trees.size(), false),
        marked_(plan_.trees.size(), false),
        recommended_(plan_.trees.size(), false) {
    for (std::uint32_t i = 0; i < plan_.trees.size(); ++i) {
      place_.emplace(plan_.trees[i].tree, i);
      const Mark* mark = live.mark_of(WalkTreeId{plan_.trees[i].tree});
      marked_[i] = mark != nullptr && is_cut(mark->verdict);
      recommended_[i] = is_cut(plan_.trees[i].verdict);
    }
    guards_ = guards();
  }

  [[nodiscard]] CardView card(const WalkTree& crop) const {
    const std::uint32_t tree = place_.at(crop.id.value);
    CardView view{crop.id,    stand_,     crop.tag,   species_name(knowledge_, crop.facts.species),
                  crop.facts, crop.crown, crop.looked};
    view.before = light_of(ground_.problem, selection_, none_, tree);
    view.after = light_of(ground_.problem, selection_, marked_, tree);
    view.recommended = light_of(ground_.problem, selection_, recommended_, tree);
    view.sides_before = sides(tree, none_);
    view.sides_after = sides(tree, marked_);
    for (const Contact* contact : live_.contacts_of(crop.id)) {
      view.neighbours.push_back(neighbour(*contact));
      if (input_.graph.edges().crowns.count(tree) == 0) continue;
      for (const std::uint32_t i : input_.graph.around(tree)) {
        const CrownContact& c = input_.graph.contacts()[i];
        if (plan_.trees[c.neighbour].tree != contact->neighbour.value) continue;
        input_.graph.add_closed_by(c, view.neighbours.back().closes);
      }
    }
    view.verdict = plan_.trees[tree];
    if (const Mark* mark = live_.mark_of(crop.id)) view.mark = *mark;
    view.advice = plan_.advice;
    view.guards = guards_;
    return view;
  }

 private:
  [[nodiscard]] std::array<SideState, 4> sides(std::uint32_t tree,
                                               const std::vector<bool>& gone) const {
    const CrownSides found = crown_sides(ground_.problem, selection_, gone, tree);
    std::array<SideState, 4> states{};
    std::size_t i = 0;
    for (const Side side : kSides) {
      SideState& state = states[i++];
      state = SideState::closed;
      if (found.free.has(side)) state = SideState::free;
      if (found.shared.has(side)) state = SideState::shared;
      if (found.unknown.has(side)) state = SideState::unknown;
    }
    return states;
  }

  [[nodiscard]] NeighbourView neighbour(const Contact& contact) const {
    const WalkTree& tree = *live_.find(contact.neighbour);
    const TreeVerdict& verdict = plan_.trees[place_.at(tree.id.value)];
    NeighbourView view{contact.id,    tree.id,   contact,
                       contact.sides, tree.tag,  species_name(knowledge_, tree.facts.species),
                       tree.facts,    tree.crown};
    if (view.sides.empty() && contact.azimuth) {
      view.sides = sides_at(*contact.azimuth, knowledge_.release.settings.contact.side_blur);
    }
    view.recommended = verdict.verdict;
    view.reason = verdict.reason;
    view.rules = verdict.rules;
    view.what_would_change_it = verdict.what_would_change_it;
    if (const Mark* mark = live_.mark_of(tree.id)) {
      view.marked = mark->verdict;
      view.by_hand = mark->by_hand;
      view.reason = mark->reason;
      view.rules = mark->rules;
      view.goes = is_cut(mark->verdict);
    }
    return view;
  }

  /// The floors and ceilings with the marked trees gone. A crop tree counts as released when that
  /// gives it a side.
  [[nodiscard]] std::vector<GuardView> guards() const {
    constexpr double kNear = 0.05;
    if (!ground_.problem.guards) return {};
    CutTally cut;
    for (std::uint32_t i = 0; i < plan_.trees.size(); ++i) {
      const TreeFacts& facts = input_.graph.trees()[i].facts;
      if (marked_[i]) {
        cut.take(facts, ground_.traits[i], 1.0);
      } else if (input_.graph.trees()[i].proposed && gains(i)) {
        cut.release(facts, 1.0);
      }
    }
    std::vector<GuardView> views;
    for (const GuardState& state : check_guards(*ground_.problem.guards, cut)) {
      const bool near = state.holds && std::fabs(state.after - state.limit) <= kNear * state.limit;
      views.push_back({state, near});
    }
    return views;
  }

  [[nodiscard]] bool gains(std::uint32_t crop) const {
    return light_of(ground_.problem, selection_, marked_, crop).sides_free >
           light_of(ground_.problem, selection_, none_, crop).sides_free;
  }

  const LiveTract& live_;
  const TractKnowledge& knowledge_;
  StandId stand_;
  const ReleaseInput input_;
  const ReleasePlan plan_;
  const Groundwork ground_;
  const Selection selection_;
  const std::vector<bool> none_;
  std::vector<bool> marked_, recommended_;  ///< by tree: gone by the marks, by the plan
  std::map<Uuid, std::uint32_t> place_;
  std::vector<GuardView> guards_;
};

}  // namespace

Result<std::vector<CardView>> card_views(const LiveTract& live, const TractKnowledge& knowledge,
                                         StandId stand) {
  const auto part = stand_part(live, stand);
  if (!part) return part.error();
  auto input = input_from_cards(*part, stand, knowledge.release);
  if (!input) return input.error();
  const DecidedStand decided(live, knowledge, stand, *std::move(input));
  std::vector<CardView> views;
  for (const WalkTree* tree : live.walk_trees_of(stand)) {
    if (tree->crop) views.push_back(decided.card(*tree));
  }
  return views;
}

}  // namespace oaklight
