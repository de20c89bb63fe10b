#include "core/paper/tract_map.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/paper/map.hpp"
#include "core/paper/plot_marks.hpp"
#include "core/paper/plot_rows.hpp"
#include "core/place/geodesy.hpp"

namespace oaklight {
namespace {

constexpr double kScaleStrip = 20.0;
constexpr double kRowsShare = 0.45;  // of the room, at most, for plots that are not on the map

QString tree_words(TreeMark mark) {
  switch (mark) {
    case TreeMark::cut:
      return QStringLiteral("take");
    case TreeMark::crop:
      return QStringLiteral("crop tree");
    case TreeMark::keep:
      return QStringLiteral("keep");
    default:
      return QStringLiteral("look again");
  }
}

/// Compass words of a way, eight directions.
QString direction_words(QPointF way) {
  constexpr std::array kNames = {"N", "NE", "E", "SE", "S", "SW", "W", "NW"};
  const double eighths = std::atan2(way.x(), way.y()) * 4.0 / std::numbers::pi;
  return QString::fromLatin1(kNames[static_cast<std::size_t>((std::lround(eighths) + 8) % 8)]);
}

/// Draws the tract for a screen.
class TractPainter {
 public:
  TractPainter(const TractData& data, const TractMapFocus& focus, const PictureFrame& frame)
      : data_(data),
        frame_(frame),
        sheet_(frame, PictureSheet::Place::beside),
        scene_(make_scene(data, focus, frame.units)),
        one_stand_(focus.stand.has_value()) {
    for (const auto* list : {&scene_.plots, &scene_.plots_nowhere}) {
      for (const MapPlot& plot : *list) all_.push_back(&plot);
    }
  }

  TractPicture draw() {
    const auto ground = ground_shown();
    if (!ground && all_.empty()) {
      sheet_.missing(QStringLiteral("Nothing to show yet"),
                     QStringLiteral("Add a stand and its plots, or open a tract file."));
      return {sheet_.finish(), {}, {}};
    }
    write_head();
    sheet_.key(entries());
    if (all_.empty()) sheet_.foot(QStringLiteral("No plots are laid out yet."), kBodyText);
    QRectF room = sheet_.picture();
    if (const auto rows = rows_nowhere(ground.has_value()); !rows.empty()) {
      const QRectF strip = strip_for(rows, ground.has_value());
      add(draw_plot_rows(sheet_.drawing(), strip, rows));
      if (ground && !sheet_.beside()) room.setBottom(strip.top() - 4.0);
    }
    if (ground) draw_ground(room, *ground);
    return finished();
  }

 private:
  /// The ground to show; of one stand without the landing, which may lie far from it.
  [[nodiscard]] std::optional<QRectF> ground_shown() const {
    MapScene scene = scene_;
    if (one_stand_) scene.landing.reset();
    return ground_of(scene);
  }

  [[nodiscard]] long count(PlotStatus status) const {
    return std::count_if(all_.begin(), all_.end(),
                         [status](const MapPlot* p) { return p->status == status; });
  }

  void write_head() {
    if (all_.empty()) {
      sheet_.head(printable(data_.tract.name), {});
      return;
    }
    const long visited = count(PlotStatus::measured) + count(PlotStatus::empty);
    QString words;
    for (const MapPlot* plot : all_) {
      if (plot->next) words = QStringLiteral("Next plot: ") + plot->label;
    }
    if (words.isEmpty() && count(PlotStatus::planned) == 0) {
      words = QStringLiteral("No plot is left to do.");
    }
    sheet_.head(QStringLiteral("%1 of %2 plots visited").arg(visited).arg(all_.size()), words);
  }

  [[nodiscard]] std::vector<KeyEntry> entries() const {
    std::vector<KeyEntry> out;
    for (const auto& status : kWords<PlotStatus>) {
      const long plots = count(status.value);
      if (plots == 0) continue;
      out.push_back({[s = status.value](Drawing& drawing, const QRectF& box) {
                       draw_plot(drawing, s, box.center() + QPointF(0.0, 0.5), 7.0, false);
                     },
                     words_of(status.value) + QStringLiteral(" (%1)").arg(plots)});
    }
    for (const TreeMark mark : {TreeMark::crop, TreeMark::cut, TreeMark::keep, TreeMark::other}) {
      const auto trees = std::count_if(scene_.trees.begin(), scene_.trees.end(),
                                       [mark](const MapTree& t) { return t.mark == mark; });
      if (trees == 0) continue;
      out.push_back({[mark](Drawing& drawing, const QRectF& box) {
                       draw_mark(drawing, mark, box.center() - QPointF(0.0, 1.5), 4.0);
                     },
                     tree_words(mark) + QStringLiteral(" (%1)").arg(trees)});
    }
    return out;
  }

  /// Where the rows go: beside the map, or below it and then not over too much of it.
  [[nodiscard]] QRectF strip_for(const std::vector<PlotRows>& rows, bool map) const {
    const QRectF room = map ? sheet_.room() : sheet_.picture();
    if (!map || sheet_.beside()) return room;
    const double height =
        std::min(plot_rows_height(rows, room.width()), kRowsShare * room.height());
    return {room.left(), room.bottom() - height, room.width(), height};
  }

  /// Plots that are not on the map: together, below or beside it; by stand where there is no map.
  /// The next plot comes with the first of them.
  [[nodiscard]] std::vector<PlotRows> rows_nowhere(bool map) const {
    std::vector<PlotRows> rows;
    const auto add = [&](const QString& title, std::optional<StandId> stand) {
      PlotRows row{title, {}};
      for (const MapPlot& plot : scene_.plots_nowhere) {
        if (!stand || plot.stand == *stand) row.plots.push_back(&plot);
      }
      if (!row.plots.empty()) rows.push_back(std::move(row));
    };
    if (map) {
      add(QStringLiteral("Without a position"), std::nullopt);
      for (PlotRows& row : rows) {
        std::stable_partition(row.plots.begin(), row.plots.end(),
                              [](const MapPlot* plot) { return plot->next; });
      }
      return rows;
    }
    for (const Stand& stand : data_.stands) add(printable(stand.name), stand.id);
    std::stable_partition(rows.begin(), rows.end(), [](const PlotRows& row) {
      return std::any_of(row.plots.begin(), row.plots.end(),
                         [](const MapPlot* p) { return p->next; });
    });
    return rows;
  }

  void draw_ground(const QRectF& room, QRectF ground) {
    const QRectF strip(room.left(), room.bottom() - kScaleStrip, room.width(), kScaleStrip);
    const QRectF frame = room.adjusted(0.6, 0.6, -0.6, -kScaleStrip - 2.0);
    take_in_person(ground);
    const MapView view = filling_view(frame, ground);
    const MapOutcome outcome = draw_map(sheet_.drawing(), scene_, view, {});
    ground_ = {scene_.origin, view.middle, view.frame.center(), view.feet_per_point()};
    for (const MapPlot& plot : scene_.plots) {
      spots_.push_back({plot.id, view.at(plot.place), outcome.plot_radius});
    }
    draw_north(strip);
    if (!away_.isEmpty()) {
      sheet_.drawing().text(QPointF(strip.left() + 30.0, strip.bottom() - 5.0), away_, kSmallText);
      return;
    }
    draw_scale_bars(sheet_.drawing(), strip.bottomRight() - QPointF(0.0, 5.0),
                    view.feet_per_point());
  }

  /// A person near the tract is on the map; one far off would make it a dot, and is told in words.
  void take_in_person(QRectF& ground) {
    if (!scene_.here) return;
    const double reach = std::max({ground.width(), ground.height(), 200.0}) / 2.0;
    if (ground.adjusted(-reach, -reach, reach, reach).contains(*scene_.here)) {
      ground |= QRectF(*scene_.here, QSizeF(0.01, 0.01));
      return;
    }
    const QPointF way = *scene_.here - ground.center();
    const Feet far{std::hypot(way.x(), way.y())};
    constexpr double kFeetPerMile = 5280.0;
    const QString distance =
        frame_.units == UnitSystem::us
            ? figure_words(far.value / kFeetPerMile, 1) + QStringLiteral(" miles")
            : figure_words(to_metres(far).value / 1000.0, 1) + QStringLiteral(" km");
    away_ = QStringLiteral("You are %1 %2 of here.").arg(distance, direction_words(way));
  }

  void draw_north(const QRectF& strip) {
    Drawing& drawing = sheet_.drawing();
    const double x = strip.left() + 6.0;
    QPainterPath arrow(QPointF(x, strip.top() + 2.0));
    arrow.lineTo(x + 4.5, strip.bottom() - 4.0);
    arrow.lineTo(x, strip.bottom() - 8.0);
    arrow.lineTo(x - 4.5, strip.bottom() - 4.0);
    arrow.closeSubpath();
    drawing.fill(arrow, Ink::black);
    drawing.text(QPointF(x + 8.0, strip.bottom() - 5.0), QStringLiteral("N"), kStrongText);
  }

  void add(const std::vector<DrawnPlot>& drawn) {
    for (const DrawnPlot& plot : drawn) spots_.push_back({plot.plot, plot.at, plot.radius});
  }

  [[nodiscard]] TractPicture finished() const {
    TractPicture picture{sheet_.finish(), spots_, ground_};
    if (picture.ground) {
      picture.ground->at *= sheet_.factor();
      picture.ground->feet_per_point /= sheet_.factor();
    }
    for (PlotSpot& spot : picture.plots) {
      spot.at *= sheet_.factor();
      spot.radius *= sheet_.factor();
    }
    return picture;
  }

  const TractData& data_;
  const PictureFrame& frame_;
  PictureSheet sheet_;
  MapScene scene_;
  bool one_stand_;
  std::vector<const MapPlot*> all_;
  std::vector<PlotSpot> spots_;
  std::optional<TractPicture::Ground> ground_;
  QString away_;
};

}  // namespace

std::optional<PlotId> TractPicture::plot_at(QPointF tap, double reach) const {
  std::optional<PlotId> nearest;
  for (const PlotSpot& spot : plots) {
    const double away = std::hypot(spot.at.x() - tap.x(), spot.at.y() - tap.y());
    if (away > reach) continue;
    reach = away;
    nearest = spot.plot;
  }
  return nearest;
}

std::optional<Position> TractPicture::place_at(QPointF tap) const {
  if (!ground) return std::nullopt;
  const QPointF off = (tap - ground->at) * ground->feet_per_point;
  const QPointF place = ground->middle + QPointF(off.x(), -off.y());
  return position_from_local(ground->origin, {Feet{place.x()}, Feet{place.y()}});
}

TractPicture draw_tract(const TractData& data, const TractMapFocus& focus,
                        const PictureFrame& frame) {
  return TractPainter(data, focus, frame).draw();
}

}  // namespace oaklight
