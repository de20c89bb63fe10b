#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "core/base/result.hpp"
#include "core/handoff/stump_check.hpp"

namespace oaklight {

/// Writes a stump check: stumps.pdf where there are pages, and stumps.csv. A file of that name is
/// replaced whole.
///
/// folder   made when there is none
/// pdf      bytes of the pages; nothing in a program that cannot paint
/// returns  the files, in that order
/// errors   cannot_write; disk_full
Result<std::vector<std::filesystem::path>> write_stump_files(const std::filesystem::path& folder,
                                                             const StumpCheck& check,
                                                             const std::optional<std::string>& pdf);

}  // namespace oaklight
