#pragma once

#include <span>
#include <string_view>

namespace oaklight {

/// A data file that was built into the program.
struct EmbeddedFile {
  std::string_view path;  ///< relative to its folder, e.g. "species/species.csv"
  std::string_view text;
};

/// The files of forms/, sorted by path.
std::span<const EmbeddedFile> embedded_forms();

/// The steps of schema/ ("0001_....sql"), sorted by path.
std::span<const EmbeddedFile> embedded_schema();

}  // namespace oaklight
