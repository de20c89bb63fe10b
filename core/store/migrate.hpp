#pragma once

#include <filesystem>
#include <span>
#include <string>
#include <vector>

#include "core/base/embedded.hpp"
#include "core/base/result.hpp"
#include "core/store/sqlite_handle.hpp"

namespace oaklight::store {

/// One file of schema/: how a tract file of one step becomes one of the next.
struct SchemaStep {
  int number = 0;
  std::string what;    ///< one line
  int min_reader = 0;  ///< a program that knows this step can still read and append
  std::string loses;   ///< what the step throws away
  std::string sql;
};

/// Reads the three comment lines that head every step. The steps must be numbered 1, 2, 3, ...
/// Errors: not_a_choice, naming the file and the line that is wrong.
Result<std::vector<SchemaStep>> read_steps(std::span<const EmbeddedFile> files);

/// What table meta says about the file.
struct FileState {
  int step = 0;
  int min_reader = 0;
};

/// Errors: not_a_tract_file when the file is a GeoPackage of another program.
Result<FileState> read_state(SqliteHandle& db);

/// The oldest step that a program has to know for a file that went through all of these: each step
/// may ask for it, not only the last one.
int min_reader_of(std::span<const SchemaStep> steps);

/// How a file stands to the steps that this program knows.
enum class Fit {
  current,  ///< the same step, or a newer one that we may still read and append to
  older,    ///< steps are missing
};

/// Errors: file_too_new.
Result<Fit> fit_of(const FileState& state, std::span<const SchemaStep> steps,
                   const std::filesystem::path& path);

/// Runs the steps that come after `from` and notes the last one in meta; inside a transaction.
Status run_steps(SqliteHandle& db, std::span<const SchemaStep> steps, int from);

/// Brings an older file up to date: a copy is kept beside it ("demo.before-step-4.gpkg"), then all
/// steps run in one transaction with a check of the references. A step that fails leaves the file
/// as it was. Errors: damaged, disk_full, io_failed, busy, cannot_write (no room for the copy).
Status bring_up_to_date(const std::filesystem::path& path, std::span<const SchemaStep> steps,
                        const FileState& state);

/// Puts one fact into table meta.
Status set_meta(SqliteHandle& db, const std::string& key, const std::string& value);

inline constexpr const char* kFormatName = "oaklight tract file";

}  // namespace oaklight::store
