#pragma once

#include <cassert>
#include <utility>
#include <variant>

#include "core/base/error.hpp"

namespace oaklight {

/// A value, or the reason why there is none. Members are named after std::expected (C++23),
/// so that it can take over when the compilers we support have it.
template <class T>
class [[nodiscard]] Result {
 public:
  Result(T value) : state_(std::in_place_index<0>, std::move(value)) {}
  Result(Error error) : state_(std::in_place_index<1>, std::move(error)) {}

  [[nodiscard]] bool has_value() const { return state_.index() == 0; }
  explicit operator bool() const { return has_value(); }

  /// The value. Calling it on an error is a bug in the caller, not a condition to handle.
  const T& value() const& {
    assert(has_value());
    return std::get<0>(state_);
  }
  T& value() & {
    assert(has_value());
    return std::get<0>(state_);
  }
  T&& value() && {
    assert(has_value());
    return std::get<0>(std::move(state_));
  }
  const T& operator*() const& { return value(); }
  T& operator*() & { return value(); }
  T&& operator*() && { return std::move(*this).value(); }
  const T* operator->() const { return &value(); }
  T* operator->() { return &value(); }

  [[nodiscard]] const Error& error() const {
    assert(!has_value());
    return std::get<1>(state_);
  }

 private:
  std::variant<T, Error> state_;
};

/// Success without a value.
struct Done {};
using Status = Result<Done>;

}  // namespace oaklight
