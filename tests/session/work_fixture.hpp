#pragma once

#include <gtest/gtest.h>

#include <random>
#include <string>

#include "core/session/knowledge.hpp"
#include "core/session/live_tract.hpp"
#include "tests/support/set_clock.hpp"
#include "tests/support/temp_dir.hpp"

namespace oaklight::test {

/// The forms, species and rules that come with the program, read once.
const TractKnowledge& shipped_tract_knowledge();

/// A tract file and the same tract in memory, as a tablet holds them; ids and times are the same in
/// every run.
class WorkTest : public testing::Test {
 protected:
  WorkTest();

  /// Applies what an action maker gave, and follows. Fails the test when either refused.
  Action done(const Result<Action>& action);
  /// The error of an action that must be refused.
  Error refused(const Result<Action>& action);
  /// Undoes the newest action in file and memory.
  void undo();

  /// A stand, a point cruise of BAF 10 with a seedling plot of 0.001 ac, and planned plots.
  StandId stand_with_plots(int plots);
  /// Whether file and memory tell the same.
  [[nodiscard]] std::string difference_from_file() const;

  TempDir folder_;
  SetClock clock_{1'777'900'020'000};  // 2026-05-04T13:07:00Z
  std::mt19937_64 chance_{20260504};
  TractStore store_;
  LiveTract live_;
  IdSource ids_;
  const TractKnowledge& knowledge_;

 private:
  TractStore make();
};

}  // namespace oaklight::test
