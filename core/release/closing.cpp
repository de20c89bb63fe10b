#include "core/release/closing.hpp"

#include <algorithm>
#include <vector>

#include "core/measure/crown_width.hpp"

namespace oaklight {
namespace {

/// The narrowest gap on one side; nothing when nobody went there.
std::optional<Feet> gap_at(Side side, std::span<const OpenedGap> gaps) {
  std::optional<Feet> narrowest;
  for (const OpenedGap& gap : gaps) {
    if (!gap.sides.has(side)) continue;
    const Feet width = crowded_crown_radius(gap.dbh) * 2.0;
    if (!narrowest || width < *narrowest) narrowest = width;
  }
  return narrowest;
}

}  // namespace

Result<YearSettings> YearSettings::from(const RuleBook& book) {
  std::optional<Error> fault;
  const auto number = [&](const char* id, std::size_t place) {
    constexpr double kLargest = 1000.0;  // years, feet or sides: more is a slip of the keyboard
    const Rule* rule = book.find(id);
    const bool there = rule != nullptr && rule->numbers.size() > place;
    const double value = there ? rule->numbers[place] : 0.0;
    const bool sound = value >= 0.0 && value <= kLargest;
    if (!fault && !(there && sound)) {
      fault = Error{there ? ErrorCode::out_of_range : ErrorCode::missing_rule,
                    "Rule " + std::string(id) +
                        (there ? " is out of range." : " is missing or gives too few numbers."),
                    "rules/" + std::string(id),
                    "Put it back from the rule file that came with the program."};
    }
    return value;
  };
  YearSettings s{.lag_years = number("R1.80", 0),
                 .crown_growth_least = Feet{number("R1.85", 0)},
                 .crown_growth_most = Feet{number("R1.85", 1)},
                 .sides_again = static_cast<int>(number("R1.87", 0)),
                 .acorn_trees = static_cast<int>(number("R3.48", 0))};
  if (fault) return *fault;
  return s;
}

YearsRange years_to_close(Feet gap, const YearSettings& settings) {
  constexpr double kTwoEdges = 2.0;  // R1.86: the crop crown and the one beyond both grow
  return {gap.value / (kTwoEdges * settings.crown_growth_most.value),
          gap.value / (kTwoEdges * settings.crown_growth_least.value)};
}

std::optional<YearsRange> years_until_look(Sides free, std::span<const OpenedGap> gaps,
                                           const YearSettings& settings) {
  const int to_close = free.count() - settings.sides_again;
  if (to_close <= 0) return YearsRange{};
  std::vector<Feet> widths;
  for (const Side side : kSides) {
    if (!free.has(side)) continue;
    if (const auto gap = gap_at(side, gaps)) widths.push_back(*gap);
  }
  std::ranges::sort(widths);
  const bool grows =
      settings.crown_growth_least.value > 0.0 && settings.crown_growth_most.value > 0.0;
  if (!grows || widths.size() < static_cast<std::size_t>(to_close)) return std::nullopt;
  return years_to_close(widths[static_cast<std::size_t>(to_close) - 1], settings);
}

}  // namespace oaklight
