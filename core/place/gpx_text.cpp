#include "core/place/gpx_text.hpp"

#include "core/base/number_text.hpp"

namespace oaklight {
namespace {

std::string escaped(const std::string& text) {
  std::string out;
  for (const char c : text) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      default:
        if (static_cast<unsigned char>(c) >= 0x20) out += c;
    }
  }
  return out;
}

std::string point(const char* tag, const Waypoint& place) {
  std::string out = std::string("<") + tag + " lat=\"" + number_text(place.at.latitude.value, 7) +
                    "\" lon=\"" + number_text(place.at.longitude.value, 7) + "\"><name>" +
                    escaped(place.name) + "</name>";
  if (!place.note.empty()) out += "<desc>" + escaped(place.note) + "</desc>";
  return out + "</" + tag + ">\n";
}

}  // namespace

std::string gpx_text(const std::string& title, std::span<const Waypoint> places) {
  std::string out =
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
      "<gpx version=\"1.1\" creator=\"Oaklight\" xmlns=\"http://www.topografix.com/GPX/1/1\">\n";
  for (const Waypoint& place : places) out += point("wpt", place);
  out += "<rte><name>" + escaped(title) + "</name>\n";
  for (const Waypoint& place : places) out += point("rtept", place);
  return out + "</rte>\n</gpx>\n";
}

}  // namespace oaklight
