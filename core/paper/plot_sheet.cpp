#include <algorithm>

#include "core/base/number_text.hpp"
#include "core/paper/tally_sheet.hpp"

namespace oaklight {
namespace {

constexpr int kSpeciesColumns = 6;
constexpr double kClassColumn = 58.0;
constexpr double kTallyRow = 29.0;

QString species_name(const SheetSet& set, int i) {
  const auto at = static_cast<std::size_t>(i);
  return at < set.species.size() ? printable(set.species[at]) : QString();
}

const Field* field_named(const std::vector<const Field*>& fields, std::string_view name) {
  const auto found =
      std::ranges::find_if(fields, [&](const Field* field) { return field->name == name; });
  return found == fields.end() ? nullptr : *found;
}

QString column_named(const SheetSet& set, SheetPart part, std::string_view name) {
  const Field* field = field_named(printed_fields(set.form, part), name);
  return field == nullptr ? QString() : sheet_column(*field, set.system);
}

/// One to ten as dots and lines: four corners, four sides, two diagonals.
void draw_count(Drawing& drawing, QPointF corner, int count) {
  constexpr double kSide = 11.0;
  const QPointF dots[] = {{0, 0}, {kSide, 0}, {0, kSide}, {kSide, kSide}};
  const std::pair<QPointF, QPointF> lines[] = {{dots[0], dots[1]}, {dots[1], dots[3]},
                                               {dots[3], dots[2]}, {dots[2], dots[0]},
                                               {dots[0], dots[3]}, {dots[1], dots[2]}};
  for (int i = 0; i < std::min(count, 4); ++i) drawing.dot(corner + dots[i], 1.6, Ink::black);
  for (int i = 4; i < count; ++i) {
    drawing.line(corner + lines[i - 4].first, corner + lines[i - 4].second, {1.1, Ink::black});
  }
}

void draw_key(SheetFrame& frame) {
  const QRectF strip = frame.take(20.0);
  double x = strip.left();
  const double baseline = strip.top() + 14.0;
  const QString words = QStringLiteral("A dot or a line for each tree:");
  frame.drawing().text({x, baseline}, words, kSmallText);
  x += text_width(words, kSmallText) + 14.0;
  for (const int count : {1, 2, 3, 4, 5, 6, 7, 8, 9, 10}) {
    const QString number = QString::number(count);
    frame.drawing().text({x, baseline}, number, kSmallStrongText);
    x += text_width(number, kSmallStrongText) + 5.0;
    draw_count(frame.drawing(), {x, strip.top() + 4.0}, count);
    x += 22.0;
  }
}

/// The rows of the tally, from the smallest class down the page.
void draw_classes(SheetFrame& frame, const std::vector<SheetColumn>& columns,
                  const SheetClasses& classes, double keep) {
  int size = classes.first;
  while (frame.room() - keep >= kTallyRow) {
    const QRectF row = draw_sheet_row(frame, columns, frame.left(), kTallyRow);
    frame.drawing().text_centred({row.left() + kClassColumn / 2.0, row.center().y() + 5.0},
                                 QString::number(size), kFigureText);
    size += classes.step;
  }
}

QString tally_note(const SheetSet& set, const SheetClasses& classes) {
  QString note = QStringLiteral(
                     "One row of trees.csv for each cell: %1 = the class, %2 = how many. "
                     "Thicker, dead and tagged trees, and trees with anything to tell, go "
                     "on the sheet of lines.")
                     .arg(column_named(set, SheetPart::dot_tally, "dbh"),
                          column_named(set, SheetPart::dot_tally, "stems"));
  if (classes.by_line_below && set.min_dbh) {
    const bool us = set.system == UnitSystem::us;
    const Inches least = set.min_dbh->inches();
    note += QStringLiteral(" So do trees from %1 to under %2 %3.")
                .arg(QString::fromStdString(
                         number_text(us ? least.value : to_centimetres(least).value, 1)),
                     QString::fromStdString(number_text(*classes.by_line_below, 1)),
                     us ? QStringLiteral("in") : QStringLiteral("cm"));
  }
  return note;
}

void draw_tally(SheetFrame& frame, const SheetSet& set) {
  const SheetClasses classes = sheet_classes(set.min_dbh, set.system);
  const QString note = tally_note(set, classes);
  const Field* dbh = field_named(printed_fields(set.form, SheetPart::dot_tally), "dbh");
  if (dbh == nullptr) return;
  std::vector<SheetColumn> columns = {
      {QStringLiteral("Class"), sheet_column(*dbh, set.system), kClassColumn}};
  const double wide = (frame.width() - kClassColumn) / kSpeciesColumns;
  for (int i = 0; i < kSpeciesColumns; ++i) {
    columns.push_back(
        {species_name(set, i), column_named(set, SheetPart::dot_tally, "species"), wide});
  }
  frame.subhead(QStringLiteral("Live trees, a dot each (name the empty columns yourself)"));
  draw_sheet_head(frame, columns, frame.left());
  draw_classes(frame, columns, classes, 20.0 + frame.note_height(note));
  draw_key(frame);
  frame.note(note);
}

/// Stand and plot, as the file of trees or seedlings wants them in each row.
void draw_place(SheetFrame& frame, const SheetSet& set, SheetPart part, const std::string& stand,
                const std::string& plot) {
  const RecordForm* record = set.form.find_record(record_of(part));
  if (record == nullptr) return;
  std::vector<SheetFrame::Cell> cells;
  if (const Field* field = record->find("stand")) cells.push_back({field, printable(stand)});
  if (const Field* field = record->find("plot")) cells.push_back({field, printable(plot)});
  frame.cells(set.form, cells, 2);
  frame.gap(5.0);
}

}  // namespace

SheetPage plot_sheet(const SheetSet& set, const SheetDress& dress, const std::string& stand,
                     const std::string& plot) {
  SheetFrame frame(dress, false, QStringLiteral("Plot sheet"),
                   QStringLiteral("plots.csv (the boxes) and trees.csv (the tally)"));
  std::vector<SheetFrame::Cell> cells;
  for (const Field* field : printed_fields(set.form, SheetPart::plot_head)) {
    const auto given = set.given.find(field->name);
    QString words = given == set.given.end() ? QString() : printable(given->second);
    if (field->name == "stand") words = printable(stand);
    if (field->name == "plot") words = printable(plot);
    cells.push_back({field, words});
  }
  frame.cells(set.form, cells, 3);
  draw_tally(frame, set);
  return frame.finish();
}

SheetPage line_sheet(const SheetSet& set, const SheetDress& dress, const std::string& stand,
                     const std::string& plot) {
  constexpr double kRow = 25.0;
  SheetFrame frame(dress, true, QStringLiteral("Trees, line by line"), QStringLiteral("trees.csv"));
  draw_place(frame, set, SheetPart::tree_lines, stand, plot);
  const auto fields = printed_fields(set.form, SheetPart::tree_lines);
  const auto columns = sheet_columns(fields, set.system, frame.width());
  // The words of the choices stand at the foot; how high that is, a trial on another sheet tells.
  const auto words = [&](SheetFrame& on) {
    for (const Field* field : fields) on.words_of(set.form, *field);
  };
  SheetFrame trial(dress, true, {}, {});
  const double before = trial.room();
  words(trial);
  const double keep = before - trial.room() + 4.0;
  draw_sheet_head(frame, columns, frame.left());
  while (frame.room() - keep >= kRow) draw_sheet_row(frame, columns, frame.left(), kRow);
  frame.gap(4.0);
  words(frame);
  return frame.finish();
}

SheetPage seedling_sheet(const SheetSet& set, const SheetDress& dress, const std::string& stand,
                         const std::string& plot) {
  constexpr double kRow = 34.0;
  constexpr double kSpecies = 150.0;
  SheetFrame frame(dress, false, QStringLiteral("Seedlings"),
                   QStringLiteral("regeneration.csv, one row for each cell with a count"));
  draw_place(frame, set, SheetPart::seedlings, stand, plot);
  const Field* height = field_named(printed_fields(set.form, SheetPart::seedlings), "height_class");
  const ChoiceList* heights = height == nullptr ? nullptr : set.form.find_choices(height->choices);
  if (heights == nullptr || heights->choices.empty()) return frame.finish();
  std::vector<SheetColumn> columns = {
      {QStringLiteral("Species"), column_named(set, SheetPart::seedlings, "species"), kSpecies}};
  const double wide = (frame.width() - kSpecies) / static_cast<double>(heights->choices.size());
  for (const Choice& choice : heights->choices) {
    columns.push_back({printable(choice.label), printable(choice.word), wide});
  }
  frame.subhead(QStringLiteral("Stems on the seedling plot: %1 by species and %2")
                    .arg(column_named(set, SheetPart::seedlings, "count"),
                         sheet_column(*height, set.system)));
  draw_sheet_head(frame, columns, frame.left());
  for (int i = 0; frame.room() >= kRow + 22.0; ++i) {
    const QRectF row = draw_sheet_row(frame, columns, frame.left(), kRow);
    frame.drawing().text({row.left() + 4.0, row.center().y() + 4.0},
                         fitted(species_name(set, i), kBodyText, kSpecies - 8.0), kBodyText);
  }
  draw_key(frame);
  return frame.finish();
}

}  // namespace oaklight
