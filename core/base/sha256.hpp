#pragma once

#include <string>
#include <string_view>

namespace oaklight {

/// SHA-256 of the bytes, as 64 lower-case hexadecimal digits (FIPS 180-4; computed by libsodium).
std::string sha256_hex(std::string_view bytes);

}  // namespace oaklight
