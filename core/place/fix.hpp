#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/model/place.hpp"

namespace oaklight {

/// Over ground; metres in a second.
using MetresPerSecond = Quantity<struct MetresPerSecondUnit>;

/// Where a GNSS receiver says that it is. Nothing is "not told", never zero.
struct Fix {
  Position at;
  std::optional<Metres> accuracy;  ///< radius, as the receiver states it
  std::optional<Degrees> course;   ///< over ground, 0 to 360 from true north
  std::optional<MetresPerSecond> speed;
  std::int64_t ms = 0;  ///< when it was taken, since 1970, UTC

  friend bool operator==(const Fix&, const Fix&) = default;
};

/// Whether a fix is to be doubted: it tells no accuracy, or a worse one than the limit.
[[nodiscard]] bool poor(const Fix& fix, Metres limit);

/// Many fixes at one place as one.
struct MeanFix {
  Position at;
  int fixes = 0;                   ///< in the mean
  int poor_fixes = 0;              ///< left out of it, or all of it when poor is set
  Metres spread;                   ///< root mean square of the fixes' distances from the mean
  std::optional<Metres> accuracy;  ///< what to keep; nothing: the receiver tells none
  bool poor = false;               ///< made of poor fixes alone

  friend bool operator==(const MeanFix&, const MeanFix&) = default;
};

/// The mean of fixes on the flat ground around the first. Poor fixes do not count while there is
/// any other. Its accuracy is that which the receiver stated, the mean over the fixes, or the
/// spread where that is larger: it is not divided by the root of their number, because the errors
/// of fixes some seconds apart are nearly the same.
///
/// returns  nothing without a fix
/// source   the rule is judgement
[[nodiscard]] std::optional<MeanFix> mean_fix(const std::vector<Fix>& fixes, Metres limit);

/// Which way somebody walks, from the fixes of a receiver as they come. Where the receiver tells
/// course and speed they are believed from a slow walk on: below it a course is noise. Where it
/// does not, the way between fixes some metres apart tells it.
class Heading {
 public:
  void add(const Fix& fix);
  /// From true north; nothing for one who stands, or of whom no fix came for some seconds.
  [[nodiscard]] std::optional<Degrees> at(std::int64_t ms) const;

 private:
  std::optional<Fix> from_;  ///< where the way since began
  std::optional<Degrees> way_;
  std::int64_t told_ms_ = 0;
};
/// The slowest walk of which a course is believed. Source: judgement; 1.1 mph.
inline constexpr MetresPerSecond kSlowWalk{0.5};

}  // namespace oaklight
