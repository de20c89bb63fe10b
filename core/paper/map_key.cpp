#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/base/number_text.hpp"
#include "core/paper/map.hpp"
#include "core/paper/page.hpp"
#include "core/paper/reader_words.hpp"

namespace oaklight {
namespace {

constexpr double kRow = 17.0;
constexpr double kTop = 6.0;
constexpr double kSample = 32.0;   // room for the mark or piece of line before its words
constexpr double kCompass = 56.0;  // room for north at the right
constexpr double kCompassHeight = 56.0;
constexpr double kMarksShare = 0.44;

/// Whether a view may show a part of the line.
bool shows(const MapView& view, const MapTrack& track) {
  for (qsizetype i = 1; i < track.points.size(); ++i) {
    const QRectF part(view.at(track.points[i - 1]), view.at(track.points[i]));
    if (part.normalized().adjusted(-1.0, -1.0, 1.0, 1.0).intersects(view.frame)) return true;
  }
  return false;
}

/// Whether one of the views may show the line, or there are no views to ask.
bool shown(const MapTrack& track, std::span<const MapView> views) {
  return views.empty() || std::any_of(views.begin(), views.end(),
                                      [&track](const MapView& view) { return shows(view, track); });
}

}  // namespace

MapKey::MapKey(const MapScene& scene, std::span<const std::size_t> trees,
               std::span<const MapView> views) {
  add_marks(scene, trees);
  add_lines(scene, views);
}

void MapKey::add_marks(const MapScene& scene, std::span<const std::size_t> trees) {
  for (const TreeMark mark : kTreeMarks) {
    const auto count = std::count_if(trees.begin(), trees.end(),
                                     [&](std::size_t i) { return scene.trees[i].mark == mark; });
    if (count == 0) continue;
    marks_.push_back(
        {mark, std::nullopt, words_of(mark, scene.reader) + QStringLiteral(" (%1)").arg(count)});
  }
}

void MapKey::add_lines(const MapScene& scene, std::span<const MapView> views) {
  for (const auto& kind : kWords<LineKind>) {
    const bool two_kinds = kind.value == LineKind::neighbour_line;
    for (const bool confirmed : {false, true}) {
      if (confirmed && !two_kinds) continue;
      const bool any =
          std::any_of(scene.tracks.begin(), scene.tracks.end(), [&](const MapTrack& track) {
            return track.kind == kind.value && (!two_kinds || track.confirmed == confirmed) &&
                   shown(track, views);
          });
      if (!any) continue;
      lines_.push_back(
          {std::nullopt, std::pair(kind.value, confirmed), words_of(kind.value, confirmed)});
    }
  }
}

double MapKey::height() const {
  const double rows = static_cast<double>(std::max(marks_.size(), lines_.size()));
  return std::max(kTop + rows * kRow + 2.0, kCompassHeight);
}

void MapKey::draw_sample(Drawing& drawing, const Entry& entry, QPointF left) {
  if (entry.mark) draw_mark(drawing, *entry.mark, left + QPointF(12.0, -4.5), 4.2);
  if (!entry.line) return;
  QPainterPath path(left + QPointF(0.0, -3.5));
  path.lineTo(left + QPointF(24.0, -3.5));
  draw_track(drawing, path, entry.line->first, entry.line->second,
             QRectF(left.x(), left.y() - 12.0, 24.0, 16.0));
}

void MapKey::draw(Drawing& drawing, const QRectF& strip) const {
  const double room = strip.width() - kCompass;
  const double widths[] = {room * kMarksShare, room * (1.0 - kMarksShare)};
  double x = strip.left();
  for (const auto* column : {&marks_, &lines_}) {
    const double width = widths[column == &lines_ ? 1 : 0];
    double y = strip.top() + kTop + 10.0;
    for (const Entry& entry : *column) {
      draw_sample(drawing, entry, QPointF(x, y));
      drawing.text(QPointF(x + kSample, y), fitted(entry.words, kSmallText, width - kSample - 4.0),
                   kSmallText);
      y += kRow;
    }
    x += width;
  }
  draw_north_arrow(drawing, QPointF(strip.right() - 44.0, strip.top() + 5.0));
}

void draw_map_caption(Drawing& drawing, const QString& letter, const MapView& view) {
  const double baseline = view.frame.top() - 7.0;
  double x = view.frame.left();
  if (!letter.isEmpty()) {
    const double width = text_width(letter, kSubheadText) + 14.0;
    drawing.fill_rect(QRectF(x, view.frame.top() - kMapCaption + 2.0, width, kMapCaption - 2.0),
                      Ink::dark_ground);
    drawing.text(QPointF(x + 7.0, baseline + 1.0), letter, kSubheadText.in(Ink::on_ground));
    x += width + 8.0;
  }
  const QString scale = QString::fromStdString(grouped_text(view.feet_per_inch, 0));
  drawing.text(QPointF(x, baseline), QStringLiteral("1 in = %1 ft").arg(scale), kSmallStrongText);
  draw_scale_bars(drawing, QPointF(view.frame.right(), baseline), view.feet_per_point());
}

void draw_map_way(Drawing& drawing, const MapScene& scene, const MapView& view) {
  if (!scene.landing) return;
  const QPointF way = view.middle - *scene.landing;
  const double degrees = std::atan2(way.x(), way.y()) * 180.0 / std::numbers::pi;
  const int azimuth = static_cast<int>(std::lround(degrees + 360.0)) % 360;
  // Whole tens: the middle of a map is no tree.
  const double feet = std::round(std::hypot(way.x(), way.y()) / 10.0) * 10.0;
  const QString words = QStringLiteral("From the landing: %1 ft, azimuth %2\u00B0 true")
                            .arg(QString::fromStdString(grouped_text(feet, 0)))
                            .arg(azimuth);
  drawing.text(QPointF(view.frame.left(), view.frame.bottom() + 12.0),
               fitted(words, kSmallText, view.frame.width()), kSmallText);
}

}  // namespace oaklight
