#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "core/forms/csv_file.hpp"
#include "core/model/place.hpp"

namespace oaklight {

/// An outline as a file draws it, before anybody judged it: rings may be open, twisted or not
/// numbers at all.
struct DrawnOutline {
  std::string name;  ///< as the file names it; "" when it does not
  std::vector<Polygon> parts;
  bool walked = false;  ///< a track, whose ends are still to be joined
  std::string where;    ///< "land.kml:12", "land.geojson:/features/3"
};

/// More outlines than this are an accident; a file that reaches it is refused.
inline constexpr std::size_t kMaxOutlines = 500;

/// What a file of outlines holds, or why it cannot be read.
struct DrawnOutlines {
  std::vector<DrawnOutline> outlines;
  std::size_t passed_over = 0;  ///< points and open lines, which bound no ground
  std::vector<Error> faults;    ///< not empty: nothing in outlines means anything
};

/// Reads outlines from GeoJSON (RFC 7946), KML (OGC 12-007r2) or GPX 1.1, told apart by the end of
/// the file's name. Pure. In KML a closed LineString counts as an outline; in GPX each track and
/// each route is one, its segments joined in order. GPX cannot say holes.
///
/// faults   bad_geometry: another kind of file, too large, broken, cut off, a document type
///          declaration (where entity bombs live; none is ever read), a position that is no
///          number; bad_json; no_data: no outline in it
/// assumes  WGS 84, which all three formats prescribe
[[nodiscard]] DrawnOutlines read_outlines(const NamedText& file);

// The kinds, for read_outlines.
void read_outlines_geojson(const NamedText& file, DrawnOutlines& out);
void read_outlines_xml(const NamedText& file, DrawnOutlines& out);

/// An outline that bounds ground: rings closed, outer counter-clockwise, holes clockwise.
struct SoundOutline {
  std::string name;
  std::vector<Polygon> parts;
  std::string where;
  std::vector<std::string> notes;  ///< what was mended, in words
};

/// Judges what was drawn.
///
/// near     positions that the tract has already; outlines must lie within 30 miles of their middle
/// faults   bad_geometry: not on the globe, latitude and longitude swapped, too few or too many
///          positions, an outline that crosses itself or goes round nothing, a hole that leaves its
///          outline or meets another, a walk whose ends lie far apart; contradiction: far from the
///          tract
/// returns  nothing in it when there is a fault
struct SoundOutlines {
  std::vector<SoundOutline> outlines;
  std::vector<Error> faults;
};
[[nodiscard]] SoundOutlines check_outlines(const std::vector<DrawnOutline>& drawn,
                                           const std::vector<Position>& near);

}  // namespace oaklight
