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

bool steers(std::string_view text, Lines lines) {
  const auto byte = [&](std::size_t i) {
    return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U;
  };
  for (std::size_t i = 0; i < text.size(); ++i) {
    const unsigned a = byte(i);
    const unsigned b = byte(i + 1);
    const unsigned c = byte(i + 2);
    const bool line = a == '\n' || a == '\r' || a == '\t';
    if ((a < 0x20 && !(line && lines == Lines::allowed)) || a == 0x7F) return true;
    if (a == 0xC2 && b >= 0x80 && b <= 0x9F) return true;               // U+0080 .. U+009F
    if (a == 0xE2 && b == 0x80 && c >= 0xAA && c <= 0xAE) return true;  // U+202A .. U+202E
    if (a == 0xE2 && b == 0x81 && c >= 0xA6 && c <= 0xA9) return true;  // U+2066 .. U+2069
  }
  return false;
}

}  // namespace oaklight
