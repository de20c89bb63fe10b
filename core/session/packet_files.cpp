#include "core/session/packet_files.hpp"

#include <system_error>

#include "core/handoff/manifest.hpp"
#include "core/session/files.hpp"

namespace oaklight {

Result<std::vector<PacketFile>> write_packet_files(const std::filesystem::path& folder,
                                                   const Packet& packet,
                                                   const std::optional<std::string>& pdf) {
  std::error_code problem;
  std::filesystem::create_directories(folder, problem);
  if (problem) {
    return Error{ErrorCode::cannot_write, "This folder cannot be made (" + problem.message() + ").",
                 folder.string(), "Choose another folder."};
  }
  struct Part {
    const char* end;
    const char* what;
    std::string bytes;
  };
  std::vector<Part> parts;
  if (pdf) parts.push_back({".pdf", "pages to print", *pdf});
  parts.push_back({".csv", "the list", packet.list_csv});
  parts.push_back({".manifest.json", "counts and checksum", manifest_json(packet)});
  std::vector<PacketFile> files;
  for (const Part& part : parts) {
    const auto path = folder / (std::string(word_of(packet.reader)) + part.end);
    const Status written = write_whole_file(path, part.bytes);
    if (!written) return written.error();
    files.push_back({path, part.what});
  }
  return files;
}

}  // namespace oaklight
