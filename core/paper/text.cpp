#include "core/paper/text.hpp"

#include <QFontMetricsF>
#include <QTextLayout>

#include "core/paper/gui_app.hpp"

namespace oaklight {
namespace {

/// Explicit directional marks of Unicode (UAX 9): embeddings, overrides, isolates, and the marks.
bool reorders(QChar c) {
  const char16_t u = c.unicode();
  return u == 0x061C || u == 0x200E || u == 0x200F || (u >= 0x202A && u <= 0x202E) ||
         (u >= 0x2066 && u <= 0x2069);
}

/// Pixels of the font in one point on paper.
double grain(const TextStyle& style) { return kFontPixels / style.points; }

}  // namespace

QFont font_of(const TextStyle& style) {
  QFont font(QString::fromLatin1(kTypeface));
  font.setPixelSize(kFontPixels);
  font.setBold(style.bold);
  font.setHintingPreference(QFont::PreferNoHinting);
  // A spacing, however small, keeps Qt from drawing "ff" as one sign: a hash or a tag copied out of
  // a PDF has to be the letters that stand there.
  font.setLetterSpacing(QFont::AbsoluteSpacing, 1.0 / 32.0);
  return font;
}

QString printable(const std::string& utf8) {
  const QString raw = QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
  QString text;
  text.reserve(raw.size());
  for (const QChar c : raw) {
    if (reorders(c)) continue;
    const bool blank = c.isSpace() || c.category() == QChar::Other_Control;
    text.append(blank ? QChar(u' ') : c);
  }
  return text.trimmed();
}

double text_width(const QString& text, const TextStyle& style) {
  return QFontMetricsF(font_of(style)).horizontalAdvance(text) / grain(style);
}

double ascent_of(const TextStyle& style) { return 0.80 * style.points; }

double leading_of(const TextStyle& style) { return 1.28 * style.points; }

std::vector<QString> wrapped(const QString& text, const TextStyle& style, double width,
                             double indent) {
  if (text.isEmpty()) return {};
  if (text_width(text, style) <= width - indent) return {text};
  QTextLayout layout(text, font_of(style));
  QTextOption option;
  option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
  layout.setTextOption(option);
  std::vector<QString> lines;
  layout.beginLayout();
  for (QTextLine line = layout.createLine(); line.isValid(); line = layout.createLine()) {
    line.setLineWidth((lines.empty() ? width - indent : width) * grain(style));
    lines.push_back(text.mid(line.textStart(), line.textLength()).trimmed());
  }
  layout.endLayout();
  return lines;
}

QString fitted(const QString& text, const TextStyle& style, double width) {
  return QFontMetricsF(font_of(style)).elidedText(text, Qt::ElideRight, width * grain(style));
}

}  // namespace oaklight
