#include "core/paper/table.hpp"

#include <algorithm>

namespace oaklight {
namespace {

constexpr double kHeadHeight = 20.0;
constexpr double kGroupHeight = 20.0;
constexpr double kCellGap = 8.0;     // between the text of two columns
constexpr double kRowPadding = 5.0;  // above and below the text
constexpr double kBaseline = 12.0;   // of the first line of every cell, below the padding
constexpr double kNoteLine = 14.0;   // room that tall cells leave for one line of a note

/// How far a block moves down so that all cells of a row share their first baseline.
double drop_of(const TextBlock& block) { return std::max(0.0, kBaseline - block.first_baseline()); }

}  // namespace

Table::Table(PageFlow& flow, std::vector<TableColumn> columns, double least_row)
    : flow_(flow), columns_(std::move(columns)), least_row_(least_row) {
  double rest = flow_.width();
  for (const TableColumn& column : columns_) rest -= column.width;
  for (TableColumn& column : columns_) {
    if (column.width <= 0.0) column.width = rest;
  }
  if (flow_.room() < kHeadHeight + kGroupHeight + least_row_) {
    flow_.new_page();
  }
  head();
}

void Table::head() {
  const QRectF strip = flow_.take(kHeadHeight);
  double x = strip.left();
  for (const TableColumn& column : columns_) {
    flow_.page().text(QPointF(x, strip.bottom() - 6.0),
                      fitted(column.title, kSmallStrongText, column.width - 2.0), kSmallStrongText);
    x += column.width;
  }
  flow_.page().line(strip.bottomLeft(), strip.bottomRight(), {1.4, Ink::black});
}

void Table::draw_group(const QString& words) {
  const QRectF strip = flow_.take(kGroupHeight);
  flow_.page().fill_rect(strip.adjusted(0.0, 1.0, 0.0, 0.0), Ink::band);
  flow_.page().text(QPointF(strip.left() + 6.0, strip.bottom() - 6.0),
                    fitted(words, kStrongText, strip.width() - 12.0), kStrongText);
}

void Table::group(const QString& words) {
  if (flow_.room() < kGroupHeight + 2.0 * least_row_) {
    flow_.new_page();
    head();
  }
  group_ = words;
  draw_group(words);
}

void Table::further_page() {
  flow_.new_page();
  head();
  if (!group_.isEmpty()) draw_group(group_ + QStringLiteral(" (continued)"));
}

void Table::draw_cell(const TableCell& cell, const TextBlock& block, const QRectF& box) {
  Drawing& page = flow_.page();
  const double first_line = box.top() + kRowPadding + kBaseline - 4.5;
  if (cell.tick) draw_tick_box(page, box.left() + 2.0, first_line);
  if (cell.mark) draw_mark(page, *cell.mark, QPointF(box.left() + 9.0, first_line - 1.0), 5.5);
  if (cell.blank) {
    const QPointF start(box.left(), box.top() + 23.0);
    page.line(start, start + QPointF(box.width() - kCellGap, 0.0), {0.8, Ink::black});
  }
  block.draw(page, box.topLeft() + QPointF(0.0, kRowPadding + drop_of(block)));
}

double Table::tallest_row() const {
  return flow_.grid().body.height() - kHeadHeight - kGroupHeight - 2.0 * kRowPadding - kBaseline;
}

double Table::left_of(std::size_t column) const {
  double x = flow_.left();
  for (std::size_t i = 0; i < column; ++i) x += columns_[i].width;
  return x;
}

void Table::row(const std::vector<TableCell>& cells, const std::optional<Note>& note) {
  std::vector<TextBlock> blocks;
  double height = least_row_ - 2.0 * kRowPadding;
  double note_top = 0.0;  // below the cells it stands under
  for (std::size_t i = 0; i < cells.size(); ++i) {
    blocks.emplace_back(cells[i].paragraphs, columns_[i].width - kCellGap);
    blocks.back().cut_to(tallest_row() - kNoteLine);
    const double used = drop_of(blocks.back()) + blocks.back().height();
    height = std::max(height, used);
    if (note && note->from <= i && i <= note->to) note_top = std::max(note_top, used);
  }
  const TextBlock note_block = block_of(note, tallest_row() - note_top);
  height = std::max(height, note_top + note_block.height()) + 2.0 * kRowPadding;
  if (height > flow_.room()) further_page();
  const QRectF strip = flow_.take(height);
  for (std::size_t i = 0; i < cells.size(); ++i) {
    draw_cell(cells[i], blocks[i], QRectF(left_of(i), strip.top(), columns_[i].width, height));
  }
  if (note) {
    note_block.draw(flow_.page(),
                    QPointF(left_of(note->from), strip.top() + kRowPadding + note_top));
  }
  flow_.page().line(strip.bottomLeft(), strip.bottomRight(), {0.6, Ink::rule});
}

TextBlock Table::block_of(const std::optional<Note>& note, double tallest) const {
  if (!note) return TextBlock({}, 1.0);
  TextBlock block({note->text}, left_of(note->to + 1) - left_of(note->from) - 1.5 * kCellGap);
  block.cut_to(std::max(tallest, kNoteLine));
  return block;
}

}  // namespace oaklight
