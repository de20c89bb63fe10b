#pragma once

// Where the sources and the build are, for tests that read shipped files or run built programs.
// Compiled into one file alone: absolute paths on each test's command line would let no compiler
// cache serve a second work tree.

#include <string>

namespace oaklight::test {

/// A file or folder of the source tree, absolute: source_path("forms/tally.form.json").
std::string source_path(const std::string& name);

/// A file or folder of the build tree, absolute: build_path("bin/oaklight").
std::string build_path(const std::string& name);

}  // namespace oaklight::test
