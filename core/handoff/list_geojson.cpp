#include "core/handoff/list_geojson.hpp"

#include <nlohmann/json.hpp>

#include "core/handoff/list_table.hpp"

namespace oaklight {
namespace {

using Json = nlohmann::ordered_json;

Json value_of(const ListCell& cell) {
  if (const auto* text = std::get_if<std::string>(&cell)) return *text;
  if (const auto* number = std::get_if<ListNumber>(&cell)) {
    const double value = printed_value(*number);
    return number->decimals == 0 ? Json(static_cast<std::int64_t>(value)) : Json(value);
  }
  return nullptr;
}

Json feature(const ListTable& table, std::size_t row) {
  const auto& cells = table.rows[row];
  Json geometry = nullptr;
  const Json latitude = value_of(cells[table.column("latitude_deg")]);
  if (!latitude.is_null()) {
    geometry = {{"type", "Point"},
                {"coordinates", {value_of(cells[table.column("longitude_deg")]), latitude}}};
  }
  Json properties = Json::object();
  for (std::size_t c = 0; c < cells.size(); ++c) {
    properties[std::string(table.columns[c].name)] = value_of(cells[c]);
  }
  return {{"type", "Feature"},
          {"geometry", std::move(geometry)},
          {"properties", std::move(properties)}};
}

}  // namespace

std::string list_geojson(const Packet& packet) {
  const ListTable table = list_table(packet);
  std::string text = "{\"type\":\"FeatureCollection\",\"features\":[";
  for (std::size_t row = 0; row < table.rows.size(); ++row) {
    text += (row == 0 ? "\n" : ",\n") + feature(table, row).dump();
  }
  return text + "\n]}\n";
}

}  // namespace oaklight
