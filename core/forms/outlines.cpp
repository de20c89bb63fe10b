#include "core/forms/outlines.hpp"

#include "core/forms/ring.hpp"

namespace oaklight {
namespace {

/// More positions than this in all are an accident too; each ring is tried for crossing edges.
constexpr std::size_t kMostPositions = 200'000;

}  // namespace

DrawnOutlines read_outlines(const NamedText& file) {
  DrawnOutlines out;
  const std::string name = lower_case(file.name);
  const auto refuse = [&](ErrorCode code, std::string what, std::string fix) {
    out.faults.push_back({code, std::move(what), file.name, std::move(fix)});
  };
  if (file.text.size() > kMaxFileBytes) {
    refuse(ErrorCode::bad_geometry, "The file is larger than 8 MiB.",
           "Keep the stands only, and simplify their outlines.");
  } else if (trimmed(file.text).empty()) {
    refuse(ErrorCode::no_data, "The file is empty.", "Export the outlines again.");
  } else if (name.ends_with(".geojson") || name.ends_with(".json")) {
    read_outlines_geojson(file, out);
  } else if (name.ends_with(".kml") || name.ends_with(".gpx")) {
    read_outlines_xml(file, out);
  } else {
    refuse(ErrorCode::bad_geometry, "This kind of file is not one that outlines are read from.",
           name.ends_with(".kmz") ? "A KMZ is a zipped KML: unzip it and give the .kml in it."
                                  : "Bring .geojson, .kml or .gpx.");
  }
  if (out.faults.empty() && out.outlines.empty()) {
    refuse(ErrorCode::no_data, "There is no outline in this file.",
           out.passed_over > 0 ? "It holds points or open lines only; draw each stand as a polygon."
                               : "Draw each stand as a polygon and export it again.");
  }
  if (out.outlines.size() >= kMaxOutlines) {
    refuse(ErrorCode::bad_geometry, "The file draws 500 outlines or more.",
           "Export the stands of this tract only.");
  }
  std::size_t positions = 0;
  for (const DrawnOutline& outline : out.outlines) positions += positions_to_try(outline.parts);
  if (positions > kMostPositions) {
    refuse(ErrorCode::bad_geometry, "The file draws more than 200,000 positions.",
           "Export the stands of this tract only, and simplify their outlines.");
  }
  if (!out.faults.empty()) out.outlines.clear();
  return out;
}

}  // namespace oaklight
