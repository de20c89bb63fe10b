#pragma once

#include "core/store/field_reader.hpp"
#include "core/store/field_writer.hpp"
#include "core/store/record_fields.hpp"

namespace oaklight::store {

/// A record as a row, in use. base is the row as the file has it, or all NULL for a new record; the
/// columns of every record but uid are left to who writes the row.
template <class R>
Result<Row> row_of(const RecordTable& table, Row base, const R& record) {
  FieldWriter writer(table, std::move(base));
  Fields<R>::visit(writer, record);
  auto row = writer.finish();
  if (row) table.at(*row, "deleted") = std::int64_t{0};
  return row;
}

/// A row as a record. Errors: damaged, naming table, record and column.
template <class R>
Result<R> record_of(const RecordTable& table, const Row& row) {
  R record = Fields<R>::blank();
  FieldReader reader(table, row);
  Fields<R>::visit(reader, record);
  if (const auto read = reader.finish(); !read) return read.error();
  return record;
}

}  // namespace oaklight::store
