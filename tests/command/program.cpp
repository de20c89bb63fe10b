#include "tests/command/program.hpp"

#include <gtest/gtest.h>
#include "tests/support/places.hpp"

namespace oaklight::test {

Ran oaklight(const std::string& words) { return run_program(build_path("bin/oaklight ") + words); }

std::filesystem::path demo_plots() { return source_path("demo_plots"); }

DemoTract::DemoTract() : tract((folder / "hollow.gpkg").string()) {
  const Ran imported = oaklight("import " + tract + " " + demo_plots().string());
  EXPECT_EQ(imported.exit_code, 0) << imported.errors;
  const Ran decided = oaklight("recommend " + tract);
  EXPECT_EQ(decided.exit_code, 0) << decided.errors;
}

}  // namespace oaklight::test
