#include "core/store/gpkg_rules.hpp"

#include <array>

namespace oaklight::store {
namespace {

/// A query that answers one row, with the faulty name in it, for each fault.
struct Rule {
  const char* what;
  const char* query;
};

constexpr std::array kRules = {
    Rule{"A coordinate system that every GeoPackage names is missing (requirement 11).",
         "SELECT 'gpkg_spatial_ref_sys' WHERE 3 <>"
         " (SELECT count(*) FROM gpkg_spatial_ref_sys WHERE srs_id IN (-1, 0, 4326))"},
    Rule{"A registered table is not in the file (requirement 14).",
         "SELECT table_name FROM gpkg_contents"
         " WHERE table_name NOT IN (SELECT name FROM sqlite_schema) ORDER BY table_name"},
    Rule{"A time of last change is not UTC with three decimals (requirement 15).",
         "SELECT table_name FROM gpkg_contents WHERE last_change NOT GLOB"
         " '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]T[0-9][0-9]:[0-9][0-9]:[0-9][0-9].[0-9][0-9]["
         "0-9]Z'"
         " ORDER BY table_name"},
    Rule{"A layer has no geometry column, or a geometry column no layer (requirements 22 and 23).",
         "SELECT table_name FROM gpkg_contents WHERE data_type = 'features' AND table_name NOT IN"
         " (SELECT table_name FROM gpkg_geometry_columns)"
         " UNION SELECT table_name FROM gpkg_geometry_columns WHERE table_name NOT IN"
         " (SELECT table_name FROM gpkg_contents WHERE data_type = 'features') ORDER BY 1"},
    Rule{"A geometry column is not declared as it is registered (requirement 31).",
         "SELECT g.table_name FROM gpkg_geometry_columns AS g"
         " JOIN sqlite_schema AS s ON s.name = g.table_name AND s.type = 'table'"
         " WHERE NOT EXISTS (SELECT 1 FROM pragma_table_info(g.table_name) AS c"
         " WHERE c.name = g.column_name AND c.type = g.geometry_type_name) ORDER BY g.table_name"},
};

/// The layers of ours and the tables of their shapes: a box is that of all of them, no more.
struct LayerTable {
  const char* layer;
  const char* shapes;
};
constexpr std::array kLayers = {
    LayerTable{"tract", "tract"},       LayerTable{"stand", "stand"},
    LayerTable{"plot", "plot"},         LayerTable{"tree_point", "plot"},
    LayerTable{"map_line", "map_line"}, LayerTable{"walk_tree", "walk_tree"},
    LayerTable{"stump", "stump"}};

Status collect(SqliteHandle& db, const std::string& query, std::initializer_list<Value> arguments,
               const char* what, std::vector<Error>& found) {
  return db.each(query, arguments, [&](const Row& row) -> Status {
    const auto* name = std::get_if<std::string>(&row[0]);
    found.push_back({ErrorCode::damaged, what, name == nullptr ? "gpkg_contents" : *name,
                     "Other programs may not show this layer; work on from a copy made by "
                     "Oaklight."});
    return Done{};
  });
}

}  // namespace

Result<std::vector<Error>> find_gpkg_faults(SqliteHandle& db) {
  std::vector<Error> found;
  for (const Rule& rule : kRules) {
    if (const auto ran = collect(db, rule.query, {}, rule.what, found); !ran) return ran.error();
  }
  for (const LayerTable& layer : kLayers) {
    const auto ran = collect(
        db,
        "SELECT c.table_name FROM gpkg_contents AS c WHERE c.table_name = ?1 AND NOT EXISTS (SELECT"
        " 1 FROM (SELECT min(ST_MinX(geom)) AS x, min(ST_MinY(geom)) AS y, max(ST_MaxX(geom)) AS"
        " to_x, max(ST_MaxY(geom)) AS to_y FROM " +
            quoted_name(layer.shapes) +
            ") AS t WHERE t.x IS c.min_x AND t.y IS c.min_y AND t.to_x IS c.max_x AND"
            " t.to_y IS c.max_y)",
        {std::string(layer.layer)}, "The bounding box of a layer is not that of its shapes.",
        found);
    if (!ran) return ran.error();
  }
  return found;
}

}  // namespace oaklight::store
