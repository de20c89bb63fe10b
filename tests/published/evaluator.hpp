#pragma once

#include <functional>
#include <map>
#include <string>

namespace oaklight::test {

/// The "inputs" column of a published row, "dbh_in=12;baf=10", by name.
using Inputs = std::map<std::string, std::string>;

/// Computes one published quantity with the product's own functions.
using Evaluator = std::function<double(const Inputs&)>;

/// By the "quantity" column.
using Evaluators = std::map<std::string, Evaluator>;

/// A number among the inputs; the test fails when it is missing.
double number(const Inputs& inputs, const std::string& name);

Evaluators mensuration_evaluators();
Evaluators sampling_evaluators();
Evaluators place_evaluators();

}  // namespace oaklight::test
