#pragma once

#include <QSizeF>
#include <string>
#include <vector>

#include "core/paper/drawing.hpp"
#include "core/paper/picture.hpp"

namespace oaklight::test {

/// The sizes that each picture is tested at.
struct SizedFrame {
  const char* name;
  PictureFrame frame;
};
const std::vector<SizedFrame>& sized_frames();  ///< phone, tablet, half a letter page, the smallest

/// Contrast of two colours, 1 .. 21. Source: WCAG 2.2, relative luminance and contrast ratio.
double contrast(const QColor& a, const QColor& b);
double luminance(const QColor& colour);

/// What is wrong with a picture, in words; empty when nothing: items that leave the frame, words
/// that overlap words, shapes over and lines through words, letters under 10/11 of the ordinary,
/// words too weak for their ground in any palette (7:1, or 4.5:1 where they are large), ground
/// behind words brighter than #404040 at night.
std::vector<std::string> faults_of(const Drawing& drawing, const PictureFrame& frame);

/// Paints the picture by day and by night into the build tree, folder pictures.
void save_pictures(const std::string& name, const Drawing& drawing, const PictureFrame& frame);

/// The texts of a drawing in the order in which they are painted, parted by blanks.
std::string words_of(const Drawing& drawing);

/// Filled rectangles of an ink, as wide and high as they are seen.
std::vector<QRectF> filled(const Drawing& drawing, Ink ink);

}  // namespace oaklight::test
