#include "core/stand/composition.hpp"

#include <algorithm>
#include <map>

namespace oaklight {
namespace {

using Stands = std::span<const StandSample* const>;
using BaByPlot = std::vector<std::vector<double>>;  // by stand, then by plot; 0 where none

BaByPlot zeros(Stands stands) {
  BaByPlot values;
  for (const StandSample* s : stands) values.emplace_back(s->plots.size(), 0.0);
  return values;
}

Result<BasalAreaShare> share_of(Stands stands, const BaByPlot& part, const BaByPlot& whole) {
  std::vector<PairedStratum> pairs;
  for (std::size_t h = 0; h < stands.size(); ++h) {
    pairs.push_back({.size = stands[h]->stand->acres.value,
                     .plots = static_cast<int>(stands[h]->plots.size()),
                     .x = whole[h],
                     .y = part[h]});
  }
  const auto ratio = ratio_of_sums(pairs);
  if (!ratio) return ratio.error();
  BasalAreaShare share{.share = percent(ratio->ratio)};
  if (ratio->se) share.se = percent(*ratio->se);
  return share;
}

struct Parts {
  BaByPlot all, oak, white_oak, red_oak, hickory;
  std::map<SpeciesCode, BaByPlot> species;
};

Result<Parts> parts_of(Stands stands, const SpeciesTable& table) {
  const BaByPlot none = zeros(stands);
  Parts p{none, none, none, none, none, {}};
  for (std::size_t h = 0; h < stands.size(); ++h) {
    const auto count = [&](SpeciesCode code, int plot, SquareFeetPerAcre ba) -> Status {
      const auto found = known_species(table, code, *stands[h]);
      if (!found) return found.error();
      const Species* s = *found;
      const auto add = [&](BaByPlot& to) { to[h][static_cast<std::size_t>(plot)] += ba.value; };
      if (!(ba.value > 0.0)) return Done{};  // a dead tree
      add(p.all);
      add(p.species.try_emplace(code, none).first->second);
      if (s->is_oak()) add(p.oak);
      if (s->is_oak() && s->oak_group == OakGroup::white) add(p.white_oak);
      if (s->is_oak() && s->oak_group == OakGroup::red) add(p.red_oak);
      if (s->genus() == "Carya") add(p.hickory);
      return Done{};
    };
    for (const TalliedTree& t : Tallies(*stands[h])) {
      const bool dead = t.tree->facts.status == TreeStatus::dead;
      const Status done = count(t.tree->facts.species, t.plot, dead ? SquareFeetPerAcre{} : t.ba);
      if (!done) return done.error();
    }
    for (const CountedStems& c : stands[h]->counted) {
      if (const Status done = count(c.species, c.plot, c.ba); !done) return done.error();
    }
  }
  return p;
}

}  // namespace

Result<Composition> composition(Stands stands, const SpeciesTable& species) {
  const auto parts = parts_of(stands, species);
  if (!parts) return parts.error();
  Composition c;
  const std::pair<const BaByPlot*, BasalAreaShare*> groups[] = {{&parts->oak, &c.oak},
                                                                {&parts->white_oak, &c.white_oak},
                                                                {&parts->red_oak, &c.red_oak},
                                                                {&parts->hickory, &c.hickory}};
  for (const auto& [values, share] : groups) {
    const auto s = share_of(stands, *values, parts->all);
    if (!s) return s.error();
    *share = *s;
  }
  for (const auto& [code, values] : parts->species) {
    const auto s = share_of(stands, values, parts->all);
    if (!s) return s.error();
    c.species.push_back({code, *s});
  }
  // They come by code: a stable sort leaves equal shares so.
  std::ranges::stable_sort(c.species, [](const SpeciesShare& a, const SpeciesShare& b) {
    return a.part.share > b.part.share;
  });
  return c;
}

}  // namespace oaklight
