#include "core/release/competitors.hpp"

#include "core/release/wording.hpp"

namespace oaklight {
namespace {

/// Decides the role of one neighbour at a time.
class Judge {
 public:
  Judge(const ReleaseInput& input, const std::vector<Traits>& traits,
        const std::vector<Keep>& keeps, const CropTrees& crops)
      : input_(input),
        settings_(input.knowledge.settings),
        traits_(traits),
        keeps_(keeps),
        crops_(crops) {}

  [[nodiscard]] Role role(const CrownContact& contact) const {
    switch (contact.closeness) {
      case Closeness::clear:
        return Role::clear;
      case Closeness::doubtful:
        return doubtful(contact);
      case Closeness::touching:
        break;
    }
    return touching(contact);
  }

 private:
  [[nodiscard]] const TreeFacts& facts(std::uint32_t i) const {
    return input_.graph.trees()[i].facts;
  }

  /// Where timber is the goal, doubt about a plain neighbour counts as contact (R1.54).
  [[nodiscard]] Role doubtful(const CrownContact& contact) const {
    const bool may_cut = input_.stand.goal == Goal::timber && !contact.sides.empty();
    const Role role = may_cut ? touching(contact) : Role::doubt;
    return role == Role::plain || role == Role::failing ? role : Role::doubt;
  }

  [[nodiscard]] Role touching(const CrownContact& contact) const {
    const std::uint32_t i = contact.neighbour;
    const Traits& t = traits_[i];
    if (crops_.worth[i] > 0) return Role::fellow;
    if (keeps_[i] == Keep::bank) return Role::bank;
    if (keeps_[i] == Keep::scarce_species && !same_kind(contact)) return Role::kept;
    if (keeps_[i] != Keep::no && keeps_[i] != Keep::scarce_species) return Role::kept;
    if (!t.known_species()) return Role::doubt;
    if (t.invasive()) return Role::plain;
    if (!failing_words(facts(i), settings_).empty()) return Role::failing;
    if (t.is_oak()) return oak(i);
    if (t.food.is_mast() && t.food.rank >= settings_.keep.food_tree_rank) return Role::food_tree;
    if (t.food.kind == FoodKind::cover) return Role::conifer;
    return Role::plain;
  }

  /// R5.32: a scarce tree gives way only to a crop tree of its own kind.
  [[nodiscard]] bool same_kind(const CrownContact& contact) const {
    return traits_[contact.crop].food.kind == traits_[contact.neighbour].food.kind;
  }

  /// A touching oak that is no crop tree: taken when its crown or its record is poor (R3.39,
  /// R6.01).
  [[nodiscard]] Role oak(std::uint32_t i) const {
    const std::vector<CropFault> faults =
        crop_faults(facts(i), traits_[i], input_.stand.goal, settings_);
    if (faults.empty()) return Role::sound_oak;
    for (const CropFault fault : faults) {
      if (is_gap(fault)) return Role::doubt;
    }
    return Role::poor_oak;
  }

  const ReleaseInput& input_;
  const ReleaseSettings& settings_;
  const std::vector<Traits>& traits_;
  const std::vector<Keep>& keeps_;
  const CropTrees& crops_;
};

}  // namespace

std::string failing_words(const TreeFacts& facts, const ReleaseSettings& settings) {
  if (facts.dieback && *facts.dieback >= settings.crop.dieback_max) {
    return "it is dying back (" + plain_number(facts.dieback->value) + " %)";
  }
  if (facts.conditions.has(Condition::high_joint)) {
    return "it sprang from high up on an old stump, whose rot goes into it";
  }
  if (facts.conditions.has(Condition::beech_bark)) return "it has beech bark disease";
  if (facts.conditions.has(Condition::borer_signs)) return "a borer is killing it";
  for (const Condition risk : settings.crop.risks) {
    if (facts.conditions.has(risk)) return "its stem or roots are failing";
  }
  return {};
}

std::vector<Role> roles_of(const ReleaseInput& input, const std::vector<Traits>& traits,
                           const std::vector<Keep>& keeps, const CropTrees& crops) {
  const Judge judge(input, traits, keeps, crops);
  std::vector<Role> roles;
  roles.reserve(input.graph.contacts().size());
  for (const CrownContact& contact : input.graph.contacts()) roles.push_back(judge.role(contact));
  return roles;
}

}  // namespace oaklight
