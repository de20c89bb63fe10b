#pragma once

#include <string>
#include <vector>

#include "tests/handoff/test_tract.hpp"

namespace oaklight::test {

inline constexpr PacketReader kReaders[] = {PacketReader::logger, PacketReader::firewood,
                                            PacketReader::standing, PacketReader::owner};

/// Texts that people and files really bring: quotes, commas, formulas, emoji, right-to-left, marks
/// that turn text around, control characters, bad bytes, what looks like a date or a number, 300
/// letters.
const std::vector<std::string>& odd_texts();

/// A tract of many trees.
struct ManyTrees {
  int trees = 60;
  bool odd = false;       ///< names, tags and reasons are odd_texts(), by turns
  bool placed = true;     ///< trees and landing have positions
  bool measured = false;  ///< two plots and the acres walked: the owner is shown before and after
};

/// Every fifth tree is a crop tree that the four before it crowd; those are marked for each reader
/// by turns, left, or met and never decided. Every eighth tree has a stop.
TractData many_trees(const ManyTrees& wish);

/// A packet with all that the program knows, as the command makes it.
Result<Packet> packet_of_all(const TractData& data, PacketReader reader);

}  // namespace oaklight::test
