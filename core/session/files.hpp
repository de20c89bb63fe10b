#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "core/base/result.hpp"

namespace oaklight {

/// The bytes of a file. Errors: cannot_open; out_of_range for one larger than 256 MiB, which no
/// list or map of a tract comes near.
Result<std::string> read_whole_file(const std::filesystem::path& path);

/// Makes a folder and those above it; one that is there already is fine. Errors: cannot_write.
Status make_folder(const std::filesystem::path& folder);

/// Writes a file so that its name holds either the old bytes or all of the new ones, also after a
/// power cut: to a neighbour file first, synced, then renamed over.
/// Errors: cannot_write; disk_full.
Status write_whole_file(const std::filesystem::path& path, std::string_view bytes);

}  // namespace oaklight
