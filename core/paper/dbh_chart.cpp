#include "core/paper/dbh_chart.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/paper/axis.hpp"

namespace oaklight {
namespace {

/// From an acre's figure to what is shown.
double shown_factor(ChartAmount amount, UnitSystem units) {
  if (units == UnitSystem::us) return 1.0;
  const double per_hectare = 1.0 / to_hectares(Acres{1.0}).value;
  return amount == ChartAmount::trees ? per_hectare : per_hectare * kMetresPerFoot * kMetresPerFoot;
}

QString unit_words(ChartAmount amount, UnitSystem units) {
  const bool us = units == UnitSystem::us;
  if (amount == ChartAmount::trees) {
    return us ? QStringLiteral("trees per acre") : QStringLiteral("trees per hectare");
  }
  return us ? QStringLiteral("basal area, ft\u00B2 per acre")
            : QStringLiteral("basal area, m\u00B2 per hectare");
}

double total_of(const std::vector<ClassAmount>& classes) {
  double sum = 0.0;
  for (const ClassAmount& c : classes) sum += c.all();
  return sum;
}

/// Draws the bars of one chart.
class DbhPainter {
 public:
  DbhPainter(const DbhChart& chart, const PictureFrame& frame)
      : chart_(chart),
        metric_(frame.units == UnitSystem::metric),
        factor_(shown_factor(chart.amount, frame.units)),
        units_(frame.units),
        sheet_(frame) {}

  Drawing draw() {
    if (total_of(chart_.now) <= 0.0) {
      sheet_.missing(QStringLiteral("No live trees tallied yet"),
                     QStringLiteral("Tally a plot: the trees show here by size."));
      return sheet_.finish();
    }
    write_around();
    lay_out();
    draw_y_axis(sheet_.drawing(), field_, unit_words(chart_.amount, units_));
    for (const ClassAmount& c : chart_.now) draw_class(c, false);
    for (const ClassAmount& c : chart_.after) draw_class(c, true);
    draw_x_axis(sheet_.drawing(), field_, ticks(), x_title());
    return sheet_.finish();
  }

 private:
  [[nodiscard]] bool pairs() const { return !chart_.after.empty(); }
  [[nodiscard]] double step() const { return static_cast<double>(chart_.width); }
  [[nodiscard]] double shown_size(Inches size) const {
    return metric_ ? to_centimetres(size).value : size.value;
  }

  void write_around() {
    const int decimals = chart_.amount == ChartAmount::basal_area && metric_ ? 1 : 0;
    QString figure = figure_words(total_of(chart_.now) * factor_, decimals);
    if (chart_.se) {
      figure += QStringLiteral(" \u00B1 ") + figure_words(*chart_.se * factor_, decimals);
    }
    if (pairs()) {
      figure +=
          QStringLiteral(" \u2192 ") + figure_words(total_of(chart_.after) * factor_, decimals);
    }
    sheet_.head(figure, (pairs() ? QStringLiteral("Live trees now and after release: ")
                                 : QStringLiteral("Live trees: ")) +
                            unit_words(chart_.amount, units_));
    sheet_.key(entries());
    const bool whiskers = std::any_of(chart_.now.begin(), chart_.now.end(),
                                      [](const ClassAmount& c) { return c.se.has_value(); });
    if (whiskers || chart_.se) {
      sheet_.foot(QStringLiteral("Whiskers and \u00B1: one standard error, from the plots."));
    }
    if (pairs()) sheet_.foot(QStringLiteral("Wide bar: now. Narrow bar beside it: after release."));
  }

  [[nodiscard]] std::vector<KeyEntry> entries() const {
    std::vector<FoodGroup> groups;
    const auto any = [this](double ClassAmount::*part) {
      return std::any_of(chart_.now.begin(), chart_.now.end(),
                         [part](const ClassAmount& c) { return c.*part > 0.0; });
    };
    if (any(&ClassAmount::oak)) groups.push_back(FoodGroup::oak);
    if (any(&ClassAmount::mast)) groups.push_back(FoodGroup::mast);
    if (any(&ClassAmount::rest)) groups.push_back(FoodGroup::rest);
    return key_of(groups);
  }

  void lay_out() {
    int least = chart_.now.front().dbh_class.inches;
    int largest = least;
    double most = 0.0;
    for (const auto* list : {&chart_.now, &chart_.after}) {
      for (const ClassAmount& c : *list) {
        least = std::min(least, c.dbh_class.inches);
        largest = std::max(largest, c.dbh_class.inches);
        most = std::max(most, (c.all() + c.se.value_or(0.0)) * factor_);
      }
    }
    field_.x.from = shown_size(Inches{std::max(0.0, least - step() / 2.0)});
    field_.x.to = shown_size(Inches{largest + step() / 2.0});
    const QRectF& room = sheet_.room();
    field_.y = Axis::holding(most, room.height() > 180.0 ? 6 : 4);
    field_.box = room.adjusted(axis_width(field_.y), kAxisTitle, -8.0, -kAxisHeight);
  }

  [[nodiscard]] std::vector<std::pair<double, QString>> ticks() const {
    std::vector<std::pair<double, QString>> out;
    if (metric_) {
      const double every = field_.x.to - field_.x.from > 40.0 ? 10.0 : 5.0;
      for (double cm = every * std::ceil(field_.x.from / every); cm <= field_.x.to; cm += every) {
        out.emplace_back(cm, figure_words(cm, 0));
      }
      return out;
    }
    const int by = static_cast<int>(chart_.width);
    const int first = std::max(by * static_cast<int>(std::ceil(field_.x.from / by)), 0);
    for (int inches = first; inches < field_.x.to; inches += by) {
      out.emplace_back(inches, QString::number(inches));
    }
    return out;
  }

  [[nodiscard]] QString x_title() const {
    if (metric_) return QStringLiteral("DBH, cm");
    return chart_.width == ClassWidth::one_inch ? QStringLiteral("DBH class, in")
                                                : QStringLiteral("DBH class of 2 in, in");
  }

  /// Where the bar of a class stands: all of the class, or its wide left or narrow right part.
  [[nodiscard]] std::pair<double, double> span_of(const ClassAmount& c, bool after) const {
    const double middle = c.dbh_class.inches;
    const double from = field_.at_x(shown_size(Inches{std::max(0.0, middle - step() / 2.0)}));
    const double to = field_.at_x(shown_size(Inches{middle + step() / 2.0}));
    const double width = to - from;
    if (!pairs()) return {from + 0.10 * width, to - 0.10 * width};
    if (after) return {from + 0.62 * width, from + 0.92 * width};
    return {from + 0.08 * width, from + 0.58 * width};
  }

  void draw_class(const ClassAmount& c, bool after) {
    const auto [left, right] = span_of(c, after);
    double below = 0.0;
    for (const auto& [amount, pattern] :
         {std::pair(c.oak, Pattern::solid), std::pair(c.mast, Pattern::hatched),
          std::pair(c.rest, Pattern::open)}) {
      const QRectF bar(QPointF(left, field_.at_y((below + amount) * factor_)),
                       QPointF(right, field_.at_y(below * factor_)));
      fill_pattern(sheet_.drawing(), bar, pattern);
      below += amount;
    }
    if (c.se) draw_whisker((left + right) / 2.0, c.all() * factor_, *c.se * factor_);
  }

  void draw_whisker(double x, double middle, double se) {
    Drawing& drawing = sheet_.drawing();
    const double top = field_.at_y(middle + se);
    const double bottom = field_.at_y(std::max(middle - se, 0.0));
    const double halo = std::min(field_.at_y(middle) + 1.0, bottom);
    drawing.line(QPointF(x, halo), QPointF(x, bottom), {3.4, Ink::white});
    drawing.line(QPointF(x, top), QPointF(x, bottom), {1.2, Ink::black});
    for (const double y : {top, bottom}) {
      drawing.line(QPointF(x - 2.6, y), QPointF(x + 2.6, y), {1.2, Ink::black});
    }
  }

  const DbhChart& chart_;
  bool metric_;
  double factor_;
  UnitSystem units_;
  PictureSheet sheet_;
  ChartField field_;
};

double amount_of(const GroupFigures& figures, ChartAmount amount) {
  return amount == ChartAmount::trees ? figures.trees.mean.value : figures.ba.mean.value;
}

std::optional<double> error_of(const GroupFigures& figures, ChartAmount amount) {
  if (amount == ChartAmount::trees) {
    return figures.trees.se ? std::optional(figures.trees.se->value) : std::nullopt;
  }
  return figures.ba.se ? std::optional(figures.ba.se->value) : std::nullopt;
}

}  // namespace

DbhChart dbh_chart_of(const AreaEstimate& area, const SpeciesTable& species, ClassWidth width,
                      ChartAmount amount) {
  std::map<DbhClass, ClassAmount> classes;
  for (const SpeciesClassFigures& f : area.by_species_class) {
    ClassAmount& c = classes.try_emplace(f.dbh_class, ClassAmount{f.dbh_class}).first->second;
    const double value = amount_of(f.figures, amount);
    switch (group_of(species.find(f.species))) {
      case FoodGroup::oak:
        c.oak += value;
        break;
      case FoodGroup::mast:
        c.mast += value;
        break;
      case FoodGroup::rest:
        c.rest += value;
        break;
    }
  }
  for (const ClassFigures& f : area.by_class) {
    const auto found = classes.find(f.dbh_class);
    if (found != classes.end()) found->second.se = error_of(f.figures, amount);
  }
  DbhChart chart{.amount = amount, .width = width, .now = {}, .after = {}, .se = {}};
  for (const auto& entry : classes) chart.now.push_back(entry.second);
  chart.se = error_of(area.live, amount);
  return chart;
}

Drawing draw_dbh_chart(const DbhChart& chart, const PictureFrame& frame) {
  return DbhPainter(chart, frame).draw();
}

}  // namespace oaklight
