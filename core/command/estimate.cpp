#include <algorithm>
#include <iostream>
#include <nlohmann/json.hpp>

#include "core/base/number_text.hpp"
#include "core/command/estimate_json.hpp"
#include "core/command/program.hpp"
#include "core/command/text_table.hpp"
#include "core/sample/visits.hpp"

namespace oaklight::command {
namespace {

struct Call {
  std::string tract;
  double level = 0.95;
  double goal = 20.0;
  LogRule log_rule = LogRule::international;
  bool json = false;
};

template <class Q>
std::string text_of(const std::optional<Q>& value, int decimals) {
  return value ? number_text(value->value, decimals) : "-";
}

/// What a reader must know about how far a figure can be leaned on.
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

/// One figure with its error as a table row.
template <class Q>
void add_figure(TextTable& table, const std::string& name, const Estimate<Q>& e, int decimals) {
  table.add({name, number_text(e.mean.value, decimals), text_of(e.se, decimals),
             text_of(e.se_pct, 1), text_of(e.lo, decimals), text_of(e.hi, decimals),
             trust_words(e.trust)});
}

std::string percent_text(const EstimateOptions& options) {
  return number_text(100.0 * options.confidence.share(), 1);
}

void print_area(const std::string& title, const AreaEstimate& area, const StandFigures* figures,
                const EstimateOptions& options) {
  std::cout << title << ": " << number_text(area.acres.value, 1) << " acres, " << area.plots
            << " plots (" << area.empty_plots << " empty), " << area.live.stems << " live and "
            << area.dead.stems << " dead trees tallied\n";
  TextTable table({"per acre", "mean", "SE", "SE %", percent_text(options) + " % from", "to", ""});
  add_figure(table, "basal area, ft2", area.live.ba, 1);
  add_figure(table, "trees", area.live.trees, 1);
  if (area.live.board_feet) {
    add_figure(table, "board feet, " + std::string(name_of(options.log_rule)),
               *area.live.board_feet, 0);
  }
  if (area.live.cords) add_figure(table, "cords, whole trees", *area.live.cords, 1);
  if (figures != nullptr) add_figure(table, "stocking, %", figures->stocking.stocking, 1);
  add_figure(table, "standing dead, ft2", area.dead.ba, 1);
  std::cout << table.text();
  if (area.live.without_board_feet > 0 || area.live.without_cords > 0) {
    std::cout << "  not in these volumes: " << area.live.without_board_feet
              << " tallied stems without board feet, " << area.live.without_cords
              << " without cords\n";
  }
  if (area.live.qmd) {
    std::cout << "  mean diameter (QMD) " << number_text(area.live.qmd->qmd.value, 1) << " in\n";
  }
  if (figures != nullptr && figures->stocking.b) {
    std::cout << "  B line at this diameter " << number_text(figures->stocking.b->ba.value, 1)
              << " ft2, A line " << number_text(figures->stocking.a->ba.value, 1) << " ft2"
              << (figures->stocking.fit.fits() ? "" : " (outside the upland oak guide)") << '\n';
  }
  if (area.need) {
    std::cout << "  for " << number_text(options.goal.value, 0)
              << " % of the basal area: " << area.need->plan.plots << " plots, " << area.need->more
              << " more\n";
  }
}

void print_species(const AreaEstimate& area, const SpeciesTable& species) {
  std::vector<const SpeciesFigures*> rows;
  for (const SpeciesFigures& row : area.by_species) rows.push_back(&row);
  std::ranges::stable_sort(rows, [](const SpeciesFigures* a, const SpeciesFigures* b) {
    return a->figures.ba.mean > b->figures.ba.mean;
  });
  TextTable table({"by species", "ft2/ac", "SE", "trees/ac", "SE", "stems", ""});
  for (const SpeciesFigures* row : rows) {
    const Species* s = species.find(row->species);
    const GroupFigures& figures = row->figures;
    const Trust trust = figures.ba.trust;
    table.add({s == nullptr ? std::to_string(row->species.fia) : s->common_name,
               number_text(figures.ba.mean.value, 1), text_of(figures.ba.se, 1),
               number_text(figures.trees.mean.value, 1), text_of(figures.trees.se, 1),
               std::to_string(figures.stems), trust_words(trust)});
  }
  std::cout << table.text();
  TextTable classes({"by 2-in class", "ft2/ac", "SE", "trees/ac", "SE", "stems", ""});
  for (const ClassFigures& row : area.by_class) {
    const Trust trust = row.figures.trees.trust;
    classes.add({std::to_string(row.dbh_class.inches) + " in",
                 number_text(row.figures.ba.mean.value, 1), text_of(row.figures.ba.se, 1),
                 number_text(row.figures.trees.mean.value, 1), text_of(row.figures.trees.se, 1),
                 std::to_string(row.figures.stems), trust_words(trust)});
  }
  std::cout << classes.text();
}

const StandFigures* figures_of(const std::vector<StandFigures>& all, StandId stand) {
  for (const StandFigures& f : all) {
    if (f.stand == stand) return &f;
  }
  return nullptr;
}

void print(const CruiseEstimate& estimate, const std::vector<StandFigures>& figures,
           const TractData& data, const SpeciesTable& species, const EstimateOptions& options) {
  for (const StandEstimate& stand : estimate.stands) {
    std::string name;
    for (const Stand& s : data.stands) {
      if (s.id == stand.stand) name = s.name;
    }
    if (stand.figures) {
      print_area(name, *stand.figures, figures_of(figures, stand.stand), options);
    } else {
      std::cout << name << ": " << to_text(stand.figures.error()) << '\n';
    }
    std::cout << '\n';
  }
  if (estimate.all) {
    print_area("All cruised stands, by acres", *estimate.all, nullptr, options);
    print_species(*estimate.all, species);
  } else {
    std::cout << "All stands together: " << to_text(estimate.all.error()) << '\n';
  }
  const VisitsLeftOut earlier = visits_left_out(data);
  if (!earlier.empty()) {
    std::cout << "Plots were visited more than once: the newest visit counts here. What changed is "
                 "told by: oaklight compare\n";
  }
  std::cout << "Plots on a grid are computed as if random, which tends to overstate the error.\n";
}

int run(const Call& call) {
  const auto confidence = Confidence::from_share(call.level);
  if (!confidence) return fail(confidence.error(), call.json);
  const auto session = open_to_read(call.tract);
  if (!session) return fail(session.error(), call.json);
  EstimateOptions options;
  options.confidence = *confidence;
  options.log_rule = call.log_rule;
  options.goal = Percent{call.goal};
  const auto data = session->data();
  if (!data) return fail(data.error(), call.json);
  const auto estimate = session->estimate(options);
  if (!estimate) return fail(estimate.error(), call.json);
  if (estimate->stands.empty()) return fail(estimate->all.error(), call.json);
  const auto figures = session->stand_figures(options);
  if (!figures) return fail(figures.error(), call.json);
  const SpeciesTable& species = session->knowledge().species();
  if (call.json) {
    std::cout << estimate_json(*estimate, *figures, *data, species, options) << '\n';
  } else {
    print(*estimate, *figures, *data, species, options);
  }
  return kDone;
}

}  // namespace

void add_estimate(CLI::App& app, int& exit_code) {
  auto call = std::make_shared<Call>();
  CLI::App* command = app.add_subcommand(
      "estimate", "Per-acre figures of a cruise with their errors, by stand and over all stands");
  add_tract(*command, call->tract);
  add_confidence(*command, call->level);
  command->add_option("--goal", call->goal, "Error allowed for basal area, percent (default: 20)")
      ->check(CLI::Range(1.0, 100.0));
  add_log_rule(*command, call->log_rule);
  add_json(*command, call->json);
  command->footer("Example: oaklight estimate hollow.gpkg --level 0.9 --log-rule doyle");
  command->callback([call, &exit_code] { exit_code = run(*call); });
}

}  // namespace oaklight::command
