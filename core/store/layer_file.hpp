#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/base/result.hpp"
#include "core/model/place.hpp"

namespace oaklight {

/// One cell of a layer; monostate is NULL, "not known".
using LayerCell = std::variant<std::monostate, std::int64_t, double, std::string>;

/// What a column holds.
enum class LayerKind { text, whole, real };

struct LayerColumn {
  std::string name;
  LayerKind kind = LayerKind::text;
};

/// One thing of a layer; its place is nothing where nobody recorded it.
struct LayerRow {
  std::variant<std::monostate, Position, std::vector<Position>, Polygon> place;
  std::vector<LayerCell> cells;  ///< in the order of the columns
};

enum class LayerShape { point, line, polygon };

/// One table of a GeoPackage, with a geometry in each row. Names are words of letters and '_'.
struct Layer {
  std::string name;
  std::string title;
  LayerShape shape = LayerShape::point;
  std::vector<LayerColumn> columns;
  std::vector<LayerRow> rows;
};

/// Writes a GeoPackage that holds these layers and nothing else: no history, no device, no record
/// of the tract file. The same layers give the same bytes. No styles: GeoPackage 1.3 has no adopted
/// extension for them.
///
/// path     of a file that is not there yet, in a folder that is
/// day      printed as the day of the contents, "2026-12-01"
/// errors   cannot_write, disk_full; bad_geometry as the geometry makers
/// source   OGC 12-128 1.3, clauses 1.1 and 2.1
Status write_layers(const std::filesystem::path& path, const std::vector<Layer>& layers,
                    const std::string& day);

}  // namespace oaklight
