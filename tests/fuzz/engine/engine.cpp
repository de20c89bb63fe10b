// The door by which libFuzzer comes in; which target it feeds is told on the compiler's command
// line.
#include <cstddef>
#include <cstdint>

#include "tests/fuzz/targets.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  oaklight::test::OAKLIGHT_FUZZ_TARGET({reinterpret_cast<const char*>(data), size});
  return 0;
}
