#pragma once

#include <string_view>

#include "core/command/json_values.hpp"

namespace oaklight::command {

/// The kinds of --json documents, since a member may be made otherwise in another one.
enum class Document { estimate, compare, stumps, release, design };

/// The key of the source note of the figures under a member; "" for what is no figure but a count,
/// a name or an answer.
[[nodiscard]] std::string_view figure_key(std::string_view member, Document kind);

/// Adds the member "sources": for each member of the document that holds a figure, the key of its
/// note (oaklight source KEY).
void add_sources(Json& document, Document kind);

}  // namespace oaklight::command
