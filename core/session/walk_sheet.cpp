#include "core/session/walk_sheet.hpp"

#include "core/base/number_text.hpp"
#include "core/place/declination.hpp"
#include "core/place/position_text.hpp"
#include "core/sample/plot_spacing.hpp"

namespace oaklight {
namespace {

/// Three digits of a bearing, without the word for its north.
std::string digits_of(const std::string& bearing) { return bearing.substr(0, 3); }

Result<std::vector<PlanLeg>> legs_of(const std::vector<Leg>& legs,
                                     const Result<Declination>& declination,
                                     const SheetRequest& request) {
  std::vector<PlanLeg> told;
  for (const Leg& leg : legs) {
    PlanLeg words{digits_of(true_words(leg.azimuth)), "", distance_text(leg.distance, request.unit),
                  ""};
    if (declination) words.magnetic_bearing = digits_of(magnetic_words(leg.azimuth, *declination));
    if (request.pace) {
      const auto paces = paces_for(leg.distance, *request.pace);
      if (!paces) return paces.error();
      words.paces = std::to_string(*paces);
    }
    told.push_back(std::move(words));
  }
  return told;
}

std::vector<std::string> head_of(const WalkRoute& route, const Result<Declination>& declination,
                                 const SheetRequest& request) {
  std::vector<std::string> head;
  head.push_back("Start and end: " + decimal_degrees_text(route.start) + ". " +
                 std::to_string(route.stops.size()) +
                 (route.stops.size() == 1 ? " plot, " : " plots, ") +
                 distance_text(route.length, request.unit) + " in all.");
  head.push_back(route.exact
                     ? "No other order is a shorter walk."
                     : "The shortest order found; at most " + number_text(100.0 * route.gap(), 1) +
                           " % of the walk could be saved.");
  head.push_back(declination
                     ? "Declination " + declination_words(*declination) +
                           ". Set a compass to MAGNETIC bearings only when its own is set to 0."
                     : "No declination is known here: use TRUE bearings.");
  if (request.pace) {
    head.push_back("Paces: " + number_text(request.pace->paces, 0) +
                   (request.pace->system == UnitSystem::us ? " in 100 ft." : " in 100 m.") +
                   " Distances are level: on a slope take more paces.");
  }
  return head;
}

/// What comes before any bearing.
std::vector<std::string> cautions() {
  return {
      "Tell somebody where you go and when you will be back. Know where a phone works.",
      "A bearing is no path: go round water, cliffs, dead and leaning trees, and look up first. Do "
      "not enter a neighbour's land without leave.",
      "Local codes, and whoever answers for the crew, come before this sheet."};
}

}  // namespace

std::string distance_text(Feet distance, WalkUnit unit) {
  switch (unit) {
    case WalkUnit::chains:
      return number_text(distance / kChain, 2) + " ch";
    case WalkUnit::metres:
      return number_text(to_metres(distance).value, 0) + " m";
    case WalkUnit::feet:
      break;
  }
  return number_text(distance.value, 0) + " ft";
}

Result<PlanSheet> sheet_of(const Tract& tract, const WalkRoute& route,
                           const SheetRequest& request) {
  const auto declination = declination_at(route.start, request.day);
  PlanSheet sheet;
  sheet.tract = tract.name;
  sheet.demo = tract.demo;
  sheet.made_on = to_text(request.day);
  sheet.cautions = cautions();
  sheet.head = head_of(route, declination, request);
  for (const RouteStop& stop : route.stops) {
    auto legs = legs_of(stop.legs, declination, request);
    if (!legs) return legs.error();
    sheet.stops.push_back(
        {stop.stand_name + " " + stop.label, decimal_degrees_text(stop.at), *std::move(legs)});
  }
  auto back = legs_of(route.back, declination, request);
  if (!back) return back.error();
  sheet.stops.push_back({"back to the start", decimal_degrees_text(route.start), *std::move(back)});
  sheet.notes = route.notes;
  for (const std::string& left_out : route.left_out) sheet.notes.push_back(left_out + ".");
  return sheet;
}

std::vector<Waypoint> waypoints_of(const WalkRoute& route) {
  std::vector<Waypoint> places;
  for (const RouteStop& stop : route.stops) {
    places.push_back({stop.stand_name + " " + stop.label, stop.at, ""});
  }
  return places;
}

}  // namespace oaklight
