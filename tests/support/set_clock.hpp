#pragma once

#include "core/base/clock.hpp"

namespace oaklight::test {

/// A clock that shows what the test sets.
class SetClock final : public Clock {
 public:
  explicit SetClock(std::int64_t start) : ms(start) {}
  std::int64_t now_ms() override { return ms; }

  std::int64_t ms;
};

}  // namespace oaklight::test
