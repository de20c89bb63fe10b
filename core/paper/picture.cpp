#include "core/paper/picture.hpp"

#include <algorithm>
#include <cmath>

#include "core/base/number_text.hpp"

namespace oaklight {
namespace {

constexpr double kMargin = 6.0;
constexpr double kLeastLetters = 20.0;  // a frame is at least so many letters wide and high
constexpr double kKeyRow = 18.0;
constexpr double kKeyGap = 14.0;

constexpr double kWordsShare = 0.34;  // of the width, for words that stand beside the picture
constexpr double kLeastWords = 150.0;

/// The largest of a few sizes in which the words fit on so many lines.
TextStyle fitting_style(const QString& words, double width, std::size_t lines) {
  for (const double points : {26.0, 22.0, 18.0, 15.0}) {
    const TextStyle style{points, true, Ink::black};
    if (wrapped(words, style, width).size() <= lines) return style;
  }
  return kSubheadText;
}

}  // namespace

void fill_pattern(Drawing& drawing, const QRectF& rect, Pattern pattern) {
  if (rect.width() <= 0.0 || rect.height() <= 0.0) return;
  if (pattern == Pattern::solid) {
    drawing.fill_rect(rect, Ink::leave);
    return;
  }
  drawing.fill_rect(rect, Ink::white);
  if (pattern == Pattern::hatched) {
    constexpr double kEvery = 4.5;
    QPainterPath lines;
    for (double x = rect.left() - rect.height(); x < rect.right(); x += kEvery) {
      lines.moveTo(x, rect.bottom());
      lines.lineTo(x + rect.height(), rect.top());
    }
    drawing.outline(lines, {1.4, Ink::leave}, rect);
  }
  const double half = std::min({0.45, rect.width() / 2.0, rect.height() / 2.0});
  Stroke edge{2.0 * half, pattern == Pattern::hatched ? Ink::leave : Ink::soft};
  if (pattern == Pattern::mixed) edge.dashes = {3.0, 2.0};
  drawing.outline_rect(rect.adjusted(half, half, -half, -half), edge);
}

PictureSheet::PictureSheet(const PictureFrame& frame, Place place) : head_(frame.head) {
  const double least = std::min(frame.size.width(), frame.size.height()) / kLeastLetters;
  factor_ = std::max(std::min(frame.letters, least), 0.1) / kBodyText.points;
  whole_ = QRectF(QPointF(0.0, 0.0), frame.size / factor_);
  room_ = whole_.adjusted(kMargin, kMargin, -kMargin, -kMargin);
  if (place == Place::below || !wide() || whole_.width() < 1.15 * whole_.height()) return;
  beside_ = room_;
  room_.setWidth(std::max(kWordsShare * room_.width(), kLeastWords));
  beside_->setLeft(room_.right() + 2.0 * kMargin);
}

void PictureSheet::head(const QString& figure, const QString& words) {
  if (!head_) return;
  const TextStyle style = fitting_style(figure, room_.width(), beside() ? 2 : 1);
  for (const QString& line : wrapped(figure, style, room_.width())) {
    drawing_.text(QPointF(room_.left(), room_.top() + ascent_of(style)), line, style);
    room_.setTop(room_.top() + leading_of(style));
  }
  note(words);
}

void PictureSheet::note(const QString& words) {
  for (const QString& line : wrapped(words, kBodyText, room_.width())) {
    drawing_.text(QPointF(room_.left(), room_.top() + ascent_of(kBodyText)), line, kBodyText);
    room_.setTop(room_.top() + leading_of(kBodyText));
  }
  room_.setTop(room_.top() + 4.0);
}

void PictureSheet::key(const std::vector<KeyEntry>& entries) {
  if (entries.empty()) return;
  double x = room_.left();
  double y = room_.top();
  const double indent = kKeySample.width() + 6.0;
  for (const KeyEntry& entry : entries) {
    const QString words = fitted(entry.words, kSmallText, room_.width() - indent);
    const double width = indent + text_width(words, kSmallText);
    if (x > room_.left() && x + width > room_.right()) {
      x = room_.left();
      y += kKeyRow;
    }
    entry.sample(drawing_, QRectF(QPointF(x, y + 1.0), kKeySample));
    drawing_.text(QPointF(x + indent, y + 10.0), words, kSmallText);
    x += width + kKeyGap;
  }
  room_.setTop(y + kKeyRow + 4.0);
}

void PictureSheet::foot(const QString& words, const TextStyle& style) {
  const auto lines = wrapped(words, style, room_.width());
  const double height = static_cast<double>(lines.size()) * leading_of(style);
  double y = room_.bottom() - height + ascent_of(style);
  for (const QString& line : lines) {
    drawing_.text(QPointF(room_.left(), y), line, style);
    y += leading_of(style);
  }
  room_.setBottom(room_.bottom() - height - 4.0);
}

void PictureSheet::missing(const QString& what, const QString& fix) {
  if (beside_) room_.setRight(beside_->right());
  room_.setTop(room_.top() + room_.height() * 0.3);
  const double width = room_.width();
  const auto centred = [&](const QString& words, const TextStyle& style) {
    for (const QString& line : wrapped(words, style, width)) {
      drawing_.text_centred(QPointF(room_.center().x(), room_.top() + ascent_of(style)), line,
                            style);
      room_.setTop(room_.top() + leading_of(style));
    }
    room_.setTop(room_.top() + 6.0);
  };
  centred(what, kSubheadText);
  centred(fix, kBodyText.in(Ink::soft));
}

QString figure_words(double value, int decimals) {
  return QString::fromStdString(grouped_text(value, decimals));
}

}  // namespace oaklight
