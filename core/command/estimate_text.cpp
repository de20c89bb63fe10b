#include "core/command/estimate_text.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <sstream>

#include "core/base/number_text.hpp"
#include "core/command/json_values.hpp"
#include "core/command/text_table.hpp"
#include "core/measure/local_curves.hpp"
#include "core/sample/visits.hpp"
#include "core/stand/figure_range.hpp"
#include "core/stand/sources.hpp"

namespace oaklight::command {
namespace {

template <class Q>
std::string text_of(const std::optional<Q>& value, int decimals) {
  return value ? number_text(value->value, decimals) : "-";
}

/// One area as text.
class AreaText {
 public:
  AreaText(std::ostringstream& out, const AreaEstimate& area, const StandFigures* figures,
           const SpeciesTable& species, const EstimateOptions& options)
      : out_(out), area_(area), figures_(figures), species_(species), options_(options) {}

  void print(const std::string& title) const {
    out_ << title << ": " << number_text(area_.acres.value, 1) << " acres, " << area_.plots
         << " plots (" << area_.empty_plots << " empty), " << area_.live.stems << " live and "
         << area_.dead.stems << " dead trees tallied\n";
    print_figures();
    print_basis();
    print_diameter();
    print_regeneration();
    print_need();
    print_range();
  }

 private:
  /// One figure with its error as a table row.
  template <class Q>
  void add(TextTable& table, const std::string& name, std::string_view key, const Estimate<Q>& e,
           int decimals) const {
    table.add({name, number_text(e.mean.value, decimals), text_of(e.se, decimals),
               text_of(e.se_pct, 1), text_of(e.lo, decimals), text_of(e.hi, decimals),
               e.df ? number_text(*e.df, 1) : "-", "[" + std::string(key) + "]",
               trust_words(e.trust)});
  }

  void print_figures() const {
    const std::string sure = number_text(100.0 * options_.confidence.share(), 1);
    const GroupFigures& live = area_.live;
    TextTable table({"per acre", "mean", "SE", "SE %", sure + " % from", "to", "df", "source", ""});
    add(table, "basal area, ft2", "basal_area", live.ba, 1);
    add(table, "trees", "trees", live.trees, 1);
    if (live.board_feet) {
      add(table, "board feet, " + std::string(name_of(options_.log_rule)), "board_feet",
          *live.board_feet, 0);
    }
    if (live.cords) add(table, "cords, whole trees", "cords", *live.cords, 1);
    if (live.stem_wood) add(table, "stem wood, ft3, peeled", "stem_wood", *live.stem_wood, 0);
    if (figures_ != nullptr) {
      add(table, "stocking, %", "stocking", figures_->stocking.stocking, 1);
      add(table, "stocking that guards count, %", "guard_stocking", figures_->stocking.guard, 1);
      add(table, "crown competition, %", "crown_competition", figures_->stocking.crown_competition,
          1);
    }
    add(table, "standing dead, ft2", "standing_dead", area_.dead.ba, 1);
    out_ << table.text();
  }

  /// Where figures came from count points, the book or what is local.
  void print_basis() const {
    const GroupFigures& live = area_.live;
    if (live.without_board_feet > 0 || live.without_cords > 0) {
      out_ << "  not in these volumes: " << live.without_board_feet
           << " tallied stems without board feet, " << live.without_cords << " without cords\n";
    }
    if (area_.measure_plots < area_.plots) {
      out_ << "  " << area_.measure_plots << " of " << area_.plots << " plots are measure points: "
           << (live.sized.by_ratio ? "trees, sizes and volumes" : "board feet and stem wood")
           << " are basal area on all points times a ratio from those measured [double_sampling]\n";
    }
    if (live.local_board_feet > 0 || live.local_cords > 0) {
      out_ << "  local volume table"
           << (options_.local->volumes.source.empty() ? std::string()
                                                      : " (" + options_.local->volumes.source + ")")
           << ": board feet of " << live.local_board_feet << " stems, cords of " << live.local_cords
           << "; the others by the book [local_volume]\n";
    }
    if (live.stem_wood) {
      out_ << "  stem wood: " << live.curve_heights
           << " stems by the local height curve [local_curve], " << live.without_stem
           << " without a height left out\n";
    }
  }

  void print_diameter() const {
    if (area_.live.qmd) {
      out_ << "  mean diameter (QMD) " << number_text(area_.live.qmd->qmd.value, 1)
           << " in [mean_diameter]\n";
    }
    if (figures_ != nullptr && figures_->stocking.b) {
      out_ << "  B line at this diameter " << number_text(figures_->stocking.b->ba.value, 1)
           << " ft2, A line " << number_text(figures_->stocking.a->ba.value, 1)
           << " ft2 [stocking_lines]"
           << (figures_->stocking.fit.fits() ? "" : " (outside the upland oak guide)") << '\n';
    }
    if (figures_ != nullptr && figures_->composition) {
      const BasalAreaShare& oak = figures_->composition->oak;
      out_ << "  oaks hold " << number_text(oak.share.value, 0) << " % of the basal area"
           << (oak.se ? " (SE " + number_text(oak.se->value, 1) + ")" : std::string())
           << " [oak_share]\n";
    }
  }

  void print_regeneration() const {
    if (!area_.regen) return;
    TextTable table({"young trees an acre", "all", "SE", "oaks", "SE", "source", ""});
    const std::array<const char*, 3> heights = {"under 1 ft", "1 to 4.5 ft", "over 4.5 ft"};
    for (std::size_t i = 0; i < heights.size(); ++i) {
      const auto& all = area_.regen->all[i];
      const auto& oak = area_.regen->oak[i];
      table.add({heights[i], number_text(all.mean.value, 0), text_of(all.se, 0),
                 number_text(oak.mean.value, 0), text_of(oak.se, 0),
                 i + 1 < heights.size() ? "[young_trees]" : "[young_oaks]",
                 trust_words(oak.trust)});
    }
    out_ << table.text();
    if (!area_.regen->oak_plots) return;
    const ShareEstimate& share = *area_.regen->oak_plots;
    out_ << "  stocked with a young oak: " << share.found << " of " << share.plots
         << " seedling plots of " << number_text(area_.regen->plot.value, 4) << " acre, "
         << number_text(share.share.value, 0) << " %";
    if (share.lo && share.hi) {
      out_ << " (" << number_text(share.lo->value, 0) << " to " << number_text(share.hi->value, 0)
           << ")";
    }
    out_ << " [regeneration_stocking]\n";
  }

  void print_need() const {
    if (!area_.need) return;
    out_ << "  for " << number_text(options_.goal.value, 0)
         << " % of the basal area: " << area_.need->plan.plots << " plots, " << area_.need->more
         << " more [plots_needed]\n";
  }

  void print_range() const {
    for (const OutOfRange& out : out_of_range(area_, figures_ ? &figures_->stocking : nullptr)) {
      out_ << "  outside its range: " << out.words << " [" << out.key << "]\n";
    }
  }

  std::ostringstream& out_;
  const AreaEstimate& area_;
  const StandFigures* figures_;
  const SpeciesTable& species_;
  const EstimateOptions& options_;
};

void print_species(std::ostringstream& out, const AreaEstimate& area, const SpeciesTable& species) {
  std::vector<const SpeciesFigures*> rows;
  for (const SpeciesFigures& row : area.by_species) rows.push_back(&row);
  std::ranges::stable_sort(rows, [](const SpeciesFigures* a, const SpeciesFigures* b) {
    return a->figures.ba.mean > b->figures.ba.mean;
  });
  const auto percent_text = [](const std::optional<Percent>& x) {
    return x ? number_text(x->value, 0) : std::string("-");
  };
  TextTable table(
      {"by species", "ft2/ac", "SE", "trees/ac", "SE", "stems", "on % of plots", "from", "to", ""});
  for (const SpeciesFigures* row : rows) {
    const Species* s = species.find(row->species);
    const GroupFigures& figures = row->figures;
    const auto& on = row->on_plots;
    table.add({s == nullptr ? std::to_string(row->species.fia) : s->common_name,
               number_text(figures.ba.mean.value, 1), text_of(figures.ba.se, 1),
               number_text(figures.trees.mean.value, 1), text_of(figures.trees.se, 1),
               std::to_string(figures.stems), on ? number_text(on->share.value, 0) : "-",
               percent_text(on ? on->lo : std::nullopt), percent_text(on ? on->hi : std::nullopt),
               trust_words(figures.ba.trust)});
  }
  out << table.text();
  out << "  [basal_area], [trees] and, for the share of plots with a live tree of it, "
         "[plots_occupied]\n";
  TextTable classes({"by 2-in class", "ft2/ac", "SE", "trees/ac", "SE", "stems", ""});
  for (const ClassFigures& row : area.by_class) {
    const Trust trust = row.figures.trees.trust;
    classes.add({std::to_string(row.dbh_class.inches) + " in",
                 number_text(row.figures.ba.mean.value, 1), text_of(row.figures.ba.se, 1),
                 number_text(row.figures.trees.mean.value, 1), text_of(row.figures.trees.se, 1),
                 std::to_string(row.figures.stems), trust_words(trust)});
  }
  out << classes.text() << "  [basal_area] [trees] [dbh_class]\n";
}

const StandFigures* figures_of(const std::vector<StandFigures>& all, StandId stand) {
  for (const StandFigures& f : all) {
    if (f.stand == stand) return &f;
  }
  return nullptr;
}

void print_curve(std::ostringstream& out, const std::string& of, const LocalCurve& curve,
                 const SpeciesTable& species) {
  const bool height = curve.kind == CurveKind::height;
  out << "  " << of << ": " << fit_words(curve, species) << ": " << (height ? "4.5 + exp(" : "")
      << number_text(curve.a, 4) << (curve.b < 0.0 ? " - " : " + ")
      << number_text(std::abs(curve.b), 4) << (height ? " / (D + 1))" : " D") << " ft\n";
}

/// The curves that were fitted to the trees of the tract.
void print_curves(std::ostringstream& out, const TractData& data, const SpeciesTable& species,
                  const EstimateOptions& options) {
  if (options.local) {
    for (const LocalCurve& curve : options.local->curves) {
      print_curve(out, "height [local_curve]", curve, species);
    }
  }
  for (const Stand& stand : data.stands) {
    for (const LocalCurve& curve : crown_curves(data.walk_trees, stand.id)) {
      print_curve(out, "crown width in " + stand.name + " [local_curve]", curve, species);
    }
  }
}

}  // namespace

std::string trust_words(Trust trust) {
  switch (trust) {
    case Trust::fair:
      return "";
    case Trust::not_found:
      return "none found: rare or absent";
    case Trust::one_plot:
      return "one plot: no error can be told";
    case Trust::two_plots:
      return "two plots: very unsure";
    case Trust::few_found:
      return "on fewer than 5 plots: interval likely too short";
  }
  return "";
}

std::string estimate_text(const CruiseEstimate& estimate, const std::vector<StandFigures>& figures,
                          const TractData& data, const SpeciesTable& species,
                          const EstimateOptions& options) {
  std::ostringstream out;
  for (const StandEstimate& stand : estimate.stands) {
    std::string name;
    for (const Stand& s : data.stands) {
      if (s.id == stand.stand) name = s.name;
    }
    if (stand.figures) {
      AreaText(out, *stand.figures, figures_of(figures, stand.stand), species, options).print(name);
    } else {
      out << name << ": " << to_text(stand.figures.error()) << '\n';
    }
    out << '\n';
  }
  if (estimate.all) {
    AreaText(out, *estimate.all, nullptr, species, options).print("All cruised stands, by acres");
    print_species(out, *estimate.all, species);
  } else {
    out << "All stands together: " << to_text(estimate.all.error()) << '\n';
  }
  print_curves(out, data, species, options);
  if (!visits_left_out(data).empty()) {
    out << "Plots were visited more than once: the newest visit counts here. What changed is "
           "told by: oaklight compare\n";
  }
  if (options.finite_population) {
    out << "Errors of fixed plots are corrected for the share of the stand that they cover "
           "[finite_population].\n";
  }
  if (options.placed_over_tract) {
    out << "Errors over stands are those of plots sorted into stands afterwards [post_strata].\n";
  }
  out << "Errors: [interval] in a stand, [several_stands] over stands. A word in square brackets "
         "is a key: oaklight source KEY tells how the figure is made.\n";
  out << "Plots on a grid are computed as if random, which tends to overstate the error.\n";
  return out.str();
}

}  // namespace oaklight::command
