#include "core/paper/page_flow.hpp"

#include <algorithm>

namespace oaklight {
namespace {

constexpr double kBadgeGap = 6.0;

}  // namespace

TextBlock::TextBlock(const std::vector<Paragraph>& paragraphs, double width) : width_(width) {
  double y = 0.0;
  for (const Paragraph& paragraph : paragraphs) {
    if (!lines_.empty()) y += paragraph.gap_above;
    std::optional<Severity> badge = paragraph.badge;
    const double indent = badge ? badge_width(*badge) + kBadgeGap : 0.0;
    for (QString& text : wrapped(paragraph.text, paragraph.style, width, indent)) {
      const double leading = leading_of(paragraph.style);
      lines_.push_back(
          {std::move(text), paragraph.style, badge, y + ascent_of(paragraph.style), y + leading});
      y += leading;
      badge.reset();
    }
  }
}

void TextBlock::cut_to(double height) {
  if (this->height() <= height) return;
  while (lines_.size() > 1 && lines_.back().bottom > height) lines_.pop_back();
  Line& last = lines_.back();
  last.style = kSmallText;
  last.badge.reset();
  last.text = fitted(QStringLiteral("(more: see the list file)"), kSmallText, width_);
}

void TextBlock::draw_line(Drawing& drawing, const Line& line, QPointF corner) const {
  QPointF at = corner + QPointF(0.0, line.baseline);
  if (line.badge) at.rx() += draw_badge(drawing, at, *line.badge) + kBadgeGap;
  drawing.text(at, line.text, line.style);
}

void TextBlock::draw(Drawing& drawing, QPointF corner) const {
  for (const Line& line : lines_) draw_line(drawing, line, corner);
}

std::pair<std::size_t, double> TextBlock::draw_part(Drawing& drawing, QPointF corner,
                                                    std::size_t from, double height) const {
  if (from >= lines_.size()) return {from, 0.0};
  const double top = lines_[from].bottom - leading_of(lines_[from].style);
  std::size_t i = from;
  for (; i < lines_.size() && lines_[i].bottom - top <= height; ++i) {
    draw_line(drawing, lines_[i], corner - QPointF(0.0, top));
  }
  return {i, i == from ? 0.0 : lines_[i - 1].bottom - top};
}

PageFlow::PageFlow(PaperSize paper, PageDress dress)
    : grid_(page_grid(paper)), dress_(std::move(dress)) {}

void PageFlow::new_page(const QString& section) {
  section_ = section;
  new_page();
}

void PageFlow::new_page() {
  pages_.emplace_back();
  y_ = grid_.body.top();
  bottom_ = grid_.body.bottom();
  draw_head(section_);
}

void PageFlow::draw_head(const QString& section) {
  const QRectF& head = grid_.head;
  const double baseline = head.bottom() - 8.0;
  const Ink ink = dress_.demo ? Ink::on_ground : Ink::black;
  if (dress_.demo) page().fill_rect(head, Ink::dark_ground);
  const double inset = dress_.demo ? 8.0 : 0.0;
  const double half = head.width() / 2.0 - inset;
  const QString left =
      dress_.demo ? QStringLiteral("DEMO: invented tract, not a real job") : dress_.tract;
  page().text(QPointF(head.left() + inset, baseline), fitted(left, kStrongText, half),
              kStrongText.in(ink));
  page().text_ending(QPointF(head.right() - inset, baseline),
                     fitted(section, kStrongText, half - 10.0), kStrongText.in(ink));
  if (!dress_.demo) page().line(head.bottomLeft(), head.bottomRight(), {1.2, Ink::black});
}

QRectF PageFlow::reserve_bottom(double height) {
  bottom_ -= height;
  return {grid_.body.left(), bottom_, grid_.body.width(), height};
}

QRectF PageFlow::take(double height) {
  if (height > room() && y_ > grid_.body.top()) new_page();
  const QRectF strip(grid_.body.left(), y_, grid_.body.width(), height);
  y_ += height;
  return strip;
}

void PageFlow::heading(const QString& words) {
  const QRectF strip = take(leading_of(kHeadingText) + 4.0);
  page().text(strip.topLeft() + QPointF(0.0, ascent_of(kHeadingText)),
              fitted(words, kHeadingText, strip.width()), kHeadingText);
}

void PageFlow::subhead(const QString& words, double keep) {
  constexpr double kAbove = 9.0;
  constexpr double kBelow = 3.0;
  const double height = kAbove + leading_of(kSubheadText) + kBelow;
  if (room() < height + keep) new_page();
  const QRectF strip = take(height);
  page().text(strip.topLeft() + QPointF(0.0, kAbove + ascent_of(kSubheadText)),
              fitted(words, kSubheadText, strip.width()), kSubheadText);
}

void PageFlow::text(const std::vector<Paragraph>& paragraphs, double indent) {
  const TextBlock block(paragraphs, width() - indent);
  std::size_t next = 0;
  while (next < block.line_count()) {
    const auto [after, used] = block.draw_part(page(), QPointF(left() + indent, y_), next, room());
    y_ += used;
    if (after < block.line_count()) new_page();
    next = after;
  }
}

std::vector<Drawing> PageFlow::finish() {
  const QRectF& foot = grid_.foot;
  const double lower = foot.bottom() - 4.0;
  const double upper = lower - leading_of(kSmallText) + 1.0;
  for (std::size_t i = 0; i < pages_.size(); ++i) {
    Drawing& page = pages_[i];
    page.line(foot.topLeft(), foot.topRight(), {0.6, Ink::black});
    const QString number = QStringLiteral("Page %1 of %2").arg(i + 1).arg(pages_.size());
    page.text(QPointF(foot.left(), upper), number, kSmallStrongText);
    const QString made = fitted(QStringLiteral("made ") + dress_.made_on, kSmallText, 110.0);
    const double from = foot.left() + std::max(90.0, text_width(number, kSmallStrongText) + 18.0);
    const double until = foot.right() - text_width(made, kSmallText);
    page.text(QPointF(from, upper), fitted(dress_.tract, kSmallText, until - from - 14.0),
              kSmallText);
    page.text_ending(QPointF(foot.right(), upper), made, kSmallText);
    if (dress_.list_sha256.isEmpty()) continue;
    page.text(
        QPointF(foot.left(), lower),
        fitted(QStringLiteral("List SHA-256 ") + dress_.list_sha256, kSmallText, foot.width()),
        kSmallText);
  }
  return std::move(pages_);
}

}  // namespace oaklight
