#include "core/handoff/list_gpx.hpp"

#include <algorithm>

#include "core/handoff/list_table.hpp"

namespace oaklight {
namespace {

std::string escaped(std::string_view text) {
  std::string safe;
  for (const char c : text) {
    switch (c) {
      case '&':
        safe += "&amp;";
        break;
      case '<':
        safe += "&lt;";
        break;
      case '>':
        safe += "&gt;";
        break;
      case '"':
        safe += "&quot;";
        break;
      case '\r':  // as it is, XML would read it back as a line feed
        safe += "&#13;";
        break;
      default:
        safe += c;
    }
  }
  return safe;
}

std::string element(std::string_view name, std::string_view text) {
  const std::string tag(name);
  return "<" + tag + ">" + escaped(text) + "</" + tag + ">";
}

/// "cut: red maple 12.4 in, fell, sawlog".
std::string short_words(const ListTable& table, const std::vector<ListCell>& cells) {
  const auto text = [&](std::string_view column) { return text_of(cells[table.column(column)]); };
  std::string words = text("list") + ": " + text("species") + " " + text("dbh_in") + " in";
  for (const char* column : {"method", "product"}) {
    const std::string more = text(column);
    if (!more.empty() && more != "none") words += ", " + more;
  }
  return words;
}

std::string long_words(const ListTable& table, const std::vector<ListCell>& cells) {
  std::string words = text_of(cells[table.column("cautions")]);
  const std::string reason = text_of(cells[table.column("reason")]);
  if (!words.empty() && !reason.empty()) words += " | ";
  return words + reason;
}

std::string waypoint(const ListTable& table, const std::vector<ListCell>& cells) {
  const auto text = [&](std::string_view column) { return text_of(cells[table.column(column)]); };
  std::string xml = "  <wpt lat=\"" + text("latitude_deg") + "\" lon=\"" + text("longitude_deg") +
                    "\">\n    " + element("name", text("tag")) + "\n    " +
                    element("cmt", short_words(table, cells)) + "\n    " +
                    element("desc", long_words(table, cells)) + "\n    " +
                    element("type", text("list")) + "\n    <extensions>\n";
  for (std::size_t c = 0; c < cells.size(); ++c) {
    if (std::holds_alternative<std::monostate>(cells[c])) continue;
    xml += "      " + element("o:" + std::string(table.columns[c].name), text_of(cells[c])) + "\n";
  }
  return xml + "    </extensions>\n  </wpt>\n";
}

}  // namespace

std::size_t placed_trees(const Packet& packet) {
  std::size_t placed = 0;
  for (const PacketList& list : lists_of(packet)) {
    placed += static_cast<std::size_t>(std::count_if(
        list.trees->begin(), list.trees->end(), [](const PacketTree& t) { return t.position; }));
  }
  return placed;
}

std::string list_gpx(const Packet& packet) {
  const ListTable table = list_table(packet);
  const std::size_t placed = placed_trees(packet);
  std::string xml =
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
      "<gpx version=\"1.1\" creator=\"Oaklight\" xmlns=\"http://www.topografix.com/GPX/1/1\" "
      "xmlns:o=\"urn:oaklight:packet\">\n  <metadata>\n    " +
      element("name", clean_text(packet.tract.name)) + "\n    " +
      element("desc", "Marked trees for " + std::string(word_of(packet.reader)) + ", made " +
                          clean_text(packet.made_on) + ". " + std::to_string(placed) +
                          " trees with a position; " + std::to_string(table.rows.size() - placed) +
                          " without one are only in the list. Read the cautions of the packet "
                          "first. List SHA-256 " +
                          clean_text(packet.list_sha256) +
                          (packet.tract.demo ? ". DEMO: invented data" : "")) +
      "\n  </metadata>\n";
  for (std::size_t row = 0; row < table.rows.size(); ++row) {
    if (table.places[row]) xml += waypoint(table, table.rows[row]);
  }
  return xml + "</gpx>\n";
}

}  // namespace oaklight
