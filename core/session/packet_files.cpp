#include "core/session/packet_files.hpp"

#include "core/handoff/list_geojson.hpp"
#include "core/handoff/list_gpx.hpp"
#include "core/handoff/manifest.hpp"
#include "core/handoff/owner_part.hpp"
#include "core/session/files.hpp"
#include "core/session/list_layers.hpp"
#include "core/session/list_xlsx.hpp"

namespace oaklight {
namespace {

std::vector<PracticeRecord> records_of(const OwnerPart& owner) {
  std::vector<PracticeRecord> records;
  for (const OwnerStand& stand : owner.stands) records.push_back(stand.record);
  return records;
}

}  // namespace

Result<std::vector<PacketFile>> write_packet_files(const std::filesystem::path& folder,
                                                   const Packet& packet,
                                                   const std::optional<std::string>& pdf) {
  if (const Status made = make_folder(folder); !made) return made.error();
  const std::string reader(word_of(packet.reader));
  std::vector<PacketBytes> parts;
  if (pdf) parts.push_back({reader + ".pdf", "pages to print", *pdf});
  parts.push_back({reader + ".csv", "the list", packet.list_csv});
  auto sheet = list_xlsx(packet, folder.string());
  if (!sheet) return sheet.error();
  parts.push_back({reader + ".xlsx", "the list as a spreadsheet", *std::move(sheet)});
  parts.push_back({reader + ".geojson", "the list for a map", list_geojson(packet)});
  parts.push_back({reader + ".gpx", "tags as waypoints", list_gpx(packet)});
  auto layers = list_geopackage(packet, folder.string());
  if (!layers) return layers.error();
  parts.push_back({reader + ".gpkg", "list, stands and lines for a GIS", *std::move(layers)});
  if (packet.owner) {
    parts.push_back({reader + ".practice.csv", "practice record: before, removed, after",
                     practice_record_csv(records_of(*packet.owner))});
  }
  const std::string manifest = manifest_json(packet, parts);
  parts.push_back({reader + ".manifest.json", "counts and checksums", manifest});
  std::vector<NamedBytes> named;
  std::vector<PacketFile> files;
  for (const PacketBytes& part : parts) {
    named.push_back({part.name, part.bytes});
    files.push_back({folder / part.name, part.what});
  }
  if (const Status written = write_sealed_files(folder, named); !written) return written.error();
  return files;
}

}  // namespace oaklight
