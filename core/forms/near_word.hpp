#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace oaklight {

/// Slips of the finger between two words: letters put in, left out, changed, or two neighbours
/// swapped. Method: optimal string alignment. Words over 64 bytes count as wholly different.
int slips_between(std::string_view a, std::string_view b);

/// Those of the words that somebody may have meant, nearest first, at most three; all as near as
/// the nearest. Capitals do not matter. One slip for a short word, up to three for a long one. Of
/// more than 2,000 words none is offered: each costs a comparison letter by letter.
std::vector<std::string> near_words(std::string_view typed,
                                    std::span<const std::string_view> words);

/// "Did you mean \"a\" or \"b\"?", or the other text when there is nothing near.
std::string did_you_mean(std::span<const std::string> words, std::string otherwise);

}  // namespace oaklight
