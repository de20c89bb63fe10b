#include "core/command/estimate_json.hpp"

#include "core/command/json_values.hpp"

namespace oaklight::command {
namespace {

template <class Q>
Json json_of(const Estimate<Q>& e) {
  return {{"mean", plain(e.mean)},
          {"plots", e.plots},
          {"found_on", e.found},
          {"se", optional_json(e.se)},
          {"se_pct", optional_json(e.se_pct)},
          {"cv_pct", optional_json(e.cv)},
          {"df", optional_json(e.df)},
          {"lo", optional_json(e.lo)},
          {"hi", optional_json(e.hi)},
          {"half_pct", optional_json(e.half_pct)},
          {"trust", word_of(e.trust)}};
}

Json json_of(const GroupFigures& g) {
  Json json{{"stems", g.stems},
            {"ba_ft2_ac", json_of(g.ba)},
            {"trees_ac", json_of(g.trees)},
            {"qmd_in", g.qmd ? Json(g.qmd->qmd.value) : Json(nullptr)},
            {"qmd_se_in", g.qmd ? optional_json(g.qmd->se) : Json(nullptr)},
            {"board_feet_ac", g.board_feet ? json_of(*g.board_feet) : Json(nullptr)},
            {"without_board_feet", g.without_board_feet},
            {"cords_ac", g.cords ? json_of(*g.cords) : Json(nullptr)},
            {"without_cords", g.without_cords}};
  return json;
}

/// Young trees by height: all, and oaks among them.
Json json_of(const RegenFigures& regen) {
  Json json{{"plot_ac", regen.plot.value}, {"plots", regen.plots}};
  for (std::size_t i = 0; i < kWords<RegenHeight>.size(); ++i) {
    json[std::string(kWords<RegenHeight>[i].word)] = {{"stems_ac", json_of(regen.all[i])},
                                                      {"oak_ac", json_of(regen.oak[i])}};
  }
  return json;
}

Json json_of(const AreaEstimate& area, const SpeciesTable& species) {
  Json json{{"acres", area.acres.value},
            {"plots", area.plots},
            {"empty_plots", area.empty_plots},
            {"planned", area.planned},
            {"skipped", area.skipped},
            {"live", json_of(area.live)},
            {"dead", json_of(area.dead)},
            {"total_ba_ft2", json_of(total_of(area.live.ba, area.acres))},
            {"total_trees", json_of(total_of(area.live.trees, area.acres))},
            {"by_species", Json::array()},
            {"by_class", Json::array()},
            {"by_species_class", Json::array()}};
  for (const SpeciesFigures& row : area.by_species) {
    json["by_species"].push_back({{"fia", row.species.fia},
                                  {"species", species_name(row.species, species)},
                                  {"figures", json_of(row.figures)}});
  }
  for (const ClassFigures& row : area.by_class) {
    json["by_class"].push_back(
        {{"class_in", row.dbh_class.inches}, {"figures", json_of(row.figures)}});
  }
  for (const SpeciesClassFigures& row : area.by_species_class) {
    json["by_species_class"].push_back({{"fia", row.species.fia},
                                        {"class_in", row.dbh_class.inches},
                                        {"figures", json_of(row.figures)}});
  }
  json["regeneration"] = area.regen ? json_of(*area.regen) : Json(nullptr);
  if (area.need) {
    json["plots_needed"] = area.need->plan.plots;
    json["plots_more"] = area.need->more;
  }
  return json;
}

Json json_of(const StandStocking& s) {
  return {{"stocking_pct", json_of(s.stocking)},
          {"guard_stocking_pct", json_of(s.guard)},
          {"crown_competition_pct", json_of(s.crown_competition)},
          {"a_line_ba_ft2_ac", s.a ? Json(s.a->ba.value) : Json(nullptr)},
          {"b_line_ba_ft2_ac", s.b ? Json(s.b->ba.value) : Json(nullptr)},
          {"within_guide", s.fit.fits()}};
}

}  // namespace

std::string estimate_json(const CruiseEstimate& estimate, const std::vector<StandFigures>& figures,
                          const TractData& data, const SpeciesTable& species,
                          const EstimateOptions& options) {
  Json json{{"confidence", options.confidence.share()},
            {"log_rule", word_of(options.log_rule)},
            {"stands", Json::array()}};
  for (const StandEstimate& stand : estimate.stands) {
    Json entry;
    for (const Stand& s : data.stands) {
      if (s.id == stand.stand) entry["stand"] = s.name;
    }
    entry["figures"] = stand.figures ? json_of(*stand.figures, species)
                                     : Json{{"error", error_json(stand.figures.error())}};
    for (const StandFigures& f : figures) {
      if (f.stand == stand.stand) entry["stocking"] = json_of(f.stocking);
    }
    json["stands"].push_back(std::move(entry));
  }
  json["all"] = estimate.all ? json_of(*estimate.all, species)
                             : Json{{"error", error_json(estimate.all.error())}};
  return json.dump(2);
}

}  // namespace oaklight::command
