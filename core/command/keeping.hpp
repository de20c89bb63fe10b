#pragma once

#include <CLI/CLI.hpp>

#include "core/store/tract_store.hpp"

namespace oaklight::command {

/// Time, chance and the name by which this program writes.
StoreContext store_context();

// Subcommands that keep a tract file rather than work on what it holds. As those of program.hpp.
void add_rescue(CLI::App& app, int& exit_code);
void add_snapshots(CLI::App& app, int& exit_code);

}  // namespace oaklight::command
