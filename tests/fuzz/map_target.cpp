// The map of a tract as GeoJSON, beside a cruise that is good.
#include "tests/forms/cruise_files.hpp"
#include "tests/fuzz/law.hpp"
#include "tests/fuzz/targets.hpp"

namespace oaklight::test {

void fuzz_map(std::string_view bytes) {
  CruiseFiles files = good_files();
  files.map = NamedText{"map.geojson", std::string(bytes)};
  const CruiseImport judged = import_files(files);
  require_told(judged.faults);
  if (!judged.faults.empty()) return;
  // What it drew is on the map already: the same file again brings no second line.
  const CruiseImport again = import_files({.map = files.map}, judged.data, /* other ids */ 2);
  require_told(again.faults);
  require(again.data.lines.empty() || !again.faults.empty(), "a line is taken once");
}

}  // namespace oaklight::test
