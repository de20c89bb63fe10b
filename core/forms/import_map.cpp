#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "core/base/json_limits.hpp"
#include "core/forms/import_job.hpp"
#include "core/forms/near_word.hpp"
#include "core/forms/ring.hpp"

namespace oaklight {
namespace {

using Json = nlohmann::json;

/// Thrown and caught in this file only.
struct MapFault {
  Error error;
};

/// A GeoJSON value that knows where it stands.
struct Place {
  const Json& json;
  std::string where;

  [[noreturn]] void fail(ErrorCode code, std::string what, std::string fix) const {
    throw MapFault{{code, std::move(what), where, std::move(fix)}};
  }
  [[nodiscard]] Place at(const char* member) const {
    if (!json.is_object() || !json.contains(member)) {
      fail(ErrorCode::bad_json, "Member \"" + std::string(member) + "\" is missing.",
           "GeoJSON (RFC 7946) needs it here.");
    }
    return {json.at(member), where + "/" + member};
  }
  [[nodiscard]] Place at(std::size_t i) const {
    return {json.at(i), where + "/" + std::to_string(i)};
  }
  [[nodiscard]] std::string text() const {
    if (!json.is_string()) fail(ErrorCode::bad_json, "This must be text.", "Write it in quotes.");
    return json.get<std::string>();
  }
};

/// One position: longitude first. A height after it is passed over.
Position read_position(const Place& place) {
  const Json& json = place.json;
  if (!json.is_array() || json.size() < 2 || !json[0].is_number() || !json[1].is_number()) {
    place.fail(ErrorCode::bad_geometry, "This is not a position.",
               "A position is [longitude, latitude].");
  }
  const double longitude = json[0].get<double>();
  const double latitude = json[1].get<double>();
  const bool good = std::fabs(longitude) <= 180.0 && std::fabs(latitude) <= 90.0;
  if (!good) {
    const bool swapped = std::fabs(longitude) <= 90.0 && std::fabs(latitude) <= 180.0;
    place.fail(ErrorCode::bad_geometry, "The position lies outside the earth's degrees.",
               swapped ? "Longitude comes first in GeoJSON; are the two swapped?"
                       : "Save the map in WGS 84 degrees (EPSG:4326).");
  }
  return {Degrees{latitude}, Degrees{longitude}};
}

std::vector<Position> read_line(const Place& place) {
  if (!place.json.is_array()) {
    place.fail(ErrorCode::bad_geometry, "This is not a list of positions.", "See RFC 7946.");
  }
  std::vector<Position> line;
  for (std::size_t i = 0; i < place.json.size(); ++i) line.push_back(read_position(place.at(i)));
  return line;
}

/// A ring that bounds ground, wound as asked for: RFC 7946 wants it so, files often have it not.
Ring read_ring(const Place& place, bool counter_clockwise) {
  Ring ring = read_line(place);
  if (const auto fault = ring_fault(ring)) {
    place.fail(ErrorCode::bad_geometry, *fault, "Draw the outline again.");
  }
  if ((doubled_area(ring) > 0) != counter_clockwise) std::reverse(ring.begin(), ring.end());
  return ring;
}

Polygon read_polygon(const Place& coordinates) {
  if (!coordinates.json.is_array() || coordinates.json.empty()) {
    coordinates.fail(ErrorCode::bad_geometry, "The polygon has no outline.", "Draw it again.");
  }
  Polygon polygon{read_ring(coordinates.at(std::size_t{0}), true), {}};
  for (std::size_t i = 1; i < coordinates.json.size(); ++i) {
    polygon.holes.push_back(read_ring(coordinates.at(i), false));
  }
  return polygon;
}

/// Reads features into the job.
class MapReader {
 public:
  MapReader(ImportJob& job, const std::string& name) : job_(job), name_(name) {}

  void read(const Json& root) {
    const Place top{root, name_ + ":"};
    if (top.at("type").text() != "FeatureCollection") {
      top.at("type").fail(ErrorCode::bad_json, "The map is not a FeatureCollection.",
                          "Export it as GeoJSON (RFC 7946).");
    }
    if (root.contains("crs")) {
      top.at("crs").fail(ErrorCode::bad_geometry, "The map names a coordinate system of its own.",
                         "Export it as RFC 7946: WGS 84 degrees, no \"crs\".");
    }
    const Place features = top.at("features");
    if (!features.json.is_array()) {
      features.fail(ErrorCode::bad_json, "This must be a list.", "See RFC 7946.");
    }
    if (features.json.size() > kMostFeatures) {
      features.fail(ErrorCode::bad_json, "The map draws more than 5,000 things.",
                    "Keep the stands and the lines that matter.");
    }
    for (std::size_t i = 0; i < features.json.size(); ++i) {
      at_ = static_cast<int>(i);
      try {
        read_feature(features.at(i));
      } catch (const MapFault& fault) {
        add(fault.error);
      }
    }
  }

  void add(Error error) { job_.faults.add(CruiseFile::map, at_, std::move(error)); }

 private:
  /// No tract has so many; each line is held against all the others.
  static constexpr std::size_t kMostFeatures = 5'000;

  void read_feature(const Place& feature) {
    const Place properties = feature.at("properties");
    const Place kind = properties.at("kind");
    const std::string word = kind.text();
    if (word == "stand") return read_stand(feature, properties);
    if (const auto line = from_word<LineKind>(word)) return read_lines(feature, properties, *line);
    std::vector<std::string_view> words = {"stand"};
    std::string all = "stand";
    for (const auto& entry : kWords<LineKind>) {
      words.push_back(entry.word);
      all += ", " + std::string(entry.word);
    }
    kind.fail(ErrorCode::not_a_choice, "Kind \"" + word + "\" is unknown.",
              did_you_mean(near_words(word, words), "Write one of: " + all + "."));
  }

  void read_stand(const Place& feature, const Place& properties) {
    const Place name = properties.at("stand");
    const auto stand = job_.stands.find(name.text());
    if (stand == job_.stands.end()) {
      if (!job_.tables.stands.complete()) return;
      std::vector<std::string_view> names;
      for (const auto& [other, id] : job_.stands) names.push_back(other);
      name.fail(ErrorCode::unknown_reference,
                "Stand \"" + name.text() + "\" is neither in stands.csv nor in the tract.",
                did_you_mean(near_words(name.text(), names), "Add it to stands.csv."));
    }
    const Place geometry = feature.at("geometry");
    const Place coordinates = geometry.at("coordinates");
    const std::string type = geometry.at("type").text();
    const bool one_of_many =
        type == "MultiPolygon" && coordinates.json.is_array() && coordinates.json.size() == 1;
    if (type != "Polygon" && !one_of_many) {
      geometry.fail(ErrorCode::bad_geometry, "A stand is one Polygon, not a " + type + ".",
                    type == "MultiPolygon" ? "Make a stand of each part." : "Draw its outline.");
    }
    Polygon outline = read_polygon(one_of_many ? coordinates.at(std::size_t{0}) : coordinates);
    job_.points.push_back({outline.outer.front(), CruiseFile::map, at_, geometry.where});
    set_boundary(name, stand->second, std::move(outline));
  }

  /// Gives a stand its outline: one of this import, or one that the tract file has.
  void set_boundary(const Place& name, StandId id, Polygon outline) {
    const auto is_it = [&](const Stand& stand) { return stand.id == id; };
    auto& made = job_.data.stands;
    auto stand = std::find_if(made.begin(), made.end(), is_it);
    if (stand == made.end()) {
      const auto& known = job_.existing.stands;
      const auto found = std::find_if(known.begin(), known.end(), is_it);
      if (found == known.end()) return;
      if (found->boundary == outline) return;
      stand = made.insert(made.end(), *found);
    }
    if (stand->boundary) {
      name.fail(ErrorCode::duplicate, "Stand \"" + stand->name + "\" has an outline already.",
                "Keep one outline.");
    }
    stand->boundary = std::move(outline);
  }

  /// Map programs write null for a property that a feature does not have.
  static bool is_told(const Place& properties, const char* member) {
    return properties.json.contains(member) && !properties.json.at(member).is_null();
  }

  void read_lines(const Place& feature, const Place& properties, LineKind kind) {
    const Place geometry = feature.at("geometry");
    const Place coordinates = geometry.at("coordinates");
    const std::string type = geometry.at("type").text();
    MapLine line;
    line.kind = kind;
    if (is_told(properties, "name")) line.name = properties.at("name").text();
    if (is_told(properties, "confirmed")) {
      const Place confirmed = properties.at("confirmed");
      if (!confirmed.json.is_boolean()) {
        confirmed.fail(ErrorCode::bad_json, "This must be true or false.",
                       "Write it without quotes; false when nobody is sure.");
      }
      line.confirmed = confirmed.json.get<bool>();
    }
    if (type == "LineString") return add_line(coordinates, std::move(line));
    if (type != "MultiLineString" || !coordinates.json.is_array()) {
      geometry.fail(ErrorCode::bad_geometry, "This is a line, not a " + type + ".",
                    "Draw it as a LineString.");
    }
    for (std::size_t i = 0; i < coordinates.json.size(); ++i) add_line(coordinates.at(i), line);
  }

  void add_line(const Place& coordinates, MapLine line) {
    line.points = read_line(coordinates);
    if (line.points.size() < 2) {
      coordinates.fail(ErrorCode::bad_geometry, "A line needs two positions.", "Draw it again.");
    }
    const auto is_same = [&](const MapLine& other) {
      return other.kind == line.kind && other.points == line.points;
    };
    const auto& known = job_.existing.lines;
    const auto& made = job_.data.lines;
    if (made.size() >= kMostFeatures) {
      coordinates.fail(ErrorCode::bad_geometry, "The map draws more than 5,000 lines.",
                       "Keep the lines that matter.");
    }
    if (std::any_of(known.begin(), known.end(), is_same) ||
        std::any_of(made.begin(), made.end(), is_same)) {
      coordinates.fail(ErrorCode::duplicate, "This line is on the map already.", "Take it out.");
    }
    job_.points.push_back({line.points.front(), CruiseFile::map, at_, coordinates.where});
    line.id = job_.ids.next_id<MapLineTag>();
    job_.data.lines.push_back(std::move(line));
  }

  ImportJob& job_;
  const std::string& name_;
  int at_ = 0;  ///< the feature, in place of a line
};

}  // namespace

void import_map(ImportJob& job, const NamedText& file) {
  MapReader reader(job, file.name);
  if (auto fault = json_beyond_limits(file.text, file.name)) return reader.add(*std::move(fault));
  try {
    std::string_view text = file.text;
    if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
    reader.read(Json::parse(text));
  } catch (const MapFault& fault) {
    reader.add(fault.error);
  } catch (const Json::parse_error& problem) {
    const auto end =
        file.text.begin() + static_cast<std::ptrdiff_t>(std::min(file.text.size(), problem.byte));
    const auto line = 1 + std::count(file.text.begin(), end, '\n');
    reader.add({ErrorCode::bad_json, "The JSON is broken on this line.",
                file.name + ":" + std::to_string(line), "Export the map again as GeoJSON."});
  } catch (const Json::exception&) {
    reader.add(
        {ErrorCode::bad_json, "The map cannot be read.", file.name, "Export it again as GeoJSON."});
  }
}

}  // namespace oaklight
