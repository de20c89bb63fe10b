#include <numbers>
#include <stdexcept>

#include "core/base/number_text.hpp"
#include "core/measure/basal_area.hpp"
#include "core/measure/biomass.hpp"
#include "core/measure/cords.hpp"
#include "core/measure/crown_width.hpp"
#include "core/measure/height.hpp"
#include "core/measure/plot_geometry.hpp"
#include "core/measure/stocking.hpp"
#include "core/measure/tree_volume.hpp"
#include "tests/published/evaluator.hpp"

namespace oaklight::test {
namespace {

std::string text(const Inputs& in, const std::string& name) {
  const auto found = in.find(name);
  if (found == in.end()) throw std::runtime_error("the row has no input \"" + name + "\"");
  return found->second;
}

template <class E>
E word(const Inputs& in, const std::string& name) {
  const auto value = from_word<E>(text(in, name));
  if (!value) throw std::runtime_error("no " + name + " \"" + text(in, name) + "\"");
  return *value;
}

template <class T>
T value(const Result<T>& result) {
  if (!result) throw std::runtime_error(to_text(result.error()));
  return *result;
}

int whole(const Inputs& in, const std::string& name) {
  return static_cast<int>(value(whole_from_text(text(in, name))));
}

Dbh dbh_of(const std::string& inches) {
  return value(Dbh::from_tenths(value(scaled_from_text(inches, 1)), UnitSystem::us));
}
Dbh dbh(const Inputs& in) { return dbh_of(text(in, "dbh_in")); }

TapedTo taped_to(const Inputs& in) {
  const std::string to = text(in, "to");
  if (to == "face") return TapedTo::face;
  if (to == "centre") return TapedTo::centre;
  throw std::runtime_error("no such end of the tape: " + to);
}

Design point(const Inputs& in) { return PointDesign{number(in, "baf"), UnitSystem::us}; }
SquareFeetPerAcre baf(const Inputs& in) { return SquareFeetPerAcre{number(in, "baf")}; }

/// A plot of which so many make an acre.
Design fixed(const Inputs& in) { return FixedDesign{.area = 1.0 / number(in, "plots_per_acre")}; }
Acres plot_acres(const Inputs& in) { return Acres{1.0 / number(in, "plots_per_acre")}; }

std::vector<std::string> list(const Inputs& in, const std::string& name) {
  std::vector<std::string> items(1);
  for (const char c : text(in, name)) {
    if (c == ',') {
      items.emplace_back();
    } else {
      items.back() += c;
    }
  }
  return items;
}

/// The trees "dbh_in=12,8;edge_counts=1,2;stems=3,1" (the last two when given).
std::vector<Tree> tally(const Inputs& in) {
  std::vector<Tree> trees;
  for (const std::string& size : list(in, "dbh_in")) {
    trees.push_back(
        Tree{.id = {}, .plot = {}, .facts = TreeFacts{.species = {}, .dbh = dbh_of(size)}});
  }
  const auto counts = [&](const std::string& name, int Tree::*field) {
    if (!in.contains(name)) return;
    const auto items = list(in, name);
    for (std::size_t i = 0; i < trees.size(); ++i) {
      trees[i].*field = static_cast<int>(value(whole_from_text(items.at(i))));
    }
  };
  counts("edge_counts", &Tree::edge_count);
  counts("stems", &Tree::stems);
  return trees;
}

TreesPerAcre tally_trees(const Design& design, const Inputs& in) {
  TreesPerAcre sum;
  for (const Tree& tree : tally(in)) sum += trees_stood_for(design, tree);
  return sum;
}

SquareFeetPerAcre tally_ba(const Design& design, const Inputs& in) {
  SquareFeetPerAcre sum;
  for (const Tree& tree : tally(in)) {
    sum += SquareFeetPerAcre{trees_stood_for(design, tree).value *
                             basal_area(tree.facts.dbh.inches()).value};
  }
  return sum;
}

StockingSums one_tree(const Inputs& in) {
  StockingSums sums;
  sums.add(dbh(in).inches(), TreesPerAcre{1.0});
  return sums;
}

StockingSums chart(const Inputs& in) {
  return chart_sums(SquareFeetPerAcre{number(in, "ba")}, TreesPerAcre{number(in, "tpa")});
}

Inches chart_qmd(const Inputs& in) {
  return quadratic_mean_diameter(SquareFeetPerAcre{number(in, "ba")},
                                 TreesPerAcre{number(in, "tpa")});
}
Inches qmd(const Inputs& in) { return Inches{number(in, "qmd_in")}; }

double log_volume(const Inputs& in) {
  return value(log_board_feet(word<LogRule>(in, "rule"), Inches{number(in, "d_in")},
                              Feet{number(in, "length_ft")}))
      .value;
}

double tree_volume(const Inputs& in, FormClass form) {
  const int half_logs = value(scaled_from_text(text(in, "half_logs"), 0));
  return value(tree_board_feet(word<LogRule>(in, "rule"), dbh(in), half_logs, form)).value;
}

double biomass_share(const Inputs& in) {
  const Biomass mass = value(dry_biomass(dbh(in), text(in, "group")));
  const std::string part = text(in, "part");
  const Kilograms kg = part == "foliage"        ? mass.foliage
                       : part == "stem_wood"    ? mass.stem_wood
                       : part == "stem_bark"    ? mass.stem_bark
                       : part == "branches"     ? mass.branches
                       : part == "coarse_roots" ? mass.coarse_roots
                                                : throw std::runtime_error("no part " + part);
  return kg / mass.above_ground;
}

double stand_grown(const Inputs& in) {
  Species species;
  species.code.fia = whole(in, "fia");
  TreeFacts tree{.species = species.code, .dbh = dbh(in)};
  tree.live_crown = Percent{number(in, "live_crown_pct")};
  const CrownWidth crown = stand_grown_crown_width(species, tree);
  if (crown.equation != species.code) throw std::runtime_error("the species has no equation");
  return crown.width.value;
}

void add_plots(Evaluators& all) {
  all["basal_area"] = [](const Inputs& in) { return basal_area(dbh(in).inches()).value; };
  all["basal_area_factor"] = [](const Inputs&) { return kBasalAreaFactor; };
  all["point_tree_factor"] = [](const Inputs& in) { return tree_factor(point(in), dbh(in)).value; };
  all["point_plot_acres"] = [](const Inputs& in) {
    return Trees{1.0}.value / tree_factor(point(in), dbh(in)).value;
  };
  all["plot_radius_factor"] = [](const Inputs& in) {
    return plot_radius_factor(baf(in), taped_to(in)).value;
  };
  all["plot_radius_numerator"] = [](const Inputs& in) {
    return plot_radius_factor(baf(in), TapedTo::centre).value * std::sqrt(baf(in).value);
  };
  all["limiting_distance"] = [](const Inputs& in) {
    return limiting_distance(point(in), dbh(in), taped_to(in)).value;
  };
  all["metric_baf"] = [](const Inputs& in) {
    return baf(in) / PointDesign{1.0, UnitSystem::metric}.baf();
  };
  all["metric_radius_factor"] = [](const Inputs& in) {
    const Dbh d = dbh_of("10");
    return to_metres(limiting_distance(point(in), d, TapedTo::centre)).value /
           to_centimetres(d.inches()).value;
  };
  all["plot_area_ft2"] = [](const Inputs& in) { return to_square_feet(plot_acres(in)).value; };
  all["plot_area_ares"] = [](const Inputs& in) {
    return to_square_metres(plot_acres(in)).value / 100.0;
  };
  all["slope_percent"] = [](const Inputs& in) {
    return slope_of(Degrees{number(in, "slope_deg")}).rise.value;
  };
  all["fixed_plot_radius"] = [](const Inputs& in) { return plot_radius(plot_acres(in)).value; };
  all["fixed_plot_radius_m"] = [](const Inputs& in) {
    return to_metres(plot_radius(plot_acres(in))).value;
  };
  all["fixed_tree_factor"] = [](const Inputs& in) { return tree_factor(fixed(in), dbh(in)).value; };
  all["slope_distance"] = [](const Inputs& in) {
    return along_slope(Feet{number(in, "level_ft")}, {Percent{number(in, "slope_pct")}}).value;
  };
  all["level_distance"] = [](const Inputs& in) {
    return level_distance(Feet{number(in, "taped_ft")}, {Percent{number(in, "slope_pct")}}).value;
  };
  all["slope_laid_radius"] = [](const Inputs& in) {
    return radius_on_slope(Feet{number(in, "radius_ft")}, {Percent{number(in, "slope_pct")}}).value;
  };
  all["point_trees"] = [](const Inputs& in) { return tally_trees(point(in), in).value; };
  all["point_basal_area"] = [](const Inputs& in) { return tally_ba(point(in), in).value; };
  all["point_qmd"] = [](const Inputs& in) {
    return quadratic_mean_diameter(tally_ba(point(in), in), tally_trees(point(in), in)).value;
  };
}

void add_stocking(Evaluators& all) {
  all["qmd"] = [](const Inputs& in) { return chart_qmd(in).value; };
  all["upland_oak_stocking"] = [](const Inputs& in) {
    return upland_oak_stocking(chart(in)).value;
  };
  all["stocking_of_tree"] = [](const Inputs& in) {
    return upland_oak_stocking(one_tree(in)).value;
  };
  all["crown_competition_of_tree"] = [](const Inputs& in) {
    return crown_competition(one_tree(in)).value;
  };
  all["open_crown_share_of_acre"] = [](const Inputs& in) {
    const Feet radius = open_crown_radius(dbh(in).inches());
    return percent(std::numbers::pi * radius.value * radius.value / kSquareFeetPerAcre).value;
  };
  all["b_line_stocking"] = [](const Inputs& in) {
    const StockingLine line = b_line(qmd(in));
    return upland_oak_stocking(chart_sums(line.ba, line.trees)).value;
  };
  all["chart_mean_diameter"] = [](const Inputs& in) {
    const SquareFeet each = basal_area(qmd(in));
    return chart_sums(SquareFeetPerAcre{each.value}, TreesPerAcre{1.0}).diameters;
  };
  all["a_line_ba"] = [](const Inputs& in) { return a_line(qmd(in)).ba.value; };
  all["a_line_trees"] = [](const Inputs& in) { return a_line(qmd(in)).trees.value; };
  all["b_line_ba"] = [](const Inputs& in) { return b_line(qmd(in)).ba.value; };
  all["b_line_trees"] = [](const Inputs& in) { return b_line(qmd(in)).trees.value; };
  all["b_line_ba_of_stand"] = [](const Inputs& in) { return b_line(chart_qmd(in)).ba.value; };
}

void add_crowns(Evaluators& all) {
  all["open_grown_crown_width"] = [](const Inputs& in) {
    return open_grown_crown_width(dbh(in).inches()).value;
  };
  all["open_crown_area"] = [](const Inputs& in) {
    const Feet radius = open_crown_radius(dbh(in).inches());
    return std::numbers::pi * radius.value * radius.value;
  };
  all["open_crown_radius"] = [](const Inputs& in) {
    return open_crown_radius(dbh(in).inches()).value;
  };
  all["crowded_crown_radius"] = [](const Inputs& in) {
    return crowded_crown_radius(dbh(in).inches()).value;
  };
  all["stand_grown_crown_width"] = stand_grown;
}

void add_volume(Evaluators& all) {
  all["log_board_feet"] = log_volume;
  all["log_board_feet_nearest_5"] = [](const Inputs& in) {
    return nearest_5(BoardFeet{log_volume(in)}).value;
  };
  all["scribner_decimal_c"] = [](const Inputs& in) {
    return value(scribner_decimal_c(whole(in, "d_in"), whole(in, "length_ft"))).value;
  };
  all["tree_board_feet"] = [](const Inputs& in) {
    return tree_volume(in, FormClass{whole(in, "form_class")});
  };
  all["form_class_effect"] = [](const Inputs& in) {
    return tree_volume(in, FormClass{whole(in, "form_class")}) / tree_volume(in, FormClass{});
  };
}

void add_cords(Evaluators& all) {
  all["stacked_cubic_feet"] = [](const Inputs& in) {
    return stacked(Feet{number(in, "height_ft")}, Feet{number(in, "length_ft")},
                   Inches{number(in, "piece_in")})
        .value;
  };
  all["stacked_cords"] = [](const Inputs& in) {
    return cords_of_stacked(CubicFeet{number(in, "room_ft3")}).value;
  };
  all["solid_cords"] = [](const Inputs& in) {
    return cords_of_solid(CubicFeet{number(in, "wood_ft3")}).value;
  };
  all["firewood_cords"] = [](const Inputs& in) { return value(firewood_cords(dbh(in))).value; };
  all["trees_per_cord"] = [](const Inputs& in) { return value(trees_per_cord(dbh(in))); };
  all["firewood_plot_cords"] = [](const Inputs& in) {
    Cords sum;
    for (const Tree& tree : tally(in)) {
      sum += value(firewood_cords(tree.facts.dbh)) * trees_stood_for(fixed(in), tree).value;
    }
    return sum.value;
  };
  all["pulpwood_shortcut"] = [](const Inputs& in) { return pulpwood_shortcut(dbh(in)).value; };
  all["cord_weight"] = [](const Inputs& in) {
    const Dryness dryness = text(in, "dryness") == "green" ? Dryness::green : Dryness::seasoned;
    return cord_weight(word<CordKind>(in, "kind"), dryness).value;
  };
}

void add_biomass_and_heights(Evaluators& all) {
  all["dry_biomass"] = [](const Inputs& in) {
    return value(dry_biomass(dbh(in), text(in, "group"))).above_ground.value;
  };
  all["biomass_share"] = biomass_share;
  all["height_by_percent"] = [](const Inputs& in) {
    return value(height_by_percent(Feet{number(in, "level_ft")}, Percent{number(in, "tip")},
                                   Percent{number(in, "base")}))
        .value;
  };
  all["height_by_chain"] = [](const Inputs& in) {
    return value(height_by_chain(Feet{number(in, "level_ft")}, ChainFeet{number(in, "tip")},
                                 ChainFeet{number(in, "base")}))
        .value;
  };
  all["height_from_slope"] = [](const Inputs& in) {
    const Slope slope = slope_of(Degrees{number(in, "slope_deg")});
    const Feet level = level_distance(Feet{number(in, "taped_ft")}, slope);
    return value(height_by_percent(level, Percent{number(in, "tip")}, Percent{number(in, "base")}))
        .value;
  };
  all["half_logs_to"] = [](const Inputs& in) {
    const auto rounding =
        text(in, "rounding") == "down" ? HalfLogRounding::down : HalfLogRounding::nearest;
    return static_cast<double>(value(half_logs_to(Feet{number(in, "top_ft")}, rounding)));
  };
}

}  // namespace

Evaluators mensuration_evaluators() {
  Evaluators all;
  add_plots(all);
  add_stocking(all);
  add_crowns(all);
  add_volume(all);
  add_cords(all);
  add_biomass_and_heights(all);
  return all;
}

}  // namespace oaklight::test
