#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.hpp"

namespace oaklight {

/// What a manifest says of one file of its packet.
struct ListedFile {
  std::string name;  ///< plain: of a file in the manifest's own folder
  std::uint64_t bytes = 0;
  std::string sha256;
};

struct Manifest {
  std::string reader;
  std::string list_sha256;  ///< as every page of the packet shows it
  std::vector<ListedFile> files;
};

/// Reads what manifest_json wrote, from whoever sent it.
/// Errors: bad_json; not_a_choice when it is no manifest of a packet, or a name in it is a path.
Result<Manifest> read_manifest(std::string_view text, const std::string& where);

}  // namespace oaklight
