#include "core/paper/pdf.hpp"

#include <QBuffer>
#include <QHashSeed>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>

namespace oaklight {
namespace {

constexpr int kDotsPerInch = 1200;

bool paint_pages(const std::vector<Drawing>& pages, const QString& title, PaperSize paper,
                 QIODevice& device) {
  // Qt writes the fonts of a PDF in the order of a hash: the same pages must give the same bytes.
  QHashSeed::setDeterministicGlobalSeed();
  QPdfWriter writer(&device);
  writer.setPageSize(QPageSize(paper == PaperSize::letter ? QPageSize::Letter : QPageSize::A4));
  writer.setPageMargins(QMarginsF(0.0, 0.0, 0.0, 0.0));
  writer.setResolution(kDotsPerInch);
  writer.setTitle(title);
  writer.setCreator(QStringLiteral("Oaklight"));
  QPainter painter;
  if (!painter.begin(&writer)) return false;
  painter.scale(kDotsPerInch / kPointsPerInch, kDotsPerInch / kPointsPerInch);
  for (std::size_t i = 0; i < pages.size(); ++i) {
    if (i > 0 && !writer.newPage()) return false;
    paint(pages[i], painter);
  }
  return painter.end();
}

}  // namespace

Result<std::string> pages_as_pdf(const std::vector<Drawing>& pages, const QString& title,
                                 PaperSize paper) {
  QBuffer buffer;
  buffer.open(QIODevice::WriteOnly);
  if (!paint_pages(pages, title, paper, buffer)) {
    return Error{ErrorCode::cannot_write, "The PDF could not be painted.", "pdf",
                 "Check that there is memory left."};
  }
  return buffer.data().toStdString();
}

}  // namespace oaklight
