#pragma once

#include <CLI/CLI.hpp>
#include <string>

namespace oaklight::command {

// Made from the subcommands and options as the program has them, so that neither can go stale.

/// The manual page of the program, in man's own language (roff).
std::string manual_page(const CLI::App& app);

/// Completion of subcommands, options and their words, for bash.
std::string bash_completion(const CLI::App& app);

/// Adds --manual and --completion, which print these and end the program.
void add_manual(CLI::App& app);

}  // namespace oaklight::command
