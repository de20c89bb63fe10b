#include "core/command/stand_table_text.hpp"

#include "core/base/number_text.hpp"
#include "core/command/estimate_text.hpp"
#include "core/command/text_table.hpp"
#include "core/stand/stand_table.hpp"

namespace oaklight::command {
namespace {

/// One line: the class, whose trees, each figure with its error, and how far to lean on it.
void add(TextTable& table, const std::string& dbh_class, std::string who, const GroupFigures& f) {
  const auto error = [](const auto& se) { return se ? number_text(se->value, 1) : "-"; };
  table.add({dbh_class, std::move(who), number_text(f.trees.mean.value, 1), error(f.trees.se),
             number_text(f.ba.mean.value, 1), error(f.ba.se), trust_words(f.trees.trust)});
}

}  // namespace

std::string stand_table_text(const AreaEstimate& area, const SpeciesTable& species) {
  const StandTable stand = stand_table(area, ClassWidth::two_inches);
  TextTable table({"by 2-in class", "species", "trees/ac", "SE", "ft2/ac", "SE", ""});
  const auto add_line = [&](const std::string& dbh_class,
                            const std::vector<const GroupFigures*>& cells,
                            const GroupFigures* all) {
    for (std::size_t i = 0; i < cells.size(); ++i) {
      if (cells[i] == nullptr) continue;
      const Species* s = species.find(stand.columns[i]);
      add(table, dbh_class, s == nullptr ? std::to_string(stand.columns[i].fia) : s->common_name,
          *cells[i]);
    }
    if (all != nullptr) add(table, dbh_class, "all", *all);
  };
  for (const StandTableRow& row : stand.rows)
    add_line(std::to_string(row.dbh_class.inches) + " in", row.cells, row.all);
  add_line("all", stand.column_sums, stand.all);
  return "\nStand table, all cruised stands, live trees; no line where none was tallied\n" +
         table.text() + "  [trees] [basal_area] [dbh_class]\n";
}

}  // namespace oaklight::command
