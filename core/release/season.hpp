#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/day.hpp"
#include "core/model/words.hpp"

namespace oaklight {

/// What a season window is for.
enum class SeasonUse {
  hold,   ///< cutting beside oaks waits until it is over
  tell,   ///< printed on the packet
  other,  ///< kept in the table for work that the packet does not cover
};
template <>
inline constexpr auto kWords<SeasonUse> = std::to_array<Word<SeasonUse>>(
    {{SeasonUse::hold, "hold"}, {SeasonUse::tell, "tell"}, {SeasonUse::other, "other"}});

/// A span of each year to avoid or to check; a row of forms/season_windows.csv. A reminder from our
/// reading, never the law: the state agency's word of the year governs.
struct SeasonWindow {
  std::string issue;  ///< "oak_wilt_risk"
  /// Two letters each, or a county as "WI/Dane"; "*" where no row of the issue names the place.
  std::vector<std::string> states;
  std::string where;  ///< in words, narrower than the states at times
  SeasonUse use = SeasonUse::other;
  MonthDay first;
  MonthDay last;  ///< itself inside; before `first`: the span runs over the new year
  std::string note;
  std::string source;
  std::string evidence;  ///< "retrieved", "from memory" or "common practice"
  std::string read_on;   ///< month in which the source was read, "2026-11"
};

/// The rows of forms/season_windows.csv or of a tract's own copy of it.
///
/// errors   bad_csv, not_a_choice, missing_value; `where` is "season_windows.csv:line:column"
Result<std::vector<SeasonWindow>> read_seasons(std::string_view csv);

/// The windows of a place, in table order: of each issue the rows that name the county, where none
/// does those that name the state, and where none does, its rows for "*". A state that is not known
/// ("") has the rows for "*".
///
/// Two rows of a state may be for parts of it, like either side of a line. Which one a tract lies
/// in is not recorded, so of two that hold work the one within the other's span is left out: the
/// stricter governs, and its `where` says so. A county in the table settles it.
[[nodiscard]] std::vector<SeasonWindow> windows_of(std::span<const SeasonWindow> table,
                                                   std::string_view state,
                                                   std::string_view county = "");

/// The windows of one use.
[[nodiscard]] std::vector<SeasonWindow> windows_of(std::span<const SeasonWindow> windows,
                                                   SeasonUse use);

/// Whether a day lies in the window, first and last day included. One that ends on February 28
/// holds on February 29 too.
[[nodiscard]] bool holds_on(const SeasonWindow& window, Day day);

/// The first day, that one or a later one, on which none of the windows holds; nothing when there
/// is none in a year.
[[nodiscard]] std::optional<Day> next_clear_day(std::span<const SeasonWindow> windows, Day from);

/// The first day, that one or a later one, on which one of the windows holds.
[[nodiscard]] std::optional<Day> next_held_day(std::span<const SeasonWindow> windows, Day from);

/// "Apr 1 - Jul 31".
[[nodiscard]] std::string span_text(const SeasonWindow& window);

}  // namespace oaklight
