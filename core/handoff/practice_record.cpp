#include "core/handoff/practice_record.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

#include "core/base/csv_text.hpp"
#include "core/base/number_text.hpp"
#include "core/measure/basal_area.hpp"

namespace oaklight {
namespace {

constexpr ClassWidth kWidth = ClassWidth::two_inches;
constexpr std::size_t kMostKinds = 3;

using WalkTrees = std::vector<const WalkTree*>;

/// Diameter of the tree of mean basal area; nothing without trees.
/// Source: BA = pi / 576 D^2 (area of a circle, 144 square inches to the square foot).
std::optional<Inches> mean_diameter(double trees, double ba) {
  if (!(trees > 0.0) || !(ba > 0.0)) return std::nullopt;
  return Inches{std::sqrt(ba / trees * 576.0 / std::numbers::pi)};
}

std::optional<Inches> mean_diameter(const WalkTrees& trees) {
  double ba = 0.0;
  for (const WalkTree* tree : trees) ba += basal_area(tree->facts.dbh.inches()).value;
  return mean_diameter(static_cast<double>(trees.size()), ba);
}

void set_before(PracticeClass& row, const GroupFigures& figures) {
  row.before = figures.trees.mean;
  row.before_se = figures.trees.se;
  row.before_ba = figures.ba.mean;
  row.before_ba_se = figures.ba.se;
}

/// The difference where it can be told and is not below nothing.
template <class Q>
std::optional<Q> less(const std::optional<Q>& before, const std::optional<Q>& removed) {
  if (!before || !removed || *removed > *before) return std::nullopt;
  return *before - *removed;
}

/// What goes of the trees of one class.
struct Gone {
  int trees = 0;
  SquareFeet ba;
};

void set_removed(PracticeClass& row, const Gone& gone, std::optional<Acres> walked) {
  row.removed_trees = gone.trees;
  if (walked && walked->value > 0.0) {
    row.removed = Trees{static_cast<double>(gone.trees)} / *walked;
    row.removed_ba = gone.ba / *walked;
  }
  row.after = less(row.before, row.removed);
  row.after_ba = less(row.before_ba, row.removed_ba);
}

std::string kind_name(const SpeciesTable& species, SpeciesCode code) {
  const Species* kind = species.find(code);
  return kind == nullptr ? "species " + std::to_string(code.fia) : kind->common_name;
}

/// Names of the kinds with the largest amounts, ties by code.
std::vector<std::string> largest(const std::map<SpeciesCode, double>& amounts, std::size_t most,
                                 const SpeciesTable& species) {
  std::vector<std::pair<SpeciesCode, double>> order(amounts.begin(), amounts.end());
  std::stable_sort(order.begin(), order.end(),
                   [](const auto& a, const auto& b) { return a.second > b.second; });
  if (order.size() > most) order.resize(most);
  std::vector<std::string> names;
  for (const auto& [code, amount] : order) names.push_back(kind_name(species, code));
  return names;
}

template <class Q>
std::string cell(const std::optional<Q>& value, int decimals) {
  return value ? number_text(value->value, decimals) : "";
}

std::string line_of(const PracticeRecord& record, const PracticeClass& row) {
  std::vector<std::string> cells = {safe_csv_cell(record.stand), number_text(record.acres.value, 1),
                                    cell(record.walked, 1)};
  if (row.dbh_class) {
    const ClassEdges edges = edges_of(*row.dbh_class, kWidth);
    cells.insert(cells.end(),
                 {std::to_string(row.dbh_class->inches), number_text(edges.from.value, 1),
                  number_text(edges.below.value, 1)});
  } else {
    cells.insert(cells.end(), {"all", "", ""});
  }
  cells.insert(cells.end(),
               {cell(row.before, 1), cell(row.before_se, 1), cell(row.before_ba, 1),
                cell(row.before_ba_se, 1), std::to_string(row.removed_trees), cell(row.removed, 1),
                cell(row.removed_ba, 1), cell(row.after, 1), cell(row.after_ba, 1)});
  return csv_record(cells);
}

}  // namespace

PracticeRecord practice_record(const Stand& stand, const AreaEstimate* area,
                               const WalkTrees& felled, const WalkTrees& killed_standing,
                               const WalkTrees& crops, const SpeciesTable& species) {
  PracticeRecord record{.stand = stand.name,
                        .acres = stand.acres,
                        .walked = stand.walked,
                        .goal = stand.goal,
                        .crop_trees = static_cast<int>(crops.size()),
                        .felled = static_cast<int>(felled.size()),
                        .killed_standing = static_cast<int>(killed_standing.size())};
  std::map<DbhClass, Gone> gone;
  Gone all;
  WalkTrees removed = felled;
  removed.insert(removed.end(), killed_standing.begin(), killed_standing.end());
  std::erase_if(removed,
                [](const WalkTree* tree) { return tree->facts.status == TreeStatus::dead; });
  for (const WalkTree* tree : removed) {
    Gone& of_class = gone[dbh_class(tree->facts.dbh, kWidth)];
    for (Gone* sum : {&of_class, &all}) {
      ++sum->trees;
      sum->ba += basal_area(tree->facts.dbh.inches());
    }
  }
  std::map<DbhClass, PracticeClass> rows;
  for (const auto& [dbh_class, trees] : gone) rows[dbh_class];
  if (area != nullptr) {
    record.plots = area->plots;
    for (const ClassFigures& figures : area->by_class) {
      set_before(rows[figures.dbh_class], figures.figures);
    }
    set_before(record.all, area->live);
    std::map<SpeciesCode, double> ba;
    for (const SpeciesFigures& kind : area->by_species)
      ba[kind.species] = kind.figures.ba.mean.value;
    record.main_kinds = largest(ba, kMostKinds, species);
    if (area->live.qmd) record.qmd_before = area->live.qmd->qmd;
  }
  for (auto& [dbh_class, row] : rows) {
    row.dbh_class = dbh_class;
    set_removed(row, gone[dbh_class], stand.walked);
    record.classes.push_back(row);
  }
  set_removed(record.all, all, stand.walked);
  std::map<SpeciesCode, double> kept;
  for (const WalkTree* tree : crops) kept[tree->facts.species] += 1.0;
  record.kept_kinds = largest(kept, kept.size(), species);
  record.crop_qmd = mean_diameter(crops);
  record.qmd_removed = mean_diameter(removed);
  if (record.all.after && record.all.after_ba) {
    record.qmd_after = mean_diameter(record.all.after->value, record.all.after_ba->value);
  }
  return record;
}

std::string practice_record_csv(const std::vector<PracticeRecord>& records) {
  const std::vector<std::string> head = {"stand",
                                         "acres",
                                         "walked_acres",
                                         "dbh_class_in",
                                         "dbh_from_in",
                                         "dbh_below_in",
                                         "before_trees_ac",
                                         "before_trees_ac_se",
                                         "before_ba_ft2_ac",
                                         "before_ba_ft2_ac_se",
                                         "removed_trees",
                                         "removed_trees_ac",
                                         "removed_ba_ft2_ac",
                                         "after_trees_ac",
                                         "after_ba_ft2_ac"};
  std::string text = csv_record(head);
  for (const PracticeRecord& record : records) {
    for (const PracticeClass& row : record.classes) text += line_of(record, row);
    text += line_of(record, record.all);
  }
  return text;
}

}  // namespace oaklight
