#include "core/paper/axis.hpp"

#include <algorithm>
#include <cmath>

#include "core/paper/picture.hpp"

namespace oaklight {

Axis Axis::holding(double most, int count) {
  if (!(most > 0.0) || !std::isfinite(most)) return {0.0, 1.0, 1.0};
  const double rough = most / std::max(count, 1);
  const double power = std::pow(10.0, std::floor(std::log10(rough)));
  double step = 10.0 * power;
  for (const double nice : {5.0, 2.5, 2.0, 1.0}) {
    if (nice * power >= rough * (1.0 - 1e-9)) step = nice * power;
  }
  return {0.0, step * std::ceil(most / step - 1e-9), step};
}

int Axis::decimals() const {
  constexpr int kMost = 6;
  double scaled = step;
  for (int d = 0; d < kMost; ++d, scaled *= 10.0) {
    if (std::abs(scaled - std::round(scaled)) < 1e-6 * scaled) return d;
  }
  return kMost;
}

std::vector<double> Axis::ticks() const {
  std::vector<double> values;
  const int count = static_cast<int>(std::lround((to - from) / step));
  for (int i = 0; i <= count; ++i) values.push_back(from + i * step);
  return values;
}

double ChartField::at_x(double value) const {
  return box.left() + (value - x.from) / (x.to - x.from) * box.width();
}

double ChartField::at_y(double value) const {
  return box.bottom() - (value - y.from) / (y.to - y.from) * box.height();
}

QPointF ChartField::at(double x_value, double y_value) const {
  return {at_x(x_value), at_y(y_value)};
}

double axis_width(const Axis& axis) {
  double widest = 0.0;
  for (const double value : axis.ticks()) {
    widest = std::max(widest, text_width(figure_words(value, axis.decimals()), kSmallText));
  }
  return widest + 6.0;
}

void draw_y_axis(Drawing& drawing, const ChartField& field, const QString& title) {
  drawing.text(QPointF(field.box.left() - axis_width(field.y), field.box.top() - 9.0), title,
               kSmallText);
  for (const double value : field.y.ticks()) {
    const double y = field.at_y(value);
    if (value > field.y.from) {
      drawing.line(QPointF(field.box.left(), y), QPointF(field.box.right(), y), {0.5, Ink::rule});
    }
    drawing.text_ending(QPointF(field.box.left() - 5.0, y + 3.5),
                        figure_words(value, field.y.decimals()), kSmallText);
  }
}

void draw_x_axis(Drawing& drawing, const ChartField& field,
                 const std::vector<std::pair<double, QString>>& ticks, const QString& title) {
  const double base = field.box.bottom();
  drawing.line(field.box.bottomLeft(), field.box.bottomRight(), {1.0, Ink::black});
  double taken = -1e9;
  for (const auto& [value, words] : ticks) {
    const double x = field.at_x(value);
    drawing.line(QPointF(x, base), QPointF(x, base + 3.0), {0.8, Ink::black});
    const double half = text_width(words, kSmallText) / 2.0;
    if (x - half < taken + 4.0 || x + half > field.box.right() + 12.0) continue;
    drawing.text_centred(QPointF(x, base + 13.5), words, kSmallText);
    taken = x + half;
  }
  drawing.text_ending(QPointF(field.box.right(), base + 27.0), title, kSmallText);
}

}  // namespace oaklight
