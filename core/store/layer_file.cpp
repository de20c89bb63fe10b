#include "core/store/layer_file.hpp"

#include <algorithm>

#include "core/base/embedded.hpp"
#include "core/store/gpkg_geometry.hpp"
#include "core/store/sqlite_handle.hpp"

namespace oaklight {
namespace {

using store::SqliteHandle;
using store::Value;

const char* shape_name(LayerShape shape) {
  switch (shape) {
    case LayerShape::point:
      return "POINT";
    case LayerShape::line:
      return "LINESTRING";
    case LayerShape::polygon:
      break;
  }
  return "POLYGON";
}

const char* type_name(LayerKind kind) {
  switch (kind) {
    case LayerKind::text:
      return "TEXT";
    case LayerKind::whole:
      return "INTEGER";
    case LayerKind::real:
      break;
  }
  return "REAL";
}

Value value_of(const LayerCell& cell) {
  return std::visit([](const auto& value) -> Value { return value; }, cell);
}

struct BlobOf {
  Result<Value> operator()(std::monostate) const { return Value{}; }
  Result<Value> operator()(const Position& place) const { return whole(store::point_blob(place)); }
  Result<Value> operator()(const std::vector<Position>& points) const {
    return whole(store::line_blob(points));
  }
  Result<Value> operator()(const Polygon& polygon) const {
    return whole(store::polygon_blob(polygon));
  }

 private:
  static Result<Value> whole(const Result<std::string>& bytes) {
    if (!bytes) return bytes.error();
    return Value{store::Blob{*bytes}};
  }
};

/// The ground that a layer covers grows by one geometry.
void cover(std::optional<store::Box>& box, const Value& geometry) {
  const auto* blob = std::get_if<store::Blob>(&geometry);
  const auto own = blob == nullptr ? std::nullopt : store::box_of(blob->bytes);
  if (!own) return;
  if (!box) box = own;
  box = store::Box{std::min(box->min_x, own->min_x), std::min(box->min_y, own->min_y),
                   std::max(box->max_x, own->max_x), std::max(box->max_y, own->max_y)};
}

Status make_table(SqliteHandle& db, const Layer& layer) {
  std::string sql = "CREATE TABLE " + store::quoted_name(layer.name) +
                    " (fid INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL, geom " +
                    shape_name(layer.shape);
  for (const LayerColumn& column : layer.columns) {
    sql += ", " + store::quoted_name(column.name) + " " + type_name(column.kind);
  }
  return db.script(sql + ")");
}

Result<std::optional<store::Box>> fill_table(SqliteHandle& db, const Layer& layer) {
  std::string sql = "INSERT INTO " + store::quoted_name(layer.name) + " VALUES (NULL, ?1";
  for (std::size_t i = 0; i < layer.columns.size(); ++i) sql += ", ?" + std::to_string(i + 2);
  sql += ")";
  std::optional<store::Box> box;
  for (const LayerRow& row : layer.rows) {
    auto geometry = std::visit(BlobOf{}, row.place);
    if (!geometry) return geometry.error();
    cover(box, *geometry);
    std::vector<Value> values = {*std::move(geometry)};
    for (const LayerCell& cell : row.cells) values.push_back(value_of(cell));
    if (const Status done = db.run(sql, values); !done) return done.error();
  }
  return box;
}

Status add_layer(SqliteHandle& db, const Layer& layer, const std::string& day) {
  if (const Status made = make_table(db, layer); !made) return made;
  const auto box = fill_table(db, layer);
  if (!box) return box.error();
  std::vector<Value> contents = {layer.name, layer.title, day + "T00:00:00.000Z"};
  if (*box) {
    contents.insert(contents.end(), {(**box).min_x, (**box).min_y, (**box).max_x, (**box).max_y});
  } else {
    contents.resize(7);
  }
  const Status listed = db.run(
      "INSERT INTO gpkg_contents (table_name, data_type, identifier, last_change, min_x, min_y, "
      "max_x, max_y, srs_id) VALUES (?1, 'features', ?2, ?3, ?4, ?5, ?6, ?7, 4326)",
      contents);
  if (!listed) return listed;
  return db.run("INSERT INTO gpkg_geometry_columns VALUES (?1, 'geom', ?2, 4326, 0, 0)",
                {layer.name, std::string(shape_name(layer.shape))});
}

}  // namespace

Status write_layers(const std::filesystem::path& path, const std::vector<Layer>& layers,
                    const std::string& day) {
  auto db = SqliteHandle::open(path, store::Use::make);
  if (!db) {
    return Error{ErrorCode::cannot_write, "A file cannot be made there.", path.string(),
                 "Choose a folder where you may write."};
  }
  // The first step of the schema makes the tables of a GeoPackage; what it adds for a tract file
  // goes again.
  const std::string_view base = embedded_schema().front().text;
  if (const Status made = db->script(base); !made) return made;
  if (const Status less = db->script("DROP TABLE meta"); !less) return less;
  return db->transaction([&]() -> Status {
    for (const Layer& layer : layers) {
      if (const Status added = add_layer(*db, layer, day); !added) return added;
    }
    return Done{};
  });
}

}  // namespace oaklight
