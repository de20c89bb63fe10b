#include "core/paper/packet_pdf.hpp"

#include <QIODevice>
#include <string_view>

#include "core/paper/gui_app.hpp"
#include "core/paper/packet_pages.hpp"
#include "core/paper/pdf.hpp"
#include "core/paper/reader_words.hpp"

namespace oaklight {
namespace {

Error refused() {
  return {ErrorCode::cannot_write, "The PDF could not be written.", "packet.pdf",
          "Check that the disk has room and that the folder may be written to."};
}

QString title_of(const Packet& packet) {
  return printable(packet.tract.name) + QStringLiteral(": marked trees, list for ") +
         QString::fromUtf8(words_for(packet.reader).whom);
}

/// Puts the packet's own day in place of the time at which the file was written, digit for digit,
/// so that the same packet gives the same bytes. A day that is not one leaves the stamp.
void set_day(std::string& pdf, const std::string& made_on) {
  constexpr std::string_view kStamp = "/CreationDate (D:";
  std::string day = made_on;
  std::erase(day, '-');
  const bool digits = day.size() == 8 && day.find_first_not_of("0123456789") == std::string::npos;
  const auto at = pdf.find(kStamp);
  if (!digits || at == std::string::npos) return;
  day += "000000";
  pdf.replace(at + kStamp.size(), day.size(), day);
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
  auto pdf = pages_as_pdf(packet_pages(packet, paper), title_of(packet), paper);
  if (!pdf) return pdf.error();
  set_day(*pdf, packet.made_on);
  return pdf;
}

}  // namespace oaklight
