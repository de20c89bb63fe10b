#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/measure/dbh_class.hpp"
#include "core/model/mark.hpp"
#include "core/sample/cruise_estimate.hpp"

namespace oaklight {

/// What stands, goes or stays of one diameter class on an average acre. Nothing is "not known".
struct PracticeClass {
  std::optional<DbhClass> dbh_class;  ///< nothing: all classes
  std::optional<TreesPerAcre> before;
  std::optional<TreesPerAcre> before_se;
  std::optional<SquareFeetPerAcre> before_ba;
  std::optional<SquareFeetPerAcre> before_ba_se;
  int removed_trees = 0;  ///< counted on the marking walk, not estimated
  std::optional<TreesPerAcre> removed;
  std::optional<SquareFeetPerAcre> removed_ba;
  /// Before less removed; nothing also where more trees were marked than the plots let one expect.
  std::optional<TreesPerAcre> after;
  std::optional<SquareFeetPerAcre> after_ba;
};

/// What is documented of one stand when its stocking is changed by cutting or killing chosen trees
/// (NRCS conservation practice 666, forest stand improvement): a record for those who plan and
/// certify, and no standard of the agency. Live trees only.
///
/// source   fields and classes: USDA NRCS, Forest Stand Improvement (666) specifications
///          continuation sheet; crop tree tally: NRCS 190-FOR-01. The current state sheet governs.
struct PracticeRecord {
  std::string stand;
  Acres acres;
  std::optional<Acres> walked;
  Goal goal = Goal::mast;
  int plots = 0;                        ///< behind `before`
  std::vector<std::string> main_kinds;  ///< species with the most basal area before, at most three
  std::vector<std::string> kept_kinds;  ///< species of the crop trees, most stems first
  int crop_trees = 0;
  int felled = 0;  ///< marked to be felled
  int killed_standing = 0;
  std::optional<Inches> crop_qmd;  ///< of the crop trees
  std::optional<Inches> qmd_before, qmd_removed, qmd_after;
  std::vector<PracticeClass> classes;  ///< every 2-inch class from the smallest to the largest
  PracticeClass all;
};

/// The record of one stand.
///
/// area      of the stand's plots, classes of two inches; nullptr: no plots
/// removed   trees that go: felled or killed standing
/// crops     crop trees that stay
/// species   of all of them
PracticeRecord practice_record(const Stand& stand, const AreaEstimate* area,
                               const std::vector<const WalkTree*>& felled,
                               const std::vector<const WalkTree*>& killed_standing,
                               const std::vector<const WalkTree*>& crops,
                               const SpeciesTable& species);

/// All records, one class a line, then a line for all classes of the stand. RFC 4180.
std::string practice_record_csv(const std::vector<PracticeRecord>& records);

}  // namespace oaklight
