#pragma once

#include <map>

#include "core/session/card_view.hpp"
#include "mobile/web/bridge/web_desk.hpp"

// Crop tree cards as the page shows them.

namespace oaklight::web {

/// The cautions of each tree of a stand's walk.
using CautionsByTree = std::map<WalkTreeId, std::vector<Caution>>;
/// Errors: of marks_view.
[[nodiscard]] Result<CautionsByTree> cautions_of_stand(const OpenTract& tract, StandId stand);

/// All cards of a stand, decided now. Errors: of card_views.
[[nodiscard]] Result<std::vector<CardView>> decided_cards(const OpenTract& tract, StandId stand);

/// A row of the list of cards.
[[nodiscard]] Json card_line(const OpenTract& tract, const CardView& card);
/// The open card: cautions, sides, and each tree with its verdict.
[[nodiscard]] Json card_json(const OpenTract& tract, const CardView& card,
                             const CautionsByTree& cautions);
[[nodiscard]] Json guard_json(const GuardView& view);

}  // namespace oaklight::web
