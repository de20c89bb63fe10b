#pragma once

#include <string>
#include <string_view>

#include "core/session/live_tract.hpp"

// Words shared by the files that make actions.

namespace oaklight {

/// "There is no such plot any more.", for an id that is not in use.
[[nodiscard]] inline Error no_such(std::string_view kind, const std::string& id) {
  return {ErrorCode::unknown_reference, "There is no such " + std::string(kind) + " any more.",
          std::string(kind) + "/" + id, "It may have been removed; choose another."};
}

/// "plot 7".
[[nodiscard]] inline std::string plot_name(const Plot& plot) { return "plot " + plot.label; }
/// The same at the start of a sentence.
[[nodiscard]] inline std::string plot_title(const Plot& plot) { return "Plot " + plot.label; }
/// "plot/7", the way into an Error's `where`.
[[nodiscard]] inline std::string plot_path(const Plot& plot) { return "plot/" + plot.label; }

}  // namespace oaklight
