#pragma once

#include "core/session/card_work.hpp"
#include "mobile/web/bridge/arguments.hpp"

namespace oaklight::web {

/// What the page says of a new tree of the walk. Errors: missing_value without species or size; of
/// put_facts.
[[nodiscard]] Result<WalkTreeDraft> walk_draft(const Arguments& arguments);
/// How it says that the tree stands, put over what is known. Errors: missing_value; out_of_range.
[[nodiscard]] Result<ContactDraft> contact_of(const Arguments& arguments, UnitSystem system,
                                              ContactDraft draft);

}  // namespace oaklight::web
