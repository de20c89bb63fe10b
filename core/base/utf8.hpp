#pragma once

#include <string_view>

namespace oaklight {

/// Whether bytes are well-formed UTF-8 (RFC 3629: no overlong forms, no surrogates).
bool is_utf8(std::string_view bytes);

/// Whether line ends and tabs may stand in a text: in a long note, not in a name.
enum class Lines { refused, allowed };

/// Whether text holds control characters or such as turn the direction of writing. They belong
/// nowhere: they could steer the terminal or garble the page on which the text is shown later.
bool steers(std::string_view text, Lines lines);

}  // namespace oaklight
