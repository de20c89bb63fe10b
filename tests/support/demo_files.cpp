#include "tests/support/demo_files.hpp"

#include <filesystem>

#include "tests/support/places.hpp"
#include "tests/support/temp_dir.hpp"

namespace oaklight::test {

NamedText demo_file(const std::string& name) {
  return {name, bytes_of(std::filesystem::path(source_path("demo_plots")) / name)};
}

CruiseFiles demo_files() {
  return {demo_file("tract.csv"),  demo_file("stands.csv"),       demo_file("plots.csv"),
          demo_file("trees.csv"),  demo_file("regeneration.csv"), demo_file("crop_trees.csv"),
          demo_file("map.geojson")};
}

}  // namespace oaklight::test
