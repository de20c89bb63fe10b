#include <algorithm>
#include <cmath>

#include "core/base/number_text.hpp"
#include "core/base/utf8.hpp"
#include "core/forms/nearness.hpp"
#include "core/forms/outlines.hpp"
#include "core/forms/ring.hpp"

namespace oaklight {
namespace {

/// Length along positions in degrees of latitude; near enough to compare two lengths of one walk.
double length_of(const Ring& line) {
  double sum = 0.0;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const double north = line[i + 1].latitude.value - line[i].latitude.value;
    const double east = (line[i + 1].longitude.value - line[i].longitude.value) *
                        std::cos(radians(line[i].latitude));
    sum += std::hypot(north, east);
  }
  return sum;
}

bool can_be_shown(std::string_view name) { return is_utf8(name) && !steers(name, Lines::refused); }

class OutlineCheck {
 public:
  OutlineCheck(const DrawnOutline& drawn, const std::optional<Position>& middle)
      : drawn_(drawn), middle_(middle) {}

  std::optional<Error> run(SoundOutline& sound) {
    sound.name = drawn_.name;
    sound.where = drawn_.where;
    if (!is_utf8(sound.name)) {
      refuse("The name of the outline is not UTF-8 text.", "Save the file as UTF-8.");
      return fault_;
    }
    if (!can_be_shown(sound.name)) {
      refuse("The name of the outline has a line break or control character in it.",
             "Take it out.");
      return fault_;
    }
    if (is_crowd()) return fault_;
    for (const Polygon& part : drawn_.parts) {
      Polygon polygon = part;
      if (!on_globe(polygon.outer) ||
          !std::ranges::all_of(polygon.holes, [&](const Ring& hole) { return on_globe(hole); })) {
        return fault_;
      }
      if (drawn_.walked && !join_ends(polygon.outer, sound)) return fault_;
      if (!wind(polygon.outer, true, "outline")) return fault_;
      for (Ring& hole : polygon.holes) {
        if (!wind(hole, false, "hole")) return fault_;
      }
      if (!near_the_tract(polygon.outer) || !holes_fit(polygon)) return fault_;
      sound.parts.push_back(std::move(polygon));
    }
    parts_are_apart(sound);
    return fault_;
  }

 private:
  bool refuse(std::string what, std::string fix, ErrorCode code = ErrorCode::bad_geometry) {
    const bool named = !drawn_.name.empty() && can_be_shown(drawn_.name);
    const std::string who = named ? "\"" + drawn_.name + "\": " : "";
    fault_ = Error{code, who + std::move(what), drawn_.where, std::move(fix)};
    return false;
  }

  /// Rings are held against each other edge by edge.
  bool is_crowd() {
    constexpr std::size_t kMostPositions = 10'000;
    if (positions_to_try(drawn_.parts) <= kMostPositions) return false;
    refuse("The outline has more than 10,000 positions, with its parts and holes.",
           "Simplify it to some hundreds of positions.");
    return true;
  }

  bool on_globe(const Ring& ring) {
    for (const Position& p : ring) {
      const double latitude = p.latitude.value;
      const double longitude = p.longitude.value;
      if (!std::isfinite(latitude) || !std::isfinite(longitude)) {
        return refuse("A position is not a number.", "Draw the outline again.");
      }
      if (std::fabs(latitude) <= 90.0 && std::fabs(longitude) <= 180.0) continue;
      const bool swapped = std::fabs(longitude) <= 90.0 && std::fabs(latitude) <= 180.0;
      return refuse("A position lies outside the earth's degrees (latitude " +
                        number_text(latitude, 5) + ", longitude " + number_text(longitude, 5) +
                        ").",
                    swapped ? "Latitude and longitude look swapped."
                            : "Save the map in WGS 84 degrees (EPSG:4326).");
    }
    return true;
  }

  bool near_the_tract(const Ring& ring) {
    // South of 60 degrees lies Antarctica; swapped positions of the eastern woods end up there.
    constexpr Degrees kNoWoods{-60.0};
    if (middle_ && !is_near(ring.front(), *middle_)) {
      return refuse("The outline lies more than 30 miles from the tract.",
                    stray_advice(ring.front(), *middle_), ErrorCode::contradiction);
    }
    if (!middle_ && ring.front().latitude < kNoWoods) {
      return refuse(
          "No woods grow at latitude " + number_text(ring.front().latitude.value, 2) + ".",
          "Latitude and longitude look swapped.");
    }
    return true;
  }

  /// A walk is closed by the straight line between its ends, when they lie near each other.
  bool join_ends(Ring& ring, SoundOutline& sound) {
    constexpr double kTooFar = 0.25;  // of the way walked; ours
    if (ring.size() < 3)
      return refuse("The walk has fewer than three positions.", "Walk it again.");
    const double gap = length_of({ring.back(), ring.front()});
    const double way = length_of(ring);
    if (gap > kTooFar * way) {
      return refuse("The walk does not come back: its ends lie apart by " +
                        number_text(100.0 * gap / way, 0) + " % of its length.",
                    "Walk all the way round, or draw the outline as a polygon.");
    }
    if (ring.front() == ring.back()) return true;
    ring.push_back(ring.front());
    sound.notes.push_back("The ends of the walk, " + number_text(100.0 * gap / way, 1) +
                          " % of its length apart, were joined by a straight line.");
    return true;
  }

  bool wind(Ring& ring, bool counter_clockwise, const std::string& what) {
    if (const auto fault = ring_fault(ring)) {
      const bool many = ring.size() > 1000;
      return refuse(
          (what == "hole" ? "In a hole: " : "") + *fault,
          many ? "Simplify it to some hundreds of positions." : "Draw the " + what + " again.");
    }
    if ((doubled_area(ring) > 0) != counter_clockwise) std::reverse(ring.begin(), ring.end());
    return true;
  }

  bool holes_fit(const Polygon& polygon) {
    for (std::size_t i = 0; i < polygon.holes.size(); ++i) {
      const Ring& hole = polygon.holes[i];
      const bool leaves =
          rings_cross(polygon.outer, hole) || std::ranges::none_of(hole, [&](const Position& p) {
            return goes_round(polygon.outer, p);
          });
      if (leaves) return refuse("A hole reaches out of its outline.", "Draw it again, inside.");
      for (std::size_t j = 0; j < i; ++j) {
        if (meet(hole, polygon.holes[j])) return refuse("Two holes meet.", "Make one of the two.");
      }
    }
    return true;
  }

  static bool meet(const Ring& a, const Ring& b) {
    return rings_cross(a, b) || goes_round(a, b.front()) || goes_round(b, a.front());
  }

  void parts_are_apart(const SoundOutline& sound) {
    for (std::size_t i = 0; i < sound.parts.size(); ++i) {
      for (std::size_t j = 0; j < i; ++j) {
        if (!meet(sound.parts[i].outer, sound.parts[j].outer)) continue;
        // A part may lie in a hole of another, an island in a pond.
        const auto in_hole = [](const Polygon& around, const Ring& inner) {
          return std::ranges::any_of(around.holes, [&](const Ring& hole) {
            return goes_round(hole, inner.front()) && !rings_cross(hole, inner);
          });
        };
        if (in_hole(sound.parts[i], sound.parts[j].outer) ||
            in_hole(sound.parts[j], sound.parts[i].outer)) {
          continue;
        }
        refuse("Two of its parts overlap.", "Draw them apart, or as one.");
      }
    }
  }

  const DrawnOutline& drawn_;
  const std::optional<Position>& middle_;
  std::optional<Error> fault_;
};

}  // namespace

SoundOutlines check_outlines(const std::vector<DrawnOutline>& drawn,
                             const std::vector<Position>& near) {
  const std::optional<Position> middle = middle_of(near);
  SoundOutlines out;
  for (const DrawnOutline& outline : drawn) {
    SoundOutline sound;
    if (auto fault = OutlineCheck(outline, middle).run(sound)) {
      if (out.faults.size() < kMaxFaults) out.faults.push_back(*std::move(fault));
    } else {
      out.outlines.push_back(std::move(sound));
    }
  }
  if (!out.faults.empty()) out.outlines.clear();
  return out;
}

}  // namespace oaklight
