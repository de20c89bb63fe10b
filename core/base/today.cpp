#include "core/base/today.hpp"

#include <ctime>

namespace oaklight {

Day today(Clock& clock) {
  const auto seconds = static_cast<std::time_t>(clock.now_ms() / 1000);
  std::tm local{};
  localtime_r(&seconds, &local);
  return Day{std::chrono::year{local.tm_year + 1900},
             std::chrono::month{static_cast<unsigned>(local.tm_mon) + 1U},
             std::chrono::day{static_cast<unsigned>(local.tm_mday)}};
}

Day today() {
  SystemClock clock;
  return today(clock);
}

}  // namespace oaklight
