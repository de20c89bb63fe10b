#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "core/paper/page_flow.hpp"

namespace oaklight {

struct TableColumn {
  QString title;
  double width = 0.0;  ///< pt; 0: what the others leave
};

/// One cell: text, or a mark, or a box to tick, or a line to write on.
struct TableCell {
  std::vector<Paragraph> paragraphs = {};
  std::optional<TreeMark> mark = std::nullopt;
  bool tick = false;
  bool blank = false;
};

/// A table that runs over pages: its head is repeated, a row is never broken, each row has a line
/// under it.
class Table {
 public:
  Table(PageFlow& flow, std::vector<TableColumn> columns, double least_row = 30.0);

  /// A band across the table, repeated after a page break until the next one.
  void group(const QString& words);
  /// note   text under the cells of the columns from..to, both included
  struct Note {
    std::size_t from = 0;
    std::size_t to = 0;
    Paragraph text;
  };
  void row(const std::vector<TableCell>& cells, const std::optional<Note>& note = std::nullopt);

 private:
  [[nodiscard]] double tallest_row() const;
  [[nodiscard]] double left_of(std::size_t column) const;
  [[nodiscard]] TextBlock block_of(const std::optional<Note>& note, double tallest) const;
  void head();
  void draw_group(const QString& words);
  void further_page();
  void draw_cell(const TableCell& cell, const TextBlock& block, const QRectF& box);

  PageFlow& flow_;
  std::vector<TableColumn> columns_;
  double least_row_;
  QString group_;
};

}  // namespace oaklight
