#include "core/base/sha256.hpp"

#include <sodium.h>

#include <array>

namespace oaklight {

std::string sha256_hex(std::string_view bytes) {
  std::array<unsigned char, crypto_hash_sha256_BYTES> hash{};
  crypto_hash_sha256(hash.data(), reinterpret_cast<const unsigned char*>(bytes.data()),
                     bytes.size());
  std::array<char, 2 * crypto_hash_sha256_BYTES + 1> text{};
  sodium_bin2hex(text.data(), text.size(), hash.data(), hash.size());
  return text.data();
}

}  // namespace oaklight
