#include "core/paper/packet_pdf.hpp"

#include <QBuffer>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>

#include "core/paper/gui_app.hpp"
#include "core/paper/packet_pages.hpp"
#include "core/paper/pdf_language.hpp"
#include "core/paper/reader_words.hpp"

namespace oaklight {
namespace {

constexpr int kDotsPerInch = 1200;

Error refused() {
  return {ErrorCode::cannot_write, "The PDF could not be written.", "packet.pdf",
          "Check that the disk has room and that the folder may be written to."};
}

QString title_of(const Packet& packet) {
  return printable(packet.tract.name) + QStringLiteral(": marked trees, list for ") +
         QString::fromUtf8(words_for(packet.reader).whom);
}

QPageSize qt_page_size(PaperSize paper) {
  return QPageSize(paper == PaperSize::letter ? QPageSize::Letter : QPageSize::A4);
}

bool paint_pages(const std::vector<Drawing>& pages, const Packet& packet, PaperSize paper,
                 QIODevice& device) {
  QPdfWriter writer(&device);
  writer.setPageSize(qt_page_size(paper));
  writer.setPageMargins(QMarginsF(0.0, 0.0, 0.0, 0.0));
  writer.setResolution(kDotsPerInch);
  writer.setTitle(title_of(packet));
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

Status write_packet_pdf(const Packet& packet, PaperSize paper, QIODevice& device) {
  if (!device.isWritable()) return refused();
  const auto bytes = packet_pdf(packet, paper);
  if (!bytes) return bytes.error();
  const auto size = static_cast<qint64>(bytes->size());
  // The PDF engine does not look at what its device answers, so it writes to memory and we look.
  if (device.write(bytes->data(), size) != size) return refused();
  return Done{};
}

Result<std::string> packet_pdf(const Packet& packet, PaperSize paper) {
  const auto app = PaperApplication::start();
  if (!app) return app.error();
  QBuffer buffer;
  buffer.open(QIODevice::WriteOnly);
  if (!paint_pages(packet_pages(packet, paper), packet, paper, buffer)) return refused();
  auto pdf = with_language(buffer.data().toStdString(), "en-US");
  if (!pdf) return refused();
  return *std::move(pdf);
}

}  // namespace oaklight
