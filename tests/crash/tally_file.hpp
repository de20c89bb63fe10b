#pragma once

#include <filesystem>
#include <random>
#include <set>
#include <string>
#include <vector>

#include "core/store/tract_store.hpp"
#include "tests/support/temp_dir.hpp"

namespace oaklight::test {

/// A tract file with one plot to tally on.
void make_tally_file(const std::filesystem::path& path);

/// Saves one more tree of the plot; its id once it is saved.
Result<TreeId> tally_one(TractStore& store);

struct TalliedTrees {
  std::set<std::string> trees;
  std::string problem;  ///< what opening, loading or checking the file found; "" when it is sound
};

/// What the file holds, opened as after a restart.
TalliedTrees trees_in(const std::filesystem::path& path);

}  // namespace oaklight::test
