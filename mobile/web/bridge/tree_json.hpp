#pragma once

#include <functional>

#include "mobile/web/bridge/web_desk.hpp"

// One tree of a plot as the page shows it.

namespace oaklight::web {

/// The tree that the page names. Errors: missing_value; unknown_reference.
[[nodiscard]] Result<const Tree*> tree_of(WebDesk& desk, const Arguments& arguments);
[[nodiscard]] Json tree_json(const OpenTract& tract, const Tree& tree);
/// Its readings in the order of the sheet, each with its unit.
[[nodiscard]] Json readings_json(const OpenTract& tract, const Tree& tree);

/// Whether a choice of the form is on.
using IsOn = std::function<bool(const std::string&)>;
/// A list of the tract's form: {word, label, help, group, on}.
[[nodiscard]] Json choices_of(const OpenTract& tract, const char* name, const IsOn& on);

}  // namespace oaklight::web
