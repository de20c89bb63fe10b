#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/forms/import_job.hpp"

namespace oaklight {

/// One usable row of crop_trees.csv.
struct CardRow {
  FilledRow row;
  CardRole role = CardRole::neighbour;
  std::string card;
  std::string tag;  ///< of the tree; "" for an open side
};

/// Rows by tag, in file order.
using RowsByTag = std::map<std::string, std::vector<const CardRow*>>;

/// The sides that a row names, without those that its azimuth implies.
Sides named_sides(const FilledRow& row);
/// The side on which an azimuth lies: N from 315 to 45 degrees, and so on round.
Side side_of(Degrees azimuth);
/// Degrees between two directions, 0 to 180.
double degrees_apart(Degrees a, Degrees b);

/// Makes one tree of each tag: what its rows say, joined with what the tract file says. Rows that
/// contradict each other, and trees without species or DBH, are faults.
/// Returns the id of each tag that became a tree.
std::map<std::string, WalkTreeId> join_tags(ImportJob& job, const RowsByTag& rows,
                                            const std::map<std::string, Sides>& looked);

/// Two cards that each tell of the other's crop tree must agree on how the two stand.
void check_mutual(ImportJob& job, const std::vector<CardRow>& rows);

}  // namespace oaklight
