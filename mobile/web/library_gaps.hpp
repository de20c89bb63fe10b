#pragma once

// What core and Boost use of C++20 and this build's library (libc++ 16, one thread) lacks: a double
// read from text, the order of arrays, and a mutex, which one thread never waits for. Included
// before each file of this build by the compiler; no other build sees it.
#include <fast_float/fast_float.h>

#include <array>
#include <charconv>
#include <compare>
#include <concepts>

namespace std {

inline from_chars_result from_chars(const char* first, const char* last, double& value,
                                    chars_format format = chars_format::general) {
  const auto style = format == chars_format::fixed ? fast_float::chars_format::fixed
                                                   : fast_float::chars_format::general;
  const auto read = fast_float::from_chars(first, last, value, style);
  return {read.ptr, read.ec};
}

template <integral Whole, size_t size>
constexpr strong_ordering operator<=>(const array<Whole, size>& a, const array<Whole, size>& b) {
  for (size_t i = 0; i < size; ++i) {
    if (const strong_ordering order = a[i] <=> b[i]; order != 0) return order;
  }
  return strong_ordering::equal;
}

class mutex {
 public:
  void lock() {}
  void unlock() {}
};

}  // namespace std
