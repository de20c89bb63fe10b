#pragma once

#include <optional>
#include <string>
#include <variant>

#include "core/model/ids.hpp"
#include "core/model/species.hpp"

namespace oaklight {

/// Acorns on the last 24 in of several branch tips of one oak, before they fall.
struct BranchTipCount {
  double per_tip = 0.0;     ///< mean of the tips looked at; 0 only where tips bore none
  std::optional<int> tips;  ///< how many tips the mean is of
  friend bool operator==(const BranchTipCount&, const BranchTipCount&) = default;
};

/// Acorns that two observers counted for 15 s each on different parts of the crown, added.
struct TimedCount {
  int n30 = 0;  ///< 0 only where both looked and saw none
  friend bool operator==(const TimedCount&, const TimedCount&) = default;
};

/// One count of the acorns on one oak in one autumn. A tree that nobody counted has no record: no
/// count is not a count of none.
struct AcornCount {
  AcornCountId id;
  WalkTreeId tree;
  int year = 0;      ///< of the autumn; with tree and method unique in the tract
  std::string date;  ///< ISO 8601 day, in that year; "" not recorded
  std::variant<BranchTipCount, TimedCount> count;
  std::string note;
};

/// How one group of oaks bore in one autumn.
enum class AcornCrop { poor, fair, good, bumper };
template <>
inline constexpr auto kWords<AcornCrop> =
    std::to_array<Word<AcornCrop>>({{AcornCrop::poor, "poor"},
                                    {AcornCrop::fair, "fair"},
                                    {AcornCrop::good, "good"},
                                    {AcornCrop::bumper, "bumper"}});

/// The crop of one group of oaks in one autumn, by a survey of the property or of the region.
/// Without one nobody can tell a poor tree from a poor year.
struct AcornYear {
  AcornYearId id;
  OakGroup group = OakGroup::none;  ///< white or red; with the year unique in the tract
  int year = 0;
  AcornCrop crop = AcornCrop::poor;
  std::string source;  ///< who said so: "own walk of 40 oaks", "state survey"; "" not recorded
};

}  // namespace oaklight
