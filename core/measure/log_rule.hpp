#pragma once

#include "core/base/result.hpp"
#include "core/model/words.hpp"
#include "core/units/units.hpp"

namespace oaklight {

/// A rule that says how many board feet of lumber a log is taken to hold.
enum class LogRule { doyle, scribner, international };
template <>
inline constexpr auto kWords<LogRule> =
    std::to_array<Word<LogRule>>({{LogRule::doyle, "doyle"},
                                  {LogRule::scribner, "scribner"},
                                  {LogRule::international, "international"}});

/// The name as a buyer knows it: "Doyle", "Scribner", "International 1/4-inch".
[[nodiscard]] std::string_view name_of(LogRule rule);

/// Board feet of one log, gross, not rounded. Never below 0: where a rule's formula turns negative
/// or, as Doyle's at 4 in and less, loses its meaning, the log holds nothing.
///
/// small_end  diameter inside bark at the small end
/// length     without trim
/// errors     out_of_range: a diameter not in 0 .. 100 in, a length not above 0 and up to 60 ft
/// source     Doyle: (d - 4)^2 L / 16, all 105 cells of a printed chart (tests/published).
///            Scribner: (0.79 d^2 - 2 d - 4) L / 16, attributed to Bruce and Schumacher 1950.
///            International 1/4-inch: Michigan Compiled Laws 290.401 (Act 208 of 1941), by 4-ft
///            sections that widen by 1/2 in toward the butt; a part section counts by its share.
[[nodiscard]] Result<BoardFeet> log_board_feet(LogRule rule, Inches small_end, Feet length);

/// A volume to the nearest 5 board feet, halves up, as printed International scales give it.
[[nodiscard]] BoardFeet nearest_5(BoardFeet volume);

/// Scribner Decimal C: a table by whole inches and even feet, in tens of board feet (here as board
/// feet), and not the rounded Scribner formula.
///
/// errors   outside_table: lengths other than 6, 8 .. 16 ft; diameters outside 6 .. 20 in, and for
///          16 ft outside 6 .. 40 in
/// source   6 .. 20 in: Wengert 2001, published log volume charts. 21 .. 40 in at 16 ft: from
/// memory
///          (30 in: Bailey 1911, Farm and Garden Rule Book)
[[nodiscard]] Result<BoardFeet> scribner_decimal_c(int small_end_inches, int length_feet);

}  // namespace oaklight
