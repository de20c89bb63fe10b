#include "core/session/walk_route.hpp"

#include <algorithm>
#include <cmath>

#include "core/base/number_text.hpp"
#include "core/forms/csv_file.hpp"
#include "core/place/route.hpp"
#include "core/place/walk_ground.hpp"

namespace oaklight {
namespace {

constexpr std::size_t kMostStops = 500;
constexpr std::size_t kMostCorners = 250;

class Walk {
 public:
  Walk(const LiveTract& live, const RouteRequest& request) : live_(live), request_(request) {}

  Result<WalkRoute> run() {
    if (const Status found = find_start(); !found) return found.error();
    if (const Status found = find_plots(); !found) return found.error();
    const std::vector<FlatLine> barriers =
        request_.cross ? std::vector<FlatLine>() : find_barriers();
    WalkGround ground(places(), barriers);
    if (drop_unreached(ground)) {
      if (plots_.empty()) {
        return Error{ErrorCode::no_data, "No plot can be reached without crossing a line.", "route",
                     "Start on the other side, or allow crossing."};
      }
      ground = WalkGround(places(), barriers);
    }
    const Tour tour = short_tour(ground.costs());
    fill(ground, tour);
    return std::move(route_);
  }

 private:
  Status find_start() {
    const auto start = request_.start ? request_.start : live_.data().tract.landing;
    if (!start) {
      return Error{ErrorCode::missing_value, "It is not known where the walk begins.", "start",
                   "Give the access point, or record the tract's landing."};
    }
    route_.start = *start;
    return Done{};
  }

  template <class R>
  static const R* named(const std::vector<R>& records, const std::string& name) {
    const auto found = std::ranges::find_if(
        records, [&](const R& record) { return lower_case(record.name) == lower_case(name); });
    return found == records.end() ? nullptr : &*found;
  }

  Status find_plots() {
    const Stand* stand = nullptr;
    const Cruise* cruise = nullptr;
    if (request_.stand && (stand = named(live_.data().stands, *request_.stand)) == nullptr) {
      return Error{ErrorCode::unknown_reference, "There is no stand \"" + *request_.stand + "\".",
                   "stand", "Use a name of this tract."};
    }
    if (request_.cruise && (cruise = named(live_.data().cruises, *request_.cruise)) == nullptr) {
      return Error{ErrorCode::unknown_reference, "There is no cruise \"" + *request_.cruise + "\".",
                   "cruise", "Use a name of this tract."};
    }
    for (const Plot& plot : live_.data().plots) {
      if (plot.status != PlotStatus::planned) continue;
      if ((stand && plot.stand != stand->id) || (cruise && plot.cruise != cruise->id)) continue;
      if (plot.position) {
        plots_.push_back(&plot);
      } else {
        route_.left_out.push_back(name_of(plot) + " has no position");
      }
    }
    if (plots_.empty()) {
      return Error{ErrorCode::no_data, "No planned plot has a position.", "plots",
                   "Lay out a cruise first: oaklight design"};
    }
    if (plots_.size() > kMostStops) {
      return Error{ErrorCode::out_of_range, "There are more than 500 plots to visit.", "plots",
                   "Plan one stand or one cruise at a time."};
    }
    return Done{};
  }

  std::string stand_name(StandId id) const {
    const Stand* stand = live_.find(id);
    return stand == nullptr ? "" : stand->name;
  }
  std::string name_of(const Plot& plot) const {
    return "Plot " + plot.label + " of " + stand_name(plot.stand);
  }

  LocalFeet flat(const Position& position) const { return local_feet(route_.start, position); }

  std::vector<LocalFeet> places() const {
    std::vector<LocalFeet> places = {flat(route_.start)};
    for (const Plot* plot : plots_) places.push_back(flat(*plot->position));
    return places;
  }

  std::vector<FlatLine> find_barriers() {
    constexpr Feet kOverStream{15.0};  // a road's width and its shoulders
    std::vector<FlatLine> ways;
    std::vector<std::pair<FlatLine, bool>> lines;
    for (const MapLine& line : live_.data().lines) {
      FlatLine places;
      for (const Position& point : line.points) places.push_back(flat(point));
      if (line.kind == LineKind::road || line.kind == LineKind::trail) ways.push_back(places);
      if (line.kind == LineKind::stream) lines.emplace_back(places, true);
      if (line.kind == LineKind::neighbour_line) lines.emplace_back(places, false);
    }
    thin(lines);
    std::vector<FlatLine> barriers;
    for (const auto& [line, stream] : lines) {
      if (!stream) {
        barriers.push_back(line);
        continue;
      }
      std::ranges::move(opened_where_crossed(line, ways, kOverStream),
                        std::back_inserter(barriers));
    }
    return barriers;
  }

  /// So many corners as can be seen round in time; what is thinned is said.
  void thin(std::vector<std::pair<FlatLine, bool>>& lines) {
    const auto corners = [&] {
      std::size_t sum = 0;
      for (const auto& [line, stream] : lines) sum += line.size();
      return sum;
    };
    double used = 0.0;
    for (const double tolerance : {5.0, 10.0, 25.0}) {
      if (corners() <= kMostCorners) break;
      for (auto& [line, stream] : lines) line = simplified(line, Feet{tolerance});
      used += tolerance;
    }
    if (used > 0.0) {
      route_.notes.push_back(
          "To plan the walk, streams and lines were drawn with fewer corners, at most " +
          number_text(used, 0) + " ft off.");
    }
  }

  /// Takes out the plots that no way leads to. Whether there were any.
  bool drop_unreached(const WalkGround& ground) {
    std::vector<const Plot*> reached;
    for (std::size_t i = 0; i < plots_.size(); ++i) {
      if (std::isfinite(ground.costs().feet(0, i + 1))) {
        reached.push_back(plots_[i]);
      } else {
        route_.left_out.push_back(
            name_of(*plots_[i]) +
            " cannot be reached without crossing a stream or a neighbour line");
      }
    }
    const bool any = reached.size() != plots_.size();
    plots_ = std::move(reached);
    return any;
  }

  void fill(const WalkGround& ground, const Tour& tour) {
    std::size_t from = 0;
    for (const std::size_t place : tour.order) {
      const Plot& plot = *plots_[place - 1];
      RouteStop stop{plot.id, plot.stand, stand_name(plot.stand), plot.label, *plot.position, {},
                     {},      {}};
      legs(ground, from, place, stop.legs, stop.turns);
      for (const Leg& leg : stop.legs) stop.walk += leg.distance;
      route_.length += stop.walk;
      route_.stops.push_back(std::move(stop));
      from = place;
    }
    legs(ground, from, 0, route_.back, route_.back_turns);
    for (const Leg& leg : route_.back) route_.length += leg.distance;
    route_.exact = tour.exact;
    route_.bound = tour.exact ? route_.length : std::min(tour.bound, route_.length);
  }

  void legs(const WalkGround& ground, std::size_t a, std::size_t b, std::vector<Leg>& legs,
            std::vector<Position>& turns) const {
    const std::vector<LocalFeet> way = ground.way(a, b);
    Position at = position_from_local(route_.start, way.front());
    for (std::size_t i = 1; i < way.size(); ++i) {
      const Position next = position_from_local(route_.start, way[i]);
      legs.push_back(leg_between(at, next));
      if (i + 1 < way.size()) turns.push_back(next);
      at = next;
    }
  }

  const LiveTract& live_;
  const RouteRequest& request_;
  std::vector<const Plot*> plots_;
  WalkRoute route_;
};

}  // namespace

Result<WalkRoute> plan_walk(const LiveTract& live, const RouteRequest& request) {
  return Walk(live, request).run();
}

std::vector<Position> route_line(const WalkRoute& route) {
  std::vector<Position> line = {route.start};
  for (const RouteStop& stop : route.stops) {
    line.insert(line.end(), stop.turns.begin(), stop.turns.end());
    line.push_back(stop.at);
  }
  line.insert(line.end(), route.back_turns.begin(), route.back_turns.end());
  line.push_back(route.start);
  return line;
}

}  // namespace oaklight
