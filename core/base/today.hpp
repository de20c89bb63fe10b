#pragma once

#include "core/base/clock.hpp"
#include "core/base/day.hpp"

namespace oaklight {

/// The day that the calendar on the wall shows: in the time zone of this machine, not of Greenwich,
/// where it is tomorrow while a crew is still at work.
[[nodiscard]] Day today(Clock& clock);
/// The same by the clock of this machine.
[[nodiscard]] Day today();

}  // namespace oaklight
