#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "core/base/result.hpp"
#include "core/handoff/packet.hpp"

namespace oaklight {

/// A file of a packet that was written.
struct PacketFile {
  std::filesystem::path path;
  std::string what;  ///< in words: "the list"
};

/// Writes what one reader is handed, named by the reader: the pages to print where there are any,
/// the list as CSV, XLSX, GeoJSON, GPX and GeoPackage, for the owner the practice record, and the
/// manifest with counts and the checksum of each file. The manifest is the seal (files.hpp): where
/// it lies the packet is whole, also after a kill or a power cut in the middle of this.
///
/// folder   made when there is none
/// pdf      bytes of the pages; nothing in a program that cannot paint
/// returns  the files, in that order
/// errors   cannot_write; disk_full; as list_xlsx and list_geopackage
Result<std::vector<PacketFile>> write_packet_files(const std::filesystem::path& folder,
                                                   const Packet& packet,
                                                   const std::optional<std::string>& pdf);

}  // namespace oaklight
