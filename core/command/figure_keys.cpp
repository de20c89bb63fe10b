#include "core/command/figure_keys.hpp"

#include <algorithm>
#include <array>
#include <set>
#include <span>
#include <string>

namespace oaklight::command {
namespace {

struct MemberKey {
  std::string_view member;
  std::string_view key;
};

// Of one kind of document; they go before the common ones.
constexpr std::array kCompare = std::to_array<MemberKey>({
    {"change", "paired_change"},
    {"in_a_year", "paired_change"},
    {"se", "paired_change"},
    {"lo", "paired_change"},
    {"hi", "paired_change"},
    {"df", "paired_change"},
    {"growth_in_a_year", "growth_difference"},
    {"crop_tree_growth", "growth_difference"},
    {"look_again_in_years", "years_to_look"},
    {"soonest", "years_to_look"},
    {"latest", "years_to_look"},
});
constexpr std::array kStumps = std::to_array<MemberKey>({
    {"dbh_in", "stump_dbh"},
    {"board_feet", "board_feet"},
    {"cords_if_firewood", "cords"},
    {"audit", "audit"},
    {"greatest_wrong_share_pct", "audit"},
    {"sample_needed", "audit"},
    {"share_done_pct", "tree_list"},
    {"crop_trees", "tree_list"},
    {"trees_left", "tree_list"},
});
constexpr std::array kDesign = std::to_array<MemberKey>({
    {"expected_error_pct", "plots_needed"},
    {"plots", "plots_needed"},
    {"wanted", "plots_needed"},
    {"cv_pct", "plots_needed"},
    {"hours", "crew_hours"},
    {"advised_baf", "plot_advice"},
    {"advised_plot_acres", "plot_advice"},
    {"spacing_ft", "crew_hours"},
});

// By member, in the order in which the documents have them.
constexpr std::array kCommon = std::to_array<MemberKey>({
    {"ba_ft2_ac", "basal_area"},
    {"total_ba_ft2", "basal_area"},
    {"trees_ac", "trees"},
    {"total_trees", "trees"},
    {"qmd_in", "mean_diameter"},
    {"qmd_se_in", "mean_diameter"},
    {"board_feet_ac", "board_feet"},
    {"cords_ac", "cords"},
    {"stem_wood_ft3_ac", "stem_wood"},
    {"stocking_pct", "stocking"},
    {"guard_stocking_pct", "guard_stocking"},
    {"crown_competition_pct", "crown_competition"},
    {"a_line_ba_ft2_ac", "stocking_lines"},
    {"b_line_ba_ft2_ac", "stocking_lines"},
    {"stems_ac", "young_trees"},
    {"oak_ac", "young_trees"},
    {"plots_with_oak", "regeneration_stocking"},
    {"on_plots", "plots_occupied"},
    {"local_curves", "local_curve"},
    {"class_in", "dbh_class"},
    {"plots_needed", "plots_needed"},
    {"plots_more", "plots_needed"},
    {"se", "interval"},
    {"se_pct", "interval"},
    {"cv_pct", "interval"},
    {"df", "several_stands"},
    {"lo", "interval"},
    {"hi", "interval"},
    {"half_pct", "interval"},
    {"sizes_by_ratio", "double_sampling"},
    {"board_feet_by_ratio", "double_sampling"},
    {"pooled_ratio", "double_sampling"},
    {"by_local_board_feet", "local_volume"},
    {"by_local_cords", "local_volume"},
    {"by_height_curve", "local_curve"},
    {"finite_population", "finite_population"},
    {"post_strata", "post_strata"},
    {"crop_trees_ac", "trees"},
    {"removals_ac", "trees"},
    {"ba_before_ft2_ac", "basal_area"},
    {"ba_after_ft2_ac", "basal_area"},
    {"stocking_before_pct", "guard_stocking"},
    {"stocking_after_pct", "guard_stocking"},
    {"light_before", "light"},
    {"light_after", "light"},
    {"light_after_release", "light"},
    {"light_now", "light"},
});

std::span<const MemberKey> own_keys(Document kind) {
  switch (kind) {
    case Document::compare:
      return kCompare;
    case Document::stumps:
      return kStumps;
    case Document::design:
      return kDesign;
    case Document::estimate:
    case Document::release:
      break;
  }
  return {};
}

void collect(const Json& json, std::set<std::string>& members) {
  if (json.is_object()) {
    for (const auto& [name, value] : json.items()) {
      members.insert(name);
      collect(value, members);
    }
  } else if (json.is_array()) {
    for (const Json& value : json) collect(value, members);
  }
}

}  // namespace

std::string_view figure_key(std::string_view member, Document kind) {
  for (const std::span<const MemberKey> keys :
       {own_keys(kind), std::span<const MemberKey>(kCommon)}) {
    const auto found = std::ranges::find(keys, member, &MemberKey::member);
    if (found != keys.end()) return found->key;
  }
  return {};
}

void add_sources(Json& document, Document kind) {
  std::set<std::string> members;
  collect(document, members);
  Json sources = Json::object();
  for (const std::string& member : members) {
    if (const auto key = figure_key(member, kind); !key.empty()) sources[member] = key;
  }
  document["sources"] = std::move(sources);
}

}  // namespace oaklight::command
