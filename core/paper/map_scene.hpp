#pragma once

#include <QPointF>
#include <QPolygonF>
#include <QString>
#include <optional>
#include <vector>

#include "core/handoff/packet.hpp"
#include "core/model/mark.hpp"
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

struct MapPlot {
  PlotId id;
  QString label;
  PlotStatus status = PlotStatus::planned;
  QPointF place;
  bool next = false;  ///< the one to go to
  StandId stand;
};

/// Ground as it lies flat: what a map shows, before any scale is chosen.
struct MapScene {
  std::vector<MapTree> trees;  ///< in the packet's order: cut, trained, keep, others
  std::vector<MapStand> stands;
  std::vector<MapTrack> tracks;
  std::optional<QPointF> landing;
  std::vector<MapTree> nowhere;  ///< trees without a position; their place means nothing
  std::vector<MapPlot> plots = {};
  std::vector<MapPlot> plots_nowhere = {};     ///< without a position; their place means nothing
  std::optional<QPointF> here = {};            ///< where the person stands
  std::vector<QPointF> sketch = {};            ///< corners of an outline that is being drawn
  QPolygonF walk = {};                         ///< by the plots in their order
  Position origin = {};                        ///< on the ground
  PacketReader reader = PacketReader::logger;  ///< to whom the marks speak

  [[nodiscard]] bool empty() const {
    return trees.empty() && stands.empty() && tracks.empty() && !landing && plots.empty();
  }
};

/// The scene of a packet, around the middle of everything in it that has a position.
/// assumes  positions on WGS 84; a position that is not finite or off the globe counts as none
MapScene make_scene(const Packet& packet);

/// What a tract's scene shows beside its records.
struct TractMapFocus {
  std::optional<PlotId> next;         ///< the plot to go to
  std::optional<Position> here;       ///< where the person stands
  std::optional<StandId> stand;       ///< only this one, its plots and trees; nothing: all
  std::vector<Position> sketch = {};  ///< corners of an outline that is being drawn
  std::vector<Position> walk = {};    ///< a planned walk, from its start by all turns and plots
};

/// The scene of a tract: its stands, lines, plots, and the trees of the marking walk that are crop
/// trees or marked, at the places that placed_walk_trees tells. Trees that are taken or killed
/// standing are `cut`, those to be looked at again `other`.
/// assumes  as above
MapScene make_scene(const TractData& data, const TractMapFocus& focus, UnitSystem units);

/// The rectangle of ground that holds the stands, the trees, the plots, the landing and what is
/// being drawn, or the lines where there is nothing else. Nothing for an empty scene. Its top is
/// its southern edge: y is north.
std::optional<QRectF> ground_of(const MapScene& scene);

}  // namespace oaklight
