#pragma once

#include <QString>
#include <string>
#include <vector>

#include "core/base/result.hpp"
#include "core/paper/drawing.hpp"
#include "core/paper/page.hpp"

namespace oaklight {

/// One page to print, upright or across the paper.
struct PdfPage {
  Drawing drawing;
  bool across = false;
};

/// Pages as the bytes of a PDF in English: typefaces embedded, text in reading order, title and
/// language told. But for the time stamp the same pages give the same bytes.
///
/// errors   cannot_write when nothing can be painted
/// assumes  a PaperApplication lives
Result<std::string> pages_as_pdf(const std::vector<PdfPage>& pages, const QString& title,
                                 PaperSize paper);
/// The same for upright pages.
Result<std::string> pages_as_pdf(std::vector<Drawing> pages, const QString& title, PaperSize paper);

}  // namespace oaklight
