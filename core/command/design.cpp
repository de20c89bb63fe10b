#include <iostream>
#include <map>
#include <random>

#include "core/base/number_text.hpp"
#include "core/command/figure_keys.hpp"
#include "core/command/json_values.hpp"
#include "core/command/program.hpp"
#include "core/command/text_table.hpp"
#include "core/session/cruise_design.hpp"
#include "core/session/tract_work.hpp"

namespace oaklight::command {
namespace {

struct Call {
  std::string tract;
  DesignRequest request;
  double error = 20.0;
  Confidence level;
  std::optional<double> plots_an_acre, hours, cv, factor, plot_acres, mean_dbh;
  std::optional<int> plots;
  std::optional<std::uint64_t> seed;
  int measure_every = 1;
  double azimuth = 0.0;
  bool dry_run = false;
  bool json = false;
};

/// Six digits: short enough to be typed again from paper.
std::uint64_t seed_by_chance() {
  std::random_device device;
  return 1 + device() % 999'999;
}

DesignRequest request_of(const Call& call) {
  DesignRequest request = call.request;
  request.confidence = call.level;
  request.goal = ErrorGoal{Percent{call.error}, call.level};
  if (call.plots) request.goal = PlotsInAll{*call.plots};
  if (call.plots_an_acre) request.goal = PlotsAnAcre{*call.plots_an_acre};
  if (call.hours) request.goal = HoursInAll{*call.hours};
  if (call.cv) request.cv = Percent{*call.cv};
  if (call.mean_dbh) request.mean_dbh = Inches{*call.mean_dbh};
  if (call.factor) request.design = PointDesign{*call.factor, UnitSystem::us};
  if (call.plot_acres) {
    FixedDesign fixed;
    fixed.area = *call.plot_acres;
    request.design = fixed;
  }
  request.azimuth = Degrees{call.azimuth};
  request.measure_every = call.measure_every;
  request.seed = call.seed.value_or(seed_by_chance());
  return request;
}

Json json_of(const CruiseLayout& layout, const DesignRequest& request, bool written) {
  Json stands = Json::array();
  for (const StandLayout& stand : layout.stands) {
    Json plots = Json::array();
    for (const Plot& plot : stand.plots) {
      Json one{{"plot", plot.label}, {"lat", nullptr}, {"lon", nullptr}};
      if (plot.position) {
        one["lat"] = plot.position->latitude.value;
        one["lon"] = plot.position->longitude.value;
      }
      plots.push_back(std::move(one));
    }
    Json spacing = nullptr;
    if (stand.spacing) spacing = stand.spacing->value;
    stands.push_back({{"stand", stand.name},
                      {"acres", stand.acres.value},
                      {"cv_pct", stand.cv.value},
                      {"cv_source", stand.cv_source},
                      {"wanted", stand.wanted},
                      {"spacing_ft", spacing},
                      {"plots", plots}});
  }
  return {{"written", written},
          {"cruise", layout.cruise},
          {"design", design_text(layout.design)},
          {"pattern", word_of(request.pattern)},
          {"azimuth_true", request.azimuth.value},
          {"seed", request.seed},
          {"plots", layout.plots},
          {"expected_error_pct", layout.half_width.value},
          {"level", request.confidence.share()},
          {"hours", layout.hours},
          {"advised_baf", layout.factor.factor},
          {"advised_plot_acres", layout.plot.area.value},
          {"stands", stands},
          {"notes", layout.notes}};
}

void print(const CruiseLayout& layout, const DesignRequest& request, const Call& call) {
  if (call.json) {
    Json json = json_of(layout, request, !call.dry_run);
    add_sources(json, Document::design);
    std::cout << json_text(json) << '\n';
    return;
  }
  std::cout << "Cruise " << layout.cruise << ": " << design_text(layout.design) << ", "
            << layout.plots << " plots, " << word_of(request.pattern);
  if (request.pattern == PlotPattern::grid) {
    std::cout << ", lines at " << number_text(request.azimuth.value, 0) << " degrees true";
  }
  std::cout << ", seed " << request.seed << '\n';
  for (const StandLayout& stand : layout.stands) {
    std::cout << "  " << stand.name << ": " << stand.plots.size() << " plots (" << stand.wanted
              << " wanted) on " << number_text(stand.acres.value, 1) << " acres";
    if (stand.spacing) {
      std::cout << ", every " << number_text(stand.spacing->value, 0) << " ft ("
                << number_text(*stand.spacing / Feet{66.0}, 2) << " chains)";
    }
    std::cout << "; spread " << number_text(stand.cv.value, 0) << " %, " << stand.cv_source
              << " [plots_needed]\n";
  }
  std::cout << "Expected for basal area over all: give or take "
            << number_text(layout.half_width.value, 0) << " % at "
            << number_text(100.0 * request.confidence.share(), 0)
            << " % confidence [plots_needed]\n"
            << "Hours on the ground, one crew: " << number_text(layout.hours, 1)
            << ", ways from the truck not counted [crew_hours]\n"
            << "Advice: factor " << number_text(layout.factor.factor, 0) << " tallies about "
            << number_text(layout.factor.trees_a_point, 1)
            << " trees a point, one of the mean diameter up to "
            << number_text(layout.factor.limit.value, 0) << " ft off; or plots of "
            << number_text(layout.plot.area.value, 2) << " acre with about "
            << number_text(layout.plot.trees_a_plot, 0) << " trees [plot_advice]\n";
  for (const std::string& note : layout.notes) std::cout << "Note: " << note << '\n';
  if (call.dry_run) {
    std::cout << "Nothing was written. The same plots again: --seed " << request.seed << '\n';
  }
}

int run(const Call& call) {
  const DesignRequest request = request_of(call);
  auto session = call.dry_run ? open_to_read(call.tract) : open_to_write(call.tract);
  if (!session) return fail(session.error(), call.json);
  auto data = session->data();
  if (!data) return fail(data.error(), call.json);
  const LiveTract live(*std::move(data));
  const auto layout = lay_out_cruise(live, session->knowledge(), session->store().ids(), request);
  if (!layout) return fail(layout.error(), call.json);
  if (!call.dry_run) {
    if (const Status written = session->store().apply(layout->action); !written) {
      return fail(written.error(), call.json);
    }
  }
  print(*layout, request, call);
  return kDone;
}

template <class Enum>
void add_words(CLI::App& command, const char* option, Enum& value, const char* help,
               const char* shown) {
  std::map<std::string, Enum> words;
  for (const auto& entry : kWords<Enum>) words.emplace(entry.word, entry.value);
  command.add_option(option, value, help)
      ->transform(CLI::CheckedTransformer(words))
      ->option_text(shown);
}

void add_goal(CLI::App& command, Call& call) {
  auto* goal =
      command.add_option_group("goal", "What the cruise is to reach (default: --error 20)");
  goal->add_option("--error", call.error, "Allowed error for basal area, percent of the mean")
      ->check(between(1.0, 100.0));
  goal->add_option("--plots", call.plots, "Plots in all")->check(CLI::Range(1, 5000));
  goal->add_option("--plots-per-acre", call.plots_an_acre, "Plots an acre");
  goal->add_option("--hours", call.hours, "Hours on the ground");
  goal->require_option(0, 1);
  add_confidence(command, call.level);
}

}  // namespace

void add_design(CLI::App& app, int& exit_code) {
  auto call = std::make_shared<Call>();
  CLI::App* command = app.add_subcommand(
      "design", "Lay out a cruise: how many plots, shared out among stands, and where each lies");
  add_tract(*command, call->tract);
  DesignRequest& request = call->request;
  command->add_option("--cruise", request.cruise, "Its name")->required();
  command->add_option("--stand", request.stands, "Only this stand; may be given again");
  add_goal(*command, *call);
  auto* kind = command->add_option_group("plots", "How trees are tallied (default: as advised)");
  kind->add_option("--baf", call->factor, "Points of this basal area factor, ft2/ac");
  kind->add_option("--plot-acres", call->plot_acres, "Fixed plots of this size, acres");
  kind->require_option(0, 1);
  add_words(*command, "--kind", request.kind, "Kind of stand, where no plots tell the spread",
            "even|mixed|patchy");
  command->add_option("--cv", call->cv, "Spread between plots, percent, for all stands")
      ->check(between(1.0, 500.0));
  command->add_option("--mean-dbh", call->mean_dbh, "Mean DBH in inches, for the advice")
      ->check(between(1.0, 60.0));
  add_words(*command, "--share", request.allocation, "How plots are shared out among stands",
            "proportional|neyman");
  add_words(*command, "--pattern", request.pattern, "A random-start grid, or random points",
            "grid|random");
  command->add_option("--azimuth", call->azimuth, "Of the grid's lines, degrees from TRUE north")
      ->check(between(0.0, 360.0));
  command
      ->add_option(
          "--measure-every", call->measure_every,
          "Measure the first point of each stand and every so many-th; on the others only\n"
          "count trees by species (default: 1, measure all)")
      ->check(CLI::Range(1, 50));
  command->add_option("--seed", call->seed, "Chance to use again (default: a new one)");
  command->add_option("--minutes-a-plot", request.pace.minutes_a_plot, "Work at one plot")
      ->check(between(1.0, 600.0));
  command->add_flag("--dry-run", call->dry_run, "Say what would be written, and write nothing");
  add_json(*command, call->json);
  command->footer(
      "Example: oaklight design hollow.gpkg --cruise Spring --error 15 --level 0.9 --azimuth 45\n"
      "Lines run best across the slope, so that ridge and hollow fall on each. A grid is never\n"
      "moved in from an edge. Errors are computed as if plots lay at random.");
  command->callback([call, &exit_code] { exit_code = run(*call); });
}

}  // namespace oaklight::command
