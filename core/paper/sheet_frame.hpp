#pragma once

#include <QString>
#include <QStringList>
#include <vector>

#include "core/forms/sheet.hpp"
#include "core/paper/drawing.hpp"
#include "core/paper/page.hpp"

namespace oaklight {

/// One printed sheet.
struct SheetPage {
  QSizeF size;
  Drawing drawing;
};

/// What all sheets of a set share.
struct SheetDress {
  PaperSize paper = PaperSize::letter;
  UnitSystem system = UnitSystem::us;
  QString tract;
  bool demo = false;
  QString form;  ///< name and version of the form
};

/// A sheet while it is laid out, from the top down: what it is, the caution, then its parts. Large
/// cells and few words, for a pencil, a glove and rain.
class SheetFrame {
 public:
  /// title   what the sheet is
  /// typed   where it is typed in: "plots.csv and trees.csv"
  SheetFrame(const SheetDress& dress, bool wide, const QString& title, const QString& typed);

  Drawing& drawing() { return page_.drawing; }
  [[nodiscard]] const SheetDress& dress() const { return dress_; }
  [[nodiscard]] double left() const { return left_; }
  [[nodiscard]] double width() const { return width_; }
  [[nodiscard]] double top() const { return top_; }
  [[nodiscard]] double room() const { return bottom_ - top_; }
  /// Takes a strip of full width.
  QRectF take(double height);
  void gap(double height) { top_ += height; }

  /// A heading within the sheet.
  void subhead(const QString& words);
  /// Small text over the full width.
  void note(const QString& words);
  /// The words that a choice may hold, under the name of its column; nothing for other fields.
  void words_of(const Form& form, const Field& field);
  /// Cells to write in, so many side by side: label and unit above, the name of the CSV column
  /// below, what is given already printed large.
  struct Cell {
    const Field* field = nullptr;
    QString given;  ///< "": to be written in
  };
  void cells(const Form& form, const std::vector<Cell>& cells, int columns);

  /// The height that `note` takes for these words.
  [[nodiscard]] double note_height(const QString& words) const;
  [[nodiscard]] SheetPage finish() { return std::move(page_); }

 private:
  void draw_head(const QString& title);
  void draw_caution();
  void draw_cell(const Form& form, const Cell& cell, const QRectF& box);
  SheetDress dress_;
  SheetPage page_;
  double left_ = 0.0, width_ = 0.0, top_ = 0.0, bottom_ = 0.0;
};

/// The label of a field with its unit: "Diameter (DBH), in".
[[nodiscard]] QString sheet_label(const Field& field, UnitSystem system);
/// The CSV column of a field.
[[nodiscard]] QString sheet_column(const Field& field, UnitSystem system);

/// A column of lines to write on.
struct SheetColumn {
  QString label;   ///< what it asks for
  QString column;  ///< the CSV column; "" for none
  double width = 0.0;
};
/// The columns of fields, widths in proportion to what they hold, filling `width`.
[[nodiscard]] std::vector<SheetColumn> sheet_columns(const std::vector<const Field*>& fields,
                                                     UnitSystem system, double width);
/// The head of a table of lines: label above, column name below, broken where they are long.
void draw_sheet_head(SheetFrame& frame, const std::vector<SheetColumn>& columns, double left);
/// A row of empty cells under it. Returns its box.
QRectF draw_sheet_row(SheetFrame& frame, const std::vector<SheetColumn>& columns, double left,
                      double height);

/// Writes the foot of each sheet, with its number of how many.
void number_sheets(std::vector<SheetPage>& pages, const SheetDress& dress);

}  // namespace oaklight
