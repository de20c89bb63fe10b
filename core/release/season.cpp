#include "core/release/season.hpp"

#include <algorithm>
#include <array>

#include "core/base/csv_text.hpp"
#include "core/release/rules.hpp"

namespace oaklight {
namespace {

constexpr std::string_view kFile = "season_windows.csv";
constexpr std::array<std::string_view, 10> kColumns = {"issue",      "states",   "where", "use",
                                                       "start_mmdd", "end_mmdd", "note",  "source",
                                                       "evidence",   "read_on"};
constexpr std::string_view kAnyState = "*";

constexpr char kCountyMark = '/';

/// "WI", "WI/Dane" or "*".
bool is_place(std::string_view text) {
  const auto capital = [](char c) { return c >= 'A' && c <= 'Z'; };
  if (text == kAnyState) return true;
  if (text.size() < 2 || !capital(text[0]) || !capital(text[1])) return false;
  return text.size() == 2 || (text[2] == kCountyMark && text.size() > 3);
}

std::vector<std::string> split(std::string_view text) {
  std::vector<std::string> parts;
  while (true) {
    const auto bar = text.find('|');
    parts.emplace_back(text.substr(0, bar));
    if (bar == std::string_view::npos) return parts;
    text.remove_prefix(bar + 1);
  }
}

Result<MonthDay> read_day(const CsvTable& table, std::size_t row, std::string_view column) {
  auto day = month_day_from_text(table.cell(row, column));
  if (day) return *day;
  Error error = day.error();
  error.where = table.place(row, column);
  return error;
}

Result<SeasonWindow> read_window(const CsvTable& table, std::size_t row) {
  for (const std::string_view column : {"issue", "states", "where", "source"}) {
    if (!table.cell(row, column).empty()) continue;
    return Error{ErrorCode::missing_value, "This cell is empty.", table.place(row, column),
                 "Say what the row is about and where it comes from."};
  }
  const auto states = split(table.cell(row, "states"));
  if (!std::all_of(states.begin(), states.end(), is_place)) {
    return Error{ErrorCode::not_a_choice,
                 "\"" + table.cell(row, "states") + "\" is not a list of states.",
                 table.place(row, "states"),
                 "Write two capitals each, like WV|KY, a county as WI/Dane, or *."};
  }
  const auto use = from_word<SeasonUse>(table.cell(row, "use"));
  if (!use) {
    return Error{ErrorCode::not_a_choice, "\"" + table.cell(row, "use") + "\" is not a use.",
                 table.place(row, "use"), "Write hold, tell or other."};
  }
  if (!from_word<Evidence>(table.cell(row, "evidence"))) {
    return Error{ErrorCode::not_a_choice,
                 "\"" + table.cell(row, "evidence") + "\" does not say how the row is founded.",
                 table.place(row, "evidence"), "Write retrieved, from memory or common practice."};
  }
  const auto first = read_day(table, row, "start_mmdd");
  if (!first) return first.error();
  const auto last = read_day(table, row, "end_mmdd");
  if (!last) return last.error();
  return SeasonWindow{.issue = table.cell(row, "issue"),
                      .states = states,
                      .where = table.cell(row, "where"),
                      .use = *use,
                      .first = *first,
                      .last = *last,
                      .note = table.cell(row, "note"),
                      .source = table.cell(row, "source"),
                      .evidence = table.cell(row, "evidence"),
                      .read_on = table.cell(row, "read_on")};
}

bool names(const SeasonWindow& window, std::string_view place) {
  return std::find(window.states.begin(), window.states.end(), place) != window.states.end();
}

/// "WI/Dane" of the state and "Dane County".
std::string county_place(std::string_view state, std::string_view county) {
  constexpr std::string_view kWord = " County";
  if (county.ends_with(kWord)) county.remove_suffix(kWord.size());
  return county.empty() ? std::string() : std::string(state) + kCountyMark + std::string(county);
}

/// Whether every day of a is a day of b, and b has more.
bool lies_within(const SeasonWindow& a, const SeasonWindow& b) {
  if (a.first > a.last || b.first > b.last) return false;  // over the new year: kept, to be safe
  return b.first <= a.first && a.last <= b.last && (b.first < a.first || a.last < b.last);
}

/// Leaves out windows of a part of the state that another part's window of the same issue covers.
std::vector<SeasonWindow> stricter(std::vector<SeasonWindow> windows) {
  std::vector<SeasonWindow> kept;
  for (const SeasonWindow& window : windows) {
    const auto rival = [&](const SeasonWindow& other) {
      return window.use == SeasonUse::hold && other.use == SeasonUse::hold &&
             other.issue == window.issue && lies_within(window, other);
    };
    if (std::ranges::any_of(windows, rival)) continue;
    kept.push_back(window);
    const bool covers_one = std::ranges::any_of(windows, [&](const SeasonWindow& other) {
      return other.use == SeasonUse::hold && window.use == SeasonUse::hold &&
             other.issue == window.issue && lies_within(other, window);
    });
    if (covers_one) {
      kept.back().where += " (the stricter of two, as the part of the state is not recorded)";
    }
  }
  return kept;
}

/// The first day from `from` on, within a year, that `wanted` accepts.
template <class Wanted>
std::optional<Day> first_day(Day from, Wanted wanted) {
  constexpr int kDaysToTry = 366;
  const std::chrono::sys_days start{from};
  for (int i = 0; i <= kDaysToTry; ++i) {
    const Day day{start + std::chrono::days{i}};
    if (wanted(day)) return day;
  }
  return std::nullopt;
}

}  // namespace

Result<std::vector<SeasonWindow>> read_seasons(std::string_view csv) {
  const auto table = CsvTable::read(csv, kFile, kColumns);
  if (!table) return table.error();
  std::vector<SeasonWindow> windows;
  for (std::size_t row = 0; row < table->size(); ++row) {
    auto window = read_window(*table, row);
    if (!window) return window.error();
    windows.push_back(std::move(*window));
  }
  return windows;
}

std::vector<SeasonWindow> windows_of(std::span<const SeasonWindow> table, std::string_view state,
                                     std::string_view county) {
  const std::string own_county = county_place(state, county);
  std::vector<SeasonWindow> mine;
  for (const SeasonWindow& window : table) {
    const auto issue_names = [&](std::string_view place) {
      return !place.empty() && std::ranges::any_of(table, [&](const SeasonWindow& other) {
        return other.issue == window.issue && names(other, place);
      });
    };
    std::string_view place = kAnyState;
    if (issue_names(own_county)) {
      place = own_county;
    } else if (issue_names(state)) {
      place = state;
    }
    if (names(window, place)) mine.push_back(window);
  }
  return stricter(std::move(mine));
}

std::vector<SeasonWindow> windows_of(std::span<const SeasonWindow> windows, SeasonUse use) {
  std::vector<SeasonWindow> found;
  std::copy_if(windows.begin(), windows.end(), std::back_inserter(found),
               [&](const SeasonWindow& window) { return window.use == use; });
  return found;
}

bool holds_on(const SeasonWindow& window, Day day) {
  using std::chrono::February;
  const MonthDay last = window.last == February / 28 ? MonthDay{February / 29} : window.last;
  const MonthDay asked{day.month(), day.day()};
  if (window.first <= last) return window.first <= asked && asked <= last;
  return window.first <= asked || asked <= last;
}

std::optional<Day> next_clear_day(std::span<const SeasonWindow> windows, Day from) {
  return first_day(from, [&](Day day) {
    return std::none_of(windows.begin(), windows.end(),
                        [&](const SeasonWindow& window) { return holds_on(window, day); });
  });
}

std::optional<Day> next_held_day(std::span<const SeasonWindow> windows, Day from) {
  return first_day(from, [&](Day day) {
    return std::any_of(windows.begin(), windows.end(),
                       [&](const SeasonWindow& window) { return holds_on(window, day); });
  });
}

std::string span_text(const SeasonWindow& window) {
  return words_of(window.first) + " - " + words_of(window.last);
}

}  // namespace oaklight
