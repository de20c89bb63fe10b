#include <algorithm>
#include <array>
#include <cstddef>
#include <string_view>

#include "core/session/plot_work.hpp"

namespace oaklight {
namespace {

/// A diameter above which a tree of this kind is seldom met in an Appalachian or Midland wood.
struct UsualSize {
  std::string_view name;  ///< scientific name, or genus
  double inches;
};

/// Source: from memory, of what stand tables of such woods hold; not a percentile of any sample. It
/// only asks a question, and one tap keeps the tree. A whole name goes before its genus.
constexpr auto kUsualSizes = std::to_array<UsualSize>({
    {"Ostrya virginiana", 10.0},
    {"Carpinus caroliniana", 10.0},
    {"Cornus florida", 8.0},
    {"Oxydendrum arboreum", 14.0},
    {"Amelanchier", 10.0},
    {"Cercis canadensis", 10.0},
    {"Sassafras albidum", 18.0},
    {"Juniperus virginiana", 18.0},
    {"Robinia pseudoacacia", 24.0},
    {"Acer negundo", 24.0},
    {"Acer pensylvanicum", 8.0},
    {"Betula", 24.0},
    {"Populus", 26.0},
    {"Carya", 28.0},
    {"Nyssa", 26.0},
    {"Ulmus", 30.0},
    {"Fraxinus", 30.0},
    {"Juglans", 30.0},
    {"Prunus", 30.0},
    {"Tilia", 32.0},
    {"Acer", 32.0},
    {"Fagus", 32.0},
    {"Magnolia", 28.0},
    {"Pinus", 30.0},
    {"Tsuga", 34.0},
    {"Quercus", 38.0},
    {"Liriodendron", 40.0},
    {"Platanus", 44.0},
});
constexpr double kOfAnyOther = 30.0;

double usual_inches(const Species* species) {
  if (species == nullptr) return kOfAnyOther;
  for (const std::string_view name :
       {std::string_view(species->scientific_name), species->genus()}) {
    const auto found = std::ranges::find(kUsualSizes, name, &UsualSize::name);
    if (found != kUsualSizes.end()) return found->inches;
  }
  return kOfAnyOther;
}

}  // namespace

std::optional<std::string> unusual(const TractKnowledge& knowledge, SpeciesCode code, Dbh dbh) {
  if (dbh.inches().value <= usual_inches(knowledge.species().find(code))) return std::nullopt;
  return "large for " + species_name(knowledge, code) + ": " + dbh_text(dbh) + "?";
}

}  // namespace oaklight
