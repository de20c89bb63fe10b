#include "core/paper/stocking_chart.hpp"

#include <algorithm>
#include <cmath>

#include "core/measure/basal_area.hpp"
#include "core/paper/axis.hpp"
#include "core/paper/label_placement.hpp"

namespace oaklight {
namespace {

constexpr double kMark = 5.0;
constexpr double kLeaderReach = 20.0;  // labels that may stand less far away need no leader
constexpr double kRayFrom = 0.40;      // lines of equal diameter run from this share of the A line
constexpr double kRayTo = 1.06;        // to a little above it

using Line = StockingLine (*)(Inches);

QRectF around(QPointF p, double by) { return {p.x() - by, p.y() - by, 2.0 * by, 2.0 * by}; }

/// What acres and inches become on the axes.
struct Units {
  bool metric = false;
  double trees = 1.0, ba = 1.0;

  explicit Units(UnitSystem system) : metric(system == UnitSystem::metric) {
    if (!metric) return;
    trees = 1.0 / to_hectares(Acres{1.0}).value;
    ba = trees * kMetresPerFoot * kMetresPerFoot;
  }
  [[nodiscard]] double size(Inches d) const { return metric ? to_centimetres(d).value : d.value; }
  [[nodiscard]] Inches inches(double d) const {
    return metric ? to_inches(Centimetres{d}) : Inches{d};
  }
  [[nodiscard]] QString size_words(Inches d, int decimals) const {
    return figure_words(size(d), decimals) +
           (metric ? QStringLiteral(" cm") : QStringLiteral(" in"));
  }
};

QString percent_words(const StockingPoint& p) {
  QString words = figure_words(p.stocking.value, 0);
  if (p.stocking_half)
    words += QStringLiteral(" \u00B1 ") + figure_words(p.stocking_half->value, 0);
  return words + QStringLiteral(" %");
}

/// Draws one stand on the guide.
class GuidePainter {
 public:
  GuidePainter(const StockingChart& chart, const PictureFrame& frame)
      : chart_(chart), units_(frame.units), sheet_(frame) {}

  Drawing draw() {
    write_around();
    lay_out();
    draw_y_axis(drawing(), field_,
                units_.metric ? QStringLiteral("basal area, m\u00B2 per hectare")
                              : QStringLiteral("basal area, ft\u00B2 per acre"));
    draw_rays();
    draw_line(a_line, 2.0);
    draw_line(b_line, 2.0);
    draw_points();
    place_all_labels();
    std::vector<std::pair<double, QString>> ticks;
    for (const double t : field_.x.ticks()) ticks.emplace_back(t, figure_words(t, 0));
    draw_x_axis(
        drawing(), field_, ticks,
        units_.metric ? QStringLiteral("trees per hectare") : QStringLiteral("trees per acre"));
    return sheet_.finish();
  }

 private:
  struct Label {
    QString words;
    TextStyle style;
    QPointF at;
    double clear = 0.0;
  };

  Drawing& drawing() { return sheet_.drawing(); }

  /// A point that has trees.
  static const StockingPoint* known(const std::optional<StockingPoint>& p) {
    return p && p->qmd() ? &*p : nullptr;
  }

  [[nodiscard]] std::vector<StockingPoint> points() const {
    std::vector<StockingPoint> out;
    for (const auto* p : {known(chart_.now), known(chart_.after)}) {
      if (p != nullptr) out.push_back(*p);
    }
    return out;
  }

  /// Why the guide does not hold for this stand; "" when it does.
  [[nodiscard]] QString outside_words() const {
    for (const StockingPoint& p : points()) {
      const Inches d = *p.qmd();
      if (d >= kStockingGuideMin && d <= kStockingGuideMax) continue;
      return QStringLiteral(
                 "Outside the guide: the mean diameter is %1; the guide covers %2 to %3.")
          .arg(units_.size_words(d, 1), figure_words(units_.size(kStockingGuideMin), 0),
               units_.size_words(kStockingGuideMax, 0));
    }
    if (chart_.fit && !chart_.fit->oak_hickory) {
      return QStringLiteral(
                 "Outside the guide: oaks and hickories hold %1 % of the basal area; it was made "
                 "for stands with at least half.")
          .arg(figure_words(chart_.fit->oak_hickory_share.value, 0));
    }
    return {};
  }

  void write_around() {
    if (points().empty()) {
      sheet_.head(QStringLiteral("No stand to show yet"),
                  QStringLiteral("Tally a plot: the stand then shows on the upland oak guide."));
    } else if (known(chart_.now) == nullptr) {
      sheet_.head(percent_words(*chart_.after), QStringLiteral("Stocking by the upland oak guide, "
                                                               "after release"));
    } else {
      QString figure = percent_words(*chart_.now);
      if (chart_.after) figure += QStringLiteral(" \u2192 ") + percent_words(*chart_.after);
      sheet_.head(figure, chart_.after
                              ? QStringLiteral("Stocking by the upland oak guide, now and after "
                                               "release")
                              : QStringLiteral("Stocking by the upland oak guide"));
    }
    const QString outside = outside_words();
    if (!outside.isEmpty()) sheet_.note(outside);
    const bool boxed = chart_.now && chart_.now->trees_half && chart_.now->ba_half;
    sheet_.foot(
        QStringLiteral("A: average full stocking, 100 %. B: crowns just fill the ground. ") +
        (boxed ? QStringLiteral("Box: the %1 % interval of each figure. ")
                     .arg(figure_words(100.0 * chart_.now->confidence.share(), 0))
               : QString()) +
        QStringLiteral("Dashed: beyond the printed guide (%1).")
            .arg(units_.size_words(kStockingGuidePrintedMax, 0)));
  }

  void lay_out() {
    double least = 7.0;
    double trees = 0.0;
    double ba = a_line(kStockingGuideMax).ba.value;
    for (const StockingPoint& p : points()) {
      least = std::min(least, std::floor(p.qmd()->value) - 1.0);
      trees = std::max(trees, p.trees.value + p.trees_half.value_or(TreesPerAcre{}).value);
      ba = std::max(ba, p.ba.value + p.ba_half.value_or(SquareFeetPerAcre{}).value);
    }
    least_ = Inches{std::max(least, kStockingGuideMin.value)};
    trees = std::max(trees * 1.08, a_line(least_).trees.value * 1.12);
    const QRectF& room = sheet_.room();
    field_.y = Axis::holding(ba * 1.06 * units_.ba, room.height() > 180.0 ? 7 : 4);
    field_.x = Axis::holding(trees * units_.trees, sheet_.wide() ? 10 : 5);
    field_.box = room.adjusted(axis_width(field_.y), kAxisTitle, -10.0, -kAxisHeight);
  }

  [[nodiscard]] QPointF at(TreesPerAcre trees, SquareFeetPerAcre ba) const {
    return field_.at(trees.value * units_.trees, ba.value * units_.ba);
  }

  void draw_line(Line line, double width) {
    constexpr double kStep = 0.25;
    QPainterPath solid, dashed;
    for (double d = least_.value; d <= kStockingGuideMax.value; d += kStep) {
      const StockingLine p = line(Inches{d});
      const bool printed = d <= kStockingGuidePrintedMax.value;
      QPainterPath& path = printed ? solid : dashed;
      if (path.elementCount() == 0) {
        path.moveTo(printed || solid.elementCount() == 0 ? at(p.trees, p.ba)
                                                         : solid.currentPosition());
      }
      path.lineTo(at(p.trees, p.ba));
      taken_.push_back(around(at(p.trees, p.ba), 2.0));
    }
    if (!solid.isEmpty()) drawing().outline(solid, {width, Ink::black});
    if (!dashed.isEmpty()) drawing().outline(dashed, {width, Ink::black, {6.0, 3.0}});
    const StockingLine end = line(least_);
    labels_.push_back({line == a_line ? QStringLiteral("A") : QStringLiteral("B"), kSubheadText,
                       at(end.trees, end.ba), 4.0});
  }

  /// Diameters of the rays: few enough to be read.
  [[nodiscard]] std::vector<double> ray_sizes() const {
    if (units_.metric) return {8, 10, 12, 15, 20, 25, 30, 40, 55};
    return {3, 4, 5, 6, 7, 8, 10, 12, 15, 22};
  }

  void draw_rays() {
    for (const double size : ray_sizes()) {
      const Inches d = units_.inches(size);
      if (d < least_ || d > kStockingGuideMax) continue;
      const StockingLine a = a_line(d);
      const QPointF from = at(a.trees * kRayFrom, a.ba * kRayFrom);
      const QPointF to = at(a.trees * kRayTo, a.ba * kRayTo);
      drawing().line(from, to, {0.8, Ink::soft});
      rays_.push_back({units_.size_words(d, 0), kSmallText, to, 2.0});
    }
  }

  void draw_points() {
    const StockingPoint* now = known(chart_.now);
    const StockingPoint* after = known(chart_.after);
    if (now != nullptr) draw_box(*now);
    if (now != nullptr && after != nullptr)
      draw_arrow(at(now->trees, now->ba), at(after->trees, after->ba));
    if (after != nullptr) {
      const QPointF p = at(after->trees, after->ba);
      drawing().dot(p, kMark + 0.8, Ink::black);
      drawing().dot(p, kMark - 1.2, Ink::white);
      mark(p, QStringLiteral("after"));
    }
    if (now != nullptr) {
      const QPointF p = at(now->trees, now->ba);
      drawing().dot(p, kMark + 2.0, Ink::white);
      drawing().dot(p, kMark, Ink::black);
      mark(p, QStringLiteral("now"));
    }
  }

  void mark(QPointF p, const QString& words) {
    taken_.push_back(around(p, kMark + 2.0));
    labels_.push_back({words, kStrongText, p, kMark + 3.0});
  }

  void draw_box(const StockingPoint& p) {
    if (!p.trees_half || !p.ba_half) return;
    const auto least = [](double mean, double half) { return std::max(mean - half, 0.0); };
    const QRectF box(
        at(TreesPerAcre{least(p.trees.value, p.trees_half->value)}, p.ba + *p.ba_half),
        at(p.trees + *p.trees_half, SquareFeetPerAcre{least(p.ba.value, p.ba_half->value)}));
    drawing().outline_rect(box, {1.1, Ink::water, {4.0, 2.0}});
  }

  void draw_arrow(QPointF from, QPointF to) {
    const QLineF whole(from, to);
    if (whole.length() < 3.0 * kMark) return;
    const QPointF along = (to - from) / whole.length();
    const QPointF across(-along.y(), along.x());
    const QPointF tip = to - along * (kMark + 2.0);
    const QPointF foot = tip - along * 8.0;
    drawing().line(from, foot, {3.0, Ink::white});
    drawing().line(from, foot, {1.6, Ink::black});
    QPainterPath head(tip);
    head.lineTo(foot + across * 4.0);
    head.lineTo(foot - across * 4.0);
    head.closeSubpath();
    drawing().fill(head, Ink::black);
    for (int i = 1; i < 8; ++i) taken_.push_back(around(from + (to - from) * (i / 8.0), 2.0));
  }

  /// Names of lines and points where they have room; those of the rays only next to their ends.
  void place_all_labels() {
    place(labels_, 60.0);
    place(rays_, 9.0);
  }

  void place(const std::vector<Label>& labels, double reach) {
    std::vector<LabelWish> wishes;
    for (const Label& l : labels) {
      wishes.push_back({l.at, QSizeF(text_width(l.words, l.style) + 3.0, l.style.points * 1.12),
                        l.clear, reach});
    }
    const auto places = place_labels(wishes, field_.box.adjusted(1.0, 1.0, -1.0, -1.0), taken_);
    for (std::size_t i = 0; i < labels.size(); ++i) {
      if (!places[i] || (places[i]->leader && reach < kLeaderReach)) continue;
      const QRectF& box = places[i]->box;
      if (places[i]->leader)
        drawing().line(places[i]->leader->p1(), places[i]->leader->p2(), {0.6, Ink::soft});
      drawing().fill_rect(box, Ink::white);
      drawing().text(QPointF(box.left() + 1.5, box.top() + 0.90 * labels[i].style.points),
                     labels[i].words, labels[i].style);
      taken_.push_back(box);
    }
  }

  const StockingChart& chart_;
  Units units_;
  PictureSheet sheet_;
  ChartField field_;
  Inches least_{7.0};
  std::vector<QRectF> taken_;
  std::vector<Label> labels_, rays_;
};

}  // namespace

std::optional<Inches> StockingPoint::qmd() const {
  if (trees.value <= 0.0 || ba.value <= 0.0) return std::nullopt;
  return quadratic_mean_diameter(ba, trees);
}

StockingPoint stocking_point(const StandStocking& stocking, const AreaEstimate* live) {
  StockingPoint point{.trees = stocking.trees,
                      .ba = stocking.ba,
                      .stocking = stocking.stocking.mean,
                      .stocking_half = stocking.stocking.half_width,
                      .confidence = stocking.stocking.confidence};
  constexpr double kSame = 1e-6;  // both are sums over the same trees, in another order
  if (live == nullptr ||
      std::abs(live->live.trees.mean.value - stocking.trees.value) > kSame * stocking.trees.value) {
    return point;
  }
  point.trees_half = live->live.trees.half_width;
  point.ba_half = live->live.ba.half_width;
  return point;
}

StockingPoint stocking_point(const StandDensity& density) {
  return {.trees = TreesPerAcre{density.live.trees},
          .ba = density.ba,
          .stocking = upland_oak_stocking(density.live)};
}

Drawing draw_stocking_chart(const StockingChart& chart, const PictureFrame& frame) {
  return GuidePainter(chart, frame).draw();
}

}  // namespace oaklight
