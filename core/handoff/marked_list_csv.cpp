#include "core/handoff/marked_list_csv.hpp"

#include "core/base/csv_text.hpp"
#include "core/handoff/list_table.hpp"

namespace oaklight {

std::string marked_list_csv(const Packet& packet) {
  const ListTable table = list_table(packet);
  std::vector<std::string> cells;
  for (const ListColumn& column : table.columns) cells.emplace_back(column.name);
  std::string text = csv_record(cells);
  for (const auto& row : table.rows) {
    for (std::size_t c = 0; c < row.size(); ++c) {
      const std::string plain = text_of(row[c]);
      cells[c] = table.columns[c].typed ? safe_csv_cell(plain) : csv_cell(plain);
    }
    text += csv_record(cells);
  }
  return text;
}

}  // namespace oaklight
