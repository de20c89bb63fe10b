#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>

#include "core/base/error.hpp"
#include "core/model/species.hpp"
#include "core/release/plan.hpp"
#include "core/units/units.hpp"

namespace oaklight::command {

/// Members in the order in which they were put in.
using Json = nlohmann::ordered_json;

/// As the programs print it. A text that is not UTF-8, as a path can be, is shown with U+FFFD and
/// stops nothing.
inline std::string json_text(const Json& json) {
  return json.dump(2, ' ', false, Json::error_handler_t::replace);
}

inline double plain(double x) { return x; }
template <class Unit>
double plain(Quantity<Unit> x) {
  return x.value;
}

/// The number, or null for what is not known.
template <class T>
Json optional_json(const std::optional<T>& value) {
  return value ? Json(plain(*value)) : Json(nullptr);
}

inline Json text_or_null(const std::string& text) {
  return text.empty() ? Json(nullptr) : Json(text);
}

inline Json error_json(const Error& error) {
  return {{"code", name_of(error.code)},
          {"what", error.what},
          {"where", error.where},
          {"fix", error.fix}};
}

inline Json light_json(const Light& light) {
  return {{"sides_free", light.sides_free},
          {"sides_shared", light.sides_shared},
          {"sides_unknown", light.sides_unknown},
          {"open_pct", light.open.value}};
}

inline Json light_or_null(const std::optional<Light>& light) {
  return light ? light_json(*light) : Json(nullptr);
}

/// The common name; the code where the table has no such species.
inline std::string species_name(SpeciesCode code, const SpeciesTable& table) {
  const Species* species = table.find(code);
  return species == nullptr ? std::to_string(code.fia) : species->common_name;
}

}  // namespace oaklight::command
