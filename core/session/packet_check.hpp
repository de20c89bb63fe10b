#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "core/base/result.hpp"

namespace oaklight {

/// Whether a packet is as it was handed over.
struct PacketCheck {
  std::vector<std::string> sound;     ///< files that are as their manifest says
  std::vector<Error> problems;        ///< files that are not, or are gone
  std::vector<std::string> unlisted;  ///< files that no manifest speaks of
  /// "logger: 3f2a...": what each page of that packet shows, for whoever holds the paper.
  std::vector<std::string> list_hashes;
};

/// Reads a packet's folder against the manifests in it. It tells a file that was changed afterwards
/// from one that was not; who changed the manifest too is found by the hash on paper only.
/// Errors: cannot_open; no_data when there is no manifest.
Result<PacketCheck> check_packet(const std::filesystem::path& folder);

}  // namespace oaklight
