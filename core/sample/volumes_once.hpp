#pragma once

#include <algorithm>
#include <cstdint>
#include <unordered_map>

#include "core/sample/group_tally.hpp"

namespace oaklight {

/// Volumes of trees that were read alike are worked out once: a tape shows few different numbers.
class VolumesOnce {
 public:
  VolumesOnce(const SpeciesTable& table, const EstimateOptions& options)
      : table_(table), options_(options) {}

  /// Until it is asked again. Errors: unknown_species.
  Result<const TreeVolumes*> of(const TreeFacts& facts, const StandSample& sample) {
    if (facts.height || facts.status == TreeStatus::dead) return anew(facts, sample);
    const auto logs =
        static_cast<std::uint64_t>(1 + std::min(facts.half_logs.value_or(-1), 0x7fff));
    const std::uint64_t key = static_cast<std::uint64_t>(facts.species.fia) << 32U | logs << 16U |
                              static_cast<std::uint64_t>(facts.dbh.tenths()) << 1U |
                              static_cast<std::uint64_t>(facts.dbh.system());
    const auto known = known_.find(key);
    if (known != known_.end()) return &known->second;
    const auto volumes = anew(facts, sample);
    if (volumes) known_.emplace(key, last_);
    return volumes;
  }

 private:
  Result<const TreeVolumes*> anew(const TreeFacts& facts, const StandSample& sample) {
    const auto species = known_species(table_, facts.species, sample);
    if (!species) return species.error();
    last_ = volumes_of(facts, **species, options_);
    return &last_;
  }
  const SpeciesTable& table_;
  const EstimateOptions& options_;
  std::unordered_map<std::uint64_t, TreeVolumes> known_;
  TreeVolumes last_;
};

}  // namespace oaklight
