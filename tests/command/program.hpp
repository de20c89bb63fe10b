#pragma once

#include <filesystem>
#include <string>

#include "tests/support/temp_dir.hpp"

namespace oaklight::test {

/// Runs `oaklight` with these words, as a shell would.
Ran oaklight(const std::string& words);

/// The folder of the invented demo tract.
std::filesystem::path demo_plots();

/// A tract file made from the demo tract, with marks, in a folder of its own.
struct DemoTract {
  DemoTract();
  TempDir folder;
  std::string tract;  ///< path of the tract file
};

}  // namespace oaklight::test
