#include "core/session/plot_centre.hpp"

#include "core/base/number_text.hpp"
#include "core/place/geodesy.hpp"
#include "core/session/plot_work.hpp"
#include "core/session/records_named.hpp"

namespace oaklight {
namespace {

constexpr std::string_view kFound = "Centre by GNSS";

std::string metres_text(Metres length) { return number_text(length.value, 1) + " m"; }

/// The note without what an earlier finding of the centre said, which runs to its full stop.
std::string without_finding(const std::string& note) {
  const std::size_t begin = note.find(kFound);
  if (begin == std::string::npos) return note;
  const std::size_t stop = note.find(". ", begin);
  std::string kept = note.substr(0, begin);
  if (stop != std::string::npos) kept += note.substr(stop + 2);
  while (!kept.empty() && kept.back() == ' ') kept.pop_back();
  return kept;
}

/// Where the plot was to be: nothing once a centre was recorded, which is no plan.
std::optional<Position> planned_place(const Plot& plot) {
  return plot.note.find(kFound) == std::string::npos && !plot.accuracy ? plot.position
                                                                       : std::nullopt;
}

}  // namespace

std::string centre_words(const MeanFix& centre, const std::optional<Position>& before) {
  std::string words(kFound);
  if (centre.poor) words += ", POOR";
  words += ": mean of " + std::to_string(centre.fixes) + (centre.fixes == 1 ? " fix" : " fixes") +
           ", spread " + metres_text(centre.spread) +
           (centre.accuracy ? ", accuracy " + metres_text(*centre.accuracy)
                            : std::string(", no accuracy told"));
  if (before) {
    words += ", " + metres_text(to_metres(leg_between(*before, centre.at).distance)) +
             " from the planned place";
  }
  return words + ".";
}

Result<Action> record_centre(const LiveTract& live, const TractKnowledge& knowledge, PlotId id,
                             const MeanFix& centre) {
  const Plot* plot = live.find(id);
  if (plot == nullptr) return no_such("plot", to_text(id));
  const std::string kept = without_finding(plot->note);
  PlotVisit visit;
  visit.position = centre.at;
  visit.accuracy = centre.accuracy;
  visit.note = kept +
               (kept.empty()         ? ""
                : kept.back() == '.' ? " "
                                     : ". ") +
               centre_words(centre, planned_place(*plot));
  auto action = start_plot(live, knowledge, id, visit);
  if (!action) return action.error();
  // The plot alone: nobody said that a crew began.
  return Action{"centre of " + plot_name(*plot), {std::move(action->changes.front())}};
}

}  // namespace oaklight
