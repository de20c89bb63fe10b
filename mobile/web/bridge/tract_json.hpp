#pragma once

#include "mobile/web/bridge/web_desk.hpp"

// Answers that several calls give.

namespace oaklight::web {

/// The open tract, its stands and cruises.
[[nodiscard]] Json tract_json(WebDesk& desk, UnitSystem system);
/// All that the page Tally shows of a plot. Errors: unknown_reference.
[[nodiscard]] Result<Json> plot_json(WebDesk& desk, PlotId plot, const Arguments& arguments);
/// What changes there with each tree: last trees, figures, the stand so far, undo.
[[nodiscard]] Json moving_json(WebDesk& desk, const Plot& plot, UnitSystem system);
/// One tree of a plot as a line.
[[nodiscard]] Json tree_line(const OpenTract& tract, const Tree& tree);
[[nodiscard]] Json species_cell(const Species& species);
/// How the plot's stand stands so far: {text, need}.
[[nodiscard]] Json stand_now_json(OpenTract& tract, StandId stand, UnitSystem system);

/// What a page says of a tree's facts, put over what is known already. Errors: out_of_range,
/// not_a_choice.
[[nodiscard]] Status put_facts(TreeFacts& facts, const Arguments& given);
[[nodiscard]] Json facts_json(const TreeFacts& facts);
/// {"undo": ...} beside what else a change answers.
[[nodiscard]] Json changed(WebDesk& desk, Json answer = Json::object());

}  // namespace oaklight::web
