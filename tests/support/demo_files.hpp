#pragma once

#include <string>

#include "core/forms/read_cruise.hpp"

namespace oaklight::test {

/// A file of the invented demo tract, "plots.csv".
NamedText demo_file(const std::string& name);

/// Its cruise: tract, stands, plots, trees, regeneration, crop trees and map.
CruiseFiles demo_files();

}  // namespace oaklight::test
