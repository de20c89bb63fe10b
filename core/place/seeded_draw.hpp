#pragma once

#include <cstdint>
#include <random>

namespace oaklight {

/// Numbers drawn by chance that a seed brings back, the same on every machine: the generator is
/// defined by the C++ standard, and the step to fractions is our own (that of the library is not).
class SeededDraw {
 public:
  explicit SeededDraw(std::uint64_t seed) : generator_(seed) {}

  /// 0 <= x < 1, in steps of 2^-53.
  double uniform() { return static_cast<double>(generator_() >> 11U) * 0x1.0p-53; }

 private:
  std::mt19937_64 generator_;
};

}  // namespace oaklight
