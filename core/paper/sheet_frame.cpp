#include "core/paper/sheet_frame.hpp"

#include <algorithm>

#include "core/model/tract.hpp"

namespace oaklight {
namespace {

constexpr double kMargin = 0.5 * kPointsPerInch;
constexpr double kFoot = 16.0;
constexpr double kCellHeight = 31.0;
constexpr double kInset = 4.0;
constexpr Stroke kLine{0.8, Ink::black};
constexpr Stroke kFine{0.5, Ink::rule};

QPainterPath box_path(const QRectF& box) {
  QPainterPath path;
  path.addRect(box);
  return path;
}

QString text_of(const std::string& words) { return printable(words); }

/// How much room a field asks for on a line, relative to a short number.
double weight_of(const Field& field) {
  switch (field.kind) {
    case FieldKind::species:
      return 2.0;
    case FieldKind::choices:
      return field.choices == "side" ? 0.8 : 1.9;
    case FieldKind::text:
      return field.max_length > 40 ? 1.5 : 1.0;
    case FieldKind::choice:
      return 1.15;
    default:
      return 1.0;
  }
}

/// The parts of a column name, each with the underscore that parts it from the next.
QStringList parts_of(const QString& name) {
  QStringList parts = name.split(QLatin1Char('_'));
  for (qsizetype i = 0; i + 1 < parts.size(); ++i) parts[i] += QLatin1Char('_');
  return parts;
}

/// A name broken after its underscores into lines no wider than this, where its parts allow.
QStringList broken_name(const QString& name, double width) {
  QStringList lines;
  for (const QString& part : parts_of(name)) {
    if (!lines.isEmpty() && text_width(lines.back() + part, kSmallText) <= width) {
      lines.back() += part;
    } else {
      lines << part;
    }
  }
  return lines;
}

/// The least width at which no part of the name is cut.
double least_width(const QString& name) {
  double widest = 0.0;
  for (const QString& part : parts_of(name)) {
    widest = std::max(widest, text_width(part, kSmallText));
  }
  return widest + 5.0;
}

/// The label of a column on two lines at most.
std::vector<QString> label_lines(const SheetColumn& column) {
  std::vector<QString> lines = wrapped(column.label, kSmallStrongText, column.width - 3.0);
  if (lines.size() > 2) lines.resize(2);
  return lines;
}

}  // namespace

QString sheet_label(const Field& field, UnitSystem system) {
  const QString unit = text_of(field.unit.of(system));
  const QString label = text_of(field.label);
  return unit.isEmpty() ? label : label + QStringLiteral(", ") + unit;
}

QString sheet_column(const Field& field, UnitSystem system) {
  return text_of(field.column.of(system));
}

SheetFrame::SheetFrame(const SheetDress& dress, bool wide, const QString& title,
                       const QString& typed)
    : dress_(dress) {
  page_.size = page_size(dress.paper);
  if (wide) page_.size.transpose();
  left_ = kMargin;
  width_ = page_.size.width() - 2.0 * kMargin;
  top_ = kMargin * 0.8;
  bottom_ = page_.size.height() - kMargin * 0.8 - kFoot;
  draw_head(title);
  draw_caution();
  note(QStringLiteral("Type it into ") + typed +
       QStringLiteral(". The small word in each box is the column. An empty box means: not "
                      "recorded. Nothing is ever 0 unless somebody looked."));
  gap(3.0);
}

QRectF SheetFrame::take(double height) {
  const QRectF strip(left_, top_, width_, height);
  top_ += height;
  return strip;
}

void SheetFrame::draw_head(const QString& title) {
  const QRectF strip = take(leading_of(kHeadingText));
  const double baseline = strip.top() + ascent_of(kHeadingText);
  drawing().text({strip.left(), baseline}, fitted(title, kHeadingText, width_ * 0.45),
                 kHeadingText);
  const QString tract =
      dress_.tract.isEmpty() ? QStringLiteral("Tract ______________________") : dress_.tract;
  drawing().text_ending({strip.right(), baseline}, fitted(tract, kSubheadText, width_ * 0.52),
                        kSubheadText);
  if (dress_.demo) {
    const QRectF band = take(leading_of(kStrongText) + 4.0);
    drawing().fill_rect(band, Ink::dark_ground);
    drawing().text({band.left() + kInset, band.top() + 2.0 + ascent_of(kStrongText)},
                   QStringLiteral("DEMO: invented tract, not a real job"),
                   kStrongText.in(Ink::on_ground));
    gap(3.0);
  }
}

void SheetFrame::draw_caution() {
  const QString words = QStringLiteral(
      "Look up before you step in: dead tops, hanging limbs, leaners, wires. Leave in wind or "
      "lightning. Tell somebody where you are. Local codes govern.");
  const std::vector<QString> lines = wrapped(words, kStrongText, width_ - 2.0 * kInset);
  const double leading = leading_of(kStrongText);
  const QRectF box = take(leading * static_cast<double>(lines.size()) + 6.0);
  drawing().outline_rect(box, {1.4, Ink::black});
  double baseline = box.top() + 3.0 + ascent_of(kStrongText);
  for (const QString& line : lines) {
    drawing().text({box.left() + kInset, baseline}, line, kStrongText);
    baseline += leading;
  }
  gap(3.0);
}

void SheetFrame::subhead(const QString& words) {
  gap(5.0);
  const QRectF strip = take(leading_of(kSubheadText) + 2.0);
  drawing().text({strip.left(), strip.top() + ascent_of(kSubheadText)},
                 fitted(words, kSubheadText, width_), kSubheadText);
}

double SheetFrame::note_height(const QString& words) const {
  return leading_of(kSmallText) * static_cast<double>(wrapped(words, kSmallText, width_).size());
}

void SheetFrame::note(const QString& words) {
  for (const QString& line : wrapped(words, kSmallText, width_)) {
    const QRectF strip = take(leading_of(kSmallText));
    drawing().text({strip.left(), strip.top() + ascent_of(kSmallText)}, line, kSmallText);
  }
}

void SheetFrame::words_of(const Form& form, const Field& field) {
  const ChoiceList* list = form.find_choices(field.choices);
  if (list == nullptr) return;
  QStringList words;
  for (const Choice& choice : list->choices) words << text_of(choice.word);
  note(sheet_column(field, dress_.system) + QStringLiteral(": ") +
       words.join(QStringLiteral(", ")));
}

void SheetFrame::draw_cell(const Form& form, const Cell& cell, const QRectF& box) {
  const Field& field = *cell.field;
  drawing().outline_rect(box, kLine);
  const double inner = box.width() - 2.0 * kInset;
  QString label = sheet_label(field, dress_.system);
  if (text_width(label, kSmallStrongText) > inner) label = text_of(field.short_label);
  drawing().text({box.left() + kInset, box.top() + 1.0 + ascent_of(kSmallStrongText)},
                 fitted(label, kSmallStrongText, inner), kSmallStrongText);
  const double baseline = box.bottom() - 4.0;
  const QString column = sheet_column(field, dress_.system);
  drawing().text({box.left() + kInset, baseline}, column, kSmallText.in(Ink::soft));
  const double from = box.left() + kInset + text_width(column, kSmallText) + 7.0;
  const double free = box.right() - kInset - from;
  if (!cell.given.isEmpty()) {
    drawing().text({from, baseline}, fitted(cell.given, kStrongText, free), kStrongText);
    return;
  }
  // A short list is printed to be ringed; a long one stands at the foot of the sheet.
  const ChoiceList* list = form.find_choices(field.choices);
  if (list == nullptr) return;
  QStringList words;
  for (const Choice& choice : list->choices) {
    if (choice.word != word_of(PlotStatus::planned)) words << text_of(choice.word);
  }
  const QString all = words.join(QStringLiteral("   "));
  if (text_width(all, kSmallText) <= free) drawing().text({from, baseline}, all, kSmallText);
}

void SheetFrame::cells(const Form& form, const std::vector<Cell>& cells, int columns) {
  const double wide = width_ / columns;
  int at = 0;
  QRectF strip;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    if (at == 0) strip = take(kCellHeight);
    const double from = strip.left() + at * wide;
    const double to =
        i + 1 == cells.size() ? strip.right() : from + wide;  // the last: all the rest
    draw_cell(form, cells[i], {from, strip.top(), to - from, kCellHeight});
    at = (at + 1) % columns;
  }
}

std::vector<SheetColumn> sheet_columns(const std::vector<const Field*>& fields, UnitSystem system,
                                       double width) {
  std::vector<SheetColumn> columns;
  for (const Field* field : fields) {
    const QString unit = text_of(field->unit.of(system));
    QString label = text_of(field->short_label);
    if (!unit.isEmpty() && unit.size() <= 2) label += QLatin1Char(' ') + unit;
    columns.push_back({label, sheet_column(*field, system), 0.0});
  }
  // By weight; a column whose name would not fit gets its least width, and the others share the
  // rest, until all fit.
  std::vector<bool> settled(columns.size(), false);
  for (bool changed = true; changed;) {
    changed = false;
    double weights = 0.0;
    double room = width;
    for (std::size_t i = 0; i < columns.size(); ++i) {
      if (settled[i]) room -= columns[i].width;
      if (!settled[i]) weights += weight_of(*fields[i]);
    }
    for (std::size_t i = 0; i < columns.size(); ++i) {
      if (settled[i]) continue;
      columns[i].width = room * weight_of(*fields[i]) / weights;
      const double least = least_width(columns[i].column);
      if (columns[i].width >= least) continue;
      columns[i].width = least;
      settled[i] = changed = true;
      break;  // what is left for the others is another now
    }
  }
  return columns;
}

void draw_sheet_head(SheetFrame& frame, const std::vector<SheetColumn>& columns, double left) {
  std::size_t labels = 1;
  qsizetype names = 1;
  for (const SheetColumn& c : columns) {
    labels = std::max(labels, label_lines(c).size());
    names = std::max(names, broken_name(c.column, c.width - 4.0).size());
  }
  const double leading = leading_of(kSmallText);
  const double lines = static_cast<double>(labels) + static_cast<double>(names);
  const QRectF strip = frame.take(leading * lines + 5.0);
  double x = left;
  for (const SheetColumn& c : columns) {
    const QRectF box(x, strip.top(), c.width, strip.height());
    frame.drawing().shape(box_path(box), Ink::band, kLine);
    double baseline = box.top() + 1.0 + ascent_of(kSmallStrongText);
    for (const QString& line : label_lines(c)) {
      frame.drawing().text({x + 2.0, baseline}, fitted(line, kSmallStrongText, c.width - 3.0),
                           kSmallStrongText);
      baseline += leading;
    }
    baseline = box.top() + 1.0 + ascent_of(kSmallText) + leading * static_cast<double>(labels);
    for (const QString& line : broken_name(c.column, c.width - 4.0)) {
      frame.drawing().text({x + 2.0, baseline}, fitted(line, kSmallText, c.width - 2.0),
                           kSmallText);
      baseline += leading;
    }
    x += c.width;
  }
}

QRectF draw_sheet_row(SheetFrame& frame, const std::vector<SheetColumn>& columns, double left,
                      double height) {
  const QRectF strip = frame.take(height);
  double x = left;
  for (const SheetColumn& c : columns) {
    frame.drawing().outline_rect({x, strip.top(), c.width, height}, kLine);
    x += c.width;
  }
  return {left, strip.top(), x - left, height};
}

void number_sheets(std::vector<SheetPage>& pages, const SheetDress& dress) {
  for (std::size_t i = 0; i < pages.size(); ++i) {
    SheetPage& page = pages[i];
    const double baseline = page.size.height() - kMargin * 0.8 - 3.0;
    const double right = page.size.width() - kMargin;
    page.drawing.line({kMargin, baseline - 12.0}, {right, baseline - 12.0}, kFine);
    page.drawing.text({kMargin, baseline},
                      QStringLiteral("Sheet %1 of %2").arg(i + 1).arg(pages.size()),
                      kSmallStrongText);
    page.drawing.text_ending({right, baseline}, fitted(dress.form, kSmallText, 300.0), kSmallText);
  }
}

}  // namespace oaklight
