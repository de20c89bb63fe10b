#pragma once

#include <compare>

namespace oaklight {

/// A number that remembers its unit. The tag is the unit; no cast between tags exists, and a bare
/// double becomes one only where it is written so.
template <class Unit>
struct Quantity {
  double value = 0.0;

  constexpr Quantity() = default;
  constexpr explicit Quantity(double v) : value(v) {}

  friend constexpr auto operator<=>(Quantity, Quantity) = default;

  constexpr Quantity& operator+=(Quantity other) {
    value += other.value;
    return *this;
  }
  constexpr Quantity& operator-=(Quantity other) {
    value -= other.value;
    return *this;
  }
  friend constexpr Quantity operator+(Quantity a, Quantity b) {
    return Quantity{a.value + b.value};
  }
  friend constexpr Quantity operator-(Quantity a, Quantity b) {
    return Quantity{a.value - b.value};
  }
  friend constexpr Quantity operator-(Quantity a) { return Quantity{-a.value}; }
  friend constexpr Quantity operator*(Quantity a, double k) { return Quantity{a.value * k}; }
  friend constexpr Quantity operator*(double k, Quantity a) { return Quantity{k * a.value}; }
  friend constexpr Quantity operator/(Quantity a, double k) { return Quantity{a.value / k}; }
  /// The ratio of two quantities of one unit is a plain number.
  friend constexpr double operator/(Quantity a, Quantity b) { return a.value / b.value; }
};

}  // namespace oaklight
