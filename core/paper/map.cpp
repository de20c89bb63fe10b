#include "core/paper/map.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/paper/label_placement.hpp"
#include "core/paper/page.hpp"

namespace oaklight {
namespace {

constexpr double kMarkRadius = 4.2;
constexpr double kSmallMarkRadius = 2.4;
constexpr double kBorder = 30.0;  // ground is kept this far from the frame, for labels
constexpr double kLongestName = 190.0;
constexpr double kLetterReach = 9.0;  // a letter further from its box could be that of another

const TextStyle kStandText{12.0, true, Ink::soft};
const TextStyle kLetterText{13.0, true, Ink::black};

QRectF grown(const QRectF& box, double by) { return box.adjusted(-by, -by, by, by); }

/// A label's box around a text: from above its capitals to below its tails.
QSizeF label_size(const QString& text, const TextStyle& style) {
  return {text_width(text, style) + 3.0, style.points * 1.12};
}

/// Draws one map; its steps share the view and the boxes that are taken.
class MapPainter {
 public:
  MapPainter(Drawing& drawing, const MapScene& scene, const MapView& view,
             const MapContent& content)
      : drawing_(drawing), scene_(scene), view_(view), content_(content) {}

  MapOutcome draw() {
    draw_grounds();
    for (const MapTrack& track : scene_.tracks) draw_track_line(track);
    draw_blocks();
    draw_trees();
    for (const MapTrack& track : scene_.tracks) name_track(track);
    letter_blocks();
    place_tags();
    for (const MapBlock& block : content_.blocks) taken_.push_back(block_box(block));
    take_tracks();
    for (const MapStand& stand : scene_.stands) name_stand(stand);
    drawing_.outline_rect(view_.frame, {1.2, Ink::black});
    return std::move(outcome_);
  }

 private:
  QPainterPath on_paper(const QPolygonF& ground) const {
    QPolygonF points;
    for (const QPointF& p : ground) points.append(view_.at(p));
    QPainterPath path;
    path.addPolygon(points);
    return path;
  }

  void draw_grounds() {
    for (const MapStand& stand : scene_.stands) {
      QPainterPath path;
      path.setFillRule(Qt::OddEvenFill);
      for (const QPolygonF& ring : stand.rings) path.addPath(on_paper(ring));
      if (!path.boundingRect().intersects(view_.frame)) continue;
      drawing_.fill(path, Ink::tint, view_.frame);
      drawing_.outline(path, {1.1, Ink::soft}, view_.frame);
    }
  }

  void draw_track_line(const MapTrack& track) {
    const QPainterPath path = on_paper(track.points);
    if (!grown(path.boundingRect(), 5.0).intersects(view_.frame)) return;
    draw_track(drawing_, path, track.kind, track.confirmed, view_.frame);
  }

  void draw_blocks() {
    for (const MapBlock& block : content_.blocks)
      drawing_.outline_rect(block_box(block), {0.9, Ink::black});
  }

  QRectF block_box(const MapBlock& block) const {
    const QRectF box(view_.at(block.ground.topLeft()), view_.at(block.ground.bottomRight()));
    return grown(box.normalized(), 6.0).intersected(grown(view_.frame, -1.0));
  }

  void draw_trees() {
    std::vector<bool> tagged(scene_.trees.size(), false);
    for (const std::size_t i : content_.tagged) tagged[i] = true;
    for (std::size_t i = 0; i < scene_.trees.size(); ++i) {
      if (!tagged[i]) draw_tree(scene_.trees[i], kSmallMarkRadius);
    }
    for (const std::size_t i : content_.tagged) draw_tree(scene_.trees[i], kMarkRadius);
    if (!scene_.landing) return;
    const QPointF at = view_.at(*scene_.landing);
    if (!grown(view_.frame, -8.0).contains(at)) return;
    draw_landing(drawing_, at);
    taken_.push_back(grown(QRectF(at, QSizeF(0.0, 0.0)), 6.0));
  }

  void draw_tree(const MapTree& tree, double radius) {
    const QPointF at = view_.at(tree.place);
    const QRectF box = mark_box(at, radius);
    if (!view_.frame.contains(box)) return;
    draw_mark(drawing_, tree.mark, at, radius);
    taken_.push_back(box);
  }

  [[nodiscard]] bool free(const QRectF& box) const {
    if (!grown(view_.frame, -2.0).contains(box)) return false;
    return std::none_of(taken_.begin(), taken_.end(),
                        [&box](const QRectF& other) { return other.intersects(box); });
  }

  /// A box of that size around the spot, moved into the frame; nothing where it is not free.
  [[nodiscard]] std::optional<QRectF> free_box(QPointF spot, QSizeF size) const {
    const QRectF inside = grown(view_.frame, -3.0);
    if (!inside.contains(spot)) return std::nullopt;
    const QPointF most(std::max(inside.left(), inside.right() - size.width()),
                       std::max(inside.top(), inside.bottom() - size.height()));
    QRectF box(spot - QPointF(size.width() / 2.0, size.height() / 2.0), size);
    box.moveTopLeft(QPointF(std::clamp(box.left(), inside.left(), most.x()),
                            std::clamp(box.top(), inside.top(), most.y())));
    return free(box) ? std::optional(box) : std::nullopt;
  }

  void write_on_white(const QRectF& box, const QString& text, const TextStyle& style) {
    drawing_.fill_rect(box, Ink::white);
    drawing_.text(QPointF(box.left() + 1.5, box.top() + 0.90 * style.points), text, style);
    taken_.push_back(box);
    outcome_.label_boxes.push_back(box);
  }

  /// The warning comes first, so that a long name cannot push it off the label.
  static QString name_of(const MapTrack& track) {
    const QString kind = words_of(track.kind, track.confirmed);
    if (track.name.isEmpty()) return kind;
    if (track.kind != LineKind::neighbour_line) return track.name;
    return (track.confirmed ? QStringLiteral("Neighbor: ") : QStringLiteral("NOT CONFIRMED: ")) +
           track.name;
  }

  void name_track(const MapTrack& track) {
    const QPainterPath path = on_paper(track.points);
    if (!grown(path.boundingRect(), 1.0).intersects(view_.frame)) return;
    const QString text = fitted(name_of(track), kSmallText, kLongestName);
    for (const int step : {10, 8, 12, 6, 14, 4, 16, 9, 11, 7, 13, 5, 15, 3, 17, 2, 18, 1, 19}) {
      const QPointF spot = path.pointAtPercent(step / 20.0);
      const auto box = free_box(spot, label_size(text, kSmallText));
      if (box) return write_on_white(*box, text, kSmallText);
    }
  }

  /// Spots all over the seen part of a stand: from its middle outwards, or, on a detail map, from
  /// its upper edge down, since the middle belongs to the trees.
  static std::vector<QPointF> spots_in(const QRectF& seen, bool from_middle) {
    constexpr int kSteps = 16;
    std::vector<QPointF> shares;
    for (int y = 1; y < kSteps; ++y) {
      for (int x = 1; x < kSteps; ++x) shares.emplace_back(x / double{kSteps}, y / double{kSteps});
    }
    const auto rank = [from_middle](QPointF p) {
      return std::hypot(p.x() - 0.5, from_middle ? p.y() - 0.5 : p.y());
    };
    std::stable_sort(shares.begin(), shares.end(),
                     [&rank](QPointF a, QPointF b) { return rank(a) < rank(b); });
    for (QPointF& p : shares) {
      p = {seen.left() + p.x() * seen.width(), seen.top() + p.y() * seen.height()};
    }
    return shares;
  }

  /// Names a stand inside it, off its lines: where the whole name fits into it if there is such a
  /// place.
  void name_stand(const MapStand& stand) {
    const bool overview = !content_.blocks.empty() || content_.tagged.size() == scene_.trees.size();
    const QString text = fitted(overview ? stand.label : stand.name, kStandText, kLongestName);
    const QPainterPath path = on_paper(stand.rings.front());
    const QRectF seen = path.boundingRect().intersected(view_.frame);
    std::optional<QRectF> best;
    for (const QPointF& spot : spots_in(seen, overview)) {
      const auto box = free_box(spot, label_size(text, kStandText));
      if (!box || (best && !path.contains(*box))) continue;
      if (!path.contains(spot)) continue;
      best = box;
      if (path.contains(*box)) break;
    }
    if (best) write_on_white(*best, text, kStandText);
  }

  /// Lines are in the way of the names of stands.
  void take_tracks() {
    constexpr double kStep = 7.0;
    constexpr double kMostSteps = 2000.0;
    for (const MapTrack& track : scene_.tracks) {
      const QPainterPath path = on_paper(track.points);
      if (!grown(path.boundingRect(), 1.0).intersects(view_.frame)) continue;
      const double length = path.length();
      const double step = std::max(kStep, length / kMostSteps);
      for (double at = 0.0; at <= length; at += step) {
        const QPointF p = path.pointAtPercent(path.percentAtLength(at));
        if (view_.frame.contains(p)) taken_.push_back(grown(QRectF(p, QSizeF(0.0, 0.0)), 3.0));
      }
    }
  }

  struct Tag {
    QString text;
    TextStyle style;
    std::optional<std::size_t> tree;
  };

  void wish(std::vector<Tag>& tags, std::vector<LabelWish>& wishes, Tag tag, QPointF at,
            double clear) {
    wishes.push_back({at, label_size(tag.text, tag.style), clear});
    tags.push_back(std::move(tag));
  }

  /// The letters of the detail maps, outside of all boxes and near the corner of their own; over
  /// boxes and marks where there is no other room.
  void letter_blocks() {
    std::vector<LabelWish> wishes;
    for (const MapBlock& block : content_.blocks) {
      wishes.push_back(
          {block_box(block).topLeft(), label_size(block.letter, kLetterText), 0.0, kLetterReach});
    }
    const QRectF inside = grown(view_.frame, -3.0);
    std::vector<QRectF> all = taken_;
    for (const MapBlock& block : content_.blocks) all.push_back(block_box(block));
    auto places = place_labels(wishes, inside, all);
    if (std::find(places.begin(), places.end(), std::nullopt) != places.end()) {
      places = place_labels(wishes, inside, outcome_.label_boxes);
      outcome_.letters_clear = false;
    }
    std::vector<Tag> tags;
    for (const MapBlock& block : content_.blocks) {
      tags.push_back({block.letter, kLetterText, std::nullopt});
    }
    draw_tags(tags, places);
  }

  void place_tags() {
    std::vector<Tag> tags;
    std::vector<LabelWish> wishes;
    if (scene_.landing && view_.frame.contains(view_.at(*scene_.landing))) {
      wish(tags, wishes, {QStringLiteral("Landing"), kSmallStrongText, std::nullopt},
           view_.at(*scene_.landing), 7.0);
    }
    for (const std::size_t i : content_.tagged) {
      const MapTree& tree = scene_.trees[i];
      const TextStyle style = tree.mark == TreeMark::cut ? kSmallStrongText : kSmallText;
      wish(tags, wishes, {fitted(tree.tag, style, 80.0), style, i}, view_.at(tree.place),
           kMarkRadius * 1.2);
    }
    draw_tags(tags, place_labels(wishes, grown(view_.frame, -3.0), taken_));
  }

  /// Leaders first: a label that stands on one hides it.
  void draw_tags(const std::vector<Tag>& tags,
                 const std::vector<std::optional<LabelPlace>>& places) {
    for (const auto& place : places) {
      if (!place || !place->leader) continue;
      const QLineF& leader = *place->leader;
      drawing_.line(leader.p1(), leader.p2(), {0.6, Ink::black});
      taken_.push_back(grown(QRectF(leader.p1(), leader.p2()).normalized(), 1.0));
    }
    for (std::size_t i = 0; i < places.size(); ++i) {
      if (places[i]) {
        write_on_white(places[i]->box, tags[i].text, tags[i].style);
      } else if (tags[i].tree) {
        outcome_.untagged.push_back(*tags[i].tree);
      }
    }
  }

  Drawing& drawing_;
  const MapScene& scene_;
  const MapView& view_;
  const MapContent& content_;
  std::vector<QRectF> taken_;
  MapOutcome outcome_;
};

}  // namespace

double MapView::feet_per_point() const { return feet_per_inch / kPointsPerInch; }

QPointF MapView::at(QPointF ground) const {
  const QPointF off = (ground - middle) / feet_per_point();
  return frame.center() + QPointF(off.x(), -off.y());
}

QSizeF largest_ground(QSizeF frame, double feet_per_inch) {
  const QSizeF inside(frame.width() - 2.0 * kBorder, frame.height() - 2.0 * kBorder);
  return inside.expandedTo(QSizeF(0.0, 0.0)) * (feet_per_inch / kPointsPerInch);
}

QSizeF smallest_frame(QSizeF ground, double feet_per_inch) {
  const QSizeF inside = ground * (kPointsPerInch / feet_per_inch);
  return {inside.width() + 2.0 * kBorder, inside.height() + 2.0 * kBorder};
}

MapView fitting_view(const QRectF& frame, const QRectF& ground) {
  const auto fits = [&](double scale) {
    const QSizeF need = smallest_frame(ground.size(), scale);
    return need.width() <= frame.width() && need.height() <= frame.height();
  };
  // The scales of an engineer's rule and their multiples, then doubling.
  static constexpr std::array kUsual = {30.0,  40.0,  50.0,  60.0,  80.0,  100.0, 150.0,
                                        200.0, 300.0, 400.0, 500.0, 600.0, 800.0, 1000.0};
  const auto found = std::find_if(kUsual.begin(), kUsual.end(), fits);
  double scale = found == kUsual.end() ? kUsual.back() : *found;
  constexpr double kWholeEarth = 1e9;  // ft; a frame without room would never fit
  while (!fits(scale) && scale < kWholeEarth) scale *= 2.0;
  return {frame, ground.center(), scale};
}

MapOutcome draw_map(Drawing& drawing, const MapScene& scene, const MapView& view,
                    const MapContent& content) {
  return MapPainter(drawing, scene, view, content).draw();
}

}  // namespace oaklight
