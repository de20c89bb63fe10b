#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "core/session/card_view.hpp"

/// A stand decided once, with all that its cards show; never changed after it was made.
struct StandDecision {
  oaklight::StandId stand;
  std::vector<oaklight::CardView> cards;  ///< in the order in which they were made

  [[nodiscard]] const oaklight::CardView* card_of(oaklight::WalkTreeId crop) const;
};

/// Whether a person decided the card, or stored what is recommended: its own tree or one of its
/// neighbours has a mark.
[[nodiscard]] bool is_marked(const oaklight::CardView& card);
/// The light to show as "after": with the marked trees gone; where nothing on the card is marked
/// yet, with those of the recommendation gone.
[[nodiscard]] const oaklight::Light& shown_after(const oaklight::CardView& card);

/// Decides a stand. part: as stand_part gives it. Errors: of card_views.
oaklight::Result<std::shared_ptr<const StandDecision>> decide_stand(
    oaklight::TractData part, const oaklight::TractKnowledge& knowledge, oaklight::StandId stand);
