#include <algorithm>
#include <map>

#include "core/base/number_text.hpp"
#include "core/handoff/owner_part.hpp"
#include "core/measure/basal_area.hpp"
#include "core/paper/composition_chart.hpp"
#include "core/paper/crown_chart.hpp"
#include "core/paper/dbh_chart.hpp"
#include "core/paper/packet_pages.hpp"
#include "core/paper/stocking_chart.hpp"
#include "core/paper/table.hpp"
#include "core/stand/figure_range.hpp"

namespace oaklight {
namespace {

constexpr double kGutter = 14.0;
constexpr std::size_t kCardsAcross = 2;
constexpr std::size_t kCardsDown = 2;
/// Cards are pictures, and a file stays small; the rest are on the tablet.
constexpr std::size_t kMostCards = 48;

QString number(double value, int decimals) {
  return QString::fromStdString(grouped_text(value, decimals));
}
QString dash() { return QStringLiteral("\u2013"); }

/// The classes once the marked trees are gone. What a group has too little of is taken from the
/// others of its class, since plots and walk are two samples; a class never falls below nothing.
DbhChart chart_of(const OwnerStand& stand, const SpeciesTable& species) {
  constexpr ClassWidth kWidth = ClassWidth::two_inches;
  DbhChart chart = dbh_chart_of(*stand.area, species, kWidth, ChartAmount::trees);
  if (!stand.after) return chart;
  chart.after = chart.now;
  const double each = 1.0 / stand.record.walked->value;
  for (ClassAmount& c : chart.after) {
    c.se.reset();
    double left = c.all();
    for (const TreeFacts& tree : stand.removed) {
      if (dbh_class(tree.dbh, kWidth) != c.dbh_class) continue;
      left -= each;
      const FoodGroup group = group_of(species.find(tree.species));
      double& part = group == FoodGroup::oak ? c.oak : group == FoodGroup::mast ? c.mast : c.rest;
      part = std::max(0.0, part - each);
    }
    const double share = c.all() > 0.0 ? std::max(0.0, left) / c.all() : 0.0;
    for (double* part : {&c.oak, &c.mast, &c.rest}) *part *= share;
  }
  return chart;
}

StockingChart guide_of(const OwnerStand& stand) {
  StockingChart chart;
  chart.fit = stand.stocking->fit;
  if (stand.stocking->qmd) chart.now = stocking_point(*stand.stocking, &*stand.area);
  if (stand.after && chart.now && stand.after->live.trees > 0.0) {
    chart.after = stocking_point(*stand.after);
  }
  return chart;
}

/// Shares of the basal area once the marked trees are gone; without errors, as nobody sampled it.
CompositionChart composition_after(const OwnerStand& stand, const SpeciesTable& species) {
  std::map<SpeciesCode, double> ba;
  for (const SpeciesFigures& f : stand.area->by_species) ba[f.species] = f.figures.ba.mean.value;
  const double acres = stand.record.walked->value;
  for (const TreeFacts& tree : stand.removed) {
    double& left = ba[tree.species];
    left = std::max(0.0, left - basal_area(tree.dbh.inches()).value / acres);
  }
  const SquareFeetPerAcre all = stand.after->ba;
  if (!(all.value > 0.0)) return {};
  Composition made_of{};
  for (const auto& [code, amount] : ba) {
    if (amount > 0.0) {
      made_of.species.push_back({code, {percent(amount / all.value), std::nullopt}});
    }
  }
  made_of.oak = {percent(stand.after->ba_oak / all), std::nullopt};
  CompositionChart chart = composition_chart_of(made_of, species);
  chart.counted = true;
  return chart;
}

struct Figure {
  QString name;
  std::string_view key;  ///< of its source note, on the page "How these figures were made"
  std::optional<double> before;
  std::optional<double> after;
  int decimals = 0;
  std::optional<double> error = {};  ///< one standard error of before, where the plots tell it
};

std::vector<Figure> figures_of(const OwnerStand& stand) {
  const auto value = [](const auto& quantity) -> std::optional<double> {
    return quantity ? std::optional(quantity->value) : std::nullopt;
  };
  const PracticeClass& all = stand.record.all;
  const auto trees_error = stand.area ? value(stand.area->live.trees.se) : std::nullopt;
  const auto ba_error = stand.area ? value(stand.area->live.ba.se) : std::nullopt;
  const auto qmd_error =
      stand.area && stand.area->live.qmd ? value(stand.area->live.qmd->se) : std::nullopt;
  const auto stocking_error = stand.stocking ? value(stand.stocking->stocking.se) : std::nullopt;
  std::vector<Figure> figures = {
      {QStringLiteral("Trees an acre"), "trees", value(all.before), value(all.after), 0,
       trees_error},
      {QStringLiteral("Basal area, ft\u00B2/ac"), "basal_area", value(all.before_ba),
       value(all.after_ba), 1, ba_error},
      {QStringLiteral("Mean diameter (QMD), in"), "mean_diameter", value(stand.record.qmd_before),
       value(stand.record.qmd_after), 1, qmd_error}};
  const auto density = [](const std::optional<StandDensity>& d, auto figure) {
    // Plots and walk are two samples: below nothing, nothing can be told.
    return d && figure(*d) >= 0.0 ? std::optional<double>(figure(*d)) : std::nullopt;
  };
  const auto stocking = [](const StandDensity& d) { return upland_oak_stocking(d.live).value; };
  const auto oak = [](const StandDensity& d) { return d.ba_oak.value; };
  figures.push_back({QStringLiteral("Stocking, %"), "stocking", density(stand.before, stocking),
                     density(stand.after, stocking), 0, stocking_error});
  figures.push_back({QStringLiteral("Oak basal area, ft\u00B2/ac"), "basal_area",
                     density(stand.before, oak), density(stand.after, oak), 1});
  return figures;
}

/// What lies beyond the sources of the figures.
void write_range(PageFlow& flow, const OwnerStand& stand) {
  if (!stand.area) return;
  const auto outside = out_of_range(*stand.area, stand.stocking ? &*stand.stocking : nullptr);
  for (const OutOfRange& out : outside) {
    flow.gap(2.0);
    flow.text({{QStringLiteral("Outside its range: ") +
                    printable(out.words + " [" + std::string(out.key) + "]."),
                kSmallText}});
  }
}

void write_figures(PageFlow& flow, const OwnerStand& stand) {
  Table table(flow,
              {{QStringLiteral("Live trees"), 0.0},
               {QStringLiteral("Before"), 100.0},
               {QStringLiteral("After"), 100.0}},
              22.0);
  for (const Figure& figure : figures_of(stand)) {
    const auto cell = [&](const std::optional<double>& value) {
      return TableCell{{{value ? number(*value, figure.decimals) : dash(), kFigureText}}};
    };
    const QString key = QStringLiteral("[%1]").arg(
        QString::fromUtf8(figure.key.data(), static_cast<qsizetype>(figure.key.size())));
    TableCell before = cell(figure.before);
    if (figure.before && figure.error) {
      before.paragraphs.front().text +=
          QStringLiteral(" \u00B1 ") + number(*figure.error, figure.decimals);
    }
    table.row({{{{figure.name, kStrongText}, {key, kSmallText}}}, before, cell(figure.after)});
  }
  flow.gap(3.0);
  QString note = QStringLiteral(
                     "Before: from %1 plots, \u00B1 one standard error where it is told. "
                     "After: before less the %2 live trees that go, counted on the walk.")
                     .arg(stand.record.plots)
                     .arg(stand.record.all.removed_trees);
  if (!stand.record.walked) {
    note += QStringLiteral(" The acres walked are not recorded, so nothing can be told of after.");
  }
  note += QStringLiteral(
      " After: [after_release]. A word in square brackets stands on the page \"How these figures "
      "were made\".");
  flow.text({{note, kSmallText}});
  write_range(flow, stand);
  if (!stand.oak_wilt.empty()) {
    flow.gap(2.0);
    flow.text({{printable(stand.oak_wilt), kSmallText}});
  }
}

/// The diameters fill what is left of the page; guide and composition have the next one.
void write_pictures(PageFlow& flow, const OwnerStand& stand, const SpeciesTable& species) {
  flow.gap(10.0);
  QRectF strip = flow.take(flow.room());
  place_picture(flow.page(), draw_dbh_chart(chart_of(stand, species), {strip.size()}),
                strip.topLeft());
  flow.new_page();
  flow.heading(QStringLiteral("Stand ") + printable(stand.record.stand));
  strip = flow.take(flow.room());
  const double guide_height = strip.height() * 0.56;
  place_picture(flow.page(),
                draw_stocking_chart(guide_of(stand), {QSizeF(strip.width(), guide_height)}),
                strip.topLeft());
  if (!stand.composition) return;
  const double width = (strip.width() - kGutter) / 2.0;
  constexpr double kCaption = 18.0;
  const QPointF corner = strip.topLeft() + QPointF(0.0, guide_height + kGutter);
  const PictureFrame frame{QSizeF(width, strip.bottom() - corner.y() - kCaption)};
  const auto draw = [&](const QString& caption, const CompositionChart& chart, double x) {
    const QPointF at = corner + QPointF(x, 0.0);
    flow.page().text(at + QPointF(0.0, ascent_of(kSubheadText)), caption, kSubheadText);
    place_picture(flow.page(), draw_composition(chart, frame), at + QPointF(0.0, kCaption));
  };
  draw(QStringLiteral("Before"), composition_chart_of(*stand.composition, species), 0.0);
  if (stand.after) {
    draw(QStringLiteral("After"), composition_after(stand, species), width + kGutter);
  }
}

void write_stand(PageFlow& flow, const OwnerStand& stand, const SpeciesTable& species) {
  flow.new_page(QStringLiteral("BEFORE AND AFTER"));
  flow.heading(QStringLiteral("Stand ") + printable(stand.record.stand));
  write_figures(flow, stand);
  if (stand.area && stand.stocking) {
    write_pictures(flow, stand, species);
  } else {
    flow.gap(6.0);
    flow.text({{QStringLiteral("This stand has no plots, so there are no figures of before and "
                               "after. Measure a few plots, and make the packet again."),
                kBodyText}});
  }
}

/// Crop trees that stay and have somebody beside them.
std::vector<CrownCard> cards_of(const OwnerPart& owner) {
  std::vector<CrownCard> cards;
  for (const OwnerStand& stand : owner.stands) {
    for (std::size_t i = 0; i < stand.graph.trees().size(); ++i) {
      const bool stays = stand.graph.trees()[i].proposed && !stand.goes[i];
      if (!stays || stand.graph.around(i).empty()) continue;
      cards.push_back(
          crown_card(stand.graph, i, owner.contacts, stand.goes, owner.species, stand.crowns));
    }
  }
  return cards;
}

void write_cards(PageFlow& flow, const OwnerPart& owner) {
  const std::vector<CrownCard> cards = cards_of(owner);
  if (cards.empty()) return;
  const std::size_t shown = std::min(cards.size(), kMostCards);
  constexpr std::size_t kPage = kCardsAcross * kCardsDown;
  double width = 0.0;
  double height = 0.0;
  QRectF strip;
  for (std::size_t i = 0; i < shown; ++i) {
    if (i % kPage == 0) {
      flow.new_page(QStringLiteral("CROP TREES AND THEIR NEIGHBORS"));
      flow.heading(QStringLiteral("Crowns from above: %1 crop trees").arg(cards.size()));
      if (shown < cards.size()) {
        flow.text(
            {{QStringLiteral("The first %1 are drawn; the tablet shows each of them.").arg(shown),
              kSmallText}});
      }
      strip = flow.take(flow.room());
      width = (strip.width() - kGutter) / 2.0;
      height = (strip.height() - kGutter) / static_cast<double>(kCardsDown);
    }
    const std::size_t cell = i % kPage;
    const QPointF corner(
        strip.left() + static_cast<double>(cell % kCardsAcross) * (width + kGutter),
        strip.top() + static_cast<double>(cell / kCardsAcross) * (height + kGutter));
    place_picture(flow.page(), draw_crowns(cards[i], {QSizeF(width, height)}), corner);
  }
}

}  // namespace

void write_owner_pages(PageFlow& flow, const Packet& packet) {
  if (!packet.owner) return;
  for (const OwnerStand& stand : packet.owner->stands) {
    write_stand(flow, stand, packet.owner->species);
  }
  write_cards(flow, *packet.owner);
  write_owner_sources(flow, *packet.owner);
}

}  // namespace oaklight
