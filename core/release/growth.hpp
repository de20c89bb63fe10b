#pragma once

#include <array>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <vector>

#include "core/model/mark.hpp"
#include "core/sample/mean_difference.hpp"

namespace oaklight {

/// What became of a tagged tree between two visits.
enum class TagFate {
  grown,          ///< live both times, DBH read both times
  dead,           ///< live then, standing dead now
  taken,          ///< marked to go, and not met again alive
  not_met,        ///< nobody met the tag again
  not_read,       ///< the second file carries the old reading on: it was not measured again
  other_species,  ///< another species wears the tag now: one of the two is wrong
};
template <>
inline constexpr auto kWords<TagFate> =
    std::to_array<Word<TagFate>>({{TagFate::grown, "grown"},
                                  {TagFate::dead, "dead"},
                                  {TagFate::taken, "taken"},
                                  {TagFate::not_met, "not_met"},
                                  {TagFate::not_read, "not_read"},
                                  {TagFate::other_species, "other_species"}});

/// One tagged tree of the first visit.
struct TaggedTree {
  std::string tag;
  StandId stand;  ///< of the first visit
  SpeciesCode species;
  bool crop = false;
  TagFate fate = TagFate::not_met;
  Inches before;
  std::optional<Inches> after;    ///< fate grown
  std::optional<double> years{};  ///< between the readings; nothing when the days are not known
  std::optional<bool> released{}; /**< crop trees: whether light was given by neighbours taken;
                                     nothing for other trees */

  /// Growth in DBH a year. Nothing without both readings and their days.
  [[nodiscard]] std::optional<Inches> per_year() const {
    if (!after || !years || !(*years > 0.0)) return std::nullopt;
    return Inches{(after->value - before.value) / *years};
  }
};

/// Live tagged trees of the first visit, on plots and on cards, and what the second says of each.
/// A tag on a card and on a plot is one tree; its readings are taken from records of one kind where
/// both visits have them. In order of tags as people count: 9 before 10.
///
/// taken    trees of the first visit's walk that are gone
/// assumes  tags are unique in a tract
[[nodiscard]] std::vector<TaggedTree> trees_by_tag(const TractData& first, const TractData& second,
                                                   const std::set<WalkTreeId>& taken);

/// Growth in DBH of crop trees, inches a year: those that were released and those that were not.
struct GrowthComparison {
  std::optional<GroupMean> released, unreleased;
  Result<MeanDifference> difference;  ///< released less unreleased, by Welch
};

/// assumes  released trees were chosen and not drawn by lot: a difference may come from what they
///          were chosen for
[[nodiscard]] GrowthComparison compare_growth(std::span<const TaggedTree> trees,
                                              Confidence confidence);

}  // namespace oaklight
