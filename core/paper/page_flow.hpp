#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "core/paper/drawing.hpp"
#include "core/paper/page.hpp"
#include "core/paper/symbols.hpp"

namespace oaklight {

/// A paragraph, with the word of its severity in front when it is a caution.
struct Paragraph {
  QString text;
  TextStyle style = kBodyText;
  std::optional<Severity> badge = std::nullopt;
  double gap_above = 0.0;  ///< left out at the top of a block
};

/// Paragraphs broken into lines of one width.
class TextBlock {
 public:
  TextBlock(const std::vector<Paragraph>& paragraphs, double width);

  [[nodiscard]] double height() const { return lines_.empty() ? 0.0 : lines_.back().bottom; }
  /// From the top to the first baseline; 0 without lines.
  [[nodiscard]] double first_baseline() const { return lines_.empty() ? 0.0 : lines_[0].baseline; }
  /// Keeps the lines that fit the height; the last one then says that the list file has the rest.
  void cut_to(double height);
  void draw(Drawing& drawing, QPointF corner) const;
  /// Draws the lines from the given one that fit the height, the first of them at the corner.
  /// Returns the first line that did not fit, and the height used.
  std::pair<std::size_t, double> draw_part(Drawing& drawing, QPointF corner, std::size_t from,
                                           double height) const;
  [[nodiscard]] std::size_t line_count() const { return lines_.size(); }

 private:
  struct Line {
    QString text;
    TextStyle style;
    std::optional<Severity> badge;
    double baseline;
    double bottom;
  };
  void draw_line(Drawing& drawing, const Line& line, QPointF corner) const;
  std::vector<Line> lines_;
  double width_;
};

/// What every page says beside its own matter.
struct PageDress {
  QString tract;
  QString made_on;
  QString list_sha256;  ///< "": the pages belong to no list
  bool demo = false;
};

/// Pages filled from top to bottom. Page n of m and the rest of the foot are written by finish(),
/// when m is known.
class PageFlow {
 public:
  PageFlow(PaperSize paper, PageDress dress);

  /// Starts a page. section is printed in its head.
  void new_page(const QString& section);
  /// Starts a further page of the same section.
  void new_page();
  /// Keeps room free at the bottom of the present page for something pinned there.
  QRectF reserve_bottom(double height);

  [[nodiscard]] double room() const { return bottom_ - y_; }
  [[nodiscard]] double width() const { return grid_.body.width(); }
  [[nodiscard]] double left() const { return grid_.body.left(); }
  [[nodiscard]] const PageGrid& grid() const { return grid_; }
  /// Takes a strip of full width; on a further page when there is no room for it here.
  QRectF take(double height);
  void gap(double height) { y_ += height; }
  /// Goes on at that height of the page, below what a caller drew by itself.
  void go_to(double y) { y_ = y; }
  Drawing& page() { return pages_.back(); }
  Drawing& page(std::size_t index) { return pages_[index]; }

  void heading(const QString& words);
  /// A sub-head that stays on one page with at least `keep` points of what follows.
  void subhead(const QString& words, double keep = 40.0);
  /// Text that may run over to further pages.
  void text(const std::vector<Paragraph>& paragraphs, double indent = 0.0);

  /// Writes the feet and hands the pages over.
  std::vector<Drawing> finish();

 private:
  void draw_head(const QString& section);
  PageGrid grid_;
  PageDress dress_;
  std::vector<Drawing> pages_;
  QString section_;
  double y_ = 0.0;
  double bottom_ = 0.0;
};

}  // namespace oaklight
