#pragma once

#include "core/session/card_view.hpp"
#include "mobile/web/bridge/web_desk.hpp"

// Crop tree cards as the page shows them.

namespace oaklight::web {

/// The cards of a stand, decided anew where the tract changed since. It holds until the next
/// change. Errors: of card_views.
[[nodiscard]] Result<DecidedStand*> decided_stand(OpenTract& tract, StandId stand);
/// The cautions of its trees, which each card shows first. Errors: of marks_view.
[[nodiscard]] Status look_for_cautions(const OpenTract& tract, DecidedStand& decided);

/// A row of the list of cards.
[[nodiscard]] Json card_line(const OpenTract& tract, const CardView& card);
/// The open card: cautions, sides, and each tree with its verdict. Assumes look_for_cautions.
[[nodiscard]] Json card_json(const OpenTract& tract, const CardView& card,
                             const DecidedStand& decided);
[[nodiscard]] Json guard_json(const GuardView& view);

}  // namespace oaklight::web
