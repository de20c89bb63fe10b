#pragma once

#include <cstdint>
#include <string>

namespace oaklight {

/// Where time comes from. Passed in through constructors, so that a test decides it.
class Clock {
 public:
  virtual ~Clock() = default;
  /// Milliseconds since 1970-01-01T00:00:00Z. May step back when a person sets the device's clock.
  virtual std::int64_t now_ms() = 0;
};

/// The clock of this machine.
class SystemClock final : public Clock {
 public:
  std::int64_t now_ms() override;
};

/// "2026-05-04T13:07:00.000Z": UTC with exactly three decimals, the one form that GeoPackage
/// DATETIME and RFC 3339 share.
std::string utc_text(std::int64_t ms);

}  // namespace oaklight
