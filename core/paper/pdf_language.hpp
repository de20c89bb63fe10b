#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace oaklight {

/// The bytes of a PDF with its language told, so that a reading program speaks it right, and its
/// title shown in the window. Appended as an incremental update; nothing before it is changed.
///
/// pdf       as Qt writes it: a classic cross-reference table, one trailer
/// language  RFC 3066 tag, "en-US"
/// returns   nothing when the bytes are not such a file
/// source    PDF Reference 1.4, sections 3.4.5 (incremental updates) and 9.8.1 (natural language)
[[nodiscard]] std::optional<std::string> with_language(std::string pdf, std::string_view language);

}  // namespace oaklight
