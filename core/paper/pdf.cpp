#include "core/paper/pdf.hpp"

#include <QBuffer>
#include <QHashSeed>
#include <QPageLayout>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>
#include <utility>

#include "core/paper/pdf_language.hpp"

namespace oaklight {
namespace {

constexpr int kDotsPerInch = 1200;

QPageLayout layout_of(const PdfPage& page, PaperSize paper) {
  const QPageSize size(paper == PaperSize::letter ? QPageSize::Letter : QPageSize::A4);
  return {size, page.across ? QPageLayout::Landscape : QPageLayout::Portrait, QMarginsF()};
}

bool paint_pages(const std::vector<PdfPage>& pages, const QString& title, PaperSize paper,
                 QIODevice& device) {
  // Qt writes the fonts of a PDF in the order of a hash: the same pages must give the same bytes.
  QHashSeed::setDeterministicGlobalSeed();
  QPdfWriter writer(&device);
  writer.setResolution(kDotsPerInch);
  writer.setTitle(title);
  writer.setCreator(QStringLiteral("Oaklight"));
  if (!pages.empty()) writer.setPageLayout(layout_of(pages.front(), paper));
  QPainter painter;
  if (!painter.begin(&writer)) return false;
  for (std::size_t i = 0; i < pages.size(); ++i) {
    if (i > 0) {
      writer.setPageLayout(layout_of(pages[i], paper));
      if (!writer.newPage()) return false;
    }
    painter.resetTransform();
    painter.scale(kDotsPerInch / kPointsPerInch, kDotsPerInch / kPointsPerInch);
    paint(pages[i].drawing, painter);
  }
  return painter.end();
}

Error refused() {
  return {ErrorCode::cannot_write, "The PDF could not be painted.", "pdf",
          "Check that there is memory left."};
}

}  // namespace

Result<std::string> pages_as_pdf(const std::vector<PdfPage>& pages, const QString& title,
                                 PaperSize paper) {
  QBuffer buffer;
  buffer.open(QIODevice::WriteOnly);
  if (!paint_pages(pages, title, paper, buffer)) return refused();
  auto pdf = with_language(buffer.data().toStdString(), "en-US");
  if (!pdf) return refused();
  return *std::move(pdf);
}

Result<std::string> pages_as_pdf(std::vector<Drawing> pages, const QString& title,
                                 PaperSize paper) {
  std::vector<PdfPage> upright;
  upright.reserve(pages.size());
  for (Drawing& page : pages) upright.push_back({std::move(page), false});
  return pages_as_pdf(upright, title, paper);
}

}  // namespace oaklight
