#include <limits>

#include "core/sample/stand_sample.hpp"

namespace oaklight {

std::uint16_t PackedTrees::place_of(SpeciesCode code) {
  // A tract has some dozens of species.
  auto found = std::ranges::find(species_, code);
  if (found == species_.end()) found = species_.insert(found, code);
  return static_cast<std::uint16_t>(found - species_.begin());
}

void PackedTrees::add(const Tree& tree, int plot, bool thin) {
  const auto place = static_cast<std::uint32_t>(trees_.size());
  if (runs_.empty() || runs_.back().plot != plot) runs_.push_back({plot, place});
  const TreeFacts& facts = tree.facts;
  Packed p{.dbh = facts.dbh,
           .species = place_of(facts.species),
           .stems = static_cast<std::uint16_t>(tree.stems),
           .edge_count = static_cast<std::uint8_t>(tree.edge_count),
           .dead = facts.status == TreeStatus::dead,
           .thin = thin,
           .tall = facts.height.has_value()};
  // No table goes as far as this, whatever the number was.
  constexpr int kMost = std::numeric_limits<std::int16_t>::max();
  if (facts.half_logs) p.half_logs = static_cast<std::int16_t>(std::min(*facts.half_logs, kMost));
  if (facts.crown_class) {
    p.crown = static_cast<std::uint8_t>((1 + static_cast<unsigned>(*facts.crown_class)) & 15U);
  }
  if (facts.height) heights_.emplace_back(place, *facts.height);
  trees_.push_back(p);
}

bool PackedTrees::unpack(std::size_t place, Tree& tree) const {
  const Packed& p = trees_[place];
  TreeFacts& facts = tree.facts;
  facts.species = species_[p.species];
  facts.dbh = p.dbh;
  facts.status = p.dead ? TreeStatus::dead : TreeStatus::live;
  facts.crown_class.reset();
  if (p.crown > 0) facts.crown_class = static_cast<CrownClass>(p.crown - 1);
  facts.half_logs.reset();
  if (p.half_logs >= 0) facts.half_logs = p.half_logs;
  facts.height.reset();
  if (p.tall) {
    facts.height = std::ranges::lower_bound(heights_, static_cast<std::uint32_t>(place), {},
                                            &std::pair<std::uint32_t, TapedLength>::first)
                       ->second;
  }
  tree.stems = p.stems;
  tree.edge_count = p.edge_count;
  return p.thin;
}

Tree PackedTrees::blank() {
  return {{}, {}, {{}, Dbh::from_tenths(1, UnitSystem::us).value(), {}, {}, {}, {}, {}, {}, {}, {}},
          1,  1,  {},
          {}, {}};
}

}  // namespace oaklight
