#include "core/command/estimate_json.hpp"

#include "core/command/figure_keys.hpp"
#include "core/command/json_values.hpp"
#include "core/measure/local_curves.hpp"

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
            {"without_cords", g.without_cords},
            {"stem_wood_ft3_ac", g.stem_wood ? json_of(*g.stem_wood) : Json(nullptr)},
            {"without_stem_wood", g.without_stem},
            {"by_local_board_feet", g.local_board_feet},
            {"by_local_cords", g.local_cords},
            {"by_height_curve", g.curve_heights},
            {"sizes_by_ratio", g.sized.by_ratio},
            {"board_feet_by_ratio", g.logged.by_ratio},
            {"pooled_ratio", g.sized.pooled || g.logged.pooled}};
  return json;
}

/// A share of plots with its limits.
Json json_of(const ShareEstimate& share) {
  return {{"share_pct", share.share.value},    {"plots", share.plots},
          {"found_on", share.found},           {"se_pct", optional_json(share.se)},
          {"lo_pct", optional_json(share.lo)}, {"hi_pct", optional_json(share.hi)}};
}

/// Young trees by height: all, and oaks among them.
Json json_of(const RegenFigures& regen) {
  Json json{{"plot_ac", regen.plot.value}, {"plots", regen.plots}};
  for (std::size_t i = 0; i < kWords<RegenHeight>.size(); ++i) {
    json[std::string(kWords<RegenHeight>[i].word)] = {{"stems_ac", json_of(regen.all[i])},
                                                      {"oak_ac", json_of(regen.oak[i])}};
  }
  json["plots_with_oak"] = regen.oak_plots ? json_of(*regen.oak_plots) : Json(nullptr);
  return json;
}

Json json_of(const AreaEstimate& area, const SpeciesTable& species) {
  Json json{{"acres", area.acres.value},
            {"plots", area.plots},
            {"empty_plots", area.empty_plots},
            {"measure_plots", area.measure_plots},
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
    json["by_species"].push_back(
        {{"fia", row.species.fia},
         {"species", species_name(row.species, species)},
         {"on_plots", row.on_plots ? json_of(*row.on_plots) : Json(nullptr)},
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

/// stand  null: of the whole tract
void add_curves(Json& into, const Json& stand, const std::vector<LocalCurve>& curves) {
  for (const LocalCurve& curve : curves) {
    into.push_back({{"kind", word_of(curve.kind)},
                    {"stand", stand},
                    {"fia", curve.fia ? Json(*curve.fia) : Json(nullptr)},
                    {"a", curve.a},
                    {"b", curve.b},
                    {"trees", curve.trees},
                    {"residual_sd_ft", curve.residual_sd.value},
                    {"from_in", curve.from.value},
                    {"to_in", curve.to.value}});
  }
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
  json["local_curves"] = Json::array();
  if (options.local) add_curves(json["local_curves"], Json(nullptr), options.local->curves);
  for (const Stand& s : data.stands) {
    add_curves(json["local_curves"], s.name, crown_curves(data.walk_trees, s.id));
  }
  json["finite_population"] = options.finite_population;
  json["post_strata"] = options.placed_over_tract;
  json["all"] = estimate.all ? json_of(*estimate.all, species)
                             : Json{{"error", error_json(estimate.all.error())}};
  add_sources(json, Document::estimate);
  return json_text(json);
}

}  // namespace oaklight::command
