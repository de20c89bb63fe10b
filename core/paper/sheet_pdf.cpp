#include <QBuffer>
#include <QPageLayout>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>

#include "core/paper/gui_app.hpp"
#include "core/paper/tally_sheet.hpp"

namespace oaklight {
namespace {

constexpr int kDotsPerInch = 1200;

Error refused() {
  return {ErrorCode::cannot_write, "The sheets could not be painted.", "sheet.pdf",
          "Try again; if it stays so, report it."};
}

QPageLayout layout_of(const SheetPage& page, PaperSize paper) {
  const QPageSize size(paper == PaperSize::letter ? QPageSize::Letter : QPageSize::A4);
  const bool wide = page.size.width() > page.size.height();
  return {size, wide ? QPageLayout::Landscape : QPageLayout::Portrait, QMarginsF()};
}

bool paint_sheets(const std::vector<SheetPage>& pages, const SheetSet& set, PaperSize paper,
                  QIODevice& device) {
  QPdfWriter writer(&device);
  writer.setResolution(kDotsPerInch);
  writer.setTitle((set.tract.empty() ? QString() : printable(set.tract) + QStringLiteral(": ")) +
                  QStringLiteral("tally sheets and crop tree card"));
  writer.setCreator(QStringLiteral("Oaklight"));
  writer.setPageLayout(layout_of(pages.front(), paper));
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

}  // namespace

Result<std::string> sheet_pdf(const SheetSet& set, PaperSize paper) {
  const auto app = PaperApplication::start();
  if (!app) return app.error();
  QBuffer buffer;
  buffer.open(QIODevice::WriteOnly);
  if (!paint_sheets(tally_sheets(set, paper), set, paper, buffer)) return refused();
  return buffer.data().toStdString();
}

}  // namespace oaklight
