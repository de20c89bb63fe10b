#pragma once

#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

#include "core/base/result.hpp"
#include "core/store/tract_store.hpp"

namespace oaklight {

/// What of one table went into the new file.
struct RescuedTable {
  std::string table;
  std::int64_t kept = 0;          ///< in all
  std::int64_t from_history = 0;  ///< of these: the record is lost, what the history says it was
  std::int64_t from_strays = 0;   ///< of these: found on pages that nothing leads to any more
};

struct RescueReport {
  std::vector<std::string> notes;    ///< about the file as a whole
  std::vector<RescuedTable> tables;  ///< record tables in order of the data dictionary, history
  std::vector<Error> lost;           ///< what could not be kept: table, record, why
};

/// Who may hold the file for writing meanwhile.
enum class LockHolder {
  nobody,  ///< who writes would change the file while it is read
  caller,  ///< who has it open, and writes nothing more since it is damaged
};

/// Copies every record that can still be read out of a damaged tract file into a new one, which is
/// checked before it gets its name. Each row stands for itself by its checksum. A record
/// whose row is lost is taken from the history, where that still says what it was. Nothing is
/// invented: a record that belongs to a lost one is told with all that it holds, and left out.
///
/// damaged  only read; no lock is taken and no byte beside it is written
/// target   of the new file, which is not there yet; what it needs to work on lies beside it
/// errors   cannot_open; busy when another program has the file open for writing; cannot_write;
///          disk_full; file_too_new; not_a_tract_file when not one record can be read
Result<RescueReport> rescue_tract(const std::filesystem::path& damaged,
                                  const std::filesystem::path& target, StoreContext context,
                                  LockHolder lock_holder = LockHolder::nobody);

}  // namespace oaklight
