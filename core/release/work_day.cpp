#include "core/release/work_day.hpp"

#include <algorithm>

#include "core/release/wording.hpp"

namespace oaklight {
namespace {

constexpr std::string_view kSapFlow = "herbicide_sap_flow";

std::string day_text(Day day) {
  return words_of(MonthDay{day.month(), day.day()}) + " " +
         std::to_string(static_cast<int>(day.year()));
}

/// "oak wilt risk".
std::string issue_words(std::string issue) {
  std::replace(issue.begin(), issue.end(), '_', ' ');
  return issue;
}

}  // namespace

bool is_lower_risk(const SeasonWindow& window) {
  return window.issue.ends_with("_lower_risk") || window.issue.ends_with("_prune_hold");
}

bool bears_on(const SeasonWindow& window, const WorkKind& work) {
  if (window.issue == kSapFlow) return work.sap_matters;
  if (window.use != SeasonUse::hold) return false;
  if (window.issue.starts_with("oak_wilt")) return work.oak || (work.felling && work.oak_near);
  if (window.issue.starts_with("bark_slip")) return work.felling;
  return true;
}

DayAdvice day_advice(std::span<const SeasonWindow> windows, const WorkKind& work, Day day) {
  std::vector<SeasonWindow> mine;
  std::vector<SeasonWindow> hard;
  for (const SeasonWindow& window : windows) {
    if (!bears_on(window, work)) continue;
    mine.push_back(window);
    if (!is_lower_risk(window)) hard.push_back(window);
  }
  DayAdvice advice;
  std::copy_if(mine.begin(), mine.end(), std::back_inserter(advice.held_by),
               [&](const SeasonWindow& window) { return holds_on(window, day); });
  advice.earliest = next_clear_day(mine, day);
  advice.with_warning = next_clear_day(hard, day);
  if (advice.with_warning == advice.earliest) advice.with_warning.reset();
  return advice;
}

std::string day_words(const DayAdvice& advice, Day day) {
  if (advice.held_by.empty())
    return "No window of the season table holds on " + day_text(day) + ".";
  std::vector<std::string> parts;
  for (const SeasonWindow& window : advice.held_by) {
    const std::string part = issue_words(window.issue) + " (" + span_text(window) + ")";
    if (std::find(parts.begin(), parts.end(), part) == parts.end()) parts.push_back(part);
  }
  std::string text = "Not on " + day_text(day) + ": " + joined(parts) + ".";
  text += advice.earliest ? " The first day free of every window is " + day_text(*advice.earliest)
                          : " No day of the year is free of every window";
  if (advice.with_warning) text += "; with a warning, " + day_text(*advice.with_warning);
  return text + ". The state agency's own dates govern.";
}

}  // namespace oaklight
