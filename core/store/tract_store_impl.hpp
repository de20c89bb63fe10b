#pragma once

#include <optional>
#include <string>

#include "core/store/file_lock.hpp"
#include "core/store/migrate.hpp"
#include "core/store/record_fields.hpp"
#include "core/store/record_table.hpp"
#include "core/store/tract_store.hpp"

namespace oaklight {

namespace store {

/// What SQLite itself finds of broken structure and references. Errors: damaged.
Status check_before_work(SqliteHandle& db);

}  // namespace store

/// What an open tract file is made of; shared by the files that implement TractStore.
struct TractStore::Impl {
  std::optional<store::FileLock> lock;  ///< held while writing; let go after the file is closed
  store::SqliteHandle db;
  store::RecordTables tables;
  std::vector<store::SchemaStep> steps;
  store::FileState state;
  OpenMode mode;
  DamageCheck damage_check;
  Clock& clock;
  IdSource ids;
  std::string device;

  /// Errors: missing_rule.
  Result<store::FormFile> form(std::string_view path);

  [[nodiscard]] Error read_only_error() const {
    return {ErrorCode::read_only, "The tract file is open for looking only.", db.path().string(),
            "Open it for writing, or copy it to a place where you may write."};
  }
};

}  // namespace oaklight
