#include <algorithm>

#include "core/handoff/owner_part.hpp"
#include "core/measure/local_curves.hpp"
#include "core/paper/fit_chart.hpp"
#include "core/paper/packet_pages.hpp"
#include "core/stand/sources.hpp"

namespace oaklight {
namespace {

constexpr double kGutter = 14.0;
constexpr double kLeastChart = 320.0;  // half a page: the words of a chart take as much again
/// Curves are pictures, and few are asked about; the tablet shows them all.
constexpr std::size_t kMostCurves = 12;

QString text(std::string_view words) { return printable(std::string(words)); }

void write_note(PageFlow& flow, const SourceNote& note) {
  QStringList works;
  for (const Citation& citation : note.citations) {
    works.append(text(citation.work) + QStringLiteral(" (") + text(word_of(citation.status)) +
                 QStringLiteral(")"));
  }
  flow.subhead(text(note.name) + QStringLiteral(" [%1]").arg(text(note.key)), 40.0);
  flow.text({{text(note.how), kSmallText},
             {text(note.range), kSmallText},
             {QStringLiteral("Source: ") + works.join(QStringLiteral("; ")), kSmallText}});
}

/// A curve and where it holds.
struct Fit {
  QString where;
  const LocalCurve* curve;
};

std::vector<Fit> fits_of(const OwnerPart& owner) {
  std::vector<Fit> fits;
  for (const OwnerStand& stand : owner.stands) {
    for (const LocalCurve& curve : stand.crowns) {
      fits.push_back({QStringLiteral("Crowns in stand ") + printable(stand.record.stand), &curve});
    }
  }
  for (const LocalCurve& curve : owner.heights) {
    fits.push_back({QStringLiteral("Heights in the tract"), &curve});
  }
  return fits;
}

/// Two curves side by side; what has no curve is said to be by the book.
void write_fits(PageFlow& flow, const OwnerPart& owner) {
  const std::vector<Fit> fits = fits_of(owner);
  flow.subhead(QStringLiteral("Local curves [local_curve]"), 40.0);
  const bool crowns = std::ranges::any_of(
      fits, [](const Fit& fit) { return fit.curve->kind == CurveKind::crown_width; });
  QString words =
      fits.empty() ? QStringLiteral(
                         "No curve was fitted to trees of this tract: that takes %1 measured "
                         "trees over %2 in of DBH. ")
                         .arg(kCurveTrees)
                         .arg(kCurveSpan.value)
                   : QStringLiteral(
                         "Fitted to trees measured here, and used before the book: for a species "
                         "its own curve, else that of all species. ");
  words += crowns ? QStringLiteral("Crowns whose radii were taped are drawn as they are.")
                  : QStringLiteral("Crowns that nobody taped are as wide as the book's.");
  flow.text({{words, kSmallText}});
  for (std::size_t i = 0; i < std::min(fits.size(), kMostCurves); i += 2) {
    flow.gap(6.0);
    constexpr double kCaption = 16.0;
    const QRectF strip = flow.take(kLeastChart + kCaption);
    const double width = (strip.width() - kGutter) / 2.0;
    for (std::size_t k = i; k < std::min({i + 2, fits.size(), kMostCurves}); ++k) {
      const QPointF corner(strip.left() + static_cast<double>(k - i) * (width + kGutter),
                           strip.top());
      flow.page().text(corner + QPointF(0.0, ascent_of(kSubheadText)), fits[k].where, kSubheadText);
      place_picture(flow.page(),
                    draw_fit_chart(*fits[k].curve, owner.species, {QSizeF(width, kLeastChart)}),
                    corner + QPointF(0.0, kCaption));
    }
  }
  if (fits.size() > kMostCurves) {
    flow.text({{QStringLiteral("%1 more curves are on the tablet.").arg(fits.size() - kMostCurves),
                kSmallText}});
  }
}

/// The keys of the figures that a packet prints for a reader who is not the owner.
std::vector<std::string_view> keys_of(const Packet& packet) {
  std::vector<std::string_view> keys;
  if (packet.reader == PacketReader::standing) return keys;
  const auto any = [&](auto has) {
    return std::ranges::any_of(packet.totals, has) ||
           std::ranges::any_of(packet.totals_if_cleared, has);
  };
  if (any([](const ProductTotal& total) { return total.board_feet.has_value(); })) {
    keys.emplace_back("board_feet");
    for (const auto& [rule, word] : kWords<LogRule>) {
      if (name_of(rule) == packet.log_rule) keys.push_back(source_key(rule));
    }
  }
  if (any([](const ProductTotal& total) { return total.cords.has_value(); })) {
    keys.emplace_back("cords");
  }
  if (!packet.volumes_by.empty()) keys.emplace_back("local_volume");
  return keys;
}

}  // namespace

void write_owner_sources(PageFlow& flow, const OwnerPart& owner) {
  flow.new_page(QStringLiteral("HOW THE FIGURES WERE MADE"));
  flow.heading(QStringLiteral("How these figures were made"));
  write_fits(flow, owner);
  for (const SourceNote& note : source_notes()) write_note(flow, note);
}

void write_reader_sources(PageFlow& flow, const Packet& packet) {
  if (packet.reader == PacketReader::owner) return;  // has a page of them all
  const auto keys = keys_of(packet);
  if (keys.empty()) return;
  flow.new_page(QStringLiteral("HOW THE FIGURES WERE MADE"));
  flow.heading(QStringLiteral("How these figures were made"));
  for (const std::string_view key : keys) {
    if (const SourceNote* note = source_note(key)) write_note(flow, *note);
  }
}

}  // namespace oaklight
