#pragma once

#include <QFont>
#include <QString>
#include <string>
#include <vector>

#include "core/paper/ink.hpp"

namespace oaklight {

/// How a piece of text looks. Nothing on paper is smaller than 10 pt: it is read outdoors, in rain
/// and without glasses.
struct TextStyle {
  double points = 11.0;
  bool bold = false;
  Ink ink = Ink::black;

  [[nodiscard]] TextStyle in(Ink other) const { return {points, bold, other}; }
};

inline constexpr double kSmallestText = 10.0;
inline constexpr TextStyle kTitleText{26.0, true, Ink::black};
inline constexpr TextStyle kHeadingText{18.0, true, Ink::black};
inline constexpr TextStyle kSubheadText{13.0, true, Ink::black};
inline constexpr TextStyle kBodyText{11.0, false, Ink::black};
inline constexpr TextStyle kStrongText{11.0, true, Ink::black};
inline constexpr TextStyle kSmallText{kSmallestText, false, Ink::black};
inline constexpr TextStyle kSmallStrongText{kSmallestText, true, Ink::black};
inline constexpr TextStyle kTagText{15.0, true, Ink::black};
inline constexpr TextStyle kFigureText{13.0, false, Ink::black};

/// Fonts are set at 1000 pixels, the units in which our typeface is drawn, and painted smaller:
/// widths are then whole numbers, finer than any printer, and short in a file.
inline constexpr int kFontPixels = 1000;

/// The font of a style at kFontPixels, whatever its size.
QFont font_of(const TextStyle& style);

/// UTF-8 text as it can be printed on one line: bad bytes are shown as U+FFFD, line breaks and
/// controls are blanks, and marks that would reorder the text around them are taken out (a name
/// must not be able to turn the words beside it around).
QString printable(const std::string& utf8);

double text_width(const QString& text, const TextStyle& style);
double ascent_of(const TextStyle& style);
/// From one baseline to the next.
double leading_of(const TextStyle& style);

/// Lines no wider than width; the first is also kept `indent` narrower. Breaks between words,
/// inside a word only when it is wider than a line. Text that is empty gives no line.
std::vector<QString> wrapped(const QString& text, const TextStyle& style, double width,
                             double indent = 0.0);

/// The text, or its beginning with an ellipsis when it is wider than width.
QString fitted(const QString& text, const TextStyle& style, double width);

}  // namespace oaklight
