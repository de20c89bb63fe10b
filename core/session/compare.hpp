#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/release/acorn_trees.hpp"
#include "core/release/closing.hpp"
#include "core/release/growth.hpp"
#include "core/session/card_view.hpp"
#include "core/stand/stand_change.hpp"

namespace oaklight {

/// What is asked of a comparison.
struct CompareOptions {
  EstimateOptions estimate;
  std::string first_cruise;       ///< by name; "": the visit before the newest, stand by stand
  std::string second_cruise;      ///< by name; "": the newest
  std::optional<double> years{};  ///< between the visits; nothing: from the days of the cruises
};

/// Two visits to one stand.
struct StandComparison {
  std::string stand;
  std::string first_cruise, second_cruise;
  std::string first_day, second_day;    ///< ISO 8601; "" not recorded
  std::optional<double> years;          ///< between them
  std::vector<std::string> only_first;  ///< plots that only one visit went to: in no figure
  std::vector<std::string> only_second;
  Result<AreaChange> change;
};

/// One crop tree that had a card at the first visit.
struct CropTreeChange {
  std::string stand, tag, species;
  bool released = false;     ///< neighbours that were taken gave it light
  Light before, after;       ///< at the first visit, and with the taken neighbours gone
  std::optional<Light> now;  ///< from a card of the second visit
  /// Sides that were free after the work and are free no more. Nothing without a second card, and
  /// when sides of it were not looked at.
  std::optional<int> sides_closed;
  /// Without a second card: years after the first visit in which to look again.
  std::optional<YearsRange> look;
  bool look_now = false;  ///< it has so few free sides now, or had right after the work
};

/// What changed between two visits to a tract.
struct Comparison {
  std::vector<StandComparison> stands;  ///< cruised both times, in the order of the first visit
  std::vector<std::string> only_first;  ///< stands that only one visit went to
  std::vector<std::string> only_second;
  Result<AreaChange> all;         ///< over all stands cruised both times, by acres
  std::vector<TaggedTree> trees;  ///< live tagged trees of the first visit
  GrowthComparison growth;        ///< of its crop trees
  std::vector<CropTreeChange> crop_trees;
  std::vector<AcornTree> acorn_trees;     ///< oaks with counts, of both files
  std::vector<AcornIndex> acorn_indices;  ///< of their timed counts
};

/// Compares two tract files of one tract: the newest visit of each, or the cruises named. Stands
/// are paired by name, plots by label within the stand, trees by tag.
///
/// knowledge  rules and species of the second file
/// errors     no_data when no stand was cruised both times, no tagged tree was met and there is no
///            card whose crown could be told; a cruise
/// that
///            is named and not there is unknown_reference; of cruised_stands; of card_views
/// assumes    the work was done right after the first visit: when it was is not recorded
Result<Comparison> compare_files(const TractData& first, const TractData& second,
                                 const TractKnowledge& knowledge, const CompareOptions& options);

/// Compares two visits in one tract file.
/// errors     as compare_files
Result<Comparison> compare_visits(const TractData& data, const TractKnowledge& knowledge,
                                  const CompareOptions& options);

}  // namespace oaklight
