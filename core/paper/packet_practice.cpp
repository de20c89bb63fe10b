#include "core/base/number_text.hpp"
#include "core/handoff/owner_part.hpp"
#include "core/paper/packet_pages.hpp"
#include "core/paper/table.hpp"

namespace oaklight {
namespace {

template <class Q>
QString figure(const std::optional<Q>& value, int decimals) {
  return value ? QString::fromStdString(grouped_text(value->value, decimals))
               : QStringLiteral("\u2013");
}

QString joined(const std::vector<std::string>& names) {
  QStringList words;
  for (const std::string& name : names) words.append(printable(name));
  return words.isEmpty() ? QStringLiteral("not recorded") : words.join(QStringLiteral(", "));
}

QString goal_words(Goal goal) {
  switch (goal) {
    case Goal::mast:
      return QStringLiteral("food for wildlife (mast)");
    case Goal::timber:
      return QStringLiteral("timber");
    case Goal::look:
      return QStringLiteral("the look of the wood");
    case Goal::mixed:
      break;
  }
  return QStringLiteral("several");
}

QString acres_words(const PracticeRecord& record) {
  return figure(std::optional(record.acres), 1) + QStringLiteral(" acres in all; ") +
         (record.walked ? figure(record.walked, 1) + QStringLiteral(" acres walked and marked")
                        : QStringLiteral("the acres walked are not recorded"));
}

/// A line to write on.
QString blank() { return QStringLiteral("______________________________"); }

void write_facts(PageFlow& flow, const Packet& packet, const PracticeRecord& record) {
  const QString kept = QStringLiteral("%1 crop trees").arg(record.crop_trees) +
                       (record.crop_qmd ? QStringLiteral(", mean diameter ") +
                                              figure(record.crop_qmd, 1) + QStringLiteral(" in")
                                        : QString()) +
                       QStringLiteral(": ") + joined(record.kept_kinds);
  const std::vector<std::pair<QString, QString>> facts = {
      {QStringLiteral("Client"), blank()},
      {QStringLiteral("Field, stand"),
       printable(packet.tract.name) + QStringLiteral(", ") + printable(record.stand)},
      {QStringLiteral("Acres"), acres_words(record)},
      {QStringLiteral("Map"), QStringLiteral("the maps of this packet")},
      {QStringLiteral("Purpose"), goal_words(record.goal)},
      {QStringLiteral("Cover type"), blank()},
      {QStringLiteral("Main species before"), joined(record.main_kinds)},
      {QStringLiteral("Species kept by preference"), kept},
      {QStringLiteral("Harvest and regeneration system"), blank()},
      {QStringLiteral("Method"),
       QStringLiteral("%1 trees felled, %2 killed standing; how and when: "
                      "the pages \"How and when\"")
           .arg(record.felled)
           .arg(record.killed_standing)},
      {QStringLiteral("Planned date"), blank()},
      {QStringLiteral("Permits, cultural resources"), blank()}};
  for (const auto& [label, text] : facts) {
    TextBlock name({{label, kSmallStrongText}}, 168.0);
    TextBlock what({{text, kBodyText}}, flow.width() - 176.0);
    what.cut_to(60.0);
    const QRectF strip = flow.take(std::max(name.height(), what.height()) + 3.0);
    name.draw(flow.page(), strip.topLeft() + QPointF(0.0, 1.0));
    what.draw(flow.page(), strip.topLeft() + QPointF(176.0, 0.0));
  }
}

QString class_words(const PracticeClass& row) {
  if (!row.dbh_class) return QStringLiteral("All");
  const ClassEdges edges = edges_of(*row.dbh_class, ClassWidth::two_inches);
  return QStringLiteral("%1 (%2 to %3)")
      .arg(row.dbh_class->inches)
      .arg(figure(std::optional(edges.from), 1),
           figure(std::optional(Inches{edges.below.value - 0.1}), 1));
}

void write_classes(PageFlow& flow, const PracticeRecord& record) {
  constexpr double kFigure = 66.0;
  Table table(flow,
              {{QStringLiteral("Class, in DBH"), 0.0},
               {QStringLiteral("Before /ac"), kFigure},
               {QStringLiteral("ft\u00B2/ac"), 52.0},
               {QStringLiteral("Removed"), 58.0},
               {QStringLiteral("/ac"), 46.0},
               {QStringLiteral("ft\u00B2/ac"), 52.0},
               {QStringLiteral("After /ac"), kFigure},
               {QStringLiteral("ft\u00B2/ac"), 52.0}},
              18.0);
  const auto add = [&](const PracticeClass& row, const TextStyle& style) {
    const auto cell = [&](const QString& words) { return TableCell{{{words, style}}}; };
    table.row({cell(class_words(row)), cell(figure(row.before, 1)), cell(figure(row.before_ba, 1)),
               cell(QString::number(row.removed_trees)), cell(figure(row.removed, 1)),
               cell(figure(row.removed_ba, 1)), cell(figure(row.after, 1)),
               cell(figure(row.after_ba, 1))});
  };
  for (const PracticeClass& row : record.classes) add(row, kSmallText);
  add(record.all, kSmallStrongText);
  flow.gap(4.0);
  flow.text(
      {{QStringLiteral("Mean diameter (of the tree of mean basal area), in: before ") +
            figure(record.qmd_before, 1) + QStringLiteral(", removed ") +
            figure(record.qmd_removed, 1) + QStringLiteral(", after ") +
            figure(record.qmd_after, 1) + QStringLiteral("."),
        kSmallText},
       {QStringLiteral("Live trees. Before: estimate from %1 plots; the CSV file has its standard "
                       "errors. Removed: trees marked to be felled or killed standing, counted. "
                       "After: before less removed; a dash where that cannot be told, also where "
                       "more trees were marked than the plots let one expect.")
            .arg(record.plots),
        kSmallText, std::nullopt, 3.0}});
}

}  // namespace

void write_practice_record(PageFlow& flow, const Packet& packet) {
  if (!packet.owner) return;
  for (const OwnerStand& stand : packet.owner->stands) {
    flow.new_page(QStringLiteral("PRACTICE RECORD"));
    flow.heading(QStringLiteral("Practice record: ") + printable(stand.record.stand));
    flow.text({{QStringLiteral("What practice 666, forest stand improvement, asks to document, as "
                               "planned. It is a record and no standard: the agency's current "
                               "sheet for your state governs, and its planner certifies. Lines are "
                               "filled in by hand."),
                kSmallText}});
    flow.gap(4.0);
    write_facts(flow, packet, stand.record);
    flow.gap(4.0);
    write_classes(flow, stand.record);
  }
}

}  // namespace oaklight
