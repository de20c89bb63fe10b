#pragma once

#include "tests/published/evaluator.hpp"

namespace oaklight::test {

/// Figures of the invented cruise of tests/golden/oracle.
Evaluators invented_cruise_evaluators();

}  // namespace oaklight::test
