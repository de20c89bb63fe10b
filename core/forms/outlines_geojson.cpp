#include <algorithm>
#include <nlohmann/json.hpp>

#include "core/base/json_limits.hpp"
#include "core/forms/outlines.hpp"

namespace oaklight {
namespace {

using Json = nlohmann::json;

class JsonOutlines {
 public:
  JsonOutlines(const NamedText& file, DrawnOutlines& out) : file_(file), out_(out) {}

  void read(const Json& root) {
    if (!root.is_object()) return fail("", "This is not a GeoJSON object.", "Export it again.");
    if (root.contains("crs")) {
      return fail("/crs", "The map names a coordinate system of its own.",
                  "Export it as RFC 7946: WGS 84 degrees, no \"crs\".");
    }
    if (type_of(root) != "FeatureCollection") return read_feature(root, "");
    static const Json kNone;
    const Json& features = root.contains("features") ? root["features"] : kNone;
    if (!features.is_array()) return fail("/features", "This must be a list.", "See RFC 7946.");
    for (std::size_t i = 0; i < features.size(); ++i) {
      read_feature(features[i], "/features/" + std::to_string(i));
    }
  }

  void fail(const std::string& place, std::string what, std::string fix,
            ErrorCode code = ErrorCode::bad_geometry) {
    if (out_.faults.size() >= kMaxFaults) return;
    out_.faults.push_back({code, std::move(what), file_.name + ":" + place, std::move(fix)});
  }

 private:
  static std::string type_of(const Json& json) {
    return json.is_object() && json.contains("type") && json["type"].is_string()
               ? json["type"].get<std::string>()
               : "";
  }

  static std::string name_of(const Json& feature) {
    const auto properties = feature.find("properties");
    if (properties == feature.end() || !properties->is_object()) return "";
    for (const char* member : {"stand", "name", "Name", "NAME"}) {
      const auto found = properties->find(member);
      if (found != properties->end() && found->is_string()) return found->get<std::string>();
    }
    return "";
  }

  void read_feature(const Json& feature, const std::string& place) {
    const bool is_feature = type_of(feature) == "Feature";
    static const Json kNone;
    const Json& geometry =
        !is_feature ? feature : (feature.contains("geometry") ? feature["geometry"] : kNone);
    const std::string at = is_feature ? place + "/geometry" : place;
    DrawnOutline outline{is_feature ? name_of(feature) : "", {}, false, file_.name + ":" + place};
    const std::string type = type_of(geometry);
    if (type.empty()) return fail(at, "There is no geometry here.", "Draw the outline again.");
    const Json& coordinates = geometry.contains("coordinates") ? geometry["coordinates"] : kNone;
    if (type == "Polygon") {
      add_part(coordinates, at + "/coordinates", outline);
    } else if (type == "MultiPolygon" && coordinates.is_array()) {
      for (std::size_t i = 0; i < coordinates.size(); ++i) {
        add_part(coordinates[i], at + "/coordinates/" + std::to_string(i), outline);
      }
    }
    if (outline.parts.empty()) {
      ++out_.passed_over;
    } else if (out_.outlines.size() < kMaxOutlines) {
      out_.outlines.push_back(std::move(outline));
    }
  }

  void add_part(const Json& rings, const std::string& place, DrawnOutline& outline) {
    if (!rings.is_array() || rings.empty()) {
      return fail(place, "The polygon has no outline.", "Draw it again.");
    }
    Polygon polygon;
    for (std::size_t i = 0; i < rings.size(); ++i) {
      Ring ring = read_ring(rings[i], place + "/" + std::to_string(i));
      if (i == 0) {
        polygon.outer = std::move(ring);
      } else {
        polygon.holes.push_back(std::move(ring));
      }
    }
    outline.parts.push_back(std::move(polygon));
  }

  Ring read_ring(const Json& list, const std::string& place) {
    Ring ring;
    if (!list.is_array()) {
      fail(place, "This is not a list of positions.", "See RFC 7946.");
      return ring;
    }
    for (std::size_t i = 0; i < list.size(); ++i) {
      const Json& position = list[i];
      if (!position.is_array() || position.size() < 2 || !position[0].is_number() ||
          !position[1].is_number()) {
        fail(place + "/" + std::to_string(i), "This is not a position.",
             "A position is [longitude, latitude].");
        return ring;
      }
      ring.push_back({Degrees{position[1].get<double>()}, Degrees{position[0].get<double>()}});
    }
    return ring;
  }

  const NamedText& file_;
  DrawnOutlines& out_;
};

}  // namespace

void read_outlines_geojson(const NamedText& file, DrawnOutlines& out) {
  JsonOutlines reader(file, out);
  if (auto fault = json_beyond_limits(file.text, file.name)) {
    out.faults.push_back(*std::move(fault));
    return;
  }
  try {
    std::string_view text = file.text;
    if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
    reader.read(Json::parse(text));
  } catch (const Json::parse_error& problem) {
    const auto end =
        file.text.begin() + static_cast<std::ptrdiff_t>(std::min(file.text.size(), problem.byte));
    const auto line = 1 + std::count(file.text.begin(), end, '\n');
    reader.fail(std::to_string(line), "The JSON is broken on this line.",
                "Export the map again as GeoJSON.", ErrorCode::bad_json);
  } catch (const Json::exception&) {
    reader.fail("", "The map cannot be read.", "Export it again as GeoJSON.", ErrorCode::bad_json);
  }
}

}  // namespace oaklight
