#pragma once

#include <span>
#include <vector>

#include "core/base/id.hpp"
#include "core/model/species.hpp"
#include "core/release/settings.hpp"

namespace oaklight {

/// Acorns on one oak in one autumn: the mean of several branch tips, last 24 in each.
struct AcornCount {
  Uuid tree;  ///< id of the WalkTree or Tree
  int year = 0;
  double per_tip = 0.0;
};

/// A year in which this group of oaks bore well, by a survey of the property or the region. Without
/// one nobody can tell a poor tree from a poor year.
struct GoodAcornYear {
  OakGroup group = OakGroup::none;
  int year = 0;
};

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
                                       std::span<const GoodAcornYear> good_years,
                                       const AcornSettings& settings);

}  // namespace oaklight
