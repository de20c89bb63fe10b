#pragma once

#include <cstdint>

#include "core/model/ids.hpp"

namespace oaklight::test {

/// The n-th id of a kind, in rising order; n >= 1, as 0 is "no record yet".
template <class IdType>
IdType nth_id(std::uint32_t n) {
  IdType id;
  for (std::size_t i = 0; i < 4; ++i) {
    id.value.bytes[15 - i] = static_cast<std::uint8_t>(n >> (8 * i));
  }
  return id;
}

}  // namespace oaklight::test
