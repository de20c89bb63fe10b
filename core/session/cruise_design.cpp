#include "core/session/cruise_design.hpp"

#include <algorithm>
#include <cmath>

#include "core/base/number_text.hpp"
#include "core/forms/csv_file.hpp"
#include "core/model/plot_task.hpp"
#include "core/place/geodesy.hpp"
#include "core/place/plot_grid.hpp"
#include "core/sample/cruise_estimate.hpp"
#include "core/sample/plot_spacing.hpp"
#include "core/session/plot_work.hpp"
#include "core/session/records_named.hpp"
#include "core/session/tract_work.hpp"

namespace oaklight {
namespace {

/// "45", "12.5": with every digit that was asked for, so that a note brings back the same grid.
std::string all_digits(double value) {
  std::string text = number_text(value, 6);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

/// A stand while it is planned.
struct Candidate {
  const Stand* stand;
  PlannedStand known;
  Percent cv;
  std::string source;
};

class Layout {
 public:
  Layout(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
         const DesignRequest& request)
      : trial_(live.data()), knowledge_(knowledge), ids_(ids), request_(request) {}

  Result<CruiseLayout> run() {
    if (const Status named = check_name(); !named) return named.error();
    if (const Status chosen = choose_stands(); !chosen) return chosen.error();
    if (const Status shared = share_out(); !shared) return shared.error();
    if (const Status made = make_cruise(); !made) return made.error();
    if (auto fault = cannot_take_turns(trial_, cruise_, request_.measure_every))
      return *std::move(fault);
    if (const Status placed = place_all(); !placed) return placed.error();
    finish();
    return std::move(out_);
  }

 private:
  Status check_name() {
    out_.cruise = std::string(trimmed(request_.cruise));
    if (!out_.cruise.empty()) return Done{};
    return Error{ErrorCode::missing_value, "The cruise has no name.", "cruise", "Name it."};
  }

  /// The stands that are asked for, each with what is known of its spread.
  Status choose_stands() {
    for (const std::string& name : request_.stands) {
      const auto is_it = [&](const Stand& s) { return lower_case(s.name) == lower_case(name); };
      if (std::ranges::none_of(trial_.data().stands, is_it)) {
        return Error{ErrorCode::unknown_reference, "The tract has no stand \"" + name + "\".",
                     "stand", "Its stands are listed by: oaklight estimate"};
      }
    }
    EstimateOptions options;
    options.confidence = request_.confidence;
    const auto measured = cruise_estimate(trial_.data(), knowledge_.species(), options);
    if (measured && measured->all && measured->all->live.qmd) {
      measured_dbh_ = measured->all->live.qmd->qmd;
    }
    for (const Stand& stand : trial_.data().stands) {
      const bool wanted =
          request_.stands.empty() || std::ranges::any_of(request_.stands, [&](const auto& name) {
            return lower_case(stand.name) == lower_case(name);
          });
      if (wanted) candidates_.push_back(candidate(stand, measured));
    }
    if (!candidates_.empty()) return Done{};
    return Error{ErrorCode::no_data, "The tract has no stands.", "stands",
                 "Add one with its acres, or bring its outline: oaklight boundary"};
  }

  Candidate candidate(const Stand& stand, const Result<CruiseEstimate>& measured) const {
    Candidate made{&stand, {stand.acres, request_.usual_ba.value, 0.0}, {}, ""};
    if (measured) {
      const auto found = std::ranges::find(measured->stands, stand.id, &StandEstimate::stand);
      if (found != measured->stands.end() && found->figures) {
        const auto& ba = found->figures->live.ba;
        if (ba.mean.value > 0.0 && ba.cv) {
          made.known.mean = ba.mean.value;
          made.cv = *ba.cv;
          made.source = "from " + std::to_string(ba.plots) + " plots";
        }
      }
    }
    if (request_.cv) {
      made.cv = *request_.cv;
      made.source = "as told";
    } else if (made.source.empty()) {
      made.cv = usual_spread(request_.kind).middle();
      made.source = "usual for " + std::string(word_of(request_.kind)) + " stands (from memory)";
    }
    made.known.sd = fraction(made.cv) * made.known.mean;
    return made;
  }

  std::vector<PlannedStand> known() const {
    std::vector<PlannedStand> list;
    for (const Candidate& c : candidates_) list.push_back(c.known);
    return list;
  }

  Acres all_acres() const {
    Acres sum;
    for (const Candidate& c : candidates_) sum += c.known.acres;
    return sum;
  }

  Status share_out() {
    const auto plan = [&]() -> Result<ExpectedCruise> {
      const auto count = [&](double plots) {
        const int whole = static_cast<int>(std::ceil(std::clamp(plots, -1.0, 1e6) - 1e-9));
        return plan_for_count(known(), whole, request_.confidence, request_.allocation);
      };
      if (const auto* error = std::get_if<ErrorGoal>(&request_.goal)) {
        return plan_for_error(known(), *error, request_.allocation);
      }
      if (const auto* in_all = std::get_if<PlotsInAll>(&request_.goal)) return count(in_all->plots);
      if (const auto* an_acre = std::get_if<PlotsAnAcre>(&request_.goal)) {
        return count(an_acre->plots * all_acres().value);
      }
      const double hours = std::get<HoursInAll>(request_.goal).hours;
      return count(plots_in_hours(hours, all_acres(), request_.pace));
    }();
    if (!plan) return plan.error();
    wanted_ = plan->by_stand;
    return Done{};
  }

  void advise() {
    double ba = 0.0;
    for (const Candidate& c : candidates_) ba += c.known.mean * c.known.acres.value;
    const SquareFeetPerAcre mean{ba / all_acres().value};
    constexpr Inches kUsual{11.0};  // upland hardwoods, from memory
    const Inches dbh = request_.mean_dbh.value_or(measured_dbh_.value_or(kUsual));
    out_.factor = advise_factor(mean, dbh);
    out_.plot = advise_plot(mean, dbh);
  }

  /// The cruise of that name, or a new one.
  Status make_cruise() {
    advise();
    const auto& cruises = trial_.data().cruises;
    const auto found = std::ranges::find(cruises, out_.cruise, &Cruise::name);
    if (found != cruises.end()) {
      if (request_.design && !(*request_.design == found->design)) {
        return Error{ErrorCode::contradiction,
                     "Cruise \"" + out_.cruise +
                         "\" has another design: " + design_text(found->design) + ".",
                     "cruise", "Leave the design out, or name a new cruise."};
      }
      cruise_ = found->id;
      out_.design = found->design;
      return Done{};
    }
    Cruise made;
    made.name = out_.cruise;
    made.design = request_.design.value_or(PointDesign{out_.factor.factor, UnitSystem::us});
    out_.design = made.design;
    auto action = add_cruise(trial_, knowledge_, ids_, std::move(made));
    if (!action) return action.error();
    cruise_ = std::get<Cruise>(action->changes.front()).id;
    keep(*std::move(action));
    return Done{};
  }

  /// Adds a change to the layout, and to the trial so that the next one is checked against it.
  void keep(Action action) {
    trial_.follow(action.changes);
    std::ranges::move(action.changes, std::back_inserter(out_.action.changes));
  }

  Status place_all() {
    // One stream of chance for all stands, in the order of the tract, so that one seed tells all.
    SeededDraw draw(request_.seed);
    for (std::size_t i = 0; i < candidates_.size(); ++i) {
      if (const Status placed = place(candidates_[i], wanted_[i], draw); !placed) return placed;
    }
    return Done{};
  }

  Status place(const Candidate& candidate, int wanted, SeededDraw& draw) {
    const Stand& stand = *candidate.stand;
    for (const Plot* plot : trial_.plots_of(stand.id)) {
      if (plot->cruise != cruise_ || plot->status != PlotStatus::planned) continue;
      return Error{
          ErrorCode::contradiction,
          "Stand \"" + stand.name + "\" has plots of this cruise that are not visited yet.",
          "stand/" + stand.name, "Undo the earlier design, or name a new cruise."};
    }
    StandLayout layout{stand.id,         stand.name, stand.acres,  candidate.cv,
                       candidate.source, wanted,     std::nullopt, {}};
    const auto positions = positions_in(stand, wanted, draw, layout);
    if (!positions) return positions.error();
    if (stand.boundary && positions->empty()) {
      return Error{ErrorCode::too_few_plots,
                   "No point of the grid fell inside stand \"" + stand.name + "\".",
                   "stand/" + stand.name,
                   "Ask for more plots. Do not try seeds until one fits: that favours its middle."};
    }
    const std::size_t count = stand.boundary ? positions->size() : static_cast<std::size_t>(wanted);
    for (std::size_t i = 0; i < count; ++i) {
      Plot plot;
      plot.stand = stand.id;
      plot.cruise = cruise_;
      if (stand.boundary) plot.position = (*positions)[i];
      const bool turn = static_cast<int>(i) % request_.measure_every == 0;
      plot.note = note_of({.task = turn ? PlotTask::measure : PlotTask::count,
                           .counted = {},
                           .note = note_for(layout)});
      auto action = add_plot(trial_, knowledge_, ids_, std::move(plot));
      if (!action) return action.error();
      layout.plots.push_back(std::get<Plot>(action->changes.front()));
      keep(*std::move(action));
    }
    out_.plots += static_cast<int>(count);
    out_.stands.push_back(std::move(layout));
    return Done{};
  }

  Result<std::vector<Position>> positions_in(const Stand& stand, int wanted, SeededDraw& draw,
                                             StandLayout& layout) {
    if (!stand.boundary) {
      out_.notes.push_back("Stand " + stand.name +
                           " has no outline: its plots have no positions. Bring its outline "
                           "(oaklight boundary), or lay them out in the field.");
      return std::vector<Position>();
    }
    if (request_.pattern == PlotPattern::random)
      return random_positions(*stand.boundary, wanted, draw);
    const auto drawn = polygon_acres(*stand.boundary);
    if (!drawn) return drawn.error();
    // Whole feet, down: so that the count is met rather than missed on average.
    const Feet spacing{std::max(1.0, std::floor(square_spacing(*drawn, wanted).value))};
    layout.spacing = spacing;
    const GridStart start = random_start(draw);
    return grid_positions(*stand.boundary, {spacing, spacing, request_.azimuth}, start);
  }

  std::string note_for(const StandLayout& layout) const {
    const std::string seed = "seed " + std::to_string(request_.seed);
    if (layout.spacing) {
      return "Grid of " + number_text(layout.spacing->value, 0) + " ft, lines at " +
             all_digits(request_.azimuth.value) + " degrees true, " + seed;
    }
    return request_.pattern == PlotPattern::random ? "Random point, " + seed : "";
  }

  void finish() {
    out_.action.label = "design cruise " + out_.cruise + ": " + std::to_string(out_.plots) +
                        (out_.plots == 1 ? " plot" : " plots") + ", seed " +
                        std::to_string(request_.seed);
    std::vector<PlannedStand> stands = known();
    out_.half_width = half_width(stands);
    for (std::size_t i = 0; i < stands.size(); ++i) {
      out_.hours += expected_hours(static_cast<int>(out_.stands[i].plots.size()), stands[i].acres,
                                   request_.pace);
    }
    if (request_.pattern == PlotPattern::grid) {
      out_.notes.push_back(
          "Points of the grid that fall inside a stand count, so their number differs a little "
          "from what was wanted. None was moved from an edge; for trees near one use the "
          "walkthrough or the mirage.");
    }
    if (request_.measure_every > 1) {
      out_.notes.push_back("The first point of each stand and " +
                           every_text(request_.measure_every) +
                           " after it is measured; at the others trees are only counted by "
                           "species.");
    }
    out_.notes.push_back(kAsIfRandom);
  }

  /// The error to expect of the plots as they came to lie.
  Percent half_width(const std::vector<PlannedStand>& stands) const {
    double total = 0.0, variance = 0.0, df = 0.0;
    for (std::size_t i = 0; i < stands.size(); ++i) {
      const auto n = static_cast<double>(out_.stands[i].plots.size());
      total += stands[i].acres.value * stands[i].mean;
      variance += std::pow(stands[i].acres.value * stands[i].sd, 2) / n;
      df += n - 1.0;
    }
    return df < 1.0 ? Percent{0.0}
                    : percent(student_t(request_.confidence, df) * std::sqrt(variance) / total);
  }

  LiveTract trial_;
  const TractKnowledge& knowledge_;
  IdSource& ids_;
  const DesignRequest& request_;
  std::vector<Candidate> candidates_;
  std::vector<int> wanted_;
  std::optional<Inches> measured_dbh_;
  CruiseId cruise_;
  CruiseLayout out_;
};

}  // namespace

Result<CruiseLayout> lay_out_cruise(const LiveTract& live, const TractKnowledge& knowledge,
                                    IdSource& ids, const DesignRequest& request) {
  return Layout(live, knowledge, ids, request).run();
}

}  // namespace oaklight
