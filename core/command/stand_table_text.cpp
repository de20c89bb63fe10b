#include "core/command/stand_table_text.hpp"

#include "core/base/number_text.hpp"
#include "core/command/text_table.hpp"
#include "core/stand/stand_table.hpp"

namespace oaklight::command {
namespace {

using Figure = double (*)(const GroupFigures&);

std::vector<std::string> row_of(std::string name, const std::vector<const GroupFigures*>& cells,
                                const GroupFigures* all, Figure figure) {
  const auto text = [&](const GroupFigures* f) {
    return f == nullptr ? std::string(".") : number_text(figure(*f), 1);
  };
  std::vector<std::string> row{std::move(name)};
  for (const GroupFigures* cell : cells) row.push_back(text(cell));
  row.push_back(text(all));
  return row;
}

std::string table_of(const StandTable& stand, const std::string& what, Figure figure,
                     const SpeciesTable& species) {
  std::vector<std::string> head{what};
  for (const SpeciesCode code : stand.columns) {
    const Species* s = species.find(code);
    head.push_back(s == nullptr ? std::to_string(code.fia) : s->common_name);
  }
  head.emplace_back("all");
  TextTable table(std::move(head));
  for (const StandTableRow& row : stand.rows) {
    table.add(row_of(std::to_string(row.dbh_class.inches) + " in", row.cells, row.all, figure));
  }
  table.add(row_of("all", stand.column_sums, stand.all, figure));
  return table.text();
}

}  // namespace

std::string stand_table_text(const AreaEstimate& area, const SpeciesTable& species) {
  const StandTable stand = stand_table(area, ClassWidth::two_inches);
  return "\nStand table, all cruised stands, live trees\n" +
         table_of(
             stand, "trees/ac by 2-in class",
             [](const GroupFigures& f) { return f.trees.mean.value; }, species) +
         "  [trees] [dbh_class]\n" +
         table_of(
             stand, "ft2/ac by 2-in class", [](const GroupFigures& f) { return f.ba.mean.value; },
             species) +
         "  [basal_area] [dbh_class]\n";
}

}  // namespace oaklight::command
