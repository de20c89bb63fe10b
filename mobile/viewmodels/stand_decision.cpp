#include "mobile/viewmodels/stand_decision.hpp"

#include <algorithm>

using oaklight::CardView;
using oaklight::Result;

const CardView* StandDecision::card_of(oaklight::WalkTreeId crop) const {
  const auto found = std::ranges::find(cards, crop, &CardView::crop);
  return found == cards.end() ? nullptr : &*found;
}

bool is_marked(const CardView& card) {
  return card.mark.has_value() ||
         std::ranges::any_of(card.neighbours, [](const oaklight::NeighbourView& tree) {
           return tree.marked.has_value();
         });
}

const oaklight::Light& shown_after(const CardView& card) {
  return is_marked(card) ? card.after : card.recommended;
}

Result<std::shared_ptr<const StandDecision>> decide_stand(oaklight::TractData part,
                                                          const oaklight::TractKnowledge& knowledge,
                                                          oaklight::StandId stand) {
  const oaklight::LiveTract live(std::move(part));
  auto cards = oaklight::card_views(live, knowledge, stand);
  if (!cards) return cards.error();
  auto decision = std::make_shared<StandDecision>(StandDecision{stand, *std::move(cards)});
  return std::shared_ptr<const StandDecision>(std::move(decision));
}
