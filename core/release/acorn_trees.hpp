#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/model/mark.hpp"
#include "core/release/acorns.hpp"
#include "core/sample/mean_difference.hpp"

namespace oaklight {

/// What was counted on one oak in one autumn. Nothing: not counted that way.
struct AcornAutumn {
  int year = 0;
  std::optional<double> per_tip;
  std::optional<int> n30;
};

/// One oak with counts, and what they say of it.
struct AcornTree {
  std::string tag;
  std::string stand;
  SpeciesCode species;
  bool crop = false;
  std::vector<AcornAutumn> autumns;  ///< by year
  AcornRecord record;                ///< by its branch-tip counts of all years
};

/// The oaks of two visits that have counts, in order of tags as text. Counts of both files are
/// joined by tag, year and method; where both hold one, the second file's counts.
///
/// errors   unknown_species
[[nodiscard]] Result<std::vector<AcornTree>> acorn_trees(const TractData& first,
                                                         const TractData& second,
                                                         const SpeciesTable& species,
                                                         const AcornSettings& settings);

/// The crop of one species in one autumn, by timed counts: an index that ranks years. It is no
/// number of acorns, says nothing of single trees (a poor year is not a poor tree), and compares
/// neither species nor places with each other.
struct AcornIndex {
  std::string stand;  ///< "": the whole tract
  SpeciesCode species;
  int year = 0;
  GroupMean index;      ///< mean over trees of ln(N30 + 1), rule R3.45
  Percent bearing;      ///< share of these trees on which any acorn was seen, rule R3.47
  bool enough = false;  ///< as many trees as rule R3.48 wants
};

/// By stand, species and year; and over the tract where several stands have counts.
///
/// source   Koenig and others 1994, Canadian Journal of Forest Research 24:2105-2112 (transform
/// from
///          memory); rules R3.45, R3.47, R3.48
[[nodiscard]] std::vector<AcornIndex> acorn_indices(std::span<const AcornTree> trees,
                                                    int trees_wanted, Confidence confidence);

/// The rules behind acorn_indices and the producer classes.
inline constexpr const char* kAcornIndexRules[] = {"R3.45", "R3.47", "R3.48"};

}  // namespace oaklight
