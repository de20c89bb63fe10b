#include "core/base/day.hpp"

#include <array>

namespace oaklight {
namespace {

/// The number that a run of digits stands for; -1 when it is anything else.
int digits(std::string_view text) {
  int value = 0;
  for (const char c : text) {
    if (c < '0' || c > '9') return -1;
    value = 10 * value + (c - '0');
  }
  return value;
}

std::string two_digits(unsigned value) { return (value < 10 ? "0" : "") + std::to_string(value); }

MonthDay month_day(std::string_view month, std::string_view day) {
  // A run that is no number becomes 0xFF, which no month or day is.
  return MonthDay{std::chrono::month{static_cast<unsigned>(digits(month)) & 0xFFU},
                  std::chrono::day{static_cast<unsigned>(digits(day)) & 0xFFU}};
}

}  // namespace

Result<Day> day_from_text(std::string_view text) {
  if (text.size() == 10 && text[4] == '-' && text[7] == '-' && digits(text.substr(0, 4)) > 0) {
    const MonthDay in_year = month_day(text.substr(5, 2), text.substr(8, 2));
    const Day day{std::chrono::year{digits(text.substr(0, 4))}, in_year.month(), in_year.day()};
    if (day.ok()) return day;
  }
  return Error{ErrorCode::not_a_choice, "\"" + std::string(text) + "\" is not a day.", "",
               "Write year, month and day like 2026-05-04."};
}

std::string to_text(Day day) {
  std::string year = std::to_string(static_cast<int>(day.year()));
  year.insert(0, year.size() < 4 ? 4 - year.size() : 0, '0');
  return year + "-" + two_digits(static_cast<unsigned>(day.month())) + "-" +
         two_digits(static_cast<unsigned>(day.day()));
}

Result<MonthDay> month_day_from_text(std::string_view text) {
  if (text.size() == 5 && text[2] == '-') {
    const MonthDay day = month_day(text.substr(0, 2), text.substr(3, 2));
    if (day.ok()) return day;
  }
  return Error{ErrorCode::not_a_choice, "\"" + std::string(text) + "\" is not a day of the year.",
               "", "Write month and day like 05-04."};
}

std::string words_of(MonthDay day) {
  constexpr std::array<std::string_view, 12> kMonths = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                        "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  return std::string(kMonths[static_cast<unsigned>(day.month()) - 1]) + " " +
         std::to_string(static_cast<unsigned>(day.day()));
}

}  // namespace oaklight
