#pragma once

#include <chrono>
#include <string>
#include <string_view>

#include "core/base/result.hpp"

namespace oaklight {

/// A day of the calendar.
using Day = std::chrono::year_month_day;
/// A day of any year.
using MonthDay = std::chrono::month_day;

/// "2026-05-04" (ISO 8601). Errors: not_a_choice for another form or a day that is not in the
/// calendar.
Result<Day> day_from_text(std::string_view text);
std::string to_text(Day day);

/// "05-04"; "02-29" is a day of some years. Errors: not_a_choice.
Result<MonthDay> month_day_from_text(std::string_view text);

/// "May 4", for people.
std::string words_of(MonthDay day);

}  // namespace oaklight
