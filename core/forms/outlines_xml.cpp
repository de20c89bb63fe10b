#include <algorithm>
#include <cstddef>
#include <pugixml.hpp>
#include <string_view>

#include "core/base/number_text.hpp"
#include "core/forms/outlines.hpp"

namespace oaklight {
namespace {

using Node = pugi::xml_node;

/// The name without its namespace: "kml:Polygon" is "Polygon".
std::string_view name_of(const Node& node) {
  const std::string_view name = node.name();
  const auto colon = name.find(':');
  return colon == std::string_view::npos ? name : name.substr(colon + 1);
}

std::string line_at(const NamedText& file, std::ptrdiff_t offset) {
  const auto end = std::clamp<std::ptrdiff_t>(offset, 0, std::ssize(file.text));
  const auto line = 1 + std::count(file.text.begin(), file.text.begin() + end, '\n');
  return file.name + ":" + std::to_string(line);
}

std::vector<Node> children(const Node& node, std::string_view name) {
  std::vector<Node> found;
  for (const Node& child : node.children()) {
    if (name_of(child) == name) found.push_back(child);
  }
  return found;
}

std::string text_of(const Node& node, std::string_view name) {
  const auto found = children(node, name);
  return found.empty() ? "" : std::string(trimmed(found.front().text().get()));
}

/// All nodes of a name below this one and not inside each other, without recursion: files may be
/// nested as deep as they like, and each node is looked at once.
std::vector<Node> all_below(const Node& root, std::string_view name) {
  std::vector<Node> found;
  Node at = root.first_child();
  while (at) {
    const bool is_one = name_of(at) == name;
    if (is_one) found.push_back(at);
    Node next = is_one ? Node() : at.first_child();
    while (!next && at && at != root) {
      next = at.next_sibling();
      if (!next) at = at.parent();
    }
    at = next;
  }
  return found;
}

class XmlOutlines {
 public:
  XmlOutlines(const NamedText& file, DrawnOutlines& out) : file_(file), out_(out) {}

  void read_kml(const Node& root) {
    const std::vector<Node> placemarks = all_below(root, "Placemark");
    if (placemarks.size() > kMaxPlacemarks) return fail_crowd();
    for (const Node& placemark : placemarks) {
      DrawnOutline outline;
      std::vector<Node> polygons = all_below(placemark, "Polygon");
      for (const Node& polygon : polygons) outline.parts.push_back(read_polygon(polygon));
      for (const Node& line : all_below(placemark, "LineString")) {
        Ring ring = read_coordinates(line);
        if (ring.size() > 3 && ring.front() == ring.back()) {
          outline.parts.push_back({std::move(ring), {}});
        }
      }
      keep(placemark, std::move(outline));
    }
  }

  void read_gpx(const Node& root) {
    for (const Node& track : children(root, "trk")) {
      std::vector<Node> points;
      for (const Node& segment : children(track, "trkseg")) {
        for (const Node& point : children(segment, "trkpt")) points.push_back(point);
      }
      keep_walk(track, points);
    }
    for (const Node& route : children(root, "rte")) keep_walk(route, children(route, "rtept"));
    out_.passed_over += children(root, "wpt").size();
  }

  void fail(ErrorCode code, std::string what, std::string place, std::string fix) {
    if (out_.faults.size() < kMaxFaults) {
      out_.faults.push_back({code, std::move(what), std::move(place), std::move(fix)});
    }
  }
  [[nodiscard]] std::string where(const Node& node) const {
    return line_at(file_, node.offset_debug());
  }

 private:
  /// No tract has so many; each costs a look through what is inside it.
  static constexpr std::size_t kMaxPlacemarks = 5'000;

  void fail_crowd() {
    fail(ErrorCode::bad_geometry, "The file holds more things than a tract has.", file_.name,
         "Export the stands only.");
  }

  void keep(const Node& node, DrawnOutline outline) {
    if (outline.parts.empty()) {
      ++out_.passed_over;
      return;
    }
    if (out_.outlines.size() >= kMaxOutlines) return;  // told by read_outlines
    outline.name = text_of(node, "name");
    outline.where = where(node);
    out_.outlines.push_back(std::move(outline));
  }

  void keep_walk(const Node& walk, const std::vector<Node>& points) {
    DrawnOutline outline;
    outline.walked = true;
    Ring ring;
    for (const Node& point : points) {
      const auto latitude = number_from_text(point.attribute("lat").value());
      const auto longitude = number_from_text(point.attribute("lon").value());
      if (!latitude || !longitude) return fail_position(where(point));
      ring.push_back({Degrees{*latitude}, Degrees{*longitude}});
    }
    if (!ring.empty()) outline.parts.push_back({std::move(ring), {}});
    keep(walk, std::move(outline));
  }

  Polygon read_polygon(const Node& node) {
    Polygon polygon;
    for (const Node& boundary : children(node, "outerBoundaryIs")) {
      for (const Node& ring : children(boundary, "LinearRing")) {
        polygon.outer = read_coordinates(ring);
      }
    }
    for (const Node& boundary : children(node, "innerBoundaryIs")) {
      for (const Node& ring : children(boundary, "LinearRing")) {
        polygon.holes.push_back(read_coordinates(ring));
      }
    }
    return polygon;
  }

  void fail_position(const std::string& place) {
    fail(ErrorCode::bad_geometry, "A position here is not two numbers.", place,
         "Write degrees such as -82.54321 and 38.12345, without exponents.");
  }

  /// "longitude,latitude[,height]" parted by blanks.
  Ring read_coordinates(const Node& node) {
    Ring ring;
    for (const Node& list : children(node, "coordinates")) {
      std::string_view rest = list.text().get();
      const auto is_blank = [](char c) { return c == ' ' || (c >= '\t' && c <= '\r'); };
      while (true) {
        const auto start = std::find_if_not(rest.begin(), rest.end(), is_blank);
        const auto end = std::find_if(start, rest.end(), is_blank);
        if (start == end) break;
        const std::string_view position(&*start, static_cast<std::size_t>(end - start));
        rest.remove_prefix(static_cast<std::size_t>(end - rest.begin()));
        const auto comma = position.find(',');
        const auto second = comma == std::string_view::npos ? "" : position.substr(comma + 1);
        const auto longitude = number_from_text(position.substr(0, comma));
        const auto latitude = number_from_text(second.substr(0, second.find(',')));
        if (!longitude || !latitude) {
          fail_position(where(list));
          return {};
        }
        ring.push_back({Degrees{*latitude}, Degrees{*longitude}});
      }
    }
    return ring;
  }

  const NamedText& file_;
  DrawnOutlines& out_;
};

}  // namespace

void read_outlines_xml(const NamedText& file, DrawnOutlines& out) {
  XmlOutlines reader(file, out);
  pugi::xml_document document;
  // pugixml knows the five entities of XML itself and expands no other. A document type is read
  // only to refuse it.
  const auto parsed = document.load_buffer(file.text.data(), file.text.size(),
                                           pugi::parse_default | pugi::parse_doctype);
  for (const Node& node : document.children()) {
    if (node.type() != pugi::node_doctype) continue;
    return reader.fail(ErrorCode::bad_geometry, "The file declares a document type.", file.name,
                       "Take the <!DOCTYPE ...> out: KML and GPX have none.");
  }
  if (!parsed) {
    const bool cut = parsed.status == pugi::status_end_element_mismatch ||
                     parsed.status == pugi::status_no_document_element ||
                     !trimmed(file.text).ends_with('>');
    return reader.fail(
        ErrorCode::bad_geometry,
        std::string(cut ? "The file is cut off or its tags do not match" : "The XML is broken") +
            " (" + parsed.description() + ").",
        line_at(file, parsed.offset), "Export it again, whole.");
  }
  const Node root = document.document_element();
  if (name_of(root) == "kml") return reader.read_kml(root);
  if (name_of(root) == "gpx") return reader.read_gpx(root);
  reader.fail(ErrorCode::bad_geometry, "This is neither KML nor GPX.", file.name,
              "Export the outlines as KML, GPX or GeoJSON.");
}

}  // namespace oaklight
