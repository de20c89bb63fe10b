#include "core/base/json_limits.hpp"

#include <algorithm>

namespace oaklight {

std::optional<Error> json_beyond_limits(std::string_view text, std::string_view file) {
  const std::string name(file);
  if (text.size() > kMaxJsonBytes) {
    return Error{ErrorCode::bad_json, "The file is larger than 8 MiB.", name,
                 "Keep what belongs to this tract, and simplify its outlines."};
  }
  int depth = 0;
  bool in_text = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (in_text && c == '\\') ++i;
    if (c == '"') in_text = !in_text;
    if (in_text) continue;
    if (c == '[' || c == '{') ++depth;
    if (c == ']' || c == '}') --depth;
    if (depth <= kMaxJsonDepth) continue;
    const auto line = 1 + std::count(text.begin(), text.begin() + static_cast<long>(i), '\n');
    return Error{ErrorCode::bad_json, "Brackets stand within brackets, more than 64 deep.",
                 name + ":" + std::to_string(line), "Export the file again; no map or form is so."};
  }
  return std::nullopt;
}

}  // namespace oaklight
