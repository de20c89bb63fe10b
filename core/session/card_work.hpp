#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/session/knowledge.hpp"
#include "core/session/live_tract.hpp"

// Crop tree cards, as actions for TractStore::apply; pure, and with the errors of plot_work.hpp.

namespace oaklight {

/// What is recorded of one tree of the marking walk.
struct WalkTreeDraft {
  std::string tag;  ///< "": the next free number
  TreeFacts facts;
  std::optional<Position> position;
  std::optional<Percent> slope;
};
[[nodiscard]] WalkTreeDraft draft_of(const WalkTree& tree);

/// How a neighbour stands to the crop tree.
struct ContactDraft {
  Sides sides;  ///< sides of the crop crown; empty: take them from the azimuth
  Seen seen = Seen::not_looked;
  std::optional<TapedLength> distance;  ///< level, stem to stem
  std::optional<Degrees> azimuth;       ///< from crop tree to neighbour, true north
};
[[nodiscard]] ContactDraft draft_of(const Contact& contact);

/// The lowest number above every tag of the walk that is a number: the tag to propose.
[[nodiscard]] std::string next_tag(const LiveTract& live);

/// "crop tree 14: white oak 15.0 in". Errors: duplicate for a tag in use; unknown_species;
/// contradiction as tally_tree says of a tree's facts.
Result<Action> add_crop_tree(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
                             StandId stand, const WalkTreeDraft& draft);
/// A tree of the walk gets a card of its own.
Result<Action> make_crop_tree(const LiveTract& live, const TractKnowledge& knowledge,
                              WalkTreeId tree);

/// Adds a tree to the walk and to the card: "neighbour 15: red maple 10.0 in". Errors: as
/// add_crop_tree; missing_value for one that touches or reaches over on no side; contradiction for
/// an azimuth that points away from its sides.
Result<Action> add_neighbour(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
                             WalkTreeId crop, const WalkTreeDraft& draft,
                             const ContactDraft& contact);
/// Puts a tree that was walked already on this card too. Errors: as add_neighbour; duplicate when
/// it stands on the card; contradiction for the crop tree itself or a tree of another stand.
Result<Action> add_known_neighbour(const LiveTract& live, const TractKnowledge& knowledge,
                                   IdSource& ids, WalkTreeId crop, WalkTreeId neighbour,
                                   const ContactDraft& contact);
/// Replaces how a neighbour stands to the crop tree, e.g. what was seen. Errors: as add_neighbour.
Result<Action> change_contact(const LiveTract& live, const TractKnowledge& knowledge,
                              ContactId contact, const ContactDraft& draft);
/// Replaces what is recorded of a tree of the walk. Errors: as add_crop_tree.
Result<Action> correct_walk_tree(const LiveTract& live, const TractKnowledge& knowledge,
                                 WalkTreeId tree, const WalkTreeDraft& draft);

/// Somebody looked up at this side and saw it open. Errors: contradiction while a neighbour that
/// crowds stands there.
Result<Action> look_open(const LiveTract& live, WalkTreeId crop, Side side);
/// Nobody looked at this side after all.
Result<Action> unlook(const LiveTract& live, WalkTreeId crop, Side side);

/// Takes a neighbour off a card. A tree that is on no other card and has none of its own leaves the
/// walk with its mark.
Result<Action> remove_neighbour(const LiveTract& live, const TractKnowledge& knowledge,
                                ContactId contact);
/// Takes a card out of use, with the neighbours that stand on no other card. A crop tree that is a
/// neighbour on another card stays in the walk as that.
Result<Action> remove_crop_tree(const LiveTract& live, const TractKnowledge& knowledge,
                                WalkTreeId crop);

/// Decides a tree by hand: "overrule 15: keep". Method, product and destination follow from the
/// verdict by the same rules as for a recommendation. Errors: missing_value without a reason; of
/// with_destinations.
Result<Action> overrule(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
                        WalkTreeId tree, Verdict verdict, std::string_view reason);
/// Gives a tree back to the rules: its mark is what is recommended now. Errors: contradiction when
/// it was not decided by hand; of plan_stand.
Result<Action> take_back_overrule(const LiveTract& live, const TractKnowledge& knowledge,
                                  IdSource& ids, WalkTreeId tree);

}  // namespace oaklight
