#include "core/session/tract_work.hpp"

#include <algorithm>
#include <utility>

#include "core/base/number_text.hpp"
#include "core/forms/csv_file.hpp"
#include "core/measure/plot_geometry.hpp"
#include "core/session/form_check.hpp"
#include "core/session/plot_work.hpp"
#include "core/session/records_named.hpp"

namespace oaklight {
namespace {

constexpr UnitSystem kStored = UnitSystem::us;  // acres and feet, as the records hold them

std::optional<Error> fault_of(const TractKnowledge& knowledge, const Tract& tract) {
  FormCheck check(knowledge.form, "tract", "tract", kStored);
  check.text("name", tract.name)
      .text("county", tract.county)
      .text("contact", tract.contact)
      .text("directions", tract.directions)
      .text("meeting_place", tract.meeting_place)
      .text("phone_place", tract.phone_place);
  const bool letters =
      std::ranges::all_of(tract.state, [](char c) { return c >= 'A' && c <= 'Z'; });
  check.refuse_if(!tract.state.empty() && !(letters && tract.state.size() == 2),
                  ErrorCode::not_a_choice, "state",
                  "State \"" + tract.state + "\" is not two letters.", "Write it like OH.");
  if (tract.landing) {
    check.number("landing_lat", tract.landing->latitude.value)
        .number("landing_lon", tract.landing->longitude.value);
  }
  return check.fault();
}

std::optional<Error> fault_of(const LiveTract& live, const TractKnowledge& knowledge,
                              const Stand& stand) {
  constexpr double kMapsDiffer = 1.1;  // a walked area is taken off another map than the owner's
  FormCheck check(knowledge.form, "stands", "stand/" + stand.name, kStored);
  check.text("stand", stand.name)
      .number("acres", stand.acres.value)
      .quantity("walked_acres", stand.walked)
      .whole("age_years", stand.age_years)
      .quantity("site_index", stand.site_index);
  check.refuse_if(stand.walked && *stand.walked > stand.acres * kMapsDiffer,
                  ErrorCode::contradiction, "walked_acres",
                  "More ground was walked than the stand has.", "Correct one of the two areas.");
  for (const Stand& other : live.data().stands) {
    const bool same = other.id != stand.id && lower_case(other.name) == lower_case(stand.name);
    check.refuse_if(same, ErrorCode::duplicate, "stand",
                    "The tract has a stand \"" + other.name + "\" already.",
                    "Give this one another name.");
  }
  return check.fault();
}

std::string area_number(double area) {
  std::string text = number_text(area, 4);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.ends_with('.')) text.pop_back();
  return text;
}

void check_against_form(FormCheck& check, const Cruise& cruise) {
  check.text("cruise", cruise.name).text("crew", cruise.crew).text("date", cruise.date);
  if (const auto* point = std::get_if<PointDesign>(&cruise.design)) {
    check.number("baf", point->factor);
  } else {
    const auto& fixed = std::get<FixedDesign>(cruise.design);
    check.number("plot_area", fixed.area)
        .number("small_plot_area", fixed.small_area)
        .dbh("small_below", fixed.small_below);
  }
  check.dbh("min_dbh", cruise.min_dbh).number("regen_plot_area", cruise.regen_area);
}

std::optional<Error> fault_of(const LiveTract& live, const TractKnowledge& knowledge,
                              const Cruise& cruise) {
  const UnitSystem system = std::visit([](const auto& d) { return d.system; }, cruise.design);
  FormCheck check(knowledge.form, "plots", "cruise/" + cruise.name, system);
  check_against_form(check, cruise);
  if (check.fault()) return check.fault();
  if (const Status sound = check_design(cruise.design); !sound) {
    Error error = sound.error();
    error.where = "cruise/" + cruise.name + "/" + error.where;
    return error;
  }
  const auto* fixed = std::get_if<FixedDesign>(&cruise.design);
  const bool none_small = fixed != nullptr && fixed->small_below && cruise.min_dbh &&
                          cruise.min_dbh->hundredth_mm() >= fixed->small_below->hundredth_mm();
  check.refuse_if(none_small, ErrorCode::contradiction, "small_below",
                  "No tree can fall on the small plot: it is for thinner trees than are tallied.",
                  "Correct one of the two diameters.");
  for (const Cruise& other : live.data().cruises) {
    check.refuse_if(other.name == cruise.name, ErrorCode::duplicate, "cruise",
                    "The tract has a cruise \"" + cruise.name + "\" already.",
                    "Give this one another name.");
  }
  return check.fault();
}

}  // namespace

Result<Action> change_tract(const LiveTract& live, const TractKnowledge& knowledge, Tract tract) {
  tract.demo = tract.demo || live.data().tract.demo;
  if (auto fault = fault_of(knowledge, tract)) return *std::move(fault);
  return Action{"change the tract", {std::move(tract)}};
}

Result<Action> add_stand(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
                         Stand stand) {
  stand.id = StandId{};
  if (auto fault = fault_of(live, knowledge, stand)) return *std::move(fault);
  stand.id = ids.next_id<StandTag>();
  return Action{"add stand " + stand.name, {stand}};
}

Result<Action> change_stand(const LiveTract& live, const TractKnowledge& knowledge, Stand stand) {
  const Stand* before = live.find(stand.id);
  if (before == nullptr) return no_such("stand", to_text(stand.id));
  if (auto fault = fault_of(live, knowledge, stand)) return *std::move(fault);
  return Action{"change stand " + before->name, {std::move(stand)}};
}

Result<Action> add_cruise(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
                          Cruise cruise) {
  if (auto fault = fault_of(live, knowledge, cruise)) return *std::move(fault);
  cruise.id = ids.next_id<CruiseTag>();
  return Action{"add cruise " + cruise.name, {cruise}};
}

std::string design_text(const Design& design) {
  if (const auto* point = std::get_if<PointDesign>(&design)) {
    const bool us = point->system == UnitSystem::us;
    return "point, BAF " + area_number(point->factor) + (us ? " ft2/ac" : " m2/ha");
  }
  const auto& fixed = std::get<FixedDesign>(design);
  const std::string unit = fixed.system == UnitSystem::us ? " ac" : " ha";
  std::string text = "fixed plot, " + area_number(fixed.area) + unit;
  if (fixed.small_area && fixed.small_below) {
    text +=
        "; under " + dbh_text(*fixed.small_below) + " on " + area_number(*fixed.small_area) + unit;
  }
  return text;
}

}  // namespace oaklight
