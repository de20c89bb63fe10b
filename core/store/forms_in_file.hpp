#pragma once

#include <string>

#include "core/base/embedded.hpp"
#include "core/store/record_fields.hpp"

namespace oaklight::store {

/// A form as it goes into a new tract file.
FormFile built_in_form(const EmbeddedFile& file, Id<FormFileTag> id);

/// Gives a form a new text, with what follows from it.
void set_text(FormFile& form, std::string text);

}  // namespace oaklight::store
