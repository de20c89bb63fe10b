#include "core/session/list_layers.hpp"

#include <filesystem>
#include <system_error>

#include "core/handoff/list_table.hpp"
#include "core/session/files.hpp"
#include "core/store/layer_file.hpp"

namespace oaklight {
namespace {

LayerCell cell_of(const ListCell& cell) {
  if (const auto* text = std::get_if<std::string>(&cell)) return *text;
  if (const auto* number = std::get_if<ListNumber>(&cell)) {
    const double value = printed_value(*number);
    if (number->decimals == 0) return static_cast<std::int64_t>(value);
    return value;
  }
  return std::monostate{};
}

LayerKind kind_of(ColumnKind kind) {
  switch (kind) {
    case ColumnKind::text:
      return LayerKind::text;
    case ColumnKind::whole:
      return LayerKind::whole;
    case ColumnKind::decimal:
      break;
  }
  return LayerKind::real;
}

/// A position as every file prints it.
Position printed(const Position& place) {
  return {Degrees{printed_value({place.latitude.value, 6})},
          Degrees{printed_value({place.longitude.value, 6})}};
}

Layer trees_of(const Packet& packet) {
  const ListTable table = list_table(packet);
  Layer layer{"listed_tree", "Listed trees", LayerShape::point, {}, {}};
  for (const ListColumn& column : table.columns) {
    layer.columns.push_back({std::string(column.name), kind_of(column.kind)});
  }
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    LayerRow row;
    if (table.places[i]) row.place = printed(*table.places[i]);
    for (const ListCell& cell : table.rows[i]) row.cells.push_back(cell_of(cell));
    layer.rows.push_back(std::move(row));
  }
  return layer;
}

Layer stands_of(const Packet& packet) {
  Layer layer{"stand",
              "Stands with listed trees",
              LayerShape::polygon,
              {{"name", LayerKind::text}, {"acres", LayerKind::real}},
              {}};
  for (const Stand& stand : packet.stands) {
    LayerRow row;
    if (stand.boundary) row.place = *stand.boundary;
    row.cells = {clean_text(stand.name), printed_value({stand.acres.value, 1})};
    layer.rows.push_back(std::move(row));
  }
  return layer;
}

Layer lines_of(const Packet& packet) {
  Layer layer{
      "map_line",
      "Lines of the map",
      LayerShape::line,
      {{"kind", LayerKind::text}, {"name", LayerKind::text}, {"confirmed", LayerKind::text}},
      {}};
  for (const MapLine& line : packet.lines) {
    LayerRow row;
    if (line.points.size() > 1) row.place = line.points;
    row.cells = {std::string(word_of(line.kind)), clean_text(line.name),
                 std::string(line.confirmed ? "yes" : "no")};
    layer.rows.push_back(std::move(row));
  }
  return layer;
}

}  // namespace

Result<std::string> list_geopackage(const Packet& packet, const std::string& folder) {
  const std::filesystem::path path =
      std::filesystem::path(folder) / (std::string(word_of(packet.reader)) + ".gpkg.making");
  // What a program that was killed here left goes too, its journal first.
  const auto take_away = [&path] {
    std::error_code ignored;
    std::filesystem::remove(path.string() + "-journal", ignored);
    std::filesystem::remove(path, ignored);
  };
  take_away();
  const Status written =
      write_layers(path, {trees_of(packet), stands_of(packet), lines_of(packet)}, packet.made_on);
  auto bytes = written ? read_whole_file(path) : Result<std::string>(written.error());
  take_away();
  return bytes;
}

}  // namespace oaklight
