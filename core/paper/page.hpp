#pragma once

#include <QRectF>
#include <QSizeF>

#include "core/model/words.hpp"

namespace oaklight {

/// The sheets that home printers hold.
enum class PaperSize { letter, a4 };
template <>
inline constexpr auto kWords<PaperSize> =
    std::to_array<Word<PaperSize>>({{PaperSize::letter, "letter"}, {PaperSize::a4, "a4"}});

// All paper coordinates are points, 1/72 in, from the upper left corner of the page, y down.
inline constexpr double kPointsPerInch = 72.0;
inline constexpr double kPointsPerMillimetre = kPointsPerInch / 25.4;

/// Where things go on a page: one grid for all pages.
struct PageGrid {
  QSizeF size;
  QRectF head;  ///< running head: what this page is, and the DEMO band
  QRectF body;
  QRectF foot;
};

/// The whole sheet. Source: US Letter 8.5 x 11 in (ANSI Y14.1 size A); ISO 216 A4 210 x 297 mm.
QSizeF page_size(PaperSize paper);

/// The grid. Margins of 0.6 in at the sides clear what common printers cannot reach (1/4 in) and
/// leave room for a clip or two punched holes.
PageGrid page_grid(PaperSize paper);

}  // namespace oaklight
