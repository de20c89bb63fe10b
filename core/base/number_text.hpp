#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "core/base/result.hpp"

namespace oaklight {

/// A number as text with a fixed count of decimals, '.' as the point and no grouping, on any
/// locale. Rounds half away from zero on the decimal value; never prints "-0". Not finite: "".
std::string number_text(double value, int decimals);

/// The same with thousands parted by commas, for people ("12,430.5"). Never for files.
std::string grouped_text(double value, int decimals);

/// A whole number. Errors: not_a_number for anything but an optional '-' and digits, out_of_range.
Result<std::int64_t> whole_from_text(std::string_view text);

/// A decimal number without exponent. Errors: not_a_number, also for "nan", "inf" and "1,5".
Result<double> number_from_text(std::string_view text);

/// A decimal number as a whole count of 10^-decimals, exactly: ("12.3", 1) gives 123.
/// Errors: not_a_number; out_of_range when it has more decimals than that or does not fit 32 bits.
Result<std::int32_t> scaled_from_text(std::string_view text, int decimals);

}  // namespace oaklight
