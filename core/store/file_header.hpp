#pragma once

#include <cstdint>
#include <filesystem>

#include "core/base/result.hpp"

namespace oaklight::store {

/// The first 100 bytes of an SQLite file, read without SQLite, so that a file which is not ours is
/// told from one that is before anything touches it.
struct FileHeader {
  static constexpr std::uint32_t kGeoPackage = 0x47504B47;  ///< "GPKG" (OGC 12-128, requirement 2)
  static constexpr std::uint32_t kVersion = 10300;          ///< GeoPackage 1.3

  std::uint32_t application_id = 0;
};

/// Errors: cannot_open (not there, not a file, not readable), not_a_tract_file (not SQLite).
/// Source: SQLite database file format, section 1.3.
Result<FileHeader> read_file_header(const std::filesystem::path& path);

/// Gives a finished file its name: all bytes on disk first, then the rename, then the folder.
/// Errors: cannot_write, also when something has that name already.
Status publish_file(const std::filesystem::path& finished, const std::filesystem::path& target);

}  // namespace oaklight::store
