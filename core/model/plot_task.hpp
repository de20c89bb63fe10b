#pragma once

#include <string>
#include <vector>

#include "core/model/tract.hpp"

namespace oaklight {

/// What is taken at a plot of double sampling: the cheap value on all, the dear one on some.
enum class PlotTask {
  measure,  ///< each tree with its size, and its logs and height where the cruise wants them
  count,    ///< at least how many trees of which species are in; sizes and logs need not be told
};
template <>
inline constexpr auto kWords<PlotTask> =
    std::to_array<Word<PlotTask>>({{PlotTask::measure, "measure"}, {PlotTask::count, "count"}});

/// Live trees of one species that are in at a count point, each edge tree as often as it counts.
struct SpeciesCount {
  SpeciesCode species;
  int stems = 0;
  friend bool operator==(SpeciesCount, SpeciesCount) = default;
};

/// What was taken at a plot. Kept at the head of the plot's note, in square brackets, so that files
/// need no new column and any GIS shows it: "[count point: 802 4, 316 3] by the creek" is 4 white
/// oaks (FIA 802) and 3 red maples without a size. A note that does not begin so, brackets and all,
/// is that of a measured plot.
struct PlotTaken {
  PlotTask task = PlotTask::measure;
  /// Trees counted without a size, by species, each once; at count points only.
  std::vector<SpeciesCount> counted{};
  std::string note{};  ///< what a person wrote
};

/// Splits a plot's note.
[[nodiscard]] PlotTaken taken_at(const Plot& plot);
/// The note that says so. taken_at reads it back, but for the note of a measured plot that itself
/// begins like a count point.
[[nodiscard]] std::string note_of(const PlotTaken& taken);

}  // namespace oaklight
