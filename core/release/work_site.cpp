#include "core/release/work_site.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <map>
#include <set>

#include "core/place/geodesy.hpp"
#include "core/place/shortest_degree.hpp"
#include "core/release/keep_list.hpp"
#include "core/release/wording.hpp"

namespace oaklight {
namespace {

/// Whether two trees stand so far apart by their latitudes alone, which costs next to nothing.
bool surely_beyond(const WalkTree& a, const WalkTree& b, Feet distance) {
  if (!a.position || !b.position) return false;
  const double apart = std::fabs(a.position->latitude.value - b.position->latitude.value);
  return apart * kShortestDegreeFeet > distance.value;
}

class Site {
 public:
  Site(const WorkSite& site, const ReleasePlan& plan, const ReleaseInput& input)
      : site_(site), plan_(plan), input_(input) {
    for (std::size_t i = 0; i < site.trees.size(); ++i) place_[site.trees[i].id] = i;
    for (const Contact& c : site.contacts) {
      if (c.distance) taped_.emplace(std::minmax(c.crop, c.neighbour), c.distance->feet());
      if (is_oak(c.crop) || is_oak(c.neighbour)) oak_cards_.insert(c.crop);
    }
    for (const Contact& c : site.contacts) {
      if (oak_cards_.count(c.crop) == 0) continue;
      beside_oak_.insert(c.crop);
      beside_oak_.insert(c.neighbour);
    }
    for (const TreeVerdict& verdict : plan.trees) {
      if (!verdict.crop || verdict.verdict == Verdict::take) continue;
      crops_.push_back(&site.trees[place_.at(WalkTreeId{verdict.tree})]);
    }
  }

  WorkCase work_case(std::size_t i) const {
    const ReleaseTree& tree = input_.graph.trees()[i];
    const auto at = place_.find(WalkTreeId{tree.id});
    assert(at != place_.end());
    const WalkTree& walk = site_.trees[at->second];
    return {.facts = walk.facts,
            .species = species_of(walk),
            .verdict = plan_.trees[i].verdict,
            .around = site_.around[at->second],
            .kin = kin_of(walk),
            .beside_oak = is_oak(walk.id) || beside_oak_.count(walk.id) > 0,
            .target_near = target_in_reach(input_, i)};
  }

 private:
  const Species* species_of(const WalkTree& tree) const {
    return input_.knowledge.species.find(tree.facts.species);
  }

  bool same_kind(const WalkTree& a, const WalkTree& b) const {
    if (a.facts.species == b.facts.species) return true;
    const Species* x = species_of(a);
    const Species* y = species_of(b);
    return x != nullptr && y != nullptr && x->oak_group != OakGroup::none &&
           x->oak_group == y->oak_group;
  }

  /// 0 where neither positions nor a card tell.
  Feet distance(const WalkTree& a, const WalkTree& b) const {
    if (a.position && b.position) return leg_between(*a.position, *b.position).distance;
    const auto taped = taped_.find(std::minmax(a.id, b.id));
    if (taped != taped_.end()) return taped->second;
    return Feet{0.0};
  }

  std::optional<Feet> kin_of(const WalkTree& tree) const {
    std::optional<Feet> nearest;
    for (const WalkTree* crop : crops_) {
      if (nearest && surely_beyond(tree, *crop, *nearest)) continue;
      if (crop->id == tree.id || !same_kind(tree, *crop)) continue;
      const Feet off = distance(tree, *crop);
      if (!nearest || off < *nearest) nearest = off;
    }
    return nearest;
  }

  bool is_oak(WalkTreeId id) const {
    const auto at = place_.find(id);
    if (at == place_.end()) return false;
    const Species* species = species_of(site_.trees[at->second]);
    return species != nullptr && species->is_oak();
  }

  const WorkSite& site_;
  const ReleasePlan& plan_;
  const ReleaseInput& input_;
  std::map<WalkTreeId, std::size_t> place_;
  std::map<std::pair<WalkTreeId, WalkTreeId>, Feet> taped_;
  std::set<WalkTreeId> oak_cards_,
      beside_oak_;  // crop trees of cards that show an oak; all on them
  std::vector<const WalkTree*> crops_;
};

}  // namespace

std::vector<WorkCase> work_cases(const WorkSite& site, const ReleasePlan& plan,
                                 const ReleaseInput& input) {
  const Site built(site, plan, input);
  std::vector<WorkCase> cases;
  cases.reserve(plan.trees.size());
  for (std::size_t i = 0; i < plan.trees.size(); ++i) cases.push_back(built.work_case(i));
  return cases;
}

std::string oak_wilt_words(const std::optional<StandDensity>& stand, const WorkSettings& settings) {
  std::string text;
  if (stand) {
    const SquareFeetPerAcre oak = stand->ba_oak;
    const char* risk = oak > settings.wilt_high     ? "the highest"
                       : oak > settings.wilt_middle ? "the middle"
                                                    : "the lowest";
    text = "With " + plain_number(oak.value) + " ft2/ac of oak this stand is in " + risk +
           " class of oak wilt risk. ";
  }
  return text + "A wound on an oak in the season is painted within " +
         std::to_string(settings.paint_minutes) +
         " minutes; a stump stays open to the disease for " +
         std::to_string(settings.wound_open_hours) + " hours.";
}

}  // namespace oaklight
