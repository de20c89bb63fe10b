#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/forms/form.hpp"

namespace oaklight {

/// The parts of the printed sheets.
enum class SheetPart {
  plot_head,   ///< what is known of the plot: plots.csv
  dot_tally,   ///< trees by species and diameter class: trees.csv
  tree_lines,  ///< trees one by one: trees.csv
  seedlings,   ///< regeneration.csv
  crop_tree,   ///< the tree that a card is about: crop_trees.csv
  neighbours,  ///< what stands around it: crop_trees.csv
};
inline constexpr SheetPart kSheetParts[] = {SheetPart::plot_head,  SheetPart::dot_tally,
                                            SheetPart::tree_lines, SheetPart::seedlings,
                                            SheetPart::crop_tree,  SheetPart::neighbours};

/// The record whose file a part is typed into: "trees".
[[nodiscard]] const char* record_of(SheetPart part);

/// The fields that a part asks for, in the order of the form. Each is a column of the record's
/// file, so that what is written down can be typed in as it stands. A form that leaves a field out
/// prints none; stand and plot of trees and seedlings are told in the head of the sheet.
[[nodiscard]] std::vector<const Field*> printed_fields(const Form& form, SheetPart part);

/// Sheets to be printed, and what is printed on them already.
struct SheetSet {
  Form form;
  UnitSystem system = UnitSystem::us;
  std::string tract;  ///< "": to be written in
  bool demo = false;
  std::map<std::string, std::string> given;  ///< by field of plots.csv: the cruise and its design
  std::vector<std::string> species;          ///< columns of the tally, in order; the rest is blank
  std::optional<Dbh> min_dbh;
  bool seedlings = true;  ///< the cruise counts them, or nobody said that it does not
  /// A sheet for each: stand and label. Empty: one blank set.
  std::vector<std::pair<std::string, std::string>> plots;
};

/// Diameter classes of the dot tally: what is typed in for a tree of the class.
struct SheetClasses {
  int first = 0;  ///< smallest class whose middle is no thinner than the smallest tree tallied
  int step = 0;   ///< 2 in, or 5 cm
  /// Trees from the smallest tallied up to here belong to no class of the sheet and are written
  /// line by line; nothing when there are none.
  std::optional<double> by_line_below{};
};
[[nodiscard]] SheetClasses sheet_classes(std::optional<Dbh> min_dbh, UnitSystem system);

}  // namespace oaklight
