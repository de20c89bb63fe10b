#pragma once

#include <cstdint>
#include <string>

namespace oaklight::test {

/// Writes the files of an invented cruise, drawn by a seed: one to four stands, points or fixed
/// plots in either unit system, empty plots, dead trees, like stems, trees counted twice at an
/// edge, seedlings. The folder exists.
void write_random_cruise(const std::string& folder, std::uint64_t seed);

}  // namespace oaklight::test
