#include "core/forms/kept_fields.hpp"

#include "core/model/mark.hpp"
#include "core/model/plot_task.hpp"

namespace oaklight {
namespace {

using K = FieldKind;

constexpr KeptField kKept[] = {
    {"tract", "name", K::text, Need::filled},
    {"tract", "state", K::text},
    {"tract", "county", K::text},
    {"tract", "contact", K::text},
    {"tract", "directions", K::text},
    {"tract", "meeting_place", K::text},
    {"tract", "phone_place", K::text},
    {"tract", "landing_lat", K::latitude},
    {"tract", "landing_lon", K::longitude},
    {"tract", "demo", K::yes_no},
    {"stands", "stand", K::text, Need::filled},
    {"stands", "acres", K::area, Need::filled},
    {"stands", "walked_acres", K::area},
    {"stands", "goal", K::choice, Need::may_lack, "goal"},
    {"stands", "age_years", K::whole},
    {"stands", "site_index", K::length},
    {"plots", "cruise", K::text, Need::filled},
    {"plots", "stand", K::text, Need::filled},
    {"plots", "plot", K::text, Need::filled},
    {"plots", "status", K::choice, Need::filled, "plot_status"},
    {"plots", "skip_reason", K::text, Need::in_form},
    {"plots", "baf", K::basal_area_factor, Need::in_form},
    {"plots", "plot_area", K::area, Need::in_form},
    {"plots", "small_plot_area", K::area},
    {"plots", "small_below", K::diameter},
    {"plots", "min_dbh", K::diameter},
    {"plots", "regen_plot_area", K::area},
    {"plots", "task", K::choice, Need::may_lack, "plot_task"},
    {"plots", "measure_every", K::whole},
    {"plots", "crew", K::text},
    {"plots", "date", K::date},
    {"plots", "lat", K::latitude},
    {"plots", "lon", K::longitude},
    {"plots", "accuracy_m", K::decimal},
    {"plots", "slope_pct", K::percent},
    {"plots", "note", K::text},
    {"trees", "stand", K::text, Need::filled},
    {"trees", "plot", K::text, Need::filled},
    {"trees", "species", K::species, Need::filled},
    {"trees", "dbh", K::diameter, Need::in_form},
    {"trees", "stems", K::whole},
    {"trees", "edge_count", K::whole},
    {"trees", "status", K::choice, Need::may_lack, "tree_status"},
    {"trees", "crown_class", K::choice, Need::may_lack, "crown_class"},
    {"trees", "live_crown_pct", K::percent},
    {"trees", "dieback_pct", K::percent},
    {"trees", "height", K::length},
    {"trees", "logs", K::decimal},
    {"trees", "azimuth_deg", K::degrees},
    {"trees", "distance", K::length},
    {"trees", "tag", K::text},
    {"trees", "conditions", K::choices, Need::may_lack, "condition"},
    {"trees", "note", K::text},
    {"regeneration", "stand", K::text, Need::filled},
    {"regeneration", "plot", K::text, Need::filled},
    {"regeneration", "species", K::species, Need::filled},
    {"regeneration", "height_class", K::choice, Need::filled, "regen_height"},
    {"regeneration", "count", K::whole, Need::filled},
    {"crop_trees", "stand", K::text, Need::filled},
    {"crop_trees", "card", K::text, Need::filled},
    {"crop_trees", "role", K::choice, Need::filled, "role"},
    {"crop_trees", "tag", K::text, Need::in_form},
    {"crop_trees", "side", K::choices, Need::in_form, "side"},
    {"crop_trees", "seen", K::choice, Need::in_form, "seen"},
    {"crop_trees", "species", K::species, Need::in_form},
    {"crop_trees", "dbh", K::diameter, Need::in_form},
    {"crop_trees", "crown_class", K::choice, Need::may_lack, "crown_class"},
    {"crop_trees", "status", K::choice, Need::may_lack, "tree_status"},
    {"crop_trees", "live_crown_pct", K::percent},
    {"crop_trees", "dieback_pct", K::percent},
    {"crop_trees", "height", K::length},
    {"crop_trees", "logs", K::decimal},
    {"crop_trees", "conditions", K::choices, Need::may_lack, "condition"},
    {"crop_trees", "crown_n", K::length},
    {"crop_trees", "crown_e", K::length},
    {"crop_trees", "crown_s", K::length},
    {"crop_trees", "crown_w", K::length},
    {"crop_trees", "distance", K::length},
    {"crop_trees", "azimuth_deg", K::degrees},
    {"crop_trees", "lat", K::latitude},
    {"crop_trees", "lon", K::longitude},
    {"crop_trees", "slope_pct", K::percent},
    {"crop_trees", "note", K::text},
    {"acorns", "tag", K::text, Need::filled},
    {"acorns", "year", K::whole, Need::filled},
    {"acorns", "date", K::date},
    {"acorns", "per_tip", K::decimal, Need::in_form},
    {"acorns", "tips", K::whole},
    {"acorns", "n30", K::whole, Need::in_form},
    {"acorns", "note", K::text},
    {"acorn_years", "oak_group", K::choice, Need::filled, "oak_group"},
    {"acorn_years", "year", K::whole, Need::filled},
    {"acorn_years", "crop", K::choice, Need::filled, "acorn_crop"},
    {"acorn_years", "source", K::text},
    // A tract's form may be older than the stump check: then it lacks the record, and says so when
    // stumps.csv is brought.
    {"stumps", "finding", K::choice, Need::may_lack, "finding"},
    {"stumps", "tag", K::text},
    {"stumps", "stand", K::text},
    {"stumps", "species", K::species},
    {"stumps", "over_bark", K::diameter},
    {"stumps", "under_bark", K::diameter},
    {"stumps", "stump_height", K::length},
    {"stumps", "wound", K::choice, Need::may_lack, "wound"},
    {"stumps", "wound_place", K::choice, Need::may_lack, "wound_place"},
    {"stumps", "date", K::date},
    {"stumps", "lat", K::latitude},
    {"stumps", "lon", K::longitude},
    {"stumps", "note", K::text},
};

template <class E>
std::vector<std::string_view> words() {
  std::vector<std::string_view> list;
  for (const auto& entry : kWords<E>) list.push_back(entry.word);
  return list;
}

}  // namespace

std::span<const KeptField> kept_fields() { return kKept; }

std::vector<std::string_view> model_words(std::string_view choice_list) {
  if (choice_list == "goal") return words<Goal>();
  if (choice_list == "plot_status") return words<PlotStatus>();
  if (choice_list == "plot_task") return words<PlotTask>();
  if (choice_list == "tree_status") return words<TreeStatus>();
  if (choice_list == "crown_class") return words<CrownClass>();
  if (choice_list == "regen_height") return words<RegenHeight>();
  if (choice_list == "role") return words<CardRole>();
  if (choice_list == "side") return words<Side>();
  if (choice_list == "seen") return words<Seen>();
  if (choice_list == "oak_group") return {word_of(OakGroup::white), word_of(OakGroup::red)};
  if (choice_list == "acorn_crop") return words<AcornCrop>();
  if (choice_list == "finding") return words<Finding>();
  if (choice_list == "wound") return words<Wound>();
  if (choice_list == "wound_place") return words<WoundPlace>();
  if (choice_list == "condition") return words<Condition>();
  return {};
}

}  // namespace oaklight
