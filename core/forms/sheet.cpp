#include "core/forms/sheet.hpp"

#include <algorithm>

namespace oaklight {
namespace {

using Names = std::vector<std::string_view>;

bool is_one_of(const Names& names, std::string_view name) {
  return std::ranges::find(names, name) != names.end();
}

/// Whether a field may be filled on a row of this role.
bool is_for(const Field& field, std::string_view role) {
  if (!field.only_when || field.only_when->field != "role") return true;
  return std::ranges::find(field.only_when->is, role) != field.only_when->is.end();
}

/// What is asked of each neighbour: what decides whether it goes. The rest is asked of the crop
/// tree alone, or fits no line that can be written on in rain.
const Names kOfNeighbours = {"role",        "tag",    "side",     "seen",        "species",   "dbh",
                             "crown_class", "status", "distance", "azimuth_deg", "conditions"};

bool is_printed(const Field& field, SheetPart part) {
  switch (part) {
    case SheetPart::plot_head:
      return true;
    case SheetPart::dot_tally:
      return is_one_of({"species", "dbh", "stems"}, field.name);
    case SheetPart::tree_lines:
    case SheetPart::seedlings:
      return !is_one_of({"stand", "plot"}, field.name);
    case SheetPart::crop_tree:
      return is_for(field, "crop");
    case SheetPart::neighbours:
      return is_one_of(kOfNeighbours, field.name);
  }
  return false;
}

}  // namespace

const char* record_of(SheetPart part) {
  switch (part) {
    case SheetPart::plot_head:
      return "plots";
    case SheetPart::dot_tally:
    case SheetPart::tree_lines:
      return "trees";
    case SheetPart::seedlings:
      return "regeneration";
    case SheetPart::crop_tree:
    case SheetPart::neighbours:
      return "crop_trees";
  }
  return "";
}

std::vector<const Field*> printed_fields(const Form& form, SheetPart part) {
  std::vector<const Field*> fields;
  const RecordForm* record = form.find_record(record_of(part));
  if (record == nullptr) return fields;
  for (const Field& field : record->fields) {
    if (is_printed(field, part)) fields.push_back(&field);
  }
  return fields;
}

SheetClasses sheet_classes(std::optional<Dbh> min_dbh, UnitSystem system) {
  const bool us = system == UnitSystem::us;
  SheetClasses classes{.first = us ? 2 : 5, .step = us ? 2 : 5};
  if (!min_dbh) return classes;
  const Inches inches = min_dbh->inches();
  const double least = us ? inches.value : to_centimetres(inches).value;
  while (classes.first < least) classes.first += classes.step;
  const double edge = classes.first - classes.step / 2.0;
  if (least < edge) classes.by_line_below = edge;
  return classes;
}

}  // namespace oaklight
