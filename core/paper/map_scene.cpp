#include "core/paper/map_scene.hpp"

#include <algorithm>
#include <cmath>

#include "core/base/number_text.hpp"
#include "core/place/geodesy.hpp"

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

Position middle_of(const Packet& packet) {
  Middle middle;
  for (const auto* list : {&packet.cut, &packet.trained, &packet.keep, &packet.others}) {
    for (const PacketTree& tree : *list) {
      if (tree.position) middle.add(*tree.position);
    }
  }
  for (const Stand& stand : packet.stands) {
    if (!stand.boundary) continue;
    for (const Position& p : stand.boundary->outer) middle.add(p);
  }
  for (const MapLine& line : packet.lines) {
    for (const Position& p : line.points) middle.add(p);
  }
  if (packet.tract.landing) middle.add(*packet.tract.landing);
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

void add_trees(MapScene& scene, Position origin, const std::vector<PacketTree>& trees,
               TreeMark listed_as) {
  for (const PacketTree& tree : trees) {
    const bool placed = tree.position && on_globe(*tree.position);
    MapTree entry{printable(tree.tag), mark_of(tree, listed_as), {}};
    if (placed) entry.place = flat(origin, *tree.position);
    (placed ? scene.trees : scene.nowhere).push_back(std::move(entry));
  }
}

MapStand flat_stand(Position origin, const Stand& stand) {
  MapStand out;
  out.name = printable(stand.name);
  out.label =
      out.name + QString::fromStdString(", " + number_text(stand.acres.value, 1) + " acres");
  out.rings.push_back(flat(origin, stand.boundary->outer));
  for (const Ring& hole : stand.boundary->holes) out.rings.push_back(flat(origin, hole));
  return out;
}

}  // namespace

MapScene make_scene(const Packet& packet) {
  MapScene scene;
  const Position origin = middle_of(packet);
  add_trees(scene, origin, packet.cut, TreeMark::cut);
  add_trees(scene, origin, packet.trained, TreeMark::trained);
  add_trees(scene, origin, packet.keep, TreeMark::keep);
  add_trees(scene, origin, packet.others, TreeMark::other);
  for (const Stand& stand : packet.stands) {
    if (stand.boundary && stand.boundary->outer.size() >= 3) {
      scene.stands.push_back(flat_stand(origin, stand));
    }
  }
  for (const MapLine& line : packet.lines) {
    QPolygonF points = flat(origin, line.points);
    if (points.size() < 2) continue;
    scene.tracks.push_back({line.kind, line.confirmed, printable(line.name), std::move(points)});
  }
  if (packet.tract.landing && on_globe(*packet.tract.landing)) {
    scene.landing = flat(origin, *packet.tract.landing);
  }
  return scene;
}

std::optional<QRectF> ground_of(const MapScene& scene) {
  QPolygonF all;
  for (const MapTree& tree : scene.trees) all.append(tree.place);
  for (const MapStand& stand : scene.stands) all.append(stand.rings.front());
  if (scene.landing) all.append(*scene.landing);
  if (all.isEmpty()) {
    for (const MapTrack& track : scene.tracks) all.append(track.points);
  }
  if (all.isEmpty()) return std::nullopt;
  return all.boundingRect();
}

}  // namespace oaklight
