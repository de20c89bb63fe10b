#pragma once

#include <gtest/gtest.h>

#include <filesystem>
#include <memory>
#include <string>

#include "tests/command/program.hpp"

namespace oaklight::test {

/// The demo tract with marks, made once for all tests of a class; each test has a folder of its
/// own.
class DemoCases : public testing::Test {
 protected:
  static void SetUpTestSuite() { demo_ = std::make_unique<DemoTract>(); }
  static void TearDownTestSuite() { demo_.reset(); }

  [[nodiscard]] std::string in_folder(const std::string& name) const {
    return (folder_ / name).string();
  }
  /// A copy of the tract file that a test may change.
  [[nodiscard]] std::string copy_of_demo(const std::string& name) const {
    std::filesystem::copy_file(demo_->tract, folder_ / name);
    return in_folder(name);
  }

  static inline std::unique_ptr<DemoTract> demo_;
  const TempDir folder_;
};

}  // namespace oaklight::test
