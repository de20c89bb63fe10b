#include "core/sample/running_moments.hpp"

#include <boost/multiprecision/cpp_int.hpp>
#include <cassert>
#include <cmath>

namespace oaklight {
namespace {

using Whole = boost::multiprecision::uint256_t;
using Words = std::array<std::uint64_t, 4>;

constexpr int kBits = 48;  // binary places that are kept of a value

Whole number_of(const Words& words) {
  Whole number;
  for (std::size_t i = words.size(); i-- > 0;) number = (number << 64U) | words[i];
  return number;
}

Words words_of(Whole number) {
  Words words{};
  for (std::uint64_t& word : words) {
    word = static_cast<std::uint64_t>(number & ~std::uint64_t{0});
    number >>= 64U;
  }
  return words;
}

/// The nearest whole number of 2^-48.
Whole whole_of(double value) { return Whole(std::nearbyint(std::ldexp(value, kBits))); }

}  // namespace

bool RunningMoments::holds(double value) { return value >= 0.0 && value < kBelow; }

void RunningMoments::add(double value) {
  if (value == 0.0) return;
  assert(holds(value));
  const Whole q = whole_of(value);
  sum_ = words_of(number_of(sum_) + q);
  squares_ = words_of(number_of(squares_) + q * q);
  ++found_;
}

void RunningMoments::remove(double value) {
  if (value == 0.0) return;
  const Whole q = whole_of(value);
  assert(found_ > 0 && number_of(sum_) >= q);
  sum_ = words_of(number_of(sum_) - q);
  squares_ = words_of(number_of(squares_) - q * q);
  --found_;
}

Moments RunningMoments::of(int plots) const {
  const Whole sum = number_of(sum_);
  const Whole about_mean = number_of(squares_) * plots - sum * sum;
  const double n = plots;
  return {.plots = plots,
          .found = found_,
          .mean = std::ldexp(sum.convert_to<double>(), -kBits) / n,
          .squares = std::ldexp(about_mean.convert_to<double>(), -2 * kBits) / n};
}

}  // namespace oaklight
