#include "core/paper/fit_chart.hpp"

#include <algorithm>

#include "core/measure/crown_width.hpp"
#include "core/measure/local_curves.hpp"
#include "core/paper/axis.hpp"

namespace oaklight {
namespace {

constexpr double kTree = 2.2;
constexpr double kCurve = 2.0;
const std::vector<double> kBookDashes{6.0, 3.0};
const std::vector<double> kBandDashes{1.5, 2.5};

/// Draws one curve.
class FitPainter {
 public:
  FitPainter(const LocalCurve& curve, const SpeciesTable& species, const PictureFrame& frame)
      : curve_(curve),
        species_(species),
        metric_(frame.units == UnitSystem::metric),
        sheet_(frame) {}

  Drawing draw() {
    write_around();
    lay_out();
    draw_y_axis(drawing(), field_, metric_ ? QStringLiteral("metres") : QStringLiteral("feet"));
    const double spread = curve_.residual_sd.value;
    for (const double side : {-spread, spread}) {
      draw_line([&](Inches dbh) { return length_on(curve_, dbh) + Feet{side}; },
                {0.9, Ink::soft, kBandDashes});
    }
    if (of_crowns()) {
      draw_line([](Inches dbh) { return crowded_crown_radius(dbh) * 2.0; },
                {1.2, Ink::black, kBookDashes});
    }
    draw_line([&](Inches dbh) { return length_on(curve_, dbh); }, {kCurve, Ink::leave});
    for (const auto& [dbh, length] : curve_.measured)
      drawing().dot(at(dbh, length), kTree, Ink::black);
    std::vector<std::pair<double, QString>> ticks;
    for (const double t : field_.x.ticks())
      ticks.emplace_back(t, figure_words(t, field_.x.decimals()));
    draw_x_axis(drawing(), field_, ticks,
                metric_ ? QStringLiteral("DBH, cm") : QStringLiteral("DBH, in"));
    return sheet_.finish();
  }

 private:
  Drawing& drawing() { return sheet_.drawing(); }
  [[nodiscard]] bool of_crowns() const { return curve_.kind == CurveKind::crown_width; }
  [[nodiscard]] double size(Inches dbh) const {
    return metric_ ? to_centimetres(dbh).value : dbh.value;
  }
  [[nodiscard]] double high(Feet length) const {
    return metric_ ? to_metres(length).value : length.value;
  }
  [[nodiscard]] QPointF at(Inches dbh, Feet length) const {
    return field_.at(size(dbh), high(length));
  }

  [[nodiscard]] QString of_words() const {
    const Species* own = curve_.fia ? species_.find(SpeciesCode{*curve_.fia}) : nullptr;
    return own != nullptr ? QString::fromStdString(own->common_name)
                          : QStringLiteral("all species together");
  }

  void write_around() {
    sheet_.head(QStringLiteral("%1 trees").arg(curve_.trees),
                (of_crowns() ? QStringLiteral("Crown width by DBH, %1")
                             : QStringLiteral("Height by DBH, %1"))
                    .arg(of_words()));
    std::vector<KeyEntry> key;
    key.push_back({[](Drawing& d, const QRectF& box) { d.dot(box.center(), kTree, Ink::black); },
                   QStringLiteral("tree measured here")});
    const auto line = [](const Stroke& stroke) {
      return [stroke](Drawing& d, const QRectF& box) {
        d.line({box.left(), box.center().y()}, {box.right(), box.center().y()}, stroke);
      };
    };
    key.push_back({line({kCurve, Ink::leave}), QStringLiteral("fitted curve, used here")});
    key.push_back(
        {line({0.9, Ink::soft, kBandDashes}), QStringLiteral("one residual SD to either side")});
    if (of_crowns()) {
      key.push_back(
          {line({1.2, Ink::black, kBookDashes}), QStringLiteral("the book's mean crown")});
    }
    sheet_.key(key);
    const auto length = [&](Feet feet) {
      return figure_words(high(feet), metric_ ? 2 : 1) +
             (metric_ ? QStringLiteral(" m") : QStringLiteral(" ft"));
    };
    sheet_.foot(
        QStringLiteral("Used for a DBH from %1 to %2 %3, residual SD %4, n = %5. Outside it %6.")
            .arg(figure_words(size(curve_.from), 1), figure_words(size(curve_.to), 1),
                 metric_ ? QStringLiteral("cm") : QStringLiteral("in"), length(curve_.residual_sd))
            .arg(curve_.trees)
            .arg(of_crowns() ? QStringLiteral("the book's crown is used")
                             : QStringLiteral("a tree without a height has none")));
  }

  void lay_out() {
    Feet most = length_on(curve_, curve_.to) + curve_.residual_sd;
    for (const auto& [dbh, length] : curve_.measured) most = std::max(most, length);
    if (of_crowns()) most = std::max(most, crowded_crown_radius(curve_.to) * 2.0);
    const QRectF& room = sheet_.room();
    constexpr double kAir = 1.03;
    field_.y = Axis::holding(high(most) * kAir, room.height() > 180.0 ? 7 : 4);
    field_.x = Axis::holding(size(curve_.to) * kAir, sheet_.wide() ? 10 : 6);
    field_.box = room.adjusted(axis_width(field_.y), kAxisTitle, -10.0, -kAxisHeight);
  }

  /// Over the DBHs of the trees; what would fall below the ground is left out.
  template <class Length>
  void draw_line(const Length& length, const Stroke& stroke) {
    constexpr double kSteps = 60.0;
    QPainterPath path;
    for (double i = 0.0; i <= kSteps; i += 1.0) {
      const Inches dbh = curve_.from + (curve_.to - curve_.from) * (i / kSteps);
      if (length(dbh).value < 0.0) continue;
      const QPointF point = at(dbh, length(dbh));
      path.elementCount() == 0 ? path.moveTo(point) : path.lineTo(point);
    }
    if (!path.isEmpty()) drawing().outline(path, stroke);
  }

  const LocalCurve& curve_;
  const SpeciesTable& species_;
  bool metric_;
  PictureSheet sheet_;
  ChartField field_;
};

}  // namespace

Drawing draw_fit_chart(const LocalCurve& curve, const SpeciesTable& species,
                       const PictureFrame& frame) {
  return FitPainter(curve, species, frame).draw();
}

}  // namespace oaklight
