#pragma once

#include <QRectF>
#include <QString>
#include <span>
#include <vector>

#include "core/paper/drawing.hpp"
#include "core/paper/map_blocks.hpp"
#include "core/paper/map_scene.hpp"

namespace oaklight {

/// A window onto the ground: north is up, one scale in both directions.
struct MapView {
  QRectF frame;    ///< on paper, pt
  QPointF middle;  ///< ground in the middle of the frame, feet east and north
  double feet_per_inch = 100.0;

  [[nodiscard]] double feet_per_point() const;
  [[nodiscard]] QPointF at(QPointF ground) const;
};

/// The view that shows the ground at the largest usual scale ("1 in = 60 ft") that leaves a border
/// for labels.
MapView fitting_view(const QRectF& frame, const QRectF& ground);

/// The view that fills the frame with the ground, at whatever scale: for screens, which have none
/// in words. Never larger than 20 ft in an inch.
MapView filling_view(const QRectF& frame, const QRectF& ground);

/// The largest ground that fitting_view shows in a frame of that size at a scale, and the reverse:
/// the smallest frame that shows the ground. A frame that is all border shows an empty ground.
QSizeF largest_ground(QSizeF frame, double feet_per_inch);
QSizeF smallest_frame(QSizeF ground, double feet_per_inch);

/// What a map names.
struct MapContent {
  std::vector<std::size_t> tagged;        ///< trees of the scene that wear their tag on this map
  std::span<const MapBlock> blocks = {};  ///< detail maps to outline and to letter
};

/// What came of drawing a map.
struct MapOutcome {
  std::vector<std::size_t> untagged;  ///< trees of content.tagged whose tag found no room
  std::vector<QRectF> label_boxes;    ///< of all labels
  bool letters_clear = true;          ///< no letter of a block stands on a box or on a tree's mark
  double plot_radius = 0.0;           ///< of the marks of plots
};

/// Draws the scene: stands, lines, landing, trees, plots, labels, the person. Trees that are not
/// tagged here are drawn small and without a number.
MapOutcome draw_map(Drawing& drawing, const MapScene& scene, const MapView& view,
                    const MapContent& content);

/// The line above a map: its letter, its scale in words, and bars in feet and metres.
/// letter   "" for a map without one
void draw_map_caption(Drawing& drawing, const QString& letter, const MapView& view);
inline constexpr double kMapCaption = 22.0;  ///< its height, pt

/// The line below a detail map: the way there from the landing. Nothing where there is no landing.
void draw_map_way(Drawing& drawing, const MapScene& scene, const MapView& view);
inline constexpr double kMapWay = 15.0;  ///< its height, pt

/// What each mark and line on the maps of a page means, and where north is.
class MapKey {
 public:
  /// trees    those that the maps show
  /// views    of the maps on the page: lines that none of them shows are left out; empty: none is
  MapKey(const MapScene& scene, std::span<const std::size_t> trees,
         std::span<const MapView> views = {});
  [[nodiscard]] double height() const;
  void draw(Drawing& drawing, const QRectF& strip) const;

 private:
  struct Entry {
    std::optional<TreeMark> mark;
    std::optional<std::pair<LineKind, bool>> line;  ///< and whether it is confirmed
    QString words;
  };
  void add_marks(const MapScene& scene, std::span<const std::size_t> trees);
  void add_lines(const MapScene& scene, std::span<const MapView> views);
  static void draw_sample(Drawing& drawing, const Entry& entry, QPointF left);

  std::vector<Entry> marks_;
  std::vector<Entry> lines_;
};

}  // namespace oaklight
