#include "core/forms/near_word.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <limits>

#include "core/forms/csv_file.hpp"

namespace oaklight {
namespace {

constexpr std::size_t kLongest = 64;
constexpr int kFar = std::numeric_limits<int>::max();
constexpr std::size_t kMostOffered = 3;

int slips_allowed(std::size_t length) { return length <= 4 ? 1 : length <= 9 ? 2 : 3; }

}  // namespace

int slips_between(std::string_view a, std::string_view b) {
  if (a.size() > kLongest || b.size() > kLongest) return kFar;
  // Three rows of the table are enough: a swap looks two rows back.
  using Row = std::array<int, kLongest + 1>;
  Row before{};
  Row last{};
  Row now{};
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = static_cast<int>(j);
  for (std::size_t i = 1; i <= a.size(); ++i) {
    now[0] = static_cast<int>(i);
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const int changed = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      now[j] = std::min({last[j] + 1, now[j - 1] + 1, changed});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
        now[j] = std::min(now[j], before[j - 2] + 1);
      }
    }
    before = last;
    last = now;
  }
  return last[b.size()];
}

std::vector<std::string> near_words(std::string_view typed,
                                    std::span<const std::string_view> words) {
  constexpr std::size_t kMostWords = 2'000;
  if (words.size() > kMostWords) return {};
  const std::string wanted = lower_case(typed);
  int nearest = slips_allowed(wanted.size());
  std::vector<std::string> found;
  for (const std::string_view word : words) {
    // Each letter more or less is a slip.
    const auto apart = std::ssize(word) - std::ssize(wanted);
    if (std::abs(apart) > nearest) continue;
    const int slips = slips_between(wanted, lower_case(word));
    // A word that is nothing but slips ("ab" for "xy") is no suggestion.
    if (slips > nearest || slips >= static_cast<int>(wanted.size())) continue;
    if (slips < nearest) found.clear();
    nearest = slips;
    if (found.size() < kMostOffered) found.emplace_back(word);
  }
  return found;
}

std::string did_you_mean(std::span<const std::string> words, std::string otherwise) {
  if (words.empty()) return otherwise;
  std::string text = "Did you mean ";
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) text += i + 1 == words.size() ? " or " : ", ";
    text += "\"" + words[i] + "\"";
  }
  return text + "?";
}

}  // namespace oaklight
