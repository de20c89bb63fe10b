#pragma once

#include <string>
#include <vector>

#include "core/paper/food_group.hpp"
#include "core/paper/picture.hpp"
#include "core/stand/composition.hpp"

namespace oaklight {

/// One bar: a species' share of the basal area of live trees.
struct SpeciesBar {
  std::string name;
  FoodGroup group = FoodGroup::rest;
  BasalAreaShare part;
};

/// What a stand is made of.
struct CompositionChart {
  std::vector<SpeciesBar> species;    ///< any order
  std::optional<BasalAreaShare> oak;  ///< all oaks together, for the head
  bool counted = false;               ///< less trees that were counted: its errors are not known
};

/// The chart of a composition; a species that the table does not know is named by its code.
CompositionChart composition_chart_of(const Composition& composition, const SpeciesTable& species);

/// Horizontal bars, largest share first, ties by name, each with its figure and its error. What has
/// no room is folded into one last bar, "others (4 species)". A long name is cut with an ellipsis.
/// Without species it says what is missing.
/// assumes  a PaperApplication lives
Drawing draw_composition(const CompositionChart& chart, const PictureFrame& frame);

}  // namespace oaklight
