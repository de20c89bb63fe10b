#include "tests/command/program.hpp"

#include <gtest/gtest.h>

namespace oaklight::test {

Ran oaklight(const std::string& words) {
  return run_program(OAKLIGHT_BUILD_DIR "/bin/oaklight " + words);
}

std::filesystem::path demo_plots() {
  return std::filesystem::path(OAKLIGHT_SOURCE_DIR) / "demo_plots";
}

DemoTract::DemoTract() : tract((folder / "hollow.gpkg").string()) {
  const Ran imported = oaklight("import " + tract + " " + demo_plots().string());
  EXPECT_EQ(imported.exit_code, 0) << imported.errors;
  const Ran decided = oaklight("recommend " + tract);
  EXPECT_EQ(decided.exit_code, 0) << decided.errors;
}

}  // namespace oaklight::test
