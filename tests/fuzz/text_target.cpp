// What people type: numbers, days, ids, cells of a form, words that are nearly right.
#include <cmath>
#include <limits>

#include "core/base/csv_text.hpp"
#include "core/base/day.hpp"
#include "core/base/id.hpp"
#include "core/base/number_text.hpp"
#include "core/base/utf8.hpp"
#include "core/forms/check_value.hpp"
#include "core/forms/near_word.hpp"
#include "core/handoff/list_table.hpp"
#include "core/place/position_text.hpp"
#include "tests/forms/cruise_files.hpp"
#include "tests/fuzz/law.hpp"
#include "tests/fuzz/targets.hpp"

namespace oaklight::test {
namespace {

void numbers(std::string_view text) {
  if (const auto whole = whole_from_text(text)) {
    require(*whole_from_text(std::to_string(*whole)) == *whole, "a whole number comes back");
  }
  for (int decimals = 0; decimals < 4; ++decimals) {
    const auto scaled = scaled_from_text(text, decimals);
    const auto number = number_from_text(text);
    require(!scaled || number.has_value(), "a scaled number is a number");
    if (!scaled) continue;
    const double value = *scaled / std::pow(10.0, decimals);
    require(*scaled_from_text(number_text(value, decimals), decimals) == *scaled,
            "a reading comes back");
  }
  const auto number = number_from_text(text);
  if (!number) return;
  require(std::isfinite(*number), "a number is finite");
  const std::string printed = number_text(*number, 17);
  const auto again = number_from_text(printed);
  require(again.has_value() && std::abs(*again - *number) <= std::abs(*number) * 1e-15 + 1e-17,
          "a number comes back from its text: " + printed);
  require(!grouped_text(*number, 2).empty(), "a number has a text for people");
  const Position place{Degrees{std::fmod(*number, 90.0)}, Degrees{std::fmod(*number, 180.0)}};
  require(is_utf8(degrees_minutes_text(place)) && !decimal_degrees_text(place).empty(),
          "a position has a text");
}

void days_and_ids(std::string_view text) {
  if (const auto day = day_from_text(text)) {
    require(day->ok() && to_text(*day) == text, "a day comes back");
  }
  if (const auto day = month_day_from_text(text))
    require(!words_of(*day).empty(), "words of a day");
  if (const auto id = uuid_from_text(text)) {
    require(*uuid_from_text(to_text(*id)) == *id, "an id comes back");
  }
}

/// One cell through the quoting of CSV and back, as a spreadsheet would hand it.
void cells(std::string_view text) {
  const auto rows = read_csv(csv_cell(text) + "," + safe_csv_cell(text) + "\r\n", "cell.csv");
  require(rows.has_value(), "a quoted cell is read");
  if (text.empty()) return;
  require(rows->size() == 1 && rows->front().cells.size() == 2, "two cells are two cells");
  // A byte order mark at the head of the file is no part of it.
  const bool marked = text.starts_with("\xEF\xBB\xBF") && csv_cell(text).front() != '"';
  require(marked || rows->front().cells[0] == text, "a cell comes back");
  const std::string& safe = rows->front().cells[1];
  require(safe == text || safe == "'" + std::string(text), "a safe cell can be told again");
  const char first = safe.front();
  require(first != '=' && first != '+' && first != '-' && first != '@', "no cell is a formula");
  require(is_utf8(clean_text(text)), "cleaned text is text");
}

void typed(std::string_view text) {
  for (const RecordForm& record : tally_form().records) {
    for (const Field& field : record.fields) {
      for (const UnitSystem system : {UnitSystem::us, UnitSystem::metric}) {
        const auto value = check_value(tally_form(), field, system, text, species_names());
        if (!value && is_utf8(text)) require_told(value.error());
      }
    }
  }
  const auto species = species_names().find(text);
  if (species) require(!species_names().common_name(*species).empty(), "a species has a name");
  constexpr std::string_view kWordsNear[] = {"dominant", "codominant", "intermediate"};
  for (const std::string& near : near_words(text, kWordsNear)) {
    require(slips_between(near, text) == slips_between(text, near), "slips count both ways");
  }
}

}  // namespace

void fuzz_text(std::string_view bytes) {
  numbers(bytes);
  days_and_ids(bytes);
  cells(bytes);
  typed(bytes);
}

}  // namespace oaklight::test
