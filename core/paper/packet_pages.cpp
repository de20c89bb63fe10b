#include "core/paper/packet_pages.hpp"

namespace oaklight {

std::vector<Drawing> packet_pages(const Packet& packet, PaperSize paper) {
  PageFlow flow(paper, {printable(packet.tract.name), printable(packet.made_on),
                        printable(packet.list_sha256), packet.tract.demo});
  write_front(flow, packet);
  const MapLetters letters = write_maps(flow, packet);
  write_cut_list(flow, packet, letters);
  write_trained_list(flow, packet, letters);
  write_work_notes(flow, packet);
  write_keep_list(flow, packet, letters);
  write_owner_pages(flow, packet);
  write_practice_record(flow, packet);
  write_end(flow, packet);
  return flow.finish();
}

void place_picture(Drawing& page, const Drawing& picture, QPointF corner) {
  for (DrawingItem item : picture.items()) {
    if (auto* text = std::get_if<TextItem>(&item)) {
      text->baseline += corner;
    } else {
      auto& path = std::get<PathItem>(item);
      path.path.translate(corner);
      if (path.clip) path.clip->translate(corner);
    }
    page.add(std::move(item));
  }
}

QString species_words(const std::string& name) {
  QString words = printable(name);
  if (!words.isEmpty()) words[0] = words[0].toUpper();
  return words;
}

QString count_words(std::size_t count, const char* one, const char* many) {
  return QString::number(count) + QChar(u' ') + QString::fromUtf8(count == 1 ? one : many);
}

}  // namespace oaklight
