#pragma once

#include <span>

#include "core/base/id.hpp"
#include "core/model/acorn.hpp"
#include "core/model/species.hpp"
#include "core/release/settings.hpp"

namespace oaklight {

enum class Producer { excellent, good, fair, poor, no_record };

/// What one tree's counts say.
struct AcornRecord {
  int years = 0;
  Producer producer = Producer::no_record;  ///< by the mean of all counts (R3.36, R3.41 - R3.43)
  bool proven_poor = false;  ///< poor in every surveyed year, enough of them, one good (R3.39)
};

/// The record of one tree. No record for a tree that is no oak of a known group.
[[nodiscard]] AcornRecord acorn_record(const Uuid& tree, OakGroup group,
                                       std::span<const AcornCount> counts,
                                       std::span<const AcornYear> years,
                                       const AcornSettings& settings);

}  // namespace oaklight
