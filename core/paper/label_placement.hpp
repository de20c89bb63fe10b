#pragma once

#include <QLineF>
#include <QPointF>
#include <QRectF>
#include <optional>
#include <span>
#include <vector>

namespace oaklight {

/// A label that wants to stand near a point.
struct LabelWish {
  QPointF anchor;
  QSizeF size;
  double clear = 0.0;    ///< nothing may come closer to the anchor than this: its mark's radius
  double reach = 200.0;  ///< no further from the anchor than about this
};

/// Where a label went.
struct LabelPlace {
  QRectF box;
  std::optional<QLineF> leader;  ///< from the mark to the label, where the label stands away
  friend bool operator==(const LabelPlace&, const LabelPlace&) = default;
};

/// Finds room for labels so that no two overlap, none covers an obstacle, none leaves the bounds,
/// and, where there is any other way, none covers a leader.
///
/// The most crowded labels choose first; each takes the nearest free place around its anchor, right
/// side before left. Where nothing close is free the label moves out and gets a leader line; draw
/// leaders below labels, for a leader that is walled in by labels runs out under one. The same
/// input always gives the same places.
///
/// wishes     any number; order breaks ties
/// obstacles  boxes to keep free, such as the marks of trees
/// returns    one entry a wish; nothing where no room was found within the bounds
/// assumes    all in one unit, y down
std::vector<std::optional<LabelPlace>> place_labels(std::span<const LabelWish> wishes,
                                                    const QRectF& bounds,
                                                    std::span<const QRectF> obstacles);

}  // namespace oaklight
