#pragma once

#include <string_view>

#include "core/base/result.hpp"
#include "core/forms/form.hpp"

namespace oaklight {

/// Reads a form definition (forms/README.md describes it).
///
/// text     JSON, UTF-8
/// file     its name, for messages
/// returns  the form; each field that needs them has its choices, and all of it can be kept
/// errors   bad_json, where names the place as a JSON pointer
/// ("tally.form.json:/records/3/fields/0"):
///          broken JSON, a member that is missing, unknown or of the wrong type, a name used twice,
///          a field that the program does not keep or cannot do without, a word that the model does
///          not know, a range upside down, a default that is not in its list
Result<Form> read_form(std::string_view text, std::string_view file);

}  // namespace oaklight
