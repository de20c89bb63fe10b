#include "core/stand/stand_table.hpp"

#include <algorithm>

namespace oaklight {

StandTable stand_table(const AreaEstimate& area, ClassWidth width) {
  StandTable table{.all = &area.live};
  std::vector<const SpeciesFigures*> columns;
  for (const SpeciesFigures& s : area.by_species) columns.push_back(&s);
  std::ranges::stable_sort(columns, [](const SpeciesFigures* a, const SpeciesFigures* b) {
    return a->figures.ba.mean > b->figures.ba.mean;
  });
  for (const SpeciesFigures* s : columns) {
    table.columns.push_back(s->species);
    table.column_sums.push_back(&s->figures);
  }
  if (area.by_class.empty()) return table;

  const int step = static_cast<int>(width);
  const int first = area.by_class.front().dbh_class.inches;
  for (int inches = first; inches <= area.by_class.back().dbh_class.inches; inches += step) {
    table.rows.push_back({DbhClass{inches}, {}, nullptr});
    table.rows.back().cells.assign(columns.size(), nullptr);
  }
  const auto row = [&](DbhClass c) -> StandTableRow& {
    return table.rows[static_cast<std::size_t>((c.inches - first) / step)];
  };
  for (const ClassFigures& c : area.by_class) row(c.dbh_class).all = &c.figures;
  for (const SpeciesClassFigures& cell : area.by_species_class) {
    const auto column = std::ranges::find(table.columns, cell.species) - table.columns.begin();
    row(cell.dbh_class).cells[static_cast<std::size_t>(column)] = &cell.figures;
  }
  return table;
}

}  // namespace oaklight
