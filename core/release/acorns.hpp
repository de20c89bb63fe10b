#pragma once

#include <map>
#include <optional>
#include <span>
#include <utility>

#include "core/base/id.hpp"
#include "core/model/acorn.hpp"
#include "core/model/tree.hpp"
#include "core/release/settings.hpp"

namespace oaklight {

enum class Producer { excellent, good, fair, poor, no_record };

/// What one tree's counts say.
struct AcornRecord {
  int years = 0;  ///< autumns in which somebody counted
  Producer producer = Producer::no_record;
  std::optional<double> per_tip;  ///< mean of the branch tip counts
  bool proven_poor = false;       ///< poor in every surveyed year, enough of them, one good (R3.39)
};

/// One counted tree, as the record of its species needs it.
struct CountedOak {
  Uuid tree;
  SpeciesCode species;
};

/// Mean of L = ln(N30 + 1) of a species in one autumn (R3.45).
using TimedMeans = std::map<std::pair<SpeciesCode, int>, double>;

/// The means of each species and autumn in which enough trees were counted by time (R3.48).
[[nodiscard]] TimedMeans timed_means(std::span<const CountedOak> trees,
                                     std::span<const AcornCount> counts,
                                     const AcornSettings& settings);

/// The record of one tree; no record for a tree that is no oak of a known group.
///
/// Branch tips rank a tree by the mean of its autumns (R3.41 - R3.43). Timed counts have no such
/// classes: where there are no tips, a tree with enough autumns (R3.39) is good at or above the
/// mean of its species over them (R3.36), poor when nobody ever saw an acorn on it, else fair. An
/// autumn is poor by its tips, or, without tips, when the timed count found none.
///
/// source   ours, after Greenberg 2000 (R3.36) and Koenig and others 1994 (R3.44, R3.45)
[[nodiscard]] AcornRecord acorn_record(const CountedOak& oak, OakGroup group,
                                       std::span<const AcornCount> counts,
                                       std::span<const AcornYear> years, const TimedMeans& means,
                                       const AcornSettings& settings);

}  // namespace oaklight
