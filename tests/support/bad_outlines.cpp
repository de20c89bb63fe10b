#include "tests/support/bad_outlines.hpp"

#include <sstream>

namespace oaklight::test {
namespace {

/// Longitude and latitude of each position of "lon,lat lon,lat".
std::vector<std::pair<std::string, std::string>> positions_of(const std::string& ring) {
  std::vector<std::pair<std::string, std::string>> positions;
  std::istringstream words(ring);
  for (std::string word; words >> word;) {
    const auto comma = word.find(',');
    positions.emplace_back(word.substr(0, comma), word.substr(comma + 1));
  }
  return positions;
}

std::string geojson_ring(const std::string& ring) {
  std::string text;
  for (const auto& [lon, lat] : positions_of(ring)) {
    text += (text.empty() ? "[[" : ",[") + lon + "," + lat + "]";
  }
  return text + "]";
}

std::string repeated(const std::string& text, int times) {
  std::string all;
  all.reserve(text.size() * static_cast<std::size_t>(times));
  for (int i = 0; i < times; ++i) all += text;
  return all;
}

std::string kml(const std::string& inside) {
  return "<?xml version=\"1.0\"?>\n<kml xmlns=\"http://www.opengis.net/kml/2.2\"><Document>\n" +
         inside + "\n</Document></kml>\n";
}

std::string gpx(const std::string& inside) {
  return "<?xml version=\"1.0\"?>\n<gpx version=\"1.1\" creator=\"test\">" + inside + "</gpx>\n";
}

const std::string kSquare = "-82.50,38.10 -82.49,38.10 -82.49,38.11 -82.50,38.11 -82.50,38.10";
const std::string kSmall =
    "-82.497,38.103 -82.494,38.103 -82.494,38.106 -82.497,38.106 -82.497,38.103";
const std::string kBowtie = "-82.50,38.10 -82.49,38.11 -82.49,38.10 -82.50,38.11 -82.50,38.10";
const std::string kSwapped = "38.10,-82.50 38.10,-82.49 38.11,-82.49 38.11,-82.50 38.10,-82.50";
const std::string kWest = "44.10,-122.50 44.10,-122.49 44.11,-122.49 44.11,-122.50 44.10,-122.50";
const std::string kUtm =
    "367000,4218000 368000,4218000 368000,4219000 367000,4219000 367000,4218000";

std::string feature(const std::string& geometry) {
  return R"({"type":"Feature","properties":{"name":"Cove"},"geometry":)" + geometry + "}";
}

void add_geojson(std::vector<BadOutline>& bad) {
  const auto add = [&](const char* name, std::string text, const char* says) {
    bad.push_back({std::string("Json") + name, ".geojson", std::move(text), says});
  };
  const std::string good = geojson_of("Cove", {kSquare});
  add("CutOff", good.substr(0, good.size() / 2), "broken on this line");
  add("Empty", "", "empty");
  add("Words", "hello there", "broken");
  add("List", "[1, 2, 3]", "not a GeoJSON object");
  add("OtherSystem", R"({"type":"FeatureCollection","crs":{},"features":[]})", "coordinate system");
  add("NoFeatures", R"({"type":"FeatureCollection","features":[]})", "no outline");
  add("FeaturesAreText", R"({"type":"FeatureCollection","features":"none"})", "must be a list");
  add("SwappedInTheWest", geojson_of("Cove", {kWest}), "swapped");
  add("SwappedInTheEast", geojson_of("Cove", {kSwapped}), "swapped");
  add("Metres", geojson_of("Cove", {kUtm}), "EPSG:4326");
  add("NaN", feature(R"({"type":"Polygon","coordinates":[[[NaN,38],[1,2],[3,4],[NaN,38]]]})"),
      "broken");
  add("Null", feature(R"({"type":"Polygon","coordinates":[[[null,38],[1,2],[3,4],[null,38]]]})"),
      "not a position");
  add("Text", feature(R"({"type":"Polygon","coordinates":[[["-82","38"]]]})"), "not a position");
  add("OneNumber", feature(R"({"type":"Polygon","coordinates":[[[-82],[-81]]]})"),
      "not a position");
  add("Overflow", feature(R"({"type":"Polygon","coordinates":[[[1e999,38],[1,2]]]})"),
      "cannot be read");
  add("NoRings", feature(R"({"type":"Polygon","coordinates":[]})"), "no outline");
  add("NoGeometry", feature("null"), "no geometry");
  add("PointsOnly", feature(R"({"type":"Point","coordinates":[-82.5,38.1]})"), "points or open");
  add("Bowtie", geojson_of("Cove", {kBowtie}), "crosses itself");
  add("Triple", geojson_of("Cove", {"-82.5,38.1 -82.4,38.1 -82.5,38.1"}), "fewer than four");
  add("Open", geojson_of("Cove", {"-82.5,38.1 -82.4,38.1 -82.4,38.2 -82.5,38.2"}),
      "does not end where it begins");
  add("Flat", geojson_of("Cove", {"-82.5,38.1 -82.4,38.1 -82.3,38.1 -82.5,38.1"}), "no ground");
  add("HoleOutside", geojson_of("Cove", {kSmall, "-82.6,38.2 -82.59,38.2 -82.59,38.21 -82.6,38.2"}),
      "reaches out");
  add("HoleAcross",
      geojson_of("Cove", {kSquare, "-82.495,38.105 -82.48,38.105 -82.48,38.107 -82.495,38.105"}),
      "reaches out");
  add("HoleTwisted", geojson_of("Cove", {kSquare, kBowtie}), "In a hole");
  add("HolesMeet", geojson_of("Cove", {kSquare, kSmall, kSmall}), "Two holes meet");
  add("PartsOverlap",
      feature(R"({"type":"MultiPolygon","coordinates":[[)" + geojson_ring(kSquare) + "],[" +
              geojson_ring(kSmall) + "]]}"),
      "parts overlap");
  add("Deep", repeated("[", 100'000), "64 deep");
  add("ManyPositions", geojson_of("Cove", {repeated("1,1 ", 1'000'000)}), "5,000 positions");
}

void add_kml(std::vector<BadOutline>& bad) {
  const auto add = [&](const char* name, std::string text, const char* says) {
    bad.push_back({std::string("Kml") + name, ".kml", std::move(text), says});
  };
  const std::string good = kml_of("Cove", {kSquare});
  std::string bomb = "<?xml version=\"1.0\"?>\n<!DOCTYPE kml [<!ENTITY a \"ha\">";
  for (char c = 'b'; c <= 'k'; ++c) {
    const std::string last(1, static_cast<char>(c - 1));
    bomb += std::string("<!ENTITY ") + c + " \"" + repeated("&" + last + ";", 10) + "\">";
  }
  add("EntityBomb", bomb + "]>\n<kml><name>&k;</name></kml>", "document type");
  add("EntityFromAFile",
      "<!DOCTYPE kml [<!ENTITY x SYSTEM \"file:///etc/hostname\">]><kml>&x;</kml>",
      "document type");
  add("CutOff", good.substr(0, good.size() / 2), "cut off");
  add("TagsAcross", kml("<Placemark><name>x</Placemark></name>"), "do not match");
  add("Garbage", std::string("\x89PNG\r\n\x1a\n\0\0garbage", 18), "cut off");
  add("NaN", kml_of("Cove", {"nan,38.1 -82.4,38.1 -82.4,38.2 nan,38.1"}), "not two numbers");
  add("NoComma", kml_of("Cove", {"-82.5 38.1 -82.4 38.1"}), "not two numbers");
  add("Exponent", kml_of("Cove", {"-8.25e1,38.1 -82.4,38.1"}), "without exponents");
  add("Swapped", kml_of("Cove", {kWest}), "swapped");
  add("Bowtie", kml_of("Cove", {kBowtie}), "crosses itself");
  add("ManyPositions", kml_of("Cove", {repeated("1,1 ", 1'000'000)}), "5,000 positions");
  add("NoPositions", kml_of("Cove", {""}), "fewer than four");
  add("OpenLine",
      kml("<Placemark><LineString><coordinates>-82.5,38.1 -82.4,38.2</coordinates></LineString>"
          "</Placemark>"),
      "points or open lines");
  add("WebPage", "<html><body>Sign in</body></html>", "neither KML nor GPX");
  add("RootOfOddBytes", "<\xFF\xFF\xFFp/>", "neither KML nor GPX");
  add("NameWithControl", kml_of("Line\x1Awalk", {kSquare}), "control character");
  add("NameTurnedAround", kml_of("Cove \xE2\x80\xAE", {kSquare}), "control character");
  add("DeepFolders", kml(repeated("<Folder>", 100'000) + repeated("</Folder>", 100'000)),
      "no outline");
  add("Crowd", kml(repeated("<Placemark></Placemark>", 50'000)), "more things");
  add("TooLarge", kml("<!--" + std::string(9U << 20U, '-') + "-->"), "larger than 8 MiB");
}

void add_gpx(std::vector<BadOutline>& bad) {
  const auto add = [&](const char* name, std::string text, const char* says) {
    bad.push_back({std::string("Gpx") + name, ".gpx", std::move(text), says});
  };
  const std::string good = gpx_of("Cove", kSquare);
  add("CutOff", good.substr(0, good.size() - 20), "cut off");
  add("NoLatitude", gpx("<trk><trkseg><trkpt lon=\"-82.5\"/></trkseg></trk>"), "not two numbers");
  add("NaN", gpx("<trk><trkseg><trkpt lat=\"NaN\" lon=\"-82.5\"/></trkseg></trk>"),
      "not two numbers");
  add("NotBack", gpx_of("Cove", "-82.5,38.1 -82.49,38.1 -82.48,38.1 -82.47,38.11"),
      "does not come back");
  add("TwoPositions", gpx_of("Cove", "-82.5,38.1 -82.49,38.1"), "fewer than three");
  add("WaypointsOnly", gpx("<wpt lat=\"38.1\" lon=\"-82.5\"/>"), "points or open lines");
  add("Bowtie", gpx_of("Cove", kBowtie), "crosses itself");
  add("Swapped", gpx_of("Cove", kSwapped), "swapped");
}

}  // namespace

std::string geojson_of(const std::string& name, const std::vector<std::string>& rings) {
  std::string coordinates;
  for (const std::string& ring : rings) {
    coordinates += (coordinates.empty() ? "" : ",") + geojson_ring(ring);
  }
  return R"({"type":"FeatureCollection","features":[{"type":"Feature","properties":{"name":")" +
         name + R"("},"geometry":{"type":"Polygon","coordinates":[)" + coordinates + "]}}]}";
}

std::string kml_of(const std::string& name, const std::vector<std::string>& rings) {
  std::string text = "<Placemark><name>" + name + "</name><Polygon>";
  for (std::size_t i = 0; i < rings.size(); ++i) {
    const std::string tag = i == 0 ? "outerBoundaryIs" : "innerBoundaryIs";
    text += "<" + tag + "><LinearRing><coordinates>" + rings[i] + "</coordinates></LinearRing></" +
            tag + ">";
  }
  return kml(text + "</Polygon></Placemark>");
}

std::string gpx_of(const std::string& name, const std::string& ring) {
  std::string text = "<trk><name>" + name + "</name><trkseg>";
  for (const auto& [lon, lat] : positions_of(ring)) {
    text += "<trkpt lat=\"" + lat + "\" lon=\"" + lon + "\"/>";
  }
  return gpx(text + "</trkseg></trk>");
}

std::vector<BadOutline> bad_outlines() {
  std::vector<BadOutline> bad;
  add_geojson(bad);
  add_kml(bad);
  add_gpx(bad);
  bad.push_back({"KmzIsZipped", ".kmz", "PK\x03\x04", "unzip it"});
  bad.push_back({"NoSuchKind", ".dwg", "AC1032", "Bring .geojson, .kml or .gpx"});
  return bad;
}

}  // namespace oaklight::test
