#include "core/session/stand_view.hpp"

#include <algorithm>

#include "core/release/right_job.hpp"
#include "core/release/stand_facts.hpp"
#include "core/session/local.hpp"

namespace oaklight {
namespace {

using Samples = std::vector<const StandSample*>;

/// The samples that a view is made of; points into cruised.
Result<Samples> samples_of(const std::vector<CruisedStand>& cruised, std::optional<StandId> stand) {
  Samples samples;
  for (const CruisedStand& c : cruised) {
    if (stand && c.stand->id != *stand) continue;
    if (!c.sample) return c.sample.error();
    samples.push_back(&*c.sample);
  }
  if (samples.empty()) {
    return Error{ErrorCode::no_data, stand ? "The stand has no plots." : "No stand has a plot.",
                 "plots", "Lay out a cruise first."};
  }
  return samples;
}

/// Whether the stand needs release at all, and where the recommendation would leave it.
Status add_advice(StandView& view, const TractData& data, const TractKnowledge& knowledge,
                  StandId stand) {
  view.walked = std::ranges::any_of(data.walk_trees,
                                    [&](const WalkTree& tree) { return tree.stand == stand; });
  if (view.walked) {
    const auto input = input_from_cards(data, stand, knowledge.release);
    if (!input) return input.error();
    ReleasePlan plan = recommend(*input);
    view.advice = std::move(plan.advice);
    view.before = plan.before;
    view.after = plan.after;
    return Done{};
  }
  auto facts = stand_facts(data, stand, knowledge.release);
  if (!facts) return facts.error();
  // How much ground a walk covered matters to what it may take, not to whether there is room.
  const auto record = std::ranges::find(data.stands, stand, &Stand::id);
  if (!facts->covered && record != data.stands.end()) facts->covered = record->acres;
  view.advice = is_release_right_job(*facts, knowledge.release.settings);
  return Done{};
}

template <class Unit>
double plain(Quantity<Unit> x) {
  return x.value;
}

template <class Q>
std::optional<double> plain(const std::optional<Q>& x) {
  return x ? std::optional(x->value) : std::nullopt;
}

template <class Q>
AreaFigure figure_of(std::string_view key, FigureUnit unit, const Estimate<Q>& e) {
  AreaFigure f{.key = key, .unit = unit};
  f.mean = plain(e.mean);
  f.se = plain(e.se);
  f.df = e.df;
  if (e.df) f.multiplier = student_t(e.confidence, *e.df);
  f.half_width = plain(e.half_width);
  if (unit != FigureUnit::percent) f.half_pct = e.half_pct;
  f.on_at_most = e.on_at_most;
  f.plots = e.plots;
  f.found = e.found;
  f.trust = e.trust;
  return f;
}

/// A figure that is a ratio of two sums; value is nothing without trees.
AreaFigure ratio_figure(std::string_view key, FigureUnit unit, const StandView& view,
                        std::optional<double> value, std::optional<double> se,
                        Confidence confidence) {
  const Estimate<SquareFeetPerAcre>& ba = view.area.live.ba;
  AreaFigure f{.key = key, .unit = unit, .mean = value, .ratio = true};
  f.plots = ba.plots;
  f.found = ba.found;
  f.trust = ba.trust;
  if (value && !(*value > 0.0)) {  // none of it on any plot: no error can be told, and it is not 0
    f.found = 0;
    f.trust = Trust::not_found;
    if (view.stands == 1) f.on_at_most = share_when_none_found(ba.plots, confidence);
    return f;
  }
  const int df = ba.plots - view.stands;
  if (!value || !se || df < 1) return f;
  f.se = se;
  f.df = df;
  f.multiplier = student_t(confidence, df);
  f.half_width = *f.multiplier * *se;
  if (unit != FigureUnit::percent) f.half_pct = percent(*f.half_width / *value);
  return f;
}

template <class Q>
AreaFigure volume_figure(std::string_view key, FigureUnit unit,
                         const std::optional<Estimate<Q>>& volume, int without,
                         const StandView& view) {
  AreaFigure f{.key = key, .unit = unit};
  if (volume) {
    f = figure_of(key, unit, *volume);
  } else if (view.area.live.stems == 0) {
    f = figure_of(key, unit, view.area.live.ba);  // no tree, no wood: just as little is known of it
  }
  f.plots = view.area.plots;
  f.without = without;
  return f;
}

AreaFigure share_figure(const ShareEstimate& share) {
  AreaFigure f{.key = "regeneration_stocking", .unit = FigureUnit::percent};
  f.mean = share.share.value;
  f.plots = share.plots;
  f.found = share.found;
  f.lo = plain(share.lo);
  f.hi = plain(share.hi);
  f.trust = share.plots < 2 ? Trust::one_plot : Trust::fair;
  return f;
}

/// How each figure came about, and what lies beyond its source.
void add_basis(std::vector<AreaFigure>& figures, const StandView& view) {
  const GroupFigures& live = view.area.live;
  const auto outside = out_of_range(view.area, &view.stocking);
  for (AreaFigure& f : figures) {
    if (f.key == "trees" || f.key == "cords" || f.key == "stocking") f.basis = live.sized;
    if (f.key == "board_feet") f.basis = live.logged;
    if (f.key == "board_feet") f.by_local = live.local_board_feet;
    if (f.key == "cords") f.by_local = live.local_cords;
    if (f.key == "stem_wood") f.by_local = live.curve_heights;
    for (const OutOfRange& out : outside) {
      if (out.key == f.key) f.beyond = out.words;
    }
  }
}

}  // namespace

Result<StandView> stand_view(const TractData& data, const TractKnowledge& knowledge,
                             std::optional<StandId> stand, const EstimateOptions& options) {
  const auto cruised = cruised_stands(data);
  if (!cruised) return cruised.error();
  const auto samples = samples_of(*cruised, stand);
  if (!samples) return samples.error();
  const EstimateOptions asked = with_local(options, data, knowledge);
  auto area = area_estimate(*samples, knowledge.species(), asked);
  if (!area) return area.error();
  const auto stocking = stand_stocking(*samples, knowledge.species(), options,
                                       knowledge.release.settings.guards.counted_from);
  if (!stocking) return stocking.error();
  StandView view{.area = *std::move(area), .stocking = *stocking};
  if (const auto made_of = composition(*samples, knowledge.species())) view.composition = *made_of;
  view.stands = static_cast<int>(samples->size());
  view.local = asked.local;
  for (const StandSample* sample : *samples) {
    if (std::ranges::find(view.designs, sample->design) == view.designs.end()) {
      view.designs.push_back(sample->design);
    }
  }
  if (stand) {
    if (const Status advised = add_advice(view, data, knowledge, *stand); !advised) {
      return advised.error();
    }
  }
  return view;
}

ShownUnit shown_unit(FigureUnit unit, UnitSystem system) {
  const bool us = system == UnitSystem::us;
  const double per_hectare = 1.0 / to_hectares(Acres{1.0}).value;
  switch (unit) {
    case FigureUnit::basal_area:
      if (us) return {1.0, 1, "ft2/ac"};
      return {1.0 / PointDesign{1.0, UnitSystem::metric}.baf().value, 1, "m2/ha"};
    case FigureUnit::trees:
      return us ? ShownUnit{1.0, 0, "trees/ac"} : ShownUnit{per_hectare, 0, "trees/ha"};
    case FigureUnit::diameter:
      return us ? ShownUnit{1.0, 1, "in"} : ShownUnit{kCentimetresPerInch, 1, "cm"};
    case FigureUnit::board_feet:
      return us ? ShownUnit{1.0, 0, "board feet/ac"} : ShownUnit{per_hectare, 0, "board feet/ha"};
    case FigureUnit::cords:
      return us ? ShownUnit{1.0, 1, "cords/ac"} : ShownUnit{per_hectare, 1, "cords/ha"};
    case FigureUnit::cubic_feet: {
      const double metric = kMetresPerFoot * kMetresPerFoot * kMetresPerFoot * per_hectare;
      return us ? ShownUnit{1.0, 0, "ft3/ac"} : ShownUnit{metric, 1, "m3/ha"};
    }
    case FigureUnit::percent:
      break;
  }
  return {1.0, 0, "%"};
}

std::vector<AreaFigure> area_figures(const StandView& view, const EstimateOptions& options) {
  const GroupFigures& live = view.area.live;
  std::vector<AreaFigure> figures;
  figures.push_back(figure_of("basal_area", FigureUnit::basal_area, live.ba));
  figures.push_back(figure_of("trees", FigureUnit::trees, live.trees));
  figures.push_back(ratio_figure("mean_diameter", FigureUnit::diameter, view,
                                 live.qmd ? std::optional(live.qmd->qmd.value) : std::nullopt,
                                 live.qmd ? plain(live.qmd->se) : std::nullopt,
                                 options.confidence));
  figures.push_back(figure_of("stocking", FigureUnit::percent, view.stocking.stocking));
  const BasalAreaShare* oak = view.composition ? &view.composition->oak : nullptr;
  figures.push_back(ratio_figure("oak_share", FigureUnit::percent, view,
                                 oak ? std::optional(oak->share.value) : std::nullopt,
                                 oak ? plain(oak->se) : std::nullopt, options.confidence));
  figures.push_back(volume_figure("board_feet", FigureUnit::board_feet, live.board_feet,
                                  live.without_board_feet, view));
  figures.push_back(
      volume_figure("cords", FigureUnit::cords, live.cords, live.without_cords, view));
  if (live.stem_wood) {
    figures.push_back(volume_figure("stem_wood", FigureUnit::cubic_feet, live.stem_wood,
                                    live.without_stem, view));
  }
  figures.push_back(figure_of("standing_dead", FigureUnit::basal_area, view.area.dead.ba));
  if (view.area.regen) {
    figures.push_back(figure_of("young_oaks", FigureUnit::trees, view.area.regen->oak.back()));
    if (view.area.regen->oak_plots) figures.push_back(share_figure(*view.area.regen->oak_plots));
  }
  add_basis(figures, view);
  return figures;
}

}  // namespace oaklight
