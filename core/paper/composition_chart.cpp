#include "core/paper/composition_chart.hpp"

#include <algorithm>
#include <cmath>

namespace oaklight {
namespace {

constexpr double kNarrowRow = 33.0;  // name over bar
constexpr double kWideRow = 23.0;    // name beside bar
constexpr double kBarHeight = 13.0;

struct Row {
  QString name;
  Pattern pattern = Pattern::open;
  double share = 0.0;  // percent
  std::optional<double> se;
};

std::vector<Row> rows_of(const CompositionChart& chart) {
  std::vector<Row> rows;
  for (const SpeciesBar& bar : chart.species) {
    Row row{printable(bar.name), pattern_of(bar.group), bar.part.share.value, std::nullopt};
    if (bar.part.se) row.se = bar.part.se->value;
    rows.push_back(std::move(row));
  }
  std::sort(rows.begin(), rows.end(), [](const Row& a, const Row& b) {
    return a.share > b.share || (a.share >= b.share && a.name < b.name);
  });
  return rows;
}

/// Folds what has no room into one row. Its error is not known: shares move together.
void fold(std::vector<Row>& rows, std::size_t most) {
  if (rows.size() <= most) return;
  const std::size_t kept = std::max<std::size_t>(most, 1) - 1;
  Row others{QStringLiteral("others (%1 species)").arg(rows.size() - kept), Pattern::mixed, 0.0,
             std::nullopt};
  for (std::size_t i = kept; i < rows.size(); ++i) others.share += rows[i].share;
  rows.resize(kept);
  rows.push_back(std::move(others));
}

QString share_words(double share, const std::optional<double>& se) {
  // A species that is there is never shown as 0.
  const QString figure =
      share > 0.0 && share < 0.5 ? QStringLiteral("under 1") : figure_words(share, 0);
  if (!se) return figure + QStringLiteral(" %");
  return figure + QStringLiteral(" \u00B1 ") +
         (*se > 0.0 && *se < 0.5 ? QStringLiteral("1") : figure_words(*se, 0)) +
         QStringLiteral(" %");
}

/// Draws the rows below one another; all bars share one scale.
class Bars {
 public:
  Bars(Drawing& drawing, const QRectF& room, const std::vector<Row>& rows, bool wide)
      : drawing_(drawing), room_(room), rows_(rows), wide_(wide) {
    double widest = 0.0;
    for (const Row& row : rows) {
      widest = std::max(widest, text_width(row.name, kBodyText));
      figures_ = std::max(figures_, text_width(share_words(row.share, row.se), kStrongText));
      most_ = std::max(most_, row.share + row.se.value_or(0.0));
    }
    names_ = std::min(widest, 0.4 * room.width());
    bar_left_ = wide ? room.left() + names_ + 8.0 : room.left();
    bar_room_ = room.right() - bar_left_ - (wide ? figures_ + 10.0 : 0.0);
  }

  void draw() {
    double y = room_.top();
    for (const Row& row : rows_) {
      wide_ ? draw_wide(row, y) : draw_narrow(row, y);
      y += wide_ ? kWideRow : kNarrowRow;
    }
  }

 private:
  void draw_wide(const Row& row, double y) {
    const double baseline = y + 10.5;
    drawing_.text(QPointF(room_.left(), baseline), fitted(row.name, kBodyText, names_), kBodyText);
    draw_bar(row, y);
    drawing_.text_ending(QPointF(room_.right(), baseline), share_words(row.share, row.se),
                         kStrongText);
  }

  void draw_narrow(const Row& row, double y) {
    const double baseline = y + ascent_of(kBodyText);
    drawing_.text(QPointF(room_.left(), baseline),
                  fitted(row.name, kBodyText, room_.width() - figures_ - 10.0), kBodyText);
    drawing_.text_ending(QPointF(room_.right(), baseline), share_words(row.share, row.se),
                         kStrongText);
    draw_bar(row, y + leading_of(kBodyText));
  }

  void draw_bar(const Row& row, double top) {
    const double scale = bar_room_ / most_;
    const QRectF bar(bar_left_, top, row.share * scale, kBarHeight);
    fill_pattern(drawing_, bar, row.pattern);
    if (!row.se) return;
    const double middle = bar.center().y();
    const double from = std::max(row.share - *row.se, 0.0) * scale;
    const double to = (row.share + *row.se) * scale;
    const double halo = std::max(bar.right() - 1.0, bar_left_ + from);
    drawing_.line(QPointF(bar_left_ + from, middle), QPointF(halo, middle), {3.4, Ink::white});
    drawing_.line(QPointF(bar_left_ + from, middle), QPointF(bar_left_ + to, middle),
                  {1.4, Ink::black});
    drawing_.line(QPointF(bar_left_ + to - 0.7, middle - 4.0),
                  QPointF(bar_left_ + to - 0.7, middle + 4.0), {1.4, Ink::black});
  }

  Drawing& drawing_;
  QRectF room_;
  const std::vector<Row>& rows_;
  bool wide_;
  double names_ = 0.0, figures_ = 0.0, most_ = 1.0;
  double bar_left_ = 0.0, bar_room_ = 0.0;
};

std::vector<FoodGroup> groups_in(const CompositionChart& chart) {
  std::vector<FoodGroup> groups;
  for (const FoodGroup group : kFoodGroups) {
    const auto is_it = [group](const SpeciesBar& bar) { return bar.group == group; };
    if (std::any_of(chart.species.begin(), chart.species.end(), is_it)) groups.push_back(group);
  }
  return groups;
}

}  // namespace

CompositionChart composition_chart_of(const Composition& composition, const SpeciesTable& species) {
  CompositionChart chart;
  for (const SpeciesShare& share : composition.species) {
    const Species* known = species.find(share.species);
    const std::string name =
        known != nullptr ? known->common_name : "species " + std::to_string(share.species.fia);
    chart.species.push_back({name, group_of(known), share.part});
  }
  chart.oak = composition.oak;
  return chart;
}

Drawing draw_composition(const CompositionChart& chart, const PictureFrame& frame) {
  PictureSheet sheet(frame);
  if (chart.species.empty()) {
    sheet.missing(QStringLiteral("No live trees tallied yet"),
                  QStringLiteral("Tally a plot: the species and their shares show here."));
    return sheet.finish();
  }
  if (chart.oak) {
    std::optional<double> se;
    if (chart.oak->se) se = chart.oak->se->value;
    sheet.head(share_words(chart.oak->share.value, se) + QStringLiteral(" oak"),
               QStringLiteral("Share of the basal area of live trees, by species"));
  } else {
    sheet.head({}, QStringLiteral("Share of the basal area of live trees, by species"));
  }
  sheet.key(key_of(groups_in(chart)));
  std::vector<Row> rows = rows_of(chart);
  const bool errors = std::any_of(rows.begin(), rows.end(), [](const Row& r) { return !!r.se; });
  const QString without = chart.counted
                              ? QStringLiteral("Before, less the trees that go; without errors.")
                              : QStringLiteral("One plot tells no error.");
  sheet.foot(errors ? QStringLiteral("\u00B1 is one standard error, from the plots.") : without);
  const double row = sheet.wide() ? kWideRow : kNarrowRow;
  fold(rows, static_cast<std::size_t>(std::max(sheet.room().height() / row, 1.0)));
  Bars(sheet.drawing(), sheet.room(), rows, sheet.wide()).draw();
  return sheet.finish();
}

}  // namespace oaklight
