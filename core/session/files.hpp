#pragma once

#include <filesystem>
#include <span>
#include <string>
#include <string_view>

#include "core/base/result.hpp"

namespace oaklight {

/// The bytes of a file. Errors: cannot_open; out_of_range for one larger than 256 MiB, which no
/// list or map of a tract comes near.
Result<std::string> read_whole_file(const std::filesystem::path& path);

/// Makes a folder and those above it, on disk when it returns; one that is there already is fine.
/// Errors: cannot_write.
Status make_folder(const std::filesystem::path& folder);

/// Writes a file so that its name holds either the old bytes or all of the new ones, also after a
/// power cut: to a neighbour file first, synced, then renamed over.
/// Errors: cannot_write; disk_full.
Status write_whole_file(const std::filesystem::path& path, std::string_view bytes);

/// A file of a set, by its name within the folder.
struct NamedBytes {
  std::string name;
  std::string_view bytes;
};

/// Writes files that belong together. The last of them is their seal: it lies in the folder only
/// while all the others there are those that it was written with, also after a power cut. An older
/// set stays as it was until all of the new one is on disk beside it; then its seal goes first.
/// Errors: cannot_write; disk_full. While there was no room the older set is unchanged.
Status write_sealed_files(const std::filesystem::path& folder, std::span<const NamedBytes> files);

}  // namespace oaklight
