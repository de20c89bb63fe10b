#include "core/paper/map_scene.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/base/number_text.hpp"
#include "core/place/geodesy.hpp"
#include "core/place/walk_positions.hpp"

namespace oaklight {
namespace {

bool on_globe(const Position& p) {
  return std::isfinite(p.latitude.value) && std::isfinite(p.longitude.value) &&
         std::abs(p.latitude.value) <= 90.0 && std::abs(p.longitude.value) <= 360.0;
}

/// Collects the bounds of all positions, to find the middle.
class Middle {
 public:
  void add(const Position& p) {
    if (!on_globe(p)) return;
    south_ = std::min(south_, p.latitude.value);
    north_ = std::max(north_, p.latitude.value);
    west_ = std::min(west_, p.longitude.value);
    east_ = std::max(east_, p.longitude.value);
  }
  [[nodiscard]] Position get() const {
    if (south_ > north_) return {};
    return {Degrees{(south_ + north_) / 2.0}, Degrees{(west_ + east_) / 2.0}};
  }

 private:
  double south_ = 1e9, north_ = -1e9, west_ = 1e9, east_ = -1e9;
};

void add_ground(Middle& middle, const std::vector<Stand>& stands, const std::vector<MapLine>& lines,
                const Tract& tract) {
  for (const Stand& stand : stands) {
    if (!stand.boundary) continue;
    for (const Position& p : stand.boundary->outer) middle.add(p);
  }
  for (const MapLine& line : lines) {
    for (const Position& p : line.points) middle.add(p);
  }
  if (tract.landing) middle.add(*tract.landing);
}

Position middle_of(const Packet& packet) {
  Middle middle;
  for (const auto* list : {&packet.cut, &packet.trained, &packet.keep, &packet.others}) {
    for (const PacketTree& tree : *list) {
      if (tree.position) middle.add(*tree.position);
    }
  }
  add_ground(middle, packet.stands, packet.lines, packet.tract);
  return middle.get();
}

Position middle_of(const TractData& data, const std::vector<WalkTree>& walked) {
  Middle middle;
  for (const Plot& plot : data.plots) {
    if (plot.position) middle.add(*plot.position);
  }
  for (const WalkTree& tree : walked) {
    if (tree.position) middle.add(*tree.position);
  }
  add_ground(middle, data.stands, data.lines, data.tract);
  return middle.get();
}

QPointF flat(Position origin, const Position& place) {
  const LocalFeet local = local_feet(origin, place);
  return {local.east.value, local.north.value};
}

QPolygonF flat(Position origin, const std::vector<Position>& places) {
  QPolygonF points;
  for (const Position& p : places) {
    if (on_globe(p)) points.append(flat(origin, p));
  }
  return points;
}

TreeMark mark_of(const PacketTree& tree, TreeMark listed_as) {
  return listed_as == TreeMark::keep && tree.crop ? TreeMark::crop : listed_as;
}

TreeMark mark_of(const WalkTree& tree, std::optional<Verdict> verdict) {
  if (!verdict || *verdict == Verdict::keep) return tree.crop ? TreeMark::crop : TreeMark::keep;
  return *verdict == Verdict::look_again ? TreeMark::other : TreeMark::cut;
}

void add_trees(MapScene& scene, Position origin, const std::vector<PacketTree>& trees,
               TreeMark listed_as) {
  for (const PacketTree& tree : trees) {
    const bool placed = tree.position && on_globe(*tree.position);
    MapTree entry{printable(tree.tag), mark_of(tree, listed_as), {}};
    if (placed) entry.place = flat(origin, *tree.position);
    (placed ? scene.trees : scene.nowhere).push_back(std::move(entry));
  }
}

MapStand flat_stand(Position origin, const Stand& stand, UnitSystem units) {
  MapStand out;
  out.name = printable(stand.name);
  const std::string size = units == UnitSystem::us
                               ? number_text(stand.acres.value, 1) + " acres"
                               : number_text(to_hectares(stand.acres).value, 1) + " ha";
  out.label = out.name + QString::fromStdString(", " + size);
  out.rings.push_back(flat(origin, stand.boundary->outer));
  for (const Ring& hole : stand.boundary->holes) out.rings.push_back(flat(origin, hole));
  return out;
}

void add_ground(MapScene& scene, Position origin, const std::vector<Stand>& stands,
                const std::vector<MapLine>& lines, const Tract& tract, UnitSystem units) {
  for (const Stand& stand : stands) {
    if (stand.boundary && stand.boundary->outer.size() >= 3) {
      scene.stands.push_back(flat_stand(origin, stand, units));
    }
  }
  for (const MapLine& line : lines) {
    QPolygonF points = flat(origin, line.points);
    if (points.size() < 2) continue;
    scene.tracks.push_back({line.kind, line.confirmed, printable(line.name), std::move(points)});
  }
  if (tract.landing && on_globe(*tract.landing)) scene.landing = flat(origin, *tract.landing);
}

}  // namespace

MapScene make_scene(const Packet& packet) {
  MapScene scene;
  scene.reader = packet.reader;
  const Position origin = middle_of(packet);
  add_trees(scene, origin, packet.cut, TreeMark::cut);
  add_trees(scene, origin, packet.trained, TreeMark::trained);
  add_trees(scene, origin, packet.keep, TreeMark::keep);
  add_trees(scene, origin, packet.others, TreeMark::other);
  add_ground(scene, origin, packet.stands, packet.lines, packet.tract, UnitSystem::us);
  return scene;
}

/// "Cove ", to tell apart plots of two stands that have the same label.
static QString name_of_stand(const TractData& data, StandId id) {
  const auto found = std::find_if(data.stands.begin(), data.stands.end(),
                                  [id](const Stand& stand) { return stand.id == id; });
  return found == data.stands.end() ? QString() : printable(found->name) + QStringLiteral(" ");
}

MapScene make_scene(const TractData& data, const TractMapFocus& focus, UnitSystem units) {
  MapScene scene;
  const std::vector<WalkTree> walked = placed_walk_trees(data);
  const Position origin = middle_of(data, walked);
  std::vector<Stand> stands;
  for (const Stand& stand : data.stands) {
    if (!focus.stand || stand.id == *focus.stand) stands.push_back(stand);
  }
  add_ground(scene, origin, stands, data.lines, data.tract, units);
  std::map<std::string, int> labels;
  for (const Plot& plot : data.plots) ++labels[plot.label];
  std::map<WalkTreeId, Verdict> verdicts;
  for (const Mark& mark : data.marks) verdicts[mark.tree] = mark.verdict;
  for (const WalkTree& tree : walked) {
    if (focus.stand && tree.stand != *focus.stand) continue;
    const auto found = verdicts.find(tree.id);
    if (!tree.crop && found == verdicts.end()) continue;
    const bool placed = tree.position && on_globe(*tree.position);
    const auto verdict = found == verdicts.end() ? std::nullopt : std::optional(found->second);
    MapTree entry{printable(tree.tag), mark_of(tree, verdict), {}};
    if (placed) entry.place = flat(origin, *tree.position);
    (placed ? scene.trees : scene.nowhere).push_back(std::move(entry));
  }
  for (const Plot& plot : data.plots) {
    if (focus.stand && plot.stand != *focus.stand) continue;
    const bool placed = plot.position && on_globe(*plot.position);
    MapPlot entry{plot.id, printable(plot.label), plot.status,
                  {},      focus.next == plot.id, plot.stand};
    if (labels[plot.label] > 1) entry.label.prepend(name_of_stand(data, plot.stand));
    if (placed) entry.place = flat(origin, *plot.position);
    (placed ? scene.plots : scene.plots_nowhere).push_back(std::move(entry));
  }
  if (focus.here && on_globe(*focus.here)) scene.here = flat(origin, *focus.here);
  for (const Position& corner : focus.sketch) scene.sketch.push_back(flat(origin, corner));
  for (const Position& place : focus.walk) scene.walk.append(flat(origin, place));
  scene.origin = origin;
  return scene;
}

std::optional<QRectF> ground_of(const MapScene& scene) {
  QPolygonF all;
  for (const MapTree& tree : scene.trees) all.append(tree.place);
  for (const MapPlot& plot : scene.plots) all.append(plot.place);
  for (const MapStand& stand : scene.stands) all.append(stand.rings.front());
  if (scene.landing) all.append(*scene.landing);
  for (const QPointF& corner : scene.sketch) all.append(corner);
  if (all.isEmpty()) {
    for (const MapTrack& track : scene.tracks) all.append(track.points);
  }
  if (all.isEmpty()) return std::nullopt;
  return all.boundingRect();
}

}  // namespace oaklight
