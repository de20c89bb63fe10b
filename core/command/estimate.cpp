#include <iostream>

#include "core/command/estimate_json.hpp"
#include "core/command/estimate_text.hpp"
#include "core/command/program.hpp"
#include "core/command/stand_table_text.hpp"
#include "core/session/tract_estimate.hpp"

namespace oaklight::command {
namespace {

struct Call {
  std::string tract;
  Confidence level;
  double goal = 20.0;
  LogRule log_rule = LogRule::international;
  bool fpc = false;
  bool post_strata = false;
  bool plots_less_stands = false;
  bool stand_table = false;
  bool json = false;
};

int run(const Call& call) {
  const auto session = open_to_read(call.tract);
  if (!session) return fail(session.error(), call.json);
  EstimateOptions options;
  options.confidence = call.level;
  options.log_rule = call.log_rule;
  options.goal = Percent{call.goal};
  options.finite_population = call.fpc;
  options.placed_over_tract = call.post_strata;
  if (call.plots_less_stands) options.df = DegreesOfFreedom::plots_less_strata;
  const auto found = estimate_of(session->store(), session->knowledge(), options);
  if (!found) return fail(found.error(), call.json);
  const SpeciesTable& species = session->knowledge().species();
  const auto& [data, estimate, figures, asked] = *found;
  if (call.json) {
    std::cout << estimate_json(estimate, figures, data, species, asked) << '\n';
  } else {
    std::cout << estimate_text(estimate, figures, data, species, asked);
    if (call.stand_table && estimate.all) std::cout << stand_table_text(*estimate.all, species);
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
      ->check(between(1.0, 100.0));
  add_log_rule(*command, call->log_rule);
  command->add_flag("--fpc", call->fpc,
                    "Correct the error of fixed plots for the share of the stand that they cover.\n"
                    "Right only where they are a draw from a tiling of the stand");
  command->add_flag(
      "--post-strata", call->post_strata,
      "The plots were laid out over the whole tract and sorted into stands afterwards");
  command->add_flag("--plots-less-stands", call->plots_less_stands,
                    "Degrees of freedom over stands: plots less stands, not Satterthwaite's");
  command->add_flag("--stand-table", call->stand_table,
                    "Then trees and basal area by diameter class and species, of all stands\n"
                    "together; --json has them anyway");
  add_json(*command, call->json);
  command->footer("Example: oaklight estimate hollow.gpkg --level 0.9 --log-rule doyle");
  command->callback([call, &exit_code] { exit_code = run(*call); });
}

}  // namespace oaklight::command
