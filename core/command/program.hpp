#pragma once

#include <CLI/CLI.hpp>
#include <string>
#include <vector>

#include "core/base/day.hpp"
#include "core/measure/log_rule.hpp"
#include "core/sample/confidence.hpp"
#include "core/session/tract_session.hpp"

namespace oaklight::command {

/// How the program ends; the same for each subcommand and printed by --help.
enum ExitCode : int {
  kDone = 0,
  kRefused = 1,      ///< the input has faults, or a check found problems; nothing was changed
  kUsage = 2,        ///< the words of the call are off
  kFileProblem = 3,  ///< a file cannot be opened, read or written
  kNothingToDo = 4,  ///< there is no data for what was asked
};

/// Prints an error (as text to stderr, or as JSON to stdout) and gives the exit code that fits it.
int fail(const Error& error, bool json);
/// The same for a list of faults, as a person mends them: one a line, each with its place.
int fail(const std::vector<Error>& faults, bool json);

/// The tract file for a command that reads it.
Result<TractSession> open_to_read(const std::string& path);
/// The tract file for a command that writes to it.
Result<TractSession> open_to_write(const std::string& path);
/// The bare tract file, whatever its forms hold.
Result<TractStore> open_store(const std::string& path);
Result<TractStore> open_store_to_write(const std::string& path);
/// Makes a new tract file of several; `look`: only says what would come out.
Result<JoinReport> join_to_new(const std::string& path,
                               const std::vector<std::filesystem::path>& files, OtherTract other,
                               bool look);
/// A new tract file.
Result<TractSession> create_tract(const std::string& path);

/// The day of an option like 2026-12-07; today where it was left out. Errors: of day_from_text.
Result<Day> day_or_today(const std::string& text);

/// Says what a long command is at, on a terminal only and never in --json output.
void progress(const std::string& words);

/// Adds a subcommand. Each sets `exit_code` when it ran.
void add_import(CLI::App& app, int& exit_code);
void add_estimate(CLI::App& app, int& exit_code);
void add_recommend(CLI::App& app, int& exit_code);
void add_explain(CLI::App& app, int& exit_code);
void add_packet(CLI::App& app, int& exit_code);
void add_compare(CLI::App& app, int& exit_code);
void add_sheet(CLI::App& app, int& exit_code);  ///< only in a program that can paint
void add_stumps(CLI::App& app, int& exit_code);
void add_check(CLI::App& app, int& exit_code);
void add_join(CLI::App& app, int& exit_code);
void add_boundary(CLI::App& app, int& exit_code);
void add_design(CLI::App& app, int& exit_code);
void add_route(CLI::App& app, int& exit_code);
void add_source(CLI::App& app, int& exit_code);

// Options that several subcommands share.
void add_tract(CLI::App& command, std::string& path);
void add_json(CLI::App& command, bool& json);
void add_log_rule(CLI::App& command, LogRule& rule);
void add_confidence(CLI::App& command, Confidence& level);

/// As CLI::Range, which however takes what is no number ("nan") for one of any range.
CLI::Validator between(double least, double most);

}  // namespace oaklight::command
