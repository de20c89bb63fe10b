#pragma once

#include <vector>

#include "core/release/outcome.hpp"

namespace oaklight {

/// Steps 4, 5 and 7 of the order of decisions: what every choice of trees stands on. Keeps
/// references into itself and into the input, which must outlive it.
struct Groundwork {
  explicit Groundwork(const ReleaseInput& input);
  Groundwork(const Groundwork&) = delete;
  Groundwork& operator=(const Groundwork&) = delete;

  const std::vector<Traits> traits;
  const std::vector<Keep> keeps;
  const CropTrees crops;
  const std::vector<Role> roles;
  const ReleaseProblem problem;
};

}  // namespace oaklight
