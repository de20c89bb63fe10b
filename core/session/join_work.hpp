#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/session/live_tract.hpp"
#include "core/store/join.hpp"

// What mends a name that a join found used twice, as actions for TractStore::apply; pure.

namespace oaklight {

/// Gives the record of one side another name, label or tag.
/// Errors: not_a_choice for a question of another kind; unknown_reference when the record is gone;
/// missing_value for an empty name; duplicate for one in use.
Result<Action> name_anew(const LiveTract& live, const Question& question, std::size_t side,
                         std::string_view name);

/// Makes one stand, or one cruise, of two that crews began apart: what belongs to the second
/// belongs to the first from now on, and the second is removed.
/// Errors: as name_anew; contradiction for cruises of different design; duplicate for plots that
/// would have one label in one cruise and stand, naming the first.
Result<Action> put_together(const LiveTract& live, const Question& question, std::size_t side);

/// A tag that two trees of the walk wear since files were joined; nothing when each has its own.
[[nodiscard]] std::optional<std::string> tag_used_twice(const TractData& data);

}  // namespace oaklight
