#include "core/base/number_text.hpp"
#include "core/paper/packet_pages.hpp"
#include "core/paper/reader_words.hpp"
#include "core/paper/table.hpp"

namespace oaklight {
namespace {

QString product_words(Product product) {
  switch (product) {
    case Product::none:
      return QStringLiteral("No product");
    case Product::sawlog:
      return QStringLiteral("Sawlogs");
    case Product::pulpwood:
      return QStringLiteral("Pulpwood");
    case Product::firewood:
      return QStringLiteral("Firewood");
  }
  return {};
}

template <class Q>
QString figure(const std::optional<Q>& value, int decimals) {
  return value ? QString::fromStdString(grouped_text(value->value, decimals))
               : QStringLiteral("\u2013");
}

void write_product_table(PageFlow& flow, const std::vector<ProductTotal>& totals) {
  Table table(flow,
              {{QStringLiteral("Product"), 0.0},
               {QStringLiteral("Trees"), 80.0},
               {QStringLiteral("Board feet"), 110.0},
               {QStringLiteral("Cords"), 90.0},
               {QStringLiteral("Trees without volume"), 124.0}},
              27.0);
  for (const ProductTotal& total : totals) {
    table.row({{{{product_words(total.product), kStrongText}}},
               {{{QString::number(total.trees), kFigureText}}},
               {{{figure(total.board_feet, 0), kFigureText}}},
               {{{figure(total.cords, 2), kFigureText}}},
               {{{QString::number(total.without_volume), kFigureText}}}});
  }
  if (totals.empty()) table.row({{{{QStringLiteral("No tree on the list"), kBodyText}}}});
  flow.gap(5.0);
}

/// The same by species or by stand; a stand is called as its owner writes it.
void write_group_table(PageFlow& flow, const QString& head, const QString& group,
                       const std::vector<GroupTotal>& totals,
                       QString (*name_of)(const std::string&) = printable) {
  if (totals.empty()) return;
  flow.subhead(head, 80.0);
  Table table(flow,
              {{group, 0.0},
               {QStringLiteral("Product"), 96.0},
               {QStringLiteral("Trees"), 60.0},
               {QStringLiteral("Board feet"), 90.0},
               {QStringLiteral("Cords"), 76.0},
               {QStringLiteral("No volume"), 76.0}},
              22.0);
  for (const GroupTotal& part : totals) {
    const ProductTotal& total = part.total;
    const auto cell = [](const QString& words, const TextStyle& style) {
      return TableCell{{{words, style}}};
    };
    table.row({cell(name_of(part.name), kStrongText), cell(product_words(total.product), kBodyText),
               cell(QString::number(total.trees), kFigureText),
               cell(figure(total.board_feet, 0), kFigureText),
               cell(figure(total.cords, 2), kFigureText),
               cell(QString::number(total.without_volume), kFigureText)});
  }
  flow.gap(5.0);
}

void write_totals(PageFlow& flow, const Packet& packet) {
  flow.heading(QStringLiteral("What the list adds up to"));
  if (packet.reader == PacketReader::standing) {  // no wood leaves the tract
    flow.text({{QStringLiteral("Trees to kill standing: %1. And only if a trained person clears "
                               "each one: %2. They stay where they are, and no wood is counted.")
                    .arg(packet.cut.size())
                    .arg(packet.trained.size()),
                kStrongText}});
    return;
  }
  write_product_table(flow, packet.totals);
  if (!packet.totals_if_cleared.empty()) {
    flow.subhead(QStringLiteral("And only if a trained person clears each one"), 90.0);
    write_product_table(flow, packet.totals_if_cleared);
  }
  if (packet.reader == PacketReader::firewood) {
    write_group_table(flow, QStringLiteral("By pile area: one a stand"),
                      QStringLiteral("Pile area"), packet.by_stand);
  } else {
    write_group_table(flow, QStringLiteral("By species"), QStringLiteral("Species"),
                      packet.by_species, species_words);
    write_group_table(flow, QStringLiteral("By stand"), QStringLiteral("Stand"), packet.by_stand);
  }
  const QString rule = printable(packet.log_rule);
  QString note =
      rule.isEmpty() ? QString() : QStringLiteral("Board feet by the %1 log rule. ").arg(rule);
  if (!packet.volumes_by.empty()) note += printable(packet.volumes_by) + QLatin1Char(' ');
  note += QStringLiteral(
      "Trees without volume are on the list but not in the sums. All figures are estimates of "
      "standing trees; a buyer's scale decides what is paid.");
  flow.text({{note, kSmallText}});
}

void write_governs(PageFlow& flow, const Packet& packet) {
  flow.subhead(QStringLiteral("Who governs"), 90.0);
  flow.text({{QStringLiteral("This packet is a reminder. It is no permit, no survey and no "
                             "training, and it makes no tree safe. Federal, "
                             "state and local law and codes, the manual of your saw, the label of "
                             "any product you use, and the written "
                             "contract come before it. Work that needs a license is done by a "
                             "person who holds it. Where any of these "
                             "differs from this packet, follow it and tell the owner. Your state "
                             "forester knows which rules hold here."),
              kBodyText}});
  const QString versions = printable(packet.rule_versions);
  if (!versions.isEmpty()) {
    flow.gap(3.0);
    flow.text({{QStringLiteral("Rules behind this packet: ") + versions, kSmallText}});
  }
}

void write_line(PageFlow& flow, const QString& label, double from, double to, double baseline) {
  flow.page().line(QPointF(from, baseline), QPointF(to, baseline), {0.8, Ink::black});
  flow.page().text(QPointF(from, baseline + 12.0), fitted(label, kSmallText, to - from),
                   kSmallText);
}

void write_signatures(PageFlow& flow, const Packet& packet) {
  constexpr double kLine = 46.0;
  flow.subhead(QStringLiteral("Before the first cut: counted, walked, agreed"), 3.0 * kLine + 30.0);
  const ReaderWords& words = words_for(packet.reader);
  flow.text({{QString::fromUtf8(words.counted).arg(packet.cut.size()), kBodyText}});
  for (const QString& who : {QStringLiteral("Owner"), QString::fromUtf8(words.signs_as),
                             QStringLiteral("Person who marked the trees")}) {
    const QRectF strip = flow.take(kLine);
    const double baseline = strip.top() + 30.0;
    write_line(flow, who + QStringLiteral(": name"), strip.left(), strip.left() + 190.0, baseline);
    write_line(flow, QStringLiteral("Signature"), strip.left() + 206.0, strip.right() - 106.0,
               baseline);
    write_line(flow, QStringLiteral("Date"), strip.right() - 90.0, strip.right(), baseline);
  }
}

}  // namespace

void write_end(PageFlow& flow, const Packet& packet) {
  flow.new_page(QStringLiteral("TOTALS AND SIGNATURES"));
  write_totals(flow, packet);
  const QString season = printable(packet.season_advice);
  if (!season.isEmpty()) {
    flow.subhead(QStringLiteral("Season"), 40.0);
    flow.text({{season, kBodyText}});
  }
  write_signatures(flow, packet);
  write_governs(flow, packet);
  write_reader_sources(flow, packet);
}

}  // namespace oaklight
