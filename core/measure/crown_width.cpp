#include "core/measure/crown_width.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "core/measure/stocking.hpp"

namespace oaklight {
namespace {

/// width in ft = a + b D + c D^2 + d CR; D in inches, CR live crown in percent.
struct Equation {
  int fia;
  double a, b, c, d;
};
// Bechtold 2003, from memory, with the climate term left out. His two elms are left out too: as
// recalled they come out wider than an open-grown oak, so a term is probably missing.
constexpr std::array<Equation, 33> kEquations{{
    {125, -3.6548, 1.9565, -0.0409, 0.0577},  // red pine
    {129, 0.3914, 0.9923, 0, 0.1080},         // eastern white pine
    {261, 6.1924, 1.4491, -0.0178, 0},        // eastern hemlock
    {316, 2.7563, 1.4212, -0.0143, 0.0993},   // red maple
    {317, 3.3576, 1.1312, 0, 0.1011},         // silver maple
    {318, 4.9399, 1.0727, 0, 0.1096},         // sugar maple
    {371, -1.1151, 2.2888, -0.0493, 0.0985},  // yellow birch
    {372, 4.6725, 1.2968, 0, 0.0787},         // sweet birch
    {375, 2.8399, 1.2398, 0, 0.0855},         // paper birch
    {403, 3.9234, 1.5220, 0, 0.0405},         // pignut hickory
    {407, 4.5453, 1.3721, 0, 0.0430},         // shagbark hickory
    {409, 1.5838, 1.6318, 0, 0.0721},         // mockernut hickory
    {462, 7.1043, 1.3041, 0, 0.0456},         // hackberry
    {531, 3.9361, 1.1500, 0, 0.1237},         // American beech
    {541, 1.7625, 1.3413, 0, 0.0957},         // white ash
    {543, 5.2824, 1.1184, 0, 0},              // black ash
    {544, 2.9672, 1.3066, 0, 0.0585},         // green ash
    {602, 3.6031, 1.1472, 0, 0.1224},         // black walnut
    {621, 3.3543, 1.1627, 0, 0.0857},         // yellow-poplar
    {693, 5.5037, 1.0567, 0, 0.0880},         // blackgum
    {743, 0.6847, 1.1050, 0, 0.1420},         // bigtooth aspen
    {746, 0.7315, 1.3180, 0, 0.0966},         // quaking aspen
    {762, 3.0237, 1.1119, 0, 0.1112},         // black cherry
    {802, 3.2375, 1.5234, 0, 0.0455},         // white oak
    {806, 0.5656, 1.6766, 0, 0.0739},         // scarlet oak
    {823, 1.7827, 1.6549, 0, 0.0343},         // bur oak
    {832, 2.1480, 1.6928, -0.0176, 0.0569},   // chestnut oak
    {833, 2.8908, 1.4077, 0, 0.0643},         // northern red oak
    {835, 1.6125, 1.6669, 0, 0.0536},         // post oak
    {837, 2.8974, 1.3697, 0, 0.0671},         // black oak
    {901, 3.0012, 0.8165, 0, 0.1395},         // black locust
    {931, 4.6311, 1.0108, 0, 0.0564},         // sassafras
    {951, 1.6871, 1.2110, 0, 0.1194},         // American basswood
}};

/// Whose equation stands in for the other species of a genus. Ours.
struct Lead {
  std::string_view genus;
  int fia;
};
constexpr std::array<Lead, 9> kLeads{{{"Carya", 407},     // shagbark hickory
                                      {"Fraxinus", 541},  // white ash
                                      {"Populus", 746},   // quaking aspen
                                      {"Betula", 375},    // paper birch
                                      {"Ulmus", 951},     // basswood, until the elms are confirmed
                                      {"Celtis", 951},
                                      {"Prunus", 762},  // black cherry
                                      {"Acer", 316},    // red maple
                                      {"Quercus", 833}}};

const Equation* find_equation(int fia) {
  const auto found = std::find_if(kEquations.begin(), kEquations.end(),
                                  [fia](const Equation& e) { return e.fia == fia; });
  return found == kEquations.end() ? nullptr : &*found;
}

int lead_species(const Species& s) {
  constexpr int kWhiteOak = 802;
  constexpr int kSugarMaple = 318;
  constexpr int kRedMaple = 316;
  constexpr int kWhitePine = 129;
  if (s.oak_group == OakGroup::white) return kWhiteOak;
  if (s.crown_width_group == "cw_hard_maple_beech") return kSugarMaple;
  for (const Lead& lead : kLeads) {
    if (s.genus() == lead.genus) return lead.fia;
  }
  return s.leaf == LeafType::softwood ? kWhitePine : kRedMaple;
}

/// Live crown ratio where nobody recorded one. Ours; no source.
Percent assumed_live_crown(std::optional<CrownClass> crown_class) {
  switch (crown_class.value_or(CrownClass::codominant)) {
    case CrownClass::open_grown:
    case CrownClass::dominant:
      return Percent{50.0};
    case CrownClass::codominant:
      return Percent{40.0};
    case CrownClass::intermediate:
      return Percent{30.0};
    case CrownClass::overtopped:
      return Percent{20.0};
  }
  return Percent{40.0};
}

/// The equation, for any size.
double width_of(const Equation& e, double dbh, Percent live_crown) {
  constexpr double kSmallest = 5.0;  // inches, the thinnest trees behind the equations
  if (dbh < kSmallest) return width_of(e, kSmallest, live_crown) * dbh / kSmallest;
  const double top = e.c < 0.0 ? -e.b / (2.0 * e.c) : dbh;
  const double d = std::min(dbh, top);
  return e.a + e.b * d + e.c * d * d + e.d * live_crown.value;
}

}  // namespace

Feet crowded_crown_radius(Inches dbh) {
  StockingSums one_tree_an_acre;
  one_tree_an_acre.add(dbh, TreesPerAcre{1.0});
  const double share_of_acre = fraction(upland_oak_stocking(one_tree_an_acre));
  const double ground = std::max(0.0, share_of_acre) * kSquareFeetPerAcre;
  return Feet{std::sqrt(ground / std::numbers::pi)};
}

CrownWidth stand_grown_crown_width(const Species& species, const TreeFacts& tree) {
  const Equation* equation = find_equation(species.code.fia);
  if (equation == nullptr) equation = find_equation(lead_species(species));
  const Percent live_crown = tree.live_crown.value_or(assumed_live_crown(tree.crown_class));
  const Inches dbh = tree.dbh.inches();
  Feet width = open_grown_crown_width(dbh);
  if (tree.crown_class != CrownClass::open_grown) {
    width = std::min(width, Feet{width_of(*equation, dbh.value, live_crown)});
  }
  return {width, SpeciesCode{equation->fia}, live_crown, !tree.live_crown.has_value()};
}

}  // namespace oaklight
