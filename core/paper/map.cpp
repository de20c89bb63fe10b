#include "core/paper/map.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/paper/label_placement.hpp"
#include "core/paper/map_ground.hpp"
#include "core/paper/page.hpp"
#include "core/paper/plot_marks.hpp"

namespace oaklight {
namespace {

constexpr double kMarkRadius = 4.2;
constexpr double kSmallMarkRadius = 2.4;
constexpr double kLeastMarkRadius = 1.3;  // of trees on a map of plots that has many
constexpr std::size_t kManyTrees = 60;
constexpr double kPlotMark = 8.5;
constexpr double kLeastPlotMark = 4.0;
constexpr double kPlotLabelReach = 12.0;  // a label further away could be that of another
constexpr std::size_t kMostPlotLabels = 200;
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
    draw_map_ground(drawing_, scene_, view_);
    draw_blocks();
    draw_trees();
    draw_plots();
    draw_here();
    for (const MapTrack& track : scene_.tracks) name_track(track);
    letter_blocks();
    if (!scene_.plots.empty()) name_stands();  // before the labels of plots fill the stand
    place_tags();
    for (const MapBlock& block : content_.blocks) taken_.push_back(block_box(block));
    take_tracks();
    if (scene_.plots.empty()) name_stands();
    drawing_.append(on_top_);
    drawing_.outline_rect(view_.frame, {1.2, Ink::black});
    return std::move(outcome_);
  }

 private:
  [[nodiscard]] QPainterPath on_paper(const QPolygonF& ground) const {
    return path_on_map(ground, view_);
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
    const bool crowded = !scene_.plots.empty() && scene_.trees.size() > kManyTrees;
    const double small_radius = crowded ? kLeastMarkRadius : kSmallMarkRadius;
    for (std::size_t i = 0; i < scene_.trees.size(); ++i) {
      if (!tagged[i]) draw_tree(scene_.trees[i], small_radius);
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

  /// Plots that lie close get smaller marks, so that each can be seen and tapped.
  [[nodiscard]] double plot_radius() const {
    constexpr std::size_t kMostCompared = 2000;
    if (scene_.plots.size() > kMostCompared) return kLeastPlotMark;
    double least = kPlotMark;
    for (std::size_t i = 0; i < scene_.plots.size(); ++i) {
      for (std::size_t j = 0; j < i; ++j) {
        const QPointF off = view_.at(scene_.plots[i].place) - view_.at(scene_.plots[j].place);
        const double apart = std::hypot(off.x(), off.y());
        if (apart > 2.0 * kLeastPlotMark)
          least = std::min(least, (apart / 2.0 - 0.5) / kPlotMarkReach);
      }
    }
    return std::max(least, kLeastPlotMark);
  }

  [[nodiscard]] double plot_room(const MapPlot& plot) const {
    return outcome_.plot_radius * kPlotMarkReach + (plot.next ? kNextRing : 0.5);
  }

  void draw_plots() {
    if (scene_.plots.empty()) return;
    outcome_.plot_radius = plot_radius();
    for (const MapPlot& plot : scene_.plots) {
      const QPointF at = view_.at(plot.place);
      const double room = plot_room(plot);
      if (!grown(view_.frame, -room).contains(at)) continue;
      draw_plot(drawing_, plot.status, at, outcome_.plot_radius, plot.next);
      taken_.push_back(grown(QRectF(at, QSizeF(0.0, 0.0)), room));
    }
  }

  void draw_here() {
    if (!scene_.here) return;
    const QPointF at = view_.at(*scene_.here);
    if (!grown(view_.frame, -9.0).contains(at)) return;
    draw_person(drawing_, at);
    taken_.push_back(grown(QRectF(at, QSizeF(0.0, 0.0)), 8.0));
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
    // Among plots, names stand there before leaders are drawn, which must run under them.
    Drawing& drawing = scene_.plots.empty() ? drawing_ : on_top_;
    drawing.fill_rect(box, Ink::white);
    drawing.text(QPointF(box.left() + 1.5, box.top() + 0.90 * style.points), text, style);
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
    if (!scene_.plots.empty()) name_beside(path, text);
  }

  /// Among plots a line may have no free place of its own; its name then stands close by.
  void name_beside(const QPainterPath& path, const QString& text) {
    for (const double share : {0.5, 0.3, 0.7, 0.15, 0.85}) {
      const LabelWish wish{path.pointAtPercent(share), label_size(text, kSmallText), 2.0,
                           kPlotLabelReach};
      const auto place = place_labels({&wish, 1}, grown(view_.frame, -3.0), taken_).front();
      if (place) return write_on_white(place->box, text, kSmallText);
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

  void name_stands() {
    for (const MapStand& stand : scene_.stands) name_stand(stand);
  }

  /// Names a stand inside it, off its lines: where the whole name fits into it if there is such a
  /// place.
  void name_stand(const MapStand& stand) {
    const bool overview = !scene_.plots.empty() || !content_.blocks.empty() ||
                          content_.tagged.size() == scene_.trees.size();
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
    if (best) return write_on_white(*best, text, kStandText);
    if (!scene_.plots.empty()) name_stand_outside(path, stand.name);
  }

  /// A stand full of plots wears its name above or below it.
  void name_stand_outside(const QPainterPath& path, const QString& name) {
    const QRectF seen = path.boundingRect().intersected(view_.frame);
    const QString text = fitted(name, kStandText, kLongestName);
    const QSizeF size = label_size(text, kStandText);
    for (const double y :
         {seen.top() - size.height() / 2.0 - 2.0, seen.bottom() + size.height() / 2.0 + 2.0}) {
      for (const double share : {0.5, 0.3, 0.7, 0.15, 0.85}) {
        const auto box = free_box(QPointF(seen.left() + share * seen.width(), y), size);
        if (box) return write_on_white(*box, text, kStandText);
      }
    }
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
    if (scene_.here && grown(view_.frame, -9.0).contains(view_.at(*scene_.here))) {
      wish(tags, wishes, {QStringLiteral("You"), kSmallStrongText, std::nullopt},
           view_.at(*scene_.here), 8.0);
    }
    for (const MapPlot& plot : scene_.plots) {
      if (!plot.next && scene_.plots.size() > kMostPlotLabels) continue;
      const TextStyle style = plot.next ? kStrongText : kSmallText;
      const QString text = fitted(plot.label, style, 80.0);
      wish(tags, wishes, {text, style, std::nullopt}, view_.at(plot.place), plot_room(plot));
      if (!plot.next) wishes.back().reach = kPlotLabelReach;
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
  Drawing on_top_;
  std::vector<QRectF> taken_;
  MapOutcome outcome_;
};

}  // namespace

MapOutcome draw_map(Drawing& drawing, const MapScene& scene, const MapView& view,
                    const MapContent& content) {
  return MapPainter(drawing, scene, view, content).draw();
}

}  // namespace oaklight
