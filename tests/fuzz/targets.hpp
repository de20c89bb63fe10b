#pragma once

#include <string_view>

// What a fuzzer feeds: one function for each reader of files that others made. Each takes any
// bytes, and throws Broken when a law of that reader does not hold. Memory and undefined behaviour
// are watched by the sanitizers. README.md says how to run them.

namespace oaklight::test {

void fuzz_cruise(std::string_view bytes);   ///< bundle of CSV files and map.geojson: the import
void fuzz_map(std::string_view bytes);      ///< map.geojson beside a good cruise
void fuzz_geojson(std::string_view bytes);  ///< outlines of stands
void fuzz_kml(std::string_view bytes);
void fuzz_gpx(std::string_view bytes);
void fuzz_form(std::string_view bytes);    ///< tally.form.json
void fuzz_rules(std::string_view bytes);   ///< bundle of release.rule.json and mast_rank.csv
void fuzz_tables(std::string_view bytes);  ///< bundle of species, tally sets, cautions, seasons
void fuzz_tract(std::string_view bytes);   ///< changes made to a small tract file
void fuzz_text(std::string_view bytes);    ///< what people type: numbers, days, positions, words
void fuzz_nmea(std::string_view bytes);    ///< what a receiver says on its cable

struct Target {
  std::string_view name;
  void (*run)(std::string_view bytes);
};
inline constexpr Target kTargets[] = {
    {"cruise", fuzz_cruise}, {"map", fuzz_map},       {"geojson", fuzz_geojson},
    {"kml", fuzz_kml},       {"gpx", fuzz_gpx},       {"form", fuzz_form},
    {"rules", fuzz_rules},   {"tables", fuzz_tables}, {"tract", fuzz_tract},
    {"text", fuzz_text},
#ifdef OAKLIGHT_FUZZ_NMEA
    {"nmea", fuzz_nmea},
#endif
};

}  // namespace oaklight::test
