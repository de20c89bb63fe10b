#pragma once

#include <string>

#include "core/base/embedded.hpp"
#include "core/store/record_fields.hpp"
#include "core/store/record_table.hpp"

namespace oaklight::store {

/// A form as it goes into a new tract file.
FormFile built_in_form(const EmbeddedFile& file, Id<FormFileTag> id);

/// Gives a form a new text, with what follows from it.
void set_text(FormFile& form, std::string text);

/// A file has one row for each form: hands the row of that path over to this record.
/// returns  false: the file has no row of that path
Result<bool> give_row_of_form(SqliteHandle& db, const RecordTable& forms, Row record);

}  // namespace oaklight::store
