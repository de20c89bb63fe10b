#include "core/forms/check_value.hpp"

#include <algorithm>
#include <cmath>

#include "core/base/day.hpp"
#include "core/base/number_text.hpp"
#include "core/base/utf8.hpp"
#include "core/forms/csv_file.hpp"
#include "core/forms/near_word.hpp"

namespace oaklight {
namespace {

/// One field and the words with which to speak of it.
struct Ask {
  const Form& form;
  const Field& field;
  UnitSystem system;

  [[nodiscard]] Error fault(ErrorCode code, std::string what, std::string fix) const {
    return {code, std::move(what), field.column.of(system), std::move(fix)};
  }
  [[nodiscard]] std::string with_unit(const std::string& number) const {
    const std::string& unit = field.unit.of(system);
    if (unit.empty()) return number;
    return unit == "%" || unit == "°" ? number + unit : number + " " + unit;
  }
};

/// As few decimals as tell the number, at most six.
std::string short_number(double value) {
  std::string text = number_text(value, 6);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.ends_with('.')) text.pop_back();
  return text;
}

Error not_a_number(const Ask& ask, std::string_view text) {
  std::string fix = "Use digits and a point, like 12.3.";
  const auto digits_end = text.find_first_not_of("-0123456789.");
  if (digits_end != std::string_view::npos && digits_end > 0) {
    const std::string start(trimmed(text.substr(0, digits_end)));
    const std::string rest(trimmed(text.substr(digits_end)));
    if (rest.starts_with(",")) {
      fix = "Use a point for the decimals, and nothing to part thousands.";
    } else if (number_from_text(start)) {
      fix = "Write the number alone: " + start + ".";
    }
  }
  return ask.fault(ErrorCode::not_a_number,
                   ask.field.label + " \"" + std::string(text) + "\" is not a number.", fix);
}

std::optional<Error> range_fault(const Ask& ask, double value) {
  const auto& range = ask.field.range.of(ask.system);
  if (!range || (value >= range->least && value <= range->most)) return std::nullopt;
  std::string fix = "Check the decimal point and the unit.";
  if (value > range->most && value / 10 <= range->most && value / 10 >= range->least) {
    fix = "Check the decimal point; " + short_number(value / 10) + "?";
  }
  if (ask.field.kind == FieldKind::latitude) fix = "Are latitude and longitude swapped?";
  return ask.fault(ErrorCode::out_of_range,
                   ask.field.label + " " + ask.with_unit(short_number(value)) + " is outside " +
                       short_number(range->least) + " to " +
                       ask.with_unit(short_number(range->most)) + ".",
                   fix);
}

Result<double> number(const Ask& ask, std::string_view text) {
  const auto value = number_from_text(text);
  if (!value) return not_a_number(ask, text);
  if (auto fault = range_fault(ask, *value)) return *fault;
  const auto point = text.find('.');
  std::string_view tail = point == std::string_view::npos ? "" : text.substr(point + 1);
  while (tail.ends_with('0')) tail.remove_suffix(1);
  if (ask.field.decimals && tail.size() > static_cast<std::size_t>(*ask.field.decimals)) {
    const std::string most = std::to_string(*ask.field.decimals);
    return ask.fault(ErrorCode::out_of_range,
                     ask.field.label + " " + std::string(text) + " has more than " + most +
                         (most == "1" ? " decimal." : " decimals."),
                     "Round it to " + number_text(*value, *ask.field.decimals) + ".");
  }
  const double steps = ask.field.step ? *value / *ask.field.step : 0.0;
  constexpr double kTailOfADouble = 1e-9;  // 0.3 / 0.1 is not quite 3
  if (std::fabs(steps - std::round(steps)) > kTailOfADouble) {
    return ask.fault(ErrorCode::out_of_range,
                     ask.field.label + " " + std::string(text) + " is not a multiple of " +
                         short_number(*ask.field.step) + ".",
                     "Round it to the nearest " + short_number(*ask.field.step) + ".");
  }
  return *value;
}

Result<FieldValue> whole(const Ask& ask, std::string_view text) {
  const auto value = whole_from_text(text);
  if (!value) {
    const bool number = number_from_text(text).has_value();
    return number ? ask.fault(ErrorCode::not_a_number,
                              ask.field.label + " \"" + std::string(text) + "\" is not whole.",
                              "Write a whole number.")
                  : not_a_number(ask, text);
  }
  const auto& allowed = ask.field.one_of;
  if (!allowed.empty() && std::find(allowed.begin(), allowed.end(), *value) == allowed.end()) {
    std::string list;
    for (const std::int64_t n : allowed) list += (list.empty() ? "" : ", ") + std::to_string(n);
    return ask.fault(ErrorCode::out_of_range,
                     ask.field.label + " " + std::string(text) + " is none of " + list + ".",
                     "Write one of these.");
  }
  if (auto fault = range_fault(ask, static_cast<double>(*value))) return *fault;
  return FieldValue(*value);
}

/// A reading of an instrument: a whole count of its smallest unit.
template <class Make>
Result<FieldValue> reading(const Ask& ask, std::string_view text, int decimals, Make make) {
  const auto value = number(ask, text);
  if (!value) return value.error();
  const auto scaled = scaled_from_text(text, decimals);
  if (!scaled) return ask.fault(scaled.error().code, scaled.error().what, scaled.error().fix);
  const auto made = make(*scaled, ask.system);
  if (!made) return ask.fault(made.error().code, made.error().what, made.error().fix);
  return FieldValue(*made);
}

constexpr std::size_t kLongEnoughForLines = 200;

Result<FieldValue> words(const Ask& ask, std::string_view text) {
  const bool note = ask.field.max_length == 0 || ask.field.max_length >= kLongEnoughForLines;
  if (steers(text, note ? Lines::allowed : Lines::refused)) {
    return ask.fault(ErrorCode::bad_csv,
                     ask.field.label + " has a line break or control character in it.",
                     "Take it out.");
  }
  const auto length = std::count_if(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;  // UTF-8: one lead byte a character
  });
  if (ask.field.max_length > 0 && static_cast<std::size_t>(length) > ask.field.max_length) {
    return ask.fault(ErrorCode::out_of_range,
                     ask.field.label + " has " + std::to_string(length) +
                         " characters, more than " + std::to_string(ask.field.max_length) + ".",
                     "Shorten it.");
  }
  return FieldValue(std::string(text));
}

std::string plain_word(std::string_view text) {
  std::string plain = lower_case(trimmed(text));
  std::replace(plain.begin(), plain.end(), ' ', '_');
  std::replace(plain.begin(), plain.end(), '-', '_');
  return plain;
}

Result<std::string> choice(const Ask& ask, std::string_view text) {
  constexpr std::size_t kFewEnoughToList = 8;
  const ChoiceList* list = ask.form.find_choices(ask.field.choices);
  const std::string word = plain_word(text);
  const auto chosen = std::ranges::find_if(
      list->choices, [&](const Choice& c) { return word == lower_case(c.word); });
  if (chosen != list->choices.end()) return chosen->word;
  std::vector<std::string_view> known;
  std::string all;
  for (const Choice& c : list->choices) {
    known.push_back(c.word);
    if (known.size() <= kFewEnoughToList) all += (all.empty() ? "" : ", ") + c.word;
  }
  if (known.size() > kFewEnoughToList) all += ", ... (all in forms/tally.form.json)";
  return ask.fault(ErrorCode::not_a_choice,
                   ask.field.label + " \"" + std::string(text) + "\" is none of the words for it.",
                   did_you_mean(near_words(word, known), "Write one of: " + all + "."));
}

Result<FieldValue> choices(const Ask& ask, std::string_view text) {
  std::vector<std::string> found;
  while (true) {
    const auto bar = text.find('|');
    const auto word = choice(ask, trimmed(text.substr(0, bar)));
    if (!word) return word.error();
    if (std::find(found.begin(), found.end(), *word) == found.end()) found.push_back(*word);
    if (bar == std::string_view::npos) return FieldValue(found);
    text.remove_prefix(bar + 1);
  }
}

Result<FieldValue> date(const Ask& ask, std::string_view text) {
  constexpr int kFirstYear = 1900;  // "0026" is a year to the calendar, and a slip to us
  const auto day = day_from_text(text);
  if (day && static_cast<int>(day->year()) >= kFirstYear) return FieldValue(std::string(text));
  return ask.fault(ErrorCode::not_a_choice,
                   ask.field.label + " \"" + std::string(text) + "\" is not a day.",
                   "Write year-month-day, like 2026-05-04.");
}

Result<FieldValue> yes_no(const Ask& ask, std::string_view text) {
  const std::string word = lower_case(text);
  if (word == "yes") return FieldValue(true);
  if (word == "no") return FieldValue(false);
  return ask.fault(ErrorCode::not_a_choice,
                   ask.field.label + " \"" + std::string(text) + "\" is neither yes nor no.",
                   "Write yes or no.");
}

Result<FieldValue> as_value(const Result<double>& number) {
  if (!number) return number.error();
  return FieldValue(*number);
}

Result<FieldValue> species(const Ask& ask, std::string_view text, const SpeciesNames& names) {
  const auto code = names.find(text);
  if (!code) return ask.fault(code.error().code, code.error().what, code.error().fix);
  return FieldValue(*code);
}

}  // namespace

Result<FieldValue> check_value(const Form& form, const Field& field, UnitSystem system,
                               std::string_view text, const SpeciesNames& names) {
  const Ask ask{form, field, system};
  text = trimmed(text);
  if (text.empty()) text = field.initial;
  if (text.empty()) {
    if (!field.required) return FieldValue{};
    return ask.fault(ErrorCode::missing_value, field.label + " is empty.", field.help + ".");
  }
  switch (field.kind) {
    case FieldKind::text:
      return words(ask, text);
    case FieldKind::choice: {
      const auto word = choice(ask, text);
      if (!word) return word.error();
      return FieldValue(*word);
    }
    case FieldKind::choices:
      return choices(ask, text);
    case FieldKind::species:
      return species(ask, text, names);
    case FieldKind::diameter:
      return reading(ask, text, 1, Dbh::from_tenths);
    case FieldKind::length:
      return reading(ask, text, 2, TapedLength::from_hundredths);
    case FieldKind::whole:
      return whole(ask, text);
    case FieldKind::date:
      return date(ask, text);
    case FieldKind::yes_no:
      return yes_no(ask, text);
    case FieldKind::degrees: {
      const auto value = number(ask, text);
      return as_value(value && *value == 360.0 ? Result<double>(0.0) : value);
    }
    case FieldKind::area:
    case FieldKind::basal_area_factor:
    case FieldKind::percent:
    case FieldKind::decimal:
    case FieldKind::latitude:
    case FieldKind::longitude:
      return as_value(number(ask, text));
  }
  return FieldValue{};
}

}  // namespace oaklight
