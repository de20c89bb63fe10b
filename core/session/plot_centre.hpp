#pragma once

#include <string>

#include "core/place/fix.hpp"
#include "core/session/knowledge.hpp"
#include "core/session/live_tract.hpp"

namespace oaklight {

/// "Centre by GNSS: mean of 30 fixes, spread 1.8 m, accuracy 3.2 m, 4.1 m from the planned place.",
/// "Centre by GNSS, POOR: mean of 4 fixes, spread 9.0 m, no accuracy told."
///
/// before  where the plot was to be
[[nodiscard]] std::string centre_words(const MeanFix& centre,
                                       const std::optional<Position>& before);

/// Records where the centre of a plot is, with its accuracy; how it was found goes into the note,
/// in place of what an earlier finding said there, and the rest of the note stays. "centre of plot
/// 7". Nothing but the plot changes: not its status, and no bearing or distance of its trees.
///
/// errors   unknown_reference: no such plot; contradiction: it was skipped; out_of_range: a place
///          or an accuracy that the form does not take, or a note longer than it takes
Result<Action> record_centre(const LiveTract& live, const TractKnowledge& knowledge, PlotId plot,
                             const MeanFix& centre);

}  // namespace oaklight
