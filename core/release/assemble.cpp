#include "core/release/assemble.hpp"

#include <algorithm>
#include <optional>

namespace oaklight {
namespace {

class Assembler {
 public:
  Assembler(Candidates& candidates, const std::vector<std::uint32_t>& released,
            const std::vector<std::uint32_t>& held, bool invasive)
      : all_(candidates),
        problem_(candidates.problem()),
        released_(candidates.size(), false),
        choice_{Selection(problem_.graph.trees().size()),
                std::vector<bool>(problem_.graph.trees().size(), false),
                std::vector<Dropped>(problem_.graph.trees().size()),
                {},
                {},
                {},
                {}} {
    for (const std::uint32_t c : released) released_[c] = true;
    for (const std::uint32_t tree : held) choice_.selection.held[tree] = true;
    book(invasive);
  }

  ReleaseChoice choice() {
    for (std::uint32_t c = 0; c < all_.size(); ++c) {
      if (!released_[c]) drop(c);
    }
    return std::move(choice_);
  }

 private:
  const TreeFacts& facts(std::uint32_t tree) const { return problem_.graph.trees()[tree].facts; }
  const LocalOutcome& outcome(std::uint32_t c) {
    return all_.outcome(c, released_, &choice_.selection.held);
  }

  void take(std::uint32_t tree) {
    if (choice_.taken[tree]) return;
    choice_.taken[tree] = true;
    if (problem_.guards) choice_.cut.take(facts(tree), problem_.traits[tree], 1.0);
  }

  void book(bool invasive) {
    for (std::uint32_t c = 0; c < all_.size(); ++c) {
      if (!released_[c]) continue;
      const std::uint32_t tree = all_.tree(c);
      const Candidates::Trees unit = all_.unit_of(c, released_);
      choice_.selection.standing[tree] = Standing::released;
      choice_.selection.group[tree] = *std::min_element(unit.begin(), unit.end());
      for (const std::uint32_t other : outcome(c).takes) take(other);
      choice_.cut.release(facts(tree), 1.0);
    }
    if (invasive) {
      for (const std::uint32_t tree : problem_.taken_anyway) take(tree);
    }
    if (problem_.guards) choice_.guards = check_guards(*problem_.guards, choice_.cut);
  }

  /// The first released tree that this one meets; for a tree that is taken, one that takes it.
  std::optional<std::uint32_t> chosen_instead(std::uint32_t c) {
    for (const std::uint32_t other : all_.meets(c)) {
      if (!released_[other]) continue;
      const auto& takes = outcome(other).takes;
      const bool is_taken = choice_.taken[all_.tree(c)];
      if (!is_taken || std::binary_search(takes.begin(), takes.end(), all_.tree(c))) return other;
    }
    return std::nullopt;
  }

  void drop(std::uint32_t c) {
    const std::uint32_t tree = all_.tree(c);
    Dropped& dropped = choice_.dropped[tree];
    choice_.selection.standing[tree] = Standing::out;
    if (!choice_.taken[tree] && problem_.guards && stand_cannot_spare(c, dropped)) {
      choice_.selection.standing[tree] = Standing::waiting;
      return;
    }
    if (const auto other = chosen_instead(c)) {
      dropped.cause = Dropped::Cause::better;
      dropped.better = all_.tree(*other);
      return;
    }
    dropped.cause = outcome(c).might_reach && !outcome(c).reaches ? Dropped::Cause::unsure
                                                                  : Dropped::Cause::sides;
  }

  /// Whether nothing but a guard keeps this candidate from its release.
  bool stand_cannot_spare(std::uint32_t c, Dropped& dropped) {
    released_[c] = true;
    const Candidates::Trees unit = all_.unit_of(c, released_);
    bool fine = all_.fits(unit);
    CutTally cut = choice_.cut;
    cut.release(facts(all_.tree(c)), 1.0);
    std::vector<std::uint32_t> more;
    for (const std::uint32_t member : unit) {
      fine = fine && outcome(member).reaches;
      for (const std::uint32_t tree : outcome(member).takes) {
        if (!choice_.taken[tree]) more.push_back(tree);
      }
    }
    released_[c] = false;
    if (!fine) return false;
    std::sort(more.begin(), more.end());
    more.erase(std::unique(more.begin(), more.end()), more.end());
    for (const std::uint32_t tree : more) cut.take(facts(tree), problem_.traits[tree], 1.0);
    const std::vector<GuardState> states = check_guards(*problem_.guards, cut);
    const auto broken =
        std::find_if(states.begin(), states.end(), [](const GuardState& s) { return !s.holds; });
    if (broken == states.end()) return false;
    dropped.cause = Dropped::Cause::guard;
    dropped.guard = *broken;
    return true;
  }

  Candidates& all_;
  const ReleaseProblem& problem_;
  std::vector<bool> released_;
  ReleaseChoice choice_;
};

}  // namespace

ReleaseChoice assemble(Candidates& candidates, const std::vector<std::uint32_t>& released,
                       const std::vector<std::uint32_t>& held, bool invasive) {
  return Assembler(candidates, released, held, invasive).choice();
}

}  // namespace oaklight
