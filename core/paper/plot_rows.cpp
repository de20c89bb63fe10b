#include "core/paper/plot_rows.hpp"

#include <algorithm>
#include <cmath>

#include "core/paper/plot_marks.hpp"

namespace oaklight {
namespace {

constexpr double kRow = 30.0;
constexpr double kTitle = 19.0;
constexpr double kMark = 9.0;
constexpr double kIndent = kMark + kNextRing + 1.0;  // from a cell's left edge to its mark's middle
constexpr double kLongestLabel = 70.0;

/// Columns are as wide as the longest label needs.
struct Columns {
  double width = 0.0;
  std::size_t count = 1;

  Columns(std::span<const PlotRows> stands, double room) {
    double label = 0.0;
    for (const PlotRows& stand : stands) {
      for (const MapPlot* plot : stand.plots) {
        label = std::max(label, text_width(plot->label, kStrongText));
      }
    }
    width = 2.0 * kIndent + 4.0 + std::min(label, kLongestLabel);
    count = std::max<std::size_t>(static_cast<std::size_t>(room / width), 1);
  }
  [[nodiscard]] double height_of(const PlotRows& stand) const {
    const std::size_t rows = (stand.plots.size() + count - 1) / count;
    return kTitle + kRow * static_cast<double>(rows);
  }
};

}  // namespace

double plot_rows_height(std::span<const PlotRows> stands, double width) {
  const Columns columns(stands, width);
  double height = 0.0;
  for (const PlotRows& stand : stands) height += columns.height_of(stand);
  return height;
}

std::vector<DrawnPlot> draw_plot_rows(Drawing& drawing, const QRectF& strip,
                                      std::span<const PlotRows> stands) {
  const Columns columns(stands, strip.width());
  const bool all = plot_rows_height(stands, strip.width()) <= strip.height();
  const double bottom = strip.bottom() - (all ? 0.0 : kTitle);
  std::vector<DrawnPlot> drawn;
  std::size_t whole = 0;
  double y = strip.top();
  for (const PlotRows& stand : stands) {
    whole += stand.plots.size();
    if (y + kTitle + kRow > bottom + 1e-6) continue;
    drawing.text(QPointF(strip.left(), y + 13.0), fitted(stand.title, kStrongText, strip.width()),
                 kStrongText);
    y += kTitle;
    for (std::size_t i = 0; i < stand.plots.size() && y + kRow <= bottom + 1e-6; ++i) {
      const MapPlot& plot = *stand.plots[i];
      const auto column = static_cast<double>(i % columns.count);
      const QPointF at(strip.left() + column * columns.width + kIndent, y + kRow / 2.0);
      draw_plot(drawing, plot.status, at, kMark, plot.next);
      drawing.text(at + QPointF(kIndent + 1.0, 4.0),
                   fitted(plot.label, plot.next ? kStrongText : kBodyText, kLongestLabel),
                   plot.next ? kStrongText : kBodyText);
      drawn.push_back({plot.id, at, kMark});
      if (i % columns.count == columns.count - 1 || i + 1 == stand.plots.size()) y += kRow;
    }
  }
  if (drawn.size() < whole) {
    drawing.text(QPointF(strip.left(), strip.bottom() - 5.0),
                 QStringLiteral("and %1 more plots").arg(whole - drawn.size()), kBodyText);
  }
  return drawn;
}

}  // namespace oaklight
