#include "core/command/compare_json.hpp"

#include "core/command/figure_keys.hpp"
#include "core/command/json_values.hpp"

namespace oaklight::command {
namespace {

template <class Q>
Json json_of(const PairedChange<Q>& c) {
  return {{"before", plain(c.before)}, {"after", plain(c.after)},   {"change", plain(c.change)},
          {"se", optional_json(c.se)}, {"df", optional_json(c.df)}, {"lo", optional_json(c.lo)},
          {"hi", optional_json(c.hi)}, {"pairs", c.plots},          {"changed_on", c.changed},
          {"trust", word_of(c.trust)}};
}
template <class Q>
Json json_of(const std::optional<PairedChange<Q>>& c) {
  return c ? json_of(*c) : Json(nullptr);
}

Json json_of(const AreaChange& area) {
  Json json{{"acres", area.acres.value},
            {"pairs", area.pairs},
            {"plots_of_first_visit_only", area.only_first},
            {"plots_of_second_visit_only", area.only_second},
            {"ba_ft2_ac", json_of(area.ba)},
            {"trees_ac", json_of(area.trees)},
            {"qmd_in", json_of(area.qmd)},
            {"stocking_pct", json_of(area.stocking)},
            {"board_feet_ac", json_of(area.board_feet)},
            {"without_board_feet", area.without_board_feet},
            {"cords_ac", json_of(area.cords)},
            {"without_cords", area.without_cords},
            {"total_ba_ft2", json_of(total_of(area.ba, area.acres))},
            {"total_trees", json_of(total_of(area.trees, area.acres))}};
  if (area.board_feet) json["total_board_feet"] = json_of(total_of(*area.board_feet, area.acres));
  if (area.cords) json["total_cords"] = json_of(total_of(*area.cords, area.acres));
  return json;
}

Json json_of(const StandComparison& stand) {
  Json json{{"stand", stand.stand},
            {"first", {{"cruise", stand.first_cruise}, {"day", text_or_null(stand.first_day)}}},
            {"second", {{"cruise", stand.second_cruise}, {"day", text_or_null(stand.second_day)}}},
            {"years", optional_json(stand.years)},
            {"plots_of_first_visit_only", stand.only_first},
            {"plots_of_second_visit_only", stand.only_second}};
  if (stand.change) {
    json["change"] = json_of(*stand.change);
  } else {
    json["error"] = error_json(stand.change.error());
  }
  return json;
}

Json json_of(const TaggedTree& tree, const SpeciesTable& table) {
  return {{"tag", tree.tag},
          {"species", species_name(tree.species, table)},
          {"crop_tree", tree.crop},
          {"fate", word_of(tree.fate)},
          {"dbh_in_before", tree.before.value},
          {"dbh_in_after", optional_json(tree.after)},
          {"growth_in_a_year", optional_json(tree.per_year())},
          {"released", tree.released ? Json(*tree.released) : Json(nullptr)}};
}

Json json_of(const std::optional<GroupMean>& group) {
  if (!group) return nullptr;
  return {{"trees", group->n},
          {"mean_in_a_year", group->mean},
          {"se", optional_json(group->se)},
          {"lo", optional_json(group->lo)},
          {"hi", optional_json(group->hi)}};
}

Json json_of(const GrowthComparison& growth) {
  Json json{{"released", json_of(growth.released)}, {"unreleased", json_of(growth.unreleased)}};
  if (growth.difference) {
    const MeanDifference& d = *growth.difference;
    json["difference"] = {
        {"in_a_year", d.difference}, {"se", d.se}, {"df", d.df}, {"lo", d.lo}, {"hi", d.hi},
        {"method", "Welch"}};
  } else {
    json["difference"] = nullptr;
    json["why_no_difference"] = growth.difference.error().what;
  }
  return json;
}

Json json_of(const CropTreeChange& tree) {
  Json json{{"stand", tree.stand},
            {"tag", tree.tag},
            {"species", tree.species},
            {"released", tree.released},
            {"light_before", light_json(tree.before)},
            {"light_after_release", light_json(tree.after)},
            {"light_now", light_or_null(tree.now)},
            {"sides_closed_since", tree.sides_closed ? Json(*tree.sides_closed) : Json(nullptr)},
            {"look_again_now", tree.look_now}};
  json["look_again_after_years"] =
      tree.look ? Json{{"soonest", tree.look->soonest}, {"latest", tree.look->latest}}
                : Json(nullptr);
  return json;
}

Json json_of(const AcornTree& tree, const SpeciesTable& table) {
  constexpr const char* kProducers[] = {"excellent", "good", "fair", "poor", "no_record"};
  Json autumns = Json::array();
  for (const AcornAutumn& autumn : tree.autumns) {
    autumns.push_back({{"year", autumn.year},
                       {"per_tip", optional_json(autumn.per_tip)},
                       {"n30", autumn.n30 ? Json(*autumn.n30) : Json(nullptr)}});
  }
  return {{"tag", tree.tag},
          {"stand", tree.stand},
          {"species", species_name(tree.species, table)},
          {"crop_tree", tree.crop},
          {"counts", autumns},
          {"producer", kProducers[static_cast<std::size_t>(tree.record.producer)]},
          {"autumns_counted", tree.record.years},
          {"proven_poor", tree.record.proven_poor}};
}

Json json_of(const AcornIndex& index, const SpeciesTable& table) {
  return {{"stand", text_or_null(index.stand)},
          {"species", species_name(index.species, table)},
          {"year", index.year},
          {"trees", index.index.n},
          {"mean_ln_n30_plus_1", index.index.mean},
          {"se", optional_json(index.index.se)},
          {"bearing_pct", index.bearing.value},
          {"enough_trees", index.enough}};
}

}  // namespace

std::string compare_json(const Comparison& comparison, const SpeciesTable& species,
                         const std::string& rule_version) {
  Json json{{"stands", Json::array()},
            {"stands_of_first_visit_only", comparison.only_first},
            {"stands_of_second_visit_only", comparison.only_second}};
  for (const StandComparison& stand : comparison.stands) json["stands"].push_back(json_of(stand));
  json["all"] = comparison.all ? json_of(*comparison.all) : Json(nullptr);
  if (!comparison.all) json["why_no_total"] = error_json(comparison.all.error());
  json["trees"] = Json::array();
  for (const TaggedTree& tree : comparison.trees) json["trees"].push_back(json_of(tree, species));
  json["crop_tree_growth"] = json_of(comparison.growth);
  json["crop_trees"] = Json::array();
  for (const CropTreeChange& tree : comparison.crop_trees) {
    json["crop_trees"].push_back(json_of(tree));
  }
  json["acorn_trees"] = Json::array();
  for (const AcornTree& tree : comparison.acorn_trees) {
    json["acorn_trees"].push_back(json_of(tree, species));
  }
  json["acorn_indices"] = Json::array();
  for (const AcornIndex& index : comparison.acorn_indices) {
    json["acorn_indices"].push_back(json_of(index, species));
  }
  json["rules"] = kClosingRules;
  for (const char* id : kAcornIndexRules) json["rules"].push_back(id);
  json["rule_version"] = rule_version;
  add_sources(json, Document::compare);
  return json_text(json);
}

}  // namespace oaklight::command
