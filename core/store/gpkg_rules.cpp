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

/// The layers of ours that are tables; their boxes must cover their shapes.
constexpr std::array kLayers = {"tract", "stand", "plot", "map_line", "walk_tree", "stump"};

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
  for (const char* layer : kLayers) {
    const auto ran = collect(
        db,
        "SELECT c.table_name FROM gpkg_contents AS c WHERE c.table_name = ?1 AND EXISTS (SELECT 1"
        " FROM " +
            quoted_name(layer) +
            " AS t WHERE t.geom IS NOT NULL AND NOT ifnull("
            "ST_MinX(t.geom) >= c.min_x AND ST_MaxX(t.geom) <= c.max_x AND"
            " ST_MinY(t.geom) >= c.min_y AND ST_MaxY(t.geom) <= c.max_y, 0))",
        {std::string(layer)}, "The bounding box of a layer does not cover its shapes.", found);
    if (!ran) return ran.error();
  }
  return found;
}

}  // namespace oaklight::store
