#pragma once

#include <vector>

#include "core/forms/form.hpp"
#include "core/forms/read_species.hpp"
#include "core/forms/read_volumes.hpp"
#include "core/release/cautions.hpp"
#include "core/release/plan.hpp"
#include "core/release/season.hpp"
#include "core/store/tract_store.hpp"

namespace oaklight {

/// A tract's own forms, tables and rules, read and checked once when its file is opened.
struct TractKnowledge {
  Form form;
  std::vector<TallySet> sets;
  ReleaseKnowledge release;  ///< with the species
  CautionTable cautions;
  std::vector<SeasonWindow> seasons;
  LocalVolumes volumes;        ///< of the place; no rows: the book's alone
  std::string table_versions;  ///< of cautions and seasons, "cautions 1a2b3c4d, seasons 5e6f7a8b"

  [[nodiscard]] const SpeciesTable& species() const { return release.species; }
};

/// Reads the forms that the tract file holds. Errors: the first fault of the first form that does
/// not read, its `where` naming file, line and column.
Result<TractKnowledge> read_knowledge(const TractStore& store);

}  // namespace oaklight
