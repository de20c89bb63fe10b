#include "core/store/sqlite_error.hpp"

#include <sqlite3.h>

namespace oaklight::store {
namespace {

Error constraint_error(int code, const std::string& detail, const std::string& where) {
  switch (code) {
    case SQLITE_CONSTRAINT_UNIQUE:
    case SQLITE_CONSTRAINT_PRIMARYKEY:
      return {ErrorCode::duplicate, "The tract has this already" + detail + ".", where,
              "Choose another name, label or tag."};
    case SQLITE_CONSTRAINT_FOREIGNKEY:
      return {ErrorCode::unknown_reference,
              "A record points at another one that the file does not hold" + detail + ".", where,
              "Add that record first."};
    case SQLITE_CONSTRAINT_NOTNULL:
      return {ErrorCode::missing_value, "A value is missing" + detail + ".", where, "Give it."};
    default:
      return {ErrorCode::out_of_range, "A value is not one that the file may hold" + detail + ".",
              where, "Check the record."};
  }
}

}  // namespace

Error sqlite_error(int code, std::string_view message, const std::string& where) {
  const std::string detail = message.empty() ? "" : " (" + std::string(message) + ")";
  // A function that the authorizer denies comes back as a plain error, told only by its text.
  if (code == SQLITE_ERROR && message.starts_with("not authorized")) code = SQLITE_AUTH;
  // Before 3.41 SQLite has no index table that it would write to from an untrusted schema's
  // trigger.
  if (code == SQLITE_ERROR && message.starts_with("unsafe use of virtual table")) {
    return {ErrorCode::read_only,
            "Another program put a spatial index into the file, which cannot be kept up here" +
                detail + ".",
            where, "Drop the spatial index there; the layers are small and do well without."};
  }
  switch (code & 0xFF) {
    case SQLITE_CONSTRAINT:
      return constraint_error(code, detail, where);
    case SQLITE_FULL:
      return {ErrorCode::disk_full, "The disk is full; nothing was saved.", where,
              "Free some space, then do it again."};
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return {ErrorCode::busy, "Another program is writing to the tract file.", where,
              "Close it there, or wait and do it again."};
    case SQLITE_CORRUPT:
    case SQLITE_FORMAT:
      return {ErrorCode::damaged, "The tract file is damaged" + detail + ".", where,
              "Keep this file; rescue what it holds, or work on from your newest copy."};
    case SQLITE_NOTADB:
      return {ErrorCode::not_a_tract_file, "This is not a tract file.", where,
              "Choose a file that Oaklight made."};
    case SQLITE_READONLY:
      return {ErrorCode::read_only, "The tract file cannot be written to.", where,
              "Copy it to a folder where you may write."};
    case SQLITE_CANTOPEN:
    case SQLITE_PERM:
      return {ErrorCode::cannot_open, "The tract file cannot be opened" + detail + ".", where,
              "Check that the file is there and that you may read it."};
    case SQLITE_AUTH:
      return {
          ErrorCode::not_a_tract_file,
          "The file holds a trigger or view that does more than a spatial index may" + detail + ".",
          where, "Drop it in the program that made it."};
    case SQLITE_TOOBIG:
      return {ErrorCode::out_of_range, "A text or shape is too large for the tract file.", where,
              "Shorten or simplify it."};
    default:
      return {ErrorCode::io_failed, "Reading or writing the tract file failed" + detail + ".",
              where, "Check the disk or card, then do it again."};
  }
}

}  // namespace oaklight::store
