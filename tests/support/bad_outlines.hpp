#pragma once

#include <ostream>
#include <string>
#include <vector>

namespace oaklight::test {

/// A file of outlines that must be refused. Invented.
struct BadOutline {
  std::string name;    ///< of the case, in CamelCase
  std::string ending;  ///< ".kml"
  std::string text;
  std::string says;  ///< words that the refusal must hold
};
inline std::ostream& operator<<(std::ostream& out, const BadOutline& bad) {
  return out << bad.name;
}

/// More than forty of them: cut off, twisted, swapped, not numbers, huge, bombs.
std::vector<BadOutline> bad_outlines();

/// Outlines around 38.1 N, 82.5 W as GeoJSON, KML and GPX. Rings are "lon,lat lon,lat ...".
std::string geojson_of(const std::string& name, const std::vector<std::string>& rings);
std::string kml_of(const std::string& name, const std::vector<std::string>& rings);
std::string gpx_of(const std::string& name, const std::string& ring);

}  // namespace oaklight::test
