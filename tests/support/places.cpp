#include "tests/support/places.hpp"

namespace oaklight::test {

std::string source_path(const std::string& name) { return OAKLIGHT_SOURCE_DIR "/" + name; }

std::string build_path(const std::string& name) { return OAKLIGHT_BUILD_DIR "/" + name; }

}  // namespace oaklight::test
