#include "core/store/rescue_harvest.hpp"

#include <algorithm>
#include <set>

#include "core/store/record_table.hpp"
#include "core/store/row_text.hpp"

namespace oaklight::store {
namespace {

constexpr const char* kLostFix = "Enter it again, or take it from an older copy.";

/// How a table of ours lies in a file.
struct Shape {
  std::string name;
  std::vector<std::string> columns;  ///< without the key
  std::vector<bool> real;            ///< a whole number there was a real one
  std::size_t crc = 0;               ///< place of row_crc
};

Result<Shape> shape_of(SqliteHandle& model, std::string_view table) {
  Shape shape{std::string(table), {}, {}, 0};
  const auto read = model.each(
      "SELECT name, type IN ('REAL', 'DOUBLE'), pk FROM pragma_table_info(?1) ORDER BY cid",
      {shape.name}, [&](const Row& row) -> Status {
        if (row[2] == Value{std::int64_t{1}}) return Done{};
        const auto& name = std::get<std::string>(row[0]);
        if (name == "row_crc") shape.crc = shape.columns.size();
        shape.columns.push_back(name);
        shape.real.push_back(row[1] == Value{std::int64_t{1}});
        return Done{};
      });
  if (!read) return read.error();
  return shape;
}

/// The row as that table has it; nothing when it does not carry that table's checksum.
std::optional<Row> row_of(const Shape& shape, const Row& raw) {
  // The key stands first, and as NULL since it is the rowid.
  if (raw.size() < 2 || raw.size() > shape.columns.size() + 1 || !is_null(raw[0]))
    return std::nullopt;
  Row row(raw.begin() + 1, raw.end());
  row.resize(shape.columns.size());
  for (std::size_t i = 0; i < row.size(); ++i) {
    // SQLite keeps 12.0 as 12 to save room.
    if (const auto* whole = std::get_if<std::int64_t>(&row[i]); whole != nullptr && shape.real[i])
      row[i] = static_cast<double>(*whole);
  }
  if (row[shape.crc] != Value{row_crc(shape.name, shape.columns, row)}) return std::nullopt;
  return row;
}

/// What a row that cannot be trusted says it is.
std::string name_of_row(const Shape& shape, const PageReader::RawRow& raw) {
  const auto place = std::find(shape.columns.begin(), shape.columns.end(), "uid");
  const auto i = static_cast<std::size_t>(place - shape.columns.begin()) + 1;
  const auto* uid = i < raw.cells.size() ? std::get_if<std::string>(&raw.cells[i]) : nullptr;
  const bool plain = uid != nullptr && uid->size() == 36 &&
                     uid->find_first_not_of("0123456789abcdef-") == std::string::npos;
  return shape.name + "/" + (plain ? *uid : "row " + std::to_string(raw.key));
}

class Harvester {
 public:
  Harvester(const PageReader& pages, std::vector<Shape> shapes)
      : pages_(pages), shapes_(std::move(shapes)) {
    for (const Shape& shape : shapes_) found_.tables[shape.name].columns = shape.columns;
  }

  Harvest run() {
    for (const PageReader::Root& root : pages_.roots()) follow(root);
    for (PageReader::Page page = 1; page <= pages_.pages(); ++page) {
      if (const auto leaf = pages_.leaf(page)) take(*leaf, page);
    }
    for (auto& [name, table] : found_.tables) {
      for (const HarvestedRow& row : table.rows)
        table.highest_key = std::max(table.highest_key, row.key);
    }
    return std::move(found_);
  }

 private:
  void follow(const PageReader::Root& root) {
    const PageReader::Tree tree = pages_.tree(root.page);
    for (const PageReader::Page page : tree.leaves) owners_.emplace(page, root.table);
    if (root.table == "sqlite_sequence") return read_sequences(tree);
    if (tree.broken == 0 || found_.tables.find(root.table) == found_.tables.end()) return;
    found_.lost.push_back({ErrorCode::damaged,
                           std::to_string(tree.broken) + " pages of the table cannot be read.",
                           root.table, kLostFix});
  }

  /// The highest key that SQLite gave to each table.
  void read_sequences(const PageReader::Tree& tree) {
    for (const PageReader::Page page : tree.leaves) {
      const auto leaf = pages_.leaf(page);
      if (!leaf) continue;
      for (const PageReader::RawRow& row : leaf->rows) {
        const auto* name = row.cells.empty() ? nullptr : std::get_if<std::string>(&row.cells[0]);
        const auto* key = row.cells.size() < 2 ? nullptr : std::get_if<std::int64_t>(&row.cells[1]);
        if (name == nullptr || key == nullptr || *key > kMostRows) continue;
        const auto table = found_.tables.find(*name);
        if (table != found_.tables.end()) table->second.highest_key = *key;
      }
    }
  }

  void take(const PageReader::Leaf& leaf, PageReader::Page page) {
    const auto owner = owners_.find(page);
    const std::string table = owner == owners_.end() ? std::string{} : owner->second;
    const Shape* own = nullptr;
    for (const Shape& shape : shapes_) {
      if (shape.name == table) own = &shape;
    }
    for (const PageReader::RawRow& raw : leaf.rows) take(raw, own);
    if (own == nullptr || leaf.unreadable == 0) return;
    found_.lost.push_back({ErrorCode::damaged,
                           std::to_string(leaf.unreadable) + " rows of page " +
                               std::to_string(page) + " cannot be read.",
                           table, kLostFix});
  }

  void take(const PageReader::RawRow& raw, const Shape* own) {
    if (own != nullptr && keep(*own, raw, true)) return;
    // What leads to the page may be what is wrong.
    for (const Shape& shape : shapes_) {
      if (keep(shape, raw, false)) return;
    }
    if (own == nullptr) return;
    found_.lost.push_back({ErrorCode::damaged, "A record does not match its checksum.",
                           name_of_row(*own, raw), kLostFix});
  }

  bool keep(const Shape& shape, const PageReader::RawRow& raw, bool in_place) {
    auto row = row_of(shape, raw.cells);
    if (!row) return false;
    found_.tables[shape.name].rows.push_back({raw.key, *std::move(row), in_place});
    return true;
  }

  // More than any tract has; a sequence above it is noise.
  static constexpr std::int64_t kMostRows = 1'000'000'000;

  const PageReader& pages_;
  std::vector<Shape> shapes_;
  std::map<PageReader::Page, std::string> owners_;
  Harvest found_;
};

}  // namespace

Result<Harvest> harvest(const PageReader& pages, SqliteHandle& model) {
  std::vector<std::string_view> names(kRecordTables.begin(), kRecordTables.end());
  names.insert(names.end(), {"user_action", "change"});
  std::vector<Shape> shapes;
  for (const std::string_view name : names) {
    auto shape = shape_of(model, name);
    if (!shape) return shape.error();
    shapes.push_back(*std::move(shape));
  }
  return Harvester(pages, std::move(shapes)).run();
}

}  // namespace oaklight::store
