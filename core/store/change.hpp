#pragma once

#include <string>
#include <variant>
#include <vector>

#include "core/model/mark.hpp"

namespace oaklight {

/// Takes a record out of use. Its row stays in the file as a tombstone, so that undo and joining
/// files work; load() leaves it out.
struct Remove {
  std::variant<StandId, CruiseId, PlotId, TreeId, RegenId, WalkTreeId, ContactId, MarkId, MapLineId,
               StumpId, AcornCountId, AcornYearId>
      id;
};

/// One record as it shall be from now on: added when its id is new, corrected when the file has it.
using Change = std::variant<Tract, Stand, Cruise, Plot, Tree, Regen, WalkTree, Contact, Mark,
                            MapLine, Stump, AcornCount, AcornYear, Remove>;

/// One thing that a person did. It is written whole or not at all, and undone in one step.
struct Action {
  std::string label;  ///< as undo shows it: "tally red oak 12.3 in", "import 3 files"
  std::vector<Change> changes;
};

}  // namespace oaklight
