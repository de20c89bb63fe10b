#include "core/base/number_text.hpp"

#include <array>
#include <charconv>
#include <cmath>
#include <limits>

namespace oaklight {
namespace {

Error not_a_number(std::string_view text) {
  return {ErrorCode::not_a_number, "\"" + std::string(text) + "\" is not a number.", "",
          "Use digits and a point, like 12.3."};
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// Digits with at most one point, optionally signed, at least one digit.
bool looks_decimal(std::string_view text) {
  if (!text.empty() && text.front() == '-') text.remove_prefix(1);
  bool point = false;
  bool digit = false;
  for (const char c : text) {
    if (is_digit(c)) {
      digit = true;
    } else if (c == '.' && !point) {
      point = true;
    } else {
      return false;
    }
  }
  return digit;
}

}  // namespace

std::string number_text(double value, int decimals) {
  if (!std::isfinite(value)) return "";
  // The shortest text that reads back as this double is what a person would call its value
  // (2.675, not 2.67499999...), so halves are judged on that text and not on the binary tail.
  std::array<char, 400> shortest{};
  auto end = std::to_chars(shortest.data(), shortest.data() + shortest.size(), std::fabs(value),
                           std::chars_format::fixed)
                 .ptr;
  std::string digits(shortest.data(), end);
  auto point = digits.find('.');
  if (point == std::string::npos) {
    point = digits.size();
    digits += '.';
  }
  const std::size_t keep = point + 1 + static_cast<std::size_t>(decimals);
  const bool up = digits.size() > keep && digits[keep] >= '5';
  digits.resize(keep, '0');
  if (up) {
    std::size_t i = digits.size();
    while (i > 0) {
      --i;
      if (digits[i] == '.') continue;
      if (digits[i] != '9') {
        ++digits[i];
        break;
      }
      digits[i] = '0';
      if (i == 0) digits.insert(0, 1, '1');
    }
  }
  if (decimals == 0) digits.pop_back();
  const bool zero = digits.find_first_not_of("0.") == std::string::npos;
  return (value < 0 && !zero ? "-" : "") + digits;
}

std::string grouped_text(double value, int decimals) {
  std::string text = number_text(value, decimals);
  const std::size_t first = !text.empty() && text.front() == '-' ? 1 : 0;
  std::size_t i = text.find('.');
  if (i == std::string::npos) i = text.size();
  while (i > first + 3) {
    i -= 3;
    text.insert(i, 1, ',');
  }
  return text;
}

Result<std::int64_t> whole_from_text(std::string_view text) {
  std::int64_t value = 0;
  const auto [end, problem] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (problem == std::errc::result_out_of_range) {
    return Error{ErrorCode::out_of_range, "\"" + std::string(text) + "\" is too large.", "",
                 "Check the number of digits."};
  }
  if (problem != std::errc{} || end != text.data() + text.size()) return not_a_number(text);
  return value;
}

Result<double> number_from_text(std::string_view text) {
  if (!looks_decimal(text)) return not_a_number(text);
  double value = 0.0;
  const auto [end, problem] =
      std::from_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed);
  if (problem != std::errc{} || end != text.data() + text.size()) return not_a_number(text);
  return value;
}

Result<std::int32_t> scaled_from_text(std::string_view text, int decimals) {
  if (!looks_decimal(text)) return not_a_number(text);
  const auto point = text.find('.');
  std::string digits(text.substr(0, point));
  std::string_view tail =
      point == std::string_view::npos ? std::string_view{} : text.substr(point + 1);
  while (!tail.empty() && tail.back() == '0') tail.remove_suffix(1);
  if (tail.size() > static_cast<std::size_t>(decimals)) {
    return Error{ErrorCode::out_of_range,
                 "\"" + std::string(text) + "\" has more than " + std::to_string(decimals) +
                     (decimals == 1 ? " decimal." : " decimals."),
                 "", "Round it to what the instrument shows."};
  }
  digits += tail;
  digits.append(static_cast<std::size_t>(decimals) - tail.size(), '0');
  const auto value = whole_from_text(digits);
  if (!value) return value.error();
  if (*value > std::numeric_limits<std::int32_t>::max() ||
      *value < std::numeric_limits<std::int32_t>::min()) {
    return Error{ErrorCode::out_of_range, "\"" + std::string(text) + "\" is too large.", "",
                 "Check the number of digits."};
  }
  return static_cast<std::int32_t>(*value);
}

}  // namespace oaklight
