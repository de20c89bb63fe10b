#pragma once

#include "core/forms/sheet.hpp"
#include "core/session/knowledge.hpp"

namespace oaklight {

/// The sheets of a tract: its own form, the design of its newest cruise, and the species that were
/// met most, or, before anything was tallied, those of its first tally set.
///
/// each_plot  a sheet for each plot that is still to be visited, its label printed; otherwise one
///            blank set
/// errors     no_data when each_plot is asked for and no plot is planned
Result<SheetSet> sheet_set(const TractData& data, const TractKnowledge& knowledge, bool each_plot);

}  // namespace oaklight
