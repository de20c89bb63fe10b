#include "core/place/plot_grid.hpp"

#include <algorithm>
#include <cmath>

#include "core/place/flat_ground.hpp"

namespace oaklight {
namespace {

/// Ground turned so that lines run along the first axis.
struct Turned {
  double along;
  double across;
};

class Turn {
 public:
  explicit Turn(Degrees azimuth)
      : sine_(std::sin(radians(azimuth))), cosine_(std::cos(radians(azimuth))) {}
  [[nodiscard]] Turned from(LocalFeet place) const {
    const double east = place.east.value;
    const double north = place.north.value;
    return {east * sine_ + north * cosine_, east * cosine_ - north * sine_};
  }
  [[nodiscard]] LocalFeet back(Turned t) const {
    return {Feet{t.along * sine_ + t.across * cosine_}, Feet{t.along * cosine_ - t.across * sine_}};
  }

 private:
  double sine_;
  double cosine_;
};

struct Range {
  double least = 0.0;
  double most = 0.0;
};

/// Steps first .. last of a spacing, shifted by a share of it, that cover a range.
struct Steps {
  long first;
  long last;
};
Steps steps_over(Range range, double spacing, double share) {
  return {std::lround(std::ceil(range.least / spacing - share)),
          std::lround(std::floor(range.most / spacing - share))};
}

Error too_many() {
  return {ErrorCode::out_of_range, "The grid would have more than 5,000 points.", "spacing",
          "Lay the plots further apart."};
}

}  // namespace

GridStart random_start(SeededDraw& draw) {
  const double along = draw.uniform();
  return {along, draw.uniform()};
}

Result<std::vector<Position>> grid_positions(const Polygon& stand, const GridLayout& layout,
                                             GridStart start) {
  const double along = layout.along.value;
  const double between = layout.between.value;
  if (!(along > 0.0) || !(between > 0.0)) {
    return Error{ErrorCode::out_of_range, "The distance between plots is not above 0.", "spacing",
                 "Give a distance in feet or metres."};
  }
  const FlatPolygon flat = flat_polygon(stand);
  const Turn turn(layout.azimuth);
  Range length{INFINITY, -INFINITY};
  Range width{INFINITY, -INFINITY};
  for (const LocalFeet& corner : flat.rings.front()) {
    const Turned t = turn.from(corner);
    length = {std::min(length.least, t.along), std::max(length.most, t.along)};
    width = {std::min(width.least, t.across), std::max(width.most, t.across)};
  }
  const double cells =
      (length.most - length.least) / along * ((width.most - width.least) / between);
  if (!(cells < 20.0 * kMostGridPlots)) return too_many();
  const Steps lines = steps_over(width, between, start.across);
  const Steps plots = steps_over(length, along, start.along);
  std::vector<Position> positions;
  bool up = true;
  for (long line = lines.first; line <= lines.last; ++line) {
    std::vector<Position> on_line;
    for (long plot = plots.first; plot <= plots.last; ++plot) {
      const LocalFeet place = turn.back({(static_cast<double>(plot) + start.along) * along,
                                         (static_cast<double>(line) + start.across) * between});
      if (holds(flat, place)) on_line.push_back(position_from_local(flat.origin, place));
    }
    if (!up) std::ranges::reverse(on_line);
    if (!on_line.empty()) up = !up;
    positions.insert(positions.end(), on_line.begin(), on_line.end());
    if (positions.size() > kMostGridPlots) return too_many();
  }
  return positions;
}

Result<std::vector<Position>> random_positions(const Polygon& stand, int count, SeededDraw& draw) {
  if (count < 1 || count > kMostGridPlots) {
    return Error{ErrorCode::out_of_range, "The count of plots is not between 1 and 5,000.", "plots",
                 "Give another count."};
  }
  const FlatPolygon flat = flat_polygon(stand);
  const FlatSpan span = span_of(flat);
  std::vector<Position> positions;
  // A stand that fills a thousandth of its span would take a thousand tries a point.
  const long most_tries = 10'000L * count;
  for (long tries = 0; std::ssize(positions) < count; ++tries) {
    if (tries == most_tries) {
      return Error{ErrorCode::bad_geometry, "The stand's outline holds next to no ground.",
                   "boundary", "Draw it again."};
    }
    const double east = draw.uniform();
    const LocalFeet place{span.west + east * (span.east - span.west),
                          span.south + draw.uniform() * (span.north - span.south)};
    if (holds(flat, place)) positions.push_back(position_from_local(flat.origin, place));
  }
  return positions;
}

}  // namespace oaklight
