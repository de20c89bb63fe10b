#pragma once

#include <QPointF>
#include <QPolygonF>
#include <QString>
#include <optional>
#include <vector>

#include "core/handoff/packet.hpp"
#include "core/paper/symbols.hpp"

namespace oaklight {

// Ground coordinates in this header are feet east (x) and feet north (y) of the scene's origin.

struct MapTree {
  QString tag;
  TreeMark mark = TreeMark::cut;
  QPointF place;
};

struct MapStand {
  QString name;
  QString label;                 ///< name and acres
  std::vector<QPolygonF> rings;  ///< outer ring first, then holes
};

struct MapTrack {
  LineKind kind = LineKind::trail;
  bool confirmed = false;
  QString name;
  QPolygonF points;
};

/// A packet as flat ground: what a map shows, before any scale is chosen.
struct MapScene {
  std::vector<MapTree> trees;  ///< in the packet's order: cut, trained, keep, others
  std::vector<MapStand> stands;
  std::vector<MapTrack> tracks;
  std::optional<QPointF> landing;
  std::vector<MapTree> nowhere;  ///< trees without a position; their place means nothing

  [[nodiscard]] bool empty() const {
    return trees.empty() && stands.empty() && tracks.empty() && !landing;
  }
};

/// The scene of a packet, around the middle of everything in it that has a position.
/// assumes  positions on WGS 84; a position that is not finite or off the globe counts as none
MapScene make_scene(const Packet& packet);

/// The rectangle of ground that holds the stands, the trees and the landing, or the lines where
/// there is nothing else. Nothing for an empty scene. Its top is its southern edge: y is north.
std::optional<QRectF> ground_of(const MapScene& scene);

}  // namespace oaklight
