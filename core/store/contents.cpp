#include "core/store/contents.hpp"

#include <algorithm>
#include <map>

namespace oaklight::store {
namespace {

constexpr std::string_view kTreeLayer = "tree_point";

/// What happened to the shapes of one table.
struct Touched {
  std::optional<Box> grown;  ///< around the shapes that were added
  bool shrunk = false;       ///< a shape was moved or taken away: look at all of them again
};

const Value& shape_of(const RecordTable& table, const Row& row) {
  static const Value kNone;
  return table.index_of("geom") ? table.at(row, "geom") : kNone;
}

Box around(const std::optional<Box>& a, const Box& b) {
  if (!a) return b;
  return {std::min(a->min_x, b.min_x), std::min(a->min_y, b.min_y), std::max(a->max_x, b.max_x),
          std::max(a->max_y, b.max_y)};
}

std::map<std::string, Touched> touched_tables(const std::vector<RowChange>& changes) {
  std::map<std::string, Touched> tables;
  for (const RowChange& change : changes) {
    Touched& touched = tables[change.table->name()];
    const Value& now = shape_of(*change.table, change.after);
    const Value& was = change.before ? shape_of(*change.table, *change.before) : Value{};
    if (now == was) continue;
    if (!is_null(was)) touched.shrunk = true;
    const auto* blob = std::get_if<Blob>(&now);
    const auto box = blob == nullptr ? std::nullopt : box_of(blob->bytes);
    if (box) touched.grown = around(touched.grown, *box);
  }
  return tables;
}

Status note_time(SqliteHandle& db, std::string_view table, const std::string& at_utc) {
  return db.run("UPDATE gpkg_contents SET last_change = ?2 WHERE table_name = ?1",
                {std::string(table), at_utc});
}

Status grow_box(SqliteHandle& db, std::string_view table, const Box& box) {
  return db.run(
      "UPDATE gpkg_contents SET min_x = min(ifnull(min_x, ?2), ?2),"
      " min_y = min(ifnull(min_y, ?3), ?3), max_x = max(ifnull(max_x, ?4), ?4),"
      " max_y = max(ifnull(max_y, ?5), ?5) WHERE table_name = ?1",
      {std::string(table), box.min_x, box.min_y, box.max_x, box.max_y});
}

Status measure_box(SqliteHandle& db, std::string_view table, std::string_view shapes_of) {
  return db.run(
      "UPDATE gpkg_contents SET (min_x, min_y, max_x, max_y) ="
      " (SELECT min(ST_MinX(geom)), min(ST_MinY(geom)), max(ST_MaxX(geom)), max(ST_MaxY(geom)) "
      "FROM " +
          quoted_name(shapes_of) + ") WHERE table_name = ?1",
      {std::string(table)});
}

Status update_table(SqliteHandle& db, std::string_view table, std::string_view shapes_of,
                    const Touched& touched, const std::string& at_utc) {
  if (const auto noted = note_time(db, table, at_utc); !noted) return noted;
  if (touched.shrunk) return measure_box(db, table, shapes_of);
  if (touched.grown) return grow_box(db, table, *touched.grown);
  return Done{};
}

}  // namespace

Status update_contents(SqliteHandle& db, const std::vector<RowChange>& changes,
                       const std::string& at_utc) {
  const auto tables = touched_tables(changes);
  for (const auto& [table, touched] : tables) {
    if (const auto done = update_table(db, table, table, touched, at_utc); !done) return done;
  }
  const auto plots = tables.find("plot");
  if (plots == tables.end() && tables.count("tree") == 0) return Done{};
  const Touched touched = plots == tables.end() ? Touched{} : plots->second;
  return update_table(db, kTreeLayer, "plot", touched, at_utc);
}

Status measure_contents(SqliteHandle& db) {
  for (const std::string_view name : kRecordTables) {
    const auto table = RecordTable::read(db, name);
    if (!table) return table.error();
    if (!table->index_of("geom")) continue;
    if (const auto measured = measure_box(db, name, name); !measured) return measured;
  }
  if (const auto measured = measure_box(db, kTreeLayer, "plot"); !measured) return measured;
  return db.run(
      "UPDATE gpkg_contents SET last_change = coalesce((SELECT a.at_utc FROM change AS c"
      " JOIN user_action AS a ON a.uid = c.action_uid WHERE c.table_name ="
      " CASE gpkg_contents.table_name WHEN ?1 THEN 'tree' ELSE gpkg_contents.table_name END"
      " ORDER BY c.seq DESC LIMIT 1), (SELECT value FROM meta WHERE key = 'created_at'))",
      {std::string(kTreeLayer)});
}

}  // namespace oaklight::store
