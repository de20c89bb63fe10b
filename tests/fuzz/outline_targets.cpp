// Outlines of stands from the files of other programs.
#include "core/base/number_text.hpp"
#include "core/base/utf8.hpp"
#include "core/forms/outlines.hpp"
#include "tests/fuzz/law.hpp"
#include "tests/fuzz/targets.hpp"

namespace oaklight::test {
namespace {

std::string ring_text(const Ring& ring) {
  std::string text;
  for (const Position& p : ring) {
    text += (text.empty() ? "[[" : ",[") + number_text(p.longitude.value, 17) + "," +
            number_text(p.latitude.value, 17) + "]";
  }
  return text + "]";
}

/// One part of an outline as GeoJSON, in words of ours.
std::string part_text(const Polygon& part) {
  std::string text = R"({"type":"Polygon","coordinates":[)" + ring_text(part.outer);
  for (const Ring& hole : part.holes) text += "," + ring_text(hole);
  return text + "]}";
}

bool same_place(const Ring& a, const Ring& b) {
  constexpr double kNear = 1e-9;  // degrees: a tenth of a millimetre
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (std::abs(a[i].latitude.value - b[i].latitude.value) > kNear ||
        std::abs(a[i].longitude.value - b[i].longitude.value) > kNear) {
      return false;
    }
  }
  return true;
}

void require_sound(const SoundOutline& outline) {
  require(is_utf8(outline.name), "the name of an outline is text");
  for (const char c : outline.name) {
    require(static_cast<unsigned char>(c) >= ' ', "a name has no control characters");
  }
  require(!outline.parts.empty(), "an outline has a part");
  for (const Polygon& part : outline.parts) {
    require(part.outer.size() > 3 && part.outer.front() == part.outer.back(), "a ring is closed");
    for (const Position& p : part.outer) {
      require(std::abs(p.latitude.value) <= 90.0 && std::abs(p.longitude.value) <= 180.0,
              "an outline lies on the globe");
    }
    // Written as GeoJSON and read again it is the same ground.
    const DrawnOutlines again = read_outlines({"again.geojson", part_text(part)});
    require(again.faults.empty() && again.outlines.size() == 1, "an outline can be written");
    const Polygon& read = again.outlines.front().parts.front();
    require(same_place(read.outer, part.outer) && read.holes.size() == part.holes.size(),
            "an outline comes back as it was");
  }
}

void read_as(const char* name, std::string_view bytes) {
  const DrawnOutlines drawn = read_outlines({name, std::string(bytes)});
  require_told(drawn.faults);
  require(drawn.faults.empty() || drawn.outlines.empty(), "a refused file gives nothing");
  const SoundOutlines sound = check_outlines(drawn.outlines, {});
  require_told(sound.faults);
  require(sound.faults.empty() || sound.outlines.empty(), "a refused outline gives nothing");
  for (const SoundOutline& outline : sound.outlines) require_sound(outline);
}

}  // namespace

void fuzz_geojson(std::string_view bytes) { read_as("stands.geojson", bytes); }
void fuzz_kml(std::string_view bytes) { read_as("stands.kml", bytes); }
void fuzz_gpx(std::string_view bytes) { read_as("stands.gpx", bytes); }

}  // namespace oaklight::test
