#include "core/base/utf8.hpp"

#include <cstddef>
#include <cstdint>

namespace oaklight {

bool is_utf8(std::string_view bytes) {
  std::size_t i = 0;
  while (i < bytes.size()) {
    const auto lead = static_cast<std::uint8_t>(bytes[i++]);
    if (lead < 0x80) continue;
    int more = 0;
    std::uint32_t character = 0;
    std::uint32_t smallest = 0;
    if ((lead & 0xE0) == 0xC0) {
      more = 1, character = lead & 0x1FU, smallest = 0x80;
    } else if ((lead & 0xF0) == 0xE0) {
      more = 2, character = lead & 0x0FU, smallest = 0x800;
    } else if ((lead & 0xF8) == 0xF0) {
      more = 3, character = lead & 0x07U, smallest = 0x10000;
    } else {
      return false;
    }
    for (; more > 0; --more, ++i) {
      if (i == bytes.size()) return false;
      const auto next = static_cast<std::uint8_t>(bytes[i]);
      if ((next & 0xC0) != 0x80) return false;
      character = (character << 6) | (next & 0x3FU);
    }
    const bool surrogate = character >= 0xD800 && character <= 0xDFFF;
    if (character < smallest || surrogate || character > 0x10FFFF) return false;
  }
  return true;
}

}  // namespace oaklight
