#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/release/season.hpp"

namespace oaklight {

/// What of a piece of work the season asks about.
struct WorkKind {
  bool felling = true;       ///< a tree comes down, or a machine drives
  bool oak_near = true;      ///< the tree is an oak, or an oak stands beside it
  bool oak = false;          ///< the tree is an oak
  bool sap_matters = false;  ///< herbicide through the bark of a maple or birch
};

/// Whether work may be done on a day, and from when on.
struct DayAdvice {
  std::vector<SeasonWindow> held_by;  ///< windows that hold it on that day; empty: it may be done
  std::optional<Day> earliest;        ///< the first day from then on that none holds
  std::optional<Day> with_warning;    ///< the first on which only windows of lower risk hold
};

/// A window in which the risk is lower than in the one before it: issues that end in "_lower_risk"
/// and advice for pruning ("_prune_hold").
[[nodiscard]] bool is_lower_risk(const SeasonWindow& window);

/// Whether a window bears on this work. Oak wilt: felling and machines beside oaks, and any work on
/// an oak. Slipping bark: felling. Bats and nests: all work.
[[nodiscard]] bool bears_on(const SeasonWindow& window, const WorkKind& work);

/// windows  of the state; those for work and those of slow sap alike
[[nodiscard]] DayAdvice day_advice(std::span<const SeasonWindow> windows, const WorkKind& work,
                                   Day day);

/// "Not on May 20: oak wilt risk (Apr 15 - Jul 15). The first day free of every window is ...".
[[nodiscard]] std::string day_words(const DayAdvice& advice, Day day);

}  // namespace oaklight
