#include "core/store/join_cells.hpp"

#include <array>
#include <bit>
#include <charconv>
#include <string_view>

#include "core/base/number_text.hpp"
#include "core/store/gpkg_geometry.hpp"

namespace oaklight::store {
namespace {

/// FNV-1a, 64 bits: two images out of a few of one record are told apart, no more is asked.
class Mix {
 public:
  void add(std::string_view bytes) {
    for (const char c : bytes) {
      hash_ = (hash_ ^ static_cast<unsigned char>(c)) * 0x100000001b3ULL;
    }
  }
  void add(std::uint64_t number) {
    for (int i = 0; i < 8; ++i) {
      hash_ = (hash_ ^ (number & 0xFFU)) * 0x100000001b3ULL;
      number >>= 8U;
    }
  }
  [[nodiscard]] std::uint64_t value() const { return hash_ == 0 ? 1 : hash_; }

 private:
  std::uint64_t hash_ = 0xcbf29ce484222325ULL;
};

struct Mixer {
  Mix& mix;
  void operator()(std::monostate) const {}
  void operator()(std::int64_t x) const { mix.add(static_cast<std::uint64_t>(x)); }
  void operator()(double x) const { mix.add(std::bit_cast<std::uint64_t>(x)); }
  void operator()(const std::string& x) const { mix.add(x); }
  void operator()(const Blob& x) const { mix.add(x.bytes); }
};

template <class Ignore>
std::uint64_t image(const RecordTable& table, const Row& row, Ignore ignore) {
  Mix mix;
  for (std::size_t i = 0; i < row.size(); ++i) {
    const std::string& column = table.columns()[i];
    if (is_null(row[i]) || column == "row_crc" || ignore(column)) continue;
    mix.add(i);
    mix.add(row[i].index());
    std::visit(Mixer{mix}, row[i]);
  }
  return mix.value();
}

std::string joined(const RecordTable& table, const Row& row,
                   std::initializer_list<const char*> columns) {
  std::string text;
  for (const char* column : columns) {
    const Value& cell = table.at(row, column);
    const auto* number = std::get_if<std::int64_t>(&cell);
    text += (number == nullptr ? text_of(cell) : std::to_string(*number)) + "|";
  }
  return text;
}

std::string shape_text(const Blob& shape) {
  const auto box = box_of(shape.bytes);
  if (!box) return "";
  const auto corner = [](double y, double x) {
    return number_text(y, 6) + ", " + number_text(x, 6);
  };
  if (box->min_x == box->max_x && box->min_y == box->max_y) return corner(box->min_y, box->min_x);
  return corner(box->min_y, box->min_x) + " to " + corner(box->max_y, box->max_x);
}

struct CellText {
  std::string operator()(std::monostate) const { return {}; }
  std::string operator()(std::int64_t x) const { return std::to_string(x); }
  std::string operator()(double x) const {
    std::array<char, 64> text{};
    const auto end = std::to_chars(text.data(), text.data() + text.size(), x).ptr;
    return {text.data(), end};
  }
  std::string operator()(const std::string& x) const { return x; }
  std::string operator()(const Blob& x) const { return shape_text(x); }
};

std::string ending_of(int n) {
  if (n % 100 >= 11 && n % 100 <= 13) return "th";
  switch (n % 10) {
    case 1:
      return "st";
    case 2:
      return "nd";
    case 3:
      return "rd";
    default:
      return "th";
  }
}

}  // namespace

std::string text_of(const Value& value) {
  const auto* text = std::get_if<std::string>(&value);
  return text == nullptr ? std::string{} : *text;
}

std::uint64_t exact_image(const RecordTable& table, const Row& row) {
  const auto name = name_column(table.name());
  return image(table, row,
               [&](const std::string& column) { return column == "deleted" || column == name; });
}

std::uint64_t content_image(const RecordTable& table, const Row& row) {
  return image(table, row, [](const std::string& column) { return column == "changed_at"; });
}

std::uint64_t content_beside_uid(const RecordTable& table, const Row& row) {
  return image(table, row,
               [](const std::string& column) { return column == "changed_at" || column == "uid"; });
}

std::optional<std::string> name_column(const std::string& table) {
  if (table == "stand" || table == "cruise") return "name";
  if (table == "plot") return "label";
  if (table == "walk_tree") return "tag";
  return std::nullopt;
}

std::string scope_of(const RecordTable& table, const Row& row) {
  return table.name() == "plot" ? joined(table, row, {"cruise_uid", "stand_uid"}) : std::string{};
}

std::optional<std::string> place_of(const RecordTable& table, const Row& row) {
  const std::string& name = table.name();
  if (name == "tract") return "";
  if (name == "form_file") return joined(table, row, {"path"});
  if (name == "mark") return joined(table, row, {"walk_tree_uid"});
  if (name == "acorn_count") return joined(table, row, {"walk_tree_uid", "year", "method"});
  if (name == "acorn_year") return joined(table, row, {"oak_group", "year"});
  return std::nullopt;
}

std::string nth_name(const std::string& name, int n) {
  return name + " (" + std::to_string(n) + ending_of(n) + ")";
}

std::string first_name(const std::string& name) {
  const auto from = name.rfind(" (");
  if (from == std::string::npos || from == 0) return name;
  int n = 0;
  const char* digits = name.data() + from + 2;
  const auto read = std::from_chars(digits, name.data() + name.size(), n);
  if (read.ec != std::errc{} || n < 2) return name;
  std::string first = name.substr(0, from);
  return nth_name(first, n) == name ? first : name;
}

bool is_by_hand(const RecordTable& table, const Row& row) {
  const auto column = table.index_of("by_hand");
  return column && row[*column] == Value{std::int64_t{1}};
}

std::vector<std::pair<std::string, std::string>> cells_of(const RecordTable& table,
                                                          const Row& row) {
  std::vector<std::pair<std::string, std::string>> cells;
  for (std::size_t i = 0; i < row.size(); ++i) {
    const std::string& column = table.columns()[i];
    const bool ours =
        column == "uid" || column == "deleted" || column == "changed_at" || column == "row_crc";
    if (!ours && !is_null(row[i])) cells.emplace_back(column, std::visit(CellText{}, row[i]));
  }
  return cells;
}

}  // namespace oaklight::store
