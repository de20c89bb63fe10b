// Calls that set a tract up.
#include <array>

#include "core/base/number_text.hpp"
#include "core/session/plot_work.hpp"
#include "core/session/tract_work.hpp"
#include "mobile/web/bridge/tract_json.hpp"

namespace oaklight::web {
namespace {

Result<Json> set_tract(WebDesk& desk, const Arguments& arguments) {
  const auto written = desk.submit([&](OpenTract& tract) {
    Tract changed = tract.live.data().tract;
    if (const auto name = arguments.text("name")) changed.name = *name;
    if (const auto county = arguments.text("county")) changed.county = *county;
    if (const auto state = arguments.text("state")) changed.state = *state;
    return change_tract(tract.live, tract.knowledge, changed);
  });
  if (!written) return written.error();
  return tract_json(desk, arguments.system());
}

/// A number, or the text that a person typed. Errors: not_a_number.
Result<double> number_of(const Arguments& arguments, const char* name) {
  if (const auto value = arguments.number(name)) return *value;
  return number_from_text(arguments.text(name).value_or(""));
}

/// Puts an area in, where the page names one in acres or in hectares. Errors: not_a_number.
template <class Area>
Status put_area(Area& area, const Arguments& arguments, const char* acres, const char* hectares) {
  const bool metric = arguments.has(hectares);
  if (!metric && !arguments.has(acres)) return Done{};
  const auto value = number_of(arguments, metric ? hectares : acres);
  if (!value) return value.error();
  area = metric ? to_acres(SquareMetres{*value * kSquareMetresPerHectare}) : Acres{*value};
  return Done{};
}

Status put_stand(Stand& stand, const Arguments& arguments) {
  if (const auto name = arguments.text("name")) stand.name = *name;
  if (Status put = put_area(stand.acres, arguments, "acres", "hectares"); !put) return put;
  return put_area(stand.walked, arguments, "walked", "walkedHectares");
}

Result<Json> add_stand_call(WebDesk& desk, const Arguments& arguments) {
  const auto written = desk.submit([&](OpenTract& tract) -> Result<Action> {
    Stand stand;
    if (const Status put = put_stand(stand, arguments); !put) return put.error();
    return add_stand(tract.live, tract.knowledge, tract.ids, stand);
  });
  if (!written) return written.error();
  return changed(desk, {{"stand", to_text(desk.tract()->live.data().stands.back().id)}});
}

Result<Json> change_stand_call(WebDesk& desk, const Arguments& arguments) {
  const auto id = arguments.id<StandId>("stand");
  if (!id) return id.error();
  const auto written = desk.submit([&](OpenTract& tract) -> Result<Action> {
    const Stand* known = tract.live.find(*id);
    Stand stand = known == nullptr ? Stand{} : *known;
    stand.id = *id;
    if (const Status put = put_stand(stand, arguments); !put) return put.error();
    return change_stand(tract.live, tract.knowledge, stand);
  });
  if (!written) return written.error();
  return changed(desk);
}

Result<Design> design_of(const Arguments& design) {
  if (const auto baf = design.number("baf")) return Design(PointDesign{*baf, UnitSystem::us});
  if (const auto baf = design.number("baf_m2"))
    return Design(PointDesign{*baf, UnitSystem::metric});
  FixedDesign fixed;
  if (const auto acres = design.number("acres")) {
    fixed.area = *acres;
  } else if (const auto hectares = design.number("ha")) {
    fixed.area = *hectares;
    fixed.system = UnitSystem::metric;
  } else {
    return design.missing("design");
  }
  return Design(fixed);
}

Result<Json> add_cruise_call(WebDesk& desk, const Arguments& arguments) {
  const auto written = desk.submit([&](OpenTract& tract) -> Result<Action> {
    Cruise cruise;
    cruise.name = arguments.text("name").value_or("");
    const auto design = design_of(arguments.inside("design"));
    if (!design) return design.error();
    cruise.design = *design;
    if (arguments.has("min_dbh_tenths")) {
      const auto least = arguments.dbh("min_dbh_tenths");
      if (!least) return least.error();
      cruise.min_dbh = *least;
    }
    return add_cruise(tract.live, tract.knowledge, tract.ids, cruise);
  });
  if (!written) return written.error();
  return changed(desk, {{"cruise", to_text(desk.tract()->live.data().cruises.back().id)}});
}

Result<Json> add_plots_call(WebDesk& desk, const Arguments& arguments) {
  const auto stand = arguments.id<StandId>("stand");
  if (!stand) return stand.error();
  const auto cruise = arguments.id<CruiseId>("cruise");
  if (!cruise) return cruise.error();
  const auto written = desk.submit([&](OpenTract& tract) {
    return add_plots(tract.live, tract.knowledge, tract.ids, *stand, *cruise,
                     arguments.whole("count").value_or(0));
  });
  if (!written) return written.error();
  return changed(desk);
}

constexpr std::array kCalls = {
    NamedCall{"setTract", set_tract}, NamedCall{"addStand", add_stand_call},
    NamedCall{"changeStand", change_stand_call}, NamedCall{"addCruise", add_cruise_call},
    NamedCall{"addPlots", add_plots_call}};

}  // namespace

std::span<const NamedCall> setup_calls() { return kCalls; }

Json changed(WebDesk& desk, Json answer) {
  answer["undo"] = desk.undo_json();
  return answer;
}

}  // namespace oaklight::web
