#pragma once

#include <string>

#include "core/session/knowledge.hpp"
#include "core/session/live_tract.hpp"

// Setting up a tract, as actions for TractStore::apply; pure, and with the errors of plot_work.hpp.

namespace oaklight {

/// Replaces what is recorded of the tract. Invented data stays invented: demo is not cleared.
/// Errors: not_a_choice for a state that is not two letters.
Result<Action> change_tract(const LiveTract& live, const TractKnowledge& knowledge, Tract tract);

/// Adds a stand; stand.id is not read. Errors: duplicate for a name in use, capitals aside;
/// contradiction when more ground was walked than a tenth above its acres.
Result<Action> add_stand(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
                         Stand stand);
/// Replaces what is recorded of a stand, e.g. its acres or the acres walked. Errors: as add_stand.
Result<Action> change_stand(const LiveTract& live, const TractKnowledge& knowledge, Stand stand);

/// Adds a cruise; cruise.id is not read. Errors: duplicate for a name in use; of check_design;
/// contradiction when no tree can fall on the small plot.
Result<Action> add_cruise(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
                          Cruise cruise);

/// "point, BAF 10 ft2/ac", "fixed plot, 0.1 ac; under 5.0 in on 0.01 ac": a design in words.
[[nodiscard]] std::string design_text(const Design& design);

}  // namespace oaklight
