#pragma once

#include <set>

#include "core/session/compare.hpp"

namespace oaklight {

/// The crowns of the crop trees that had a card at the first visit, by stand and card: their light
/// then, with the taken neighbours gone, and now where a second card was made.
///
/// A card of the second file is a second card when it was made anew or says something else than the
/// first; a file that only carries the old cards on says nothing about now.
///
/// taken    trees of the first visit's walk that are gone
/// errors   of card_views
Result<std::vector<CropTreeChange>> crown_changes(const TractData& first, const TractData& second,
                                                  const std::set<WalkTreeId>& taken,
                                                  const TractKnowledge& knowledge);

}  // namespace oaklight
