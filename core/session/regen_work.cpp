#include <algorithm>

#include "core/session/form_check.hpp"
#include "core/session/plot_work.hpp"
#include "core/session/records_named.hpp"

namespace oaklight {
namespace {

const Regen* find_regen(const LiveTract& live, const SeedlingCell& cell) {
  for (const Regen* regen : live.regens_of(cell.plot)) {
    if (regen->species == cell.species && regen->height == cell.height) return regen;
  }
  return nullptr;
}

std::string_view height_words(RegenHeight height) {
  switch (height) {
    case RegenHeight::under_1_ft:
      return "under 1 ft";
    case RegenHeight::from_1_to_4_5_ft:
      return "1 to 4.5 ft";
    case RegenHeight::over_4_5_ft:
      return "over 4.5 ft";
  }
  return "";
}

/// Seedlings are counted on ground of a known size, on a plot that was visited.
std::optional<Error> fault_of(const LiveTract& live, const TractKnowledge& knowledge,
                              const SeedlingCell& cell, int count) {
  const Plot* plot = live.find(cell.plot);
  if (plot == nullptr) return no_such("plot", to_text(cell.plot));
  const Cruise* cruise = live.find(plot->cruise);
  FormCheck check(knowledge.form, "regeneration", plot_path(*plot) + "/regeneration",
                  UnitSystem::us);
  check.refuse_if(plot->status == PlotStatus::planned || plot->status == PlotStatus::skipped,
                  ErrorCode::contradiction, "plot",
                  plot_title(*plot) + " is " + std::string(word_of(plot->status)) +
                      ", so no seedlings were counted there.",
                  "Tally its first tree or call it empty, then count seedlings.");
  check.refuse_if(taken_at(*plot).task == PlotTask::count, ErrorCode::contradiction, "plot",
                  plot_title(*plot) + " is a count point.",
                  "Seedlings are counted at measure points: make it one.");
  check.refuse_if(cruise == nullptr || !cruise->regen_area, ErrorCode::missing_value,
                  "regen_plot_area",
                  "The cruise does not say on how much ground seedlings are counted.",
                  "Use a cruise with the size of its seedling plot.");
  check.refuse_if(knowledge.species().find(cell.species) == nullptr, ErrorCode::unknown_species,
                  "species",
                  "Species " + std::to_string(cell.species.fia) + " is not in the table.",
                  "Choose another, or add it to the tract's species.");
  check.refuse_if(count < 0, ErrorCode::out_of_range, "count", "There are none to take off.",
                  "A count begins at 0.");
  return check.whole("count", count).fault();
}

}  // namespace

std::optional<int> regen_count(const LiveTract& live, const SeedlingCell& cell) {
  const Regen* regen = find_regen(live, cell);
  return regen == nullptr ? std::nullopt : std::optional(regen->count);
}

Result<Action> count_regen(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
                           const SeedlingCell& cell, int step) {
  return set_regen(live, knowledge, ids, cell, regen_count(live, cell).value_or(0) + step);
}

Result<Action> set_regen(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
                         const SeedlingCell& cell, std::optional<int> count) {
  const Regen* before = find_regen(live, cell);
  const std::string what =
      species_name(knowledge, cell.species) + " " + std::string(height_words(cell.height));
  if (!count) {
    if (before == nullptr) return Action{"not counted: " + what, {}};
    return Action{"not counted: " + what, {Remove{before->id}}};
  }
  if (auto fault = fault_of(live, knowledge, cell, *count)) return *std::move(fault);
  const RegenId id = before == nullptr ? ids.next_id<RegenTag>() : before->id;
  return Action{"seedlings " + what + ": " + std::to_string(*count),
                {Regen{id, cell.plot, cell.species, cell.height, *count}}};
}

}  // namespace oaklight
