#pragma once

#include <array>
#include <compare>
#include <cstdint>
#include <functional>
#include <string>
#include <string_view>

#include "core/base/clock.hpp"
#include "core/base/result.hpp"

namespace oaklight {

/// A UUID, 128 bits in network order. The nil UUID (all zero) means "no record yet".
struct Uuid {
  std::array<std::uint8_t, 16> bytes{};

  [[nodiscard]] bool is_nil() const { return *this == Uuid{}; }
  friend auto operator<=>(const Uuid&, const Uuid&) = default;
};

/// "017f22e2-79b0-7cc3-98c4-dc0c0c07398f": 36 characters, lower case (RFC 9562).
std::string to_text(const Uuid& id);

/// The reverse. Errors: not_a_choice when the text is not 36 characters of that form.
Result<Uuid> uuid_from_text(std::string_view text);

/// A UUID that knows what it names, so that a plot's id never lands in a tree's place.
template <class Tag>
struct Id {
  Uuid value;

  [[nodiscard]] bool is_nil() const { return value.is_nil(); }
  friend auto operator<=>(const Id&, const Id&) = default;
};

template <class Tag>
std::string to_text(const Id<Tag>& id) {
  return to_text(id.value);
}

/// Makes version 7 UUIDs that rise strictly, also within one millisecond and when the clock steps
/// back. Method: RFC 9562 section 6.2 method 1, a 12-bit counter in rand_a that carries into the
/// time.
class IdSource {
 public:
  using Random = std::function<std::uint64_t()>;

  /// clock and random are kept by reference and must outlive the source.
  IdSource(Clock& clock, Random random);

  /// The next id; greater than each id that this source made or resumed from.
  Uuid next();

  /// Goes on after an id of an earlier session, so that a clock set back cannot break the order.
  void resume_after(const Uuid& last);

  template <class Tag>
  Id<Tag> next_id() {
    return Id<Tag>{next()};
  }

 private:
  Clock& clock_;
  Random random_;
  std::int64_t last_ms_ = 0;
  std::uint32_t counter_ = 0;
};

/// Random bits from the operating system, for IdSource.
IdSource::Random system_random();

}  // namespace oaklight
