#include "core/paper/label_placement.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <numbers>
#include <numeric>

namespace oaklight {
namespace {

constexpr double kFirstGap = 1.5;  // from mark to label, where there is room
constexpr double kRingStep = 6.0;
constexpr double kLeaderFrom = 7.0;  // a label further from its mark than this gets a leader
constexpr double kBreathing = 1.0;   // white between two labels

// Preferred sides: right and left read best, then above and below, then the corners between.
constexpr std::array<double, 16> kAngles = {0.0,  180.0, 315.0, 45.0,  225.0, 135.0, 270.0, 90.0,
                                            22.5, 157.5, 337.5, 202.5, 67.5,  112.5, 292.5, 247.5};

/// The point of the box that is nearest to p.
QPointF nearest(const QRectF& box, QPointF p) {
  return {std::clamp(p.x(), box.left(), box.right()), std::clamp(p.y(), box.top(), box.bottom())};
}

/// Whether the line runs through the box. Slab method: the part of the line between the box's left
/// and right that is also between its top and bottom.
bool crosses(const QLineF& line, const QRectF& box) {
  double from = 0.0;
  double to = 1.0;
  const std::array<std::array<double, 4>, 2> axes = {
      {{line.x1(), line.dx(), box.left(), box.right()},
       {line.y1(), line.dy(), box.top(), box.bottom()}}};
  for (const auto& [start, along, low, high] : axes) {
    if (std::abs(along) < 1e-9) {
      if (start <= low || start >= high) return false;
      continue;
    }
    const double a = (low - start) / along;
    const double b = (high - start) / along;
    from = std::max(from, std::min(a, b));
    to = std::min(to, std::max(a, b));
  }
  return from < to;
}

bool cross_each_other(const QLineF& a, const QLineF& b) {
  QPointF where;
  return a.intersects(b, &where) == QLineF::BoundedIntersection;
}

/// What a leader may do: nothing untidy; run over marks and other leaders; run under labels.
enum class Care { tidy, plain, last_resort };

class Placer {
 public:
  Placer(const QRectF& bounds, std::span<const QRectF> obstacles)
      : bounds_(bounds), obstacles_(obstacles) {}

  std::optional<LabelPlace> place(const LabelWish& wish) {
    near_ = obstacles_within(wish);
    const int rings = 1 + static_cast<int>(wish.reach / kRingStep);
    for (const Care care : {Care::tidy, Care::plain, Care::last_resort}) {
      for (int ring = 0; ring < rings; ++ring) {
        for (const double angle : kAngles) {
          const LabelPlace candidate = at(wish, ring, angle);
          if (!free(candidate, wish, care)) continue;
          taken_.push_back(candidate);
          return candidate;
        }
      }
    }
    return std::nullopt;
  }

 private:
  /// The obstacles that a label of this wish, or its leader, can meet at all.
  [[nodiscard]] std::vector<QRectF> obstacles_within(const LabelWish& wish) const {
    const double reach = wish.clear + kFirstGap + wish.reach + kRingStep;
    const QRectF area(wish.anchor.x() - reach - wish.size.width(),
                      wish.anchor.y() - reach - wish.size.height(),
                      2.0 * (reach + wish.size.width()), 2.0 * (reach + wish.size.height()));
    std::vector<QRectF> found;
    std::copy_if(obstacles_.begin(), obstacles_.end(), std::back_inserter(found),
                 [&area](const QRectF& obstacle) { return obstacle.intersects(area); });
    return found;
  }

  /// The label with its nearest edge at the ring's distance in that direction.
  static LabelPlace at(const LabelWish& wish, int ring, double degrees) {
    const double reach = wish.clear + kFirstGap + ring * kRingStep;
    const double angle = degrees * std::numbers::pi / 180.0;
    const QPointF way(std::cos(angle), -std::sin(angle));
    const QPointF edge = wish.anchor + reach * way;
    // Snap near-zero directions so that a label to the right is centred on its tree.
    const double ux = std::abs(way.x()) < 0.3 ? 0.0 : std::copysign(1.0, way.x());
    const double uy = std::abs(way.y()) < 0.3 ? 0.0 : std::copysign(1.0, way.y());
    const QPointF centre =
        edge + QPointF(ux * wish.size.width() / 2.0, uy * wish.size.height() / 2.0);
    const QRectF box(centre - QPointF(wish.size.width() / 2.0, wish.size.height() / 2.0),
                     wish.size);
    const QLineF all(wish.anchor, nearest(box, wish.anchor));
    if (all.length() - wish.clear <= kLeaderFrom) return {box, std::nullopt};
    return {box, QLineF(all.pointAt(wish.clear / all.length()), all.p2())};
  }

  [[nodiscard]] bool free(const LabelPlace& label, const LabelWish& wish, Care care) const {
    if (!bounds_.contains(label.box)) return false;
    for (const QRectF& obstacle : near_) {
      if (obstacle.intersects(label.box)) return false;
      const bool own = obstacle.contains(wish.anchor);
      if (care == Care::tidy && !own && label.leader && crosses(*label.leader, obstacle)) {
        return false;
      }
    }
    const QRectF wide = label.box.adjusted(-kBreathing, -kBreathing, kBreathing, kBreathing);
    return std::none_of(taken_.begin(), taken_.end(), [&](const LabelPlace& other) {
      return other.box.intersects(wide) || leaders_clash(label, other, care);
    });
  }

  static bool leaders_clash(const LabelPlace& label, const LabelPlace& other, Care care) {
    if (care == Care::last_resort) return false;
    if (other.leader && crosses(*other.leader, label.box)) return true;
    if (!label.leader) return false;
    if (crosses(*label.leader, other.box)) return true;
    return care == Care::tidy && other.leader && cross_each_other(*label.leader, *other.leader);
  }

  QRectF bounds_;
  std::span<const QRectF> obstacles_;
  std::vector<QRectF> near_;
  std::vector<LabelPlace> taken_;
};

/// How many other anchors stand so near that their labels compete.
int crowding(std::span<const LabelWish> wishes, std::size_t which) {
  const LabelWish& wish = wishes[which];
  const double reach = wish.size.width() + wish.size.height();
  int count = 0;
  for (const LabelWish& other : wishes) {
    if (QLineF(wish.anchor, other.anchor).length() < reach) ++count;
  }
  return count;
}

}  // namespace

std::vector<std::optional<LabelPlace>> place_labels(std::span<const LabelWish> wishes,
                                                    const QRectF& bounds,
                                                    std::span<const QRectF> obstacles) {
  std::vector<int> crowd(wishes.size());
  for (std::size_t i = 0; i < wishes.size(); ++i) crowd[i] = crowding(wishes, i);
  std::vector<std::size_t> order(wishes.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&crowd](std::size_t a, std::size_t b) { return crowd[a] > crowd[b]; });
  Placer placer(bounds, obstacles);
  std::vector<std::optional<LabelPlace>> places(wishes.size());
  for (const std::size_t i : order) places[i] = placer.place(wishes[i]);
  return places;
}

}  // namespace oaklight
