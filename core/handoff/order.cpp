#include "core/handoff/order.hpp"

#include <algorithm>
#include <cmath>

#include "core/place/geodesy.hpp"

namespace oaklight {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// Takes a run of digits, or one other character, off the front.
std::string_view take_part(std::string_view& text) {
  std::size_t n = 1;
  if (is_digit(text.front())) {
    while (n < text.size() && is_digit(text[n])) ++n;
  }
  const std::string_view part = text.substr(0, n);
  text.remove_prefix(n);
  return part;
}

std::string_view without_zeros(std::string_view digits) {
  while (digits.size() > 1 && digits.front() == '0') digits.remove_prefix(1);
  return digits;
}

}  // namespace

bool tag_before(std::string_view a, std::string_view b) {
  const std::string_view whole_a = a;
  const std::string_view whole_b = b;
  while (!a.empty() && !b.empty()) {
    const bool numbers = is_digit(a.front()) && is_digit(b.front());
    const std::string_view part_a = take_part(a);
    const std::string_view part_b = take_part(b);
    if (numbers) {
      const std::string_view number_a = without_zeros(part_a);
      const std::string_view number_b = without_zeros(part_b);
      if (number_a.size() != number_b.size()) return number_a.size() < number_b.size();
      if (number_a != number_b) return number_a < number_b;
    } else if (part_a != part_b) {
      return part_a < part_b;
    }
  }
  if (a.empty() != b.empty()) return a.empty();
  return whole_a < whole_b;  // "01" and "1" are alike as numbers, and two tags all the same
}

std::vector<std::size_t> walking_order(const std::vector<Stop>& stops,
                                       std::optional<Position> start) {
  std::vector<std::size_t> left;
  std::vector<std::size_t> unplaced;
  for (std::size_t i = 0; i < stops.size(); ++i) {
    (stops[i].position ? left : unplaced).push_back(i);
  }
  const auto by_tag = [&](std::size_t a, std::size_t b) {
    return tag_before(stops[a].tag, stops[b].tag);
  };
  std::sort(left.begin(), left.end(), by_tag);
  std::sort(unplaced.begin(), unplaced.end(), by_tag);

  std::vector<std::size_t> order;
  if (!left.empty()) {
    const Position origin = start ? *start : *stops[left.front()].position;
    std::vector<LocalFeet> places(stops.size());
    for (const std::size_t i : left) places[i] = local_feet(origin, *stops[i].position);
    LocalFeet here{};
    const auto away = [&](std::size_t i) {
      return std::hypot((places[i].east - here.east).value, (places[i].north - here.north).value);
    };
    while (!left.empty()) {
      // Of equals the first in tag order: min_element keeps the first.
      const auto next =
          std::min_element(left.begin(), left.end(),
                           [&](std::size_t a, std::size_t b) { return away(a) < away(b); });
      here = places[*next];
      order.push_back(*next);
      left.erase(next);
    }
  }
  order.insert(order.end(), unplaced.begin(), unplaced.end());
  return order;
}

}  // namespace oaklight
