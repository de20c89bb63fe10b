#pragma once

#include "tests/published/evaluator.hpp"

namespace oaklight::test {

/// For the rows of tests/population/maps.tsv.
Evaluators map_evaluators();

}  // namespace oaklight::test
