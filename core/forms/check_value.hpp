#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "core/base/result.hpp"
#include "core/forms/form.hpp"
#include "core/forms/species_names.hpp"

namespace oaklight {

/// What one field holds; monostate is "not recorded". By kind: text, choice, date -> string (the
/// word of the list); choices -> strings; species -> SpeciesCode; diameter -> Dbh; length ->
/// TapedLength; whole -> int64; yes_no -> bool; all others -> double in the field's unit.
using FieldValue = std::variant<std::monostate, std::string, std::vector<std::string>, SpeciesCode,
                                Dbh, TapedLength, std::int64_t, double, bool>;

/// Reads what was typed into one field. Empty text gives the field's default, or monostate.
///
/// system   of the file or the crew; decides the unit and the range
/// text     as typed; blanks around it do not matter
/// returns  the value; an azimuth of 360 becomes 0
/// errors   not_a_number, not_a_choice, out_of_range, unknown_species, missing_value for a field
/// that
///          is required; bad_csv for control characters in text. `where` is the column of the
///          field.
/// assumes  the form came from read_form, so that the field's choice list exists
Result<FieldValue> check_value(const Form& form, const Field& field, UnitSystem system,
                               std::string_view text, const SpeciesNames& names);

}  // namespace oaklight
