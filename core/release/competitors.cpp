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
    if (t.is_oak() && one_too_many(contact)) return Role::sprout;
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

  /// Whether this stem shares a stump with the crop tree and is one too many there (R6.58). The
  /// crop tree stays, tight twins stay with it (R6.62), then the lowest joined and the thickest
  /// (R6.59). Thick stems part cleanly only at a wide, low joint (R6.61, R6.62).
  [[nodiscard]] bool one_too_many(const CrownContact& contact) const {
    if (!contact.one_base) return false;
    const TreeFacts& own = facts(contact.neighbour);
    if (own.dbh.inches() >= settings_.sprouts.thin_below &&
        !own.conditions.has(Condition::u_fork)) {
      return false;
    }
    int before = 1;  // the crop tree itself
    for (const std::uint32_t k : input_.graph.around(contact.crop)) {
      const CrownContact& c = input_.graph.contacts()[k];
      if (!c.one_base || c.neighbour == contact.neighbour) continue;
      const TreeFacts& other = facts(c.neighbour);
      if (other.status == TreeStatus::dead) continue;
      if (c.basis == ContactBasis::one_crown || stays_before(other, own, c, contact)) ++before;
    }
    return before >= settings_.sprouts.stems_max;
  }

  static bool stays_before(const TreeFacts& a, const TreeFacts& b, const CrownContact& at_a,
                           const CrownContact& at_b) {
    const bool high_a = a.conditions.has(Condition::high_joint);
    const bool high_b = b.conditions.has(Condition::high_joint);
    if (high_a != high_b) return high_b;
    const auto da = a.dbh.hundredth_mm();
    const auto db = b.dbh.hundredth_mm();
    return da > db || (da == db && at_a.neighbour < at_b.neighbour);
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
