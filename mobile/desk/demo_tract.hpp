#pragma once

#include <filesystem>

#include "core/base/result.hpp"
#include "mobile/desk/tract_desk.hpp"

/// Makes a tract file that holds the invented demo tract. Errors: of TractStore::create; of the
/// import (a bug).
oaklight::Status make_demo_tract(const std::filesystem::path& path,
                                 const TractDesk::Clocks& clocks);
