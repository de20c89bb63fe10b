#include "tests/population/stem_map.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <map>

#include "core/base/number_text.hpp"
#include "core/measure/basal_area.hpp"
#include "tests/support/places.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/temp_dir.hpp"

namespace oaklight::test {
namespace {

using Rows = std::vector<std::vector<std::string>>;

/// Cells of a plain CSV without its first line.
Rows rows_of(const std::string& text) {
  Rows rows(1, {""});
  for (const char c : text) {
    if (c == ',') {
      rows.back().emplace_back();
    } else if (c == '\n') {
      rows.push_back({""});
    } else {
      rows.back().back() += c;
    }
  }
  rows.pop_back();
  if (!rows.empty()) rows.erase(rows.begin());
  return rows;
}

double number_of(const std::string& cell) { return number_from_text(cell).value(); }

Rows written_by(const std::string& script, const std::string& name) {
  const TempDir folder;
  const auto file = folder / "map.csv";
  const Ran ran = run_program("Rscript " + source_path(script) + name + " " + file.string());
  EXPECT_EQ(ran.exit_code, 0) << ran.errors;
  return rows_of(bytes_of(file));
}

Stem stem_of(Feet east, Feet north, Centimetres dbh, const std::string& kind) {
  return {{east, north},
          to_inches(dbh),
          Tree{.facts = TreeFacts{.species = {}, .dbh = dbh_cm(dbh.value)}},
          kind};
}

StemMap lansing() {
  // 924 x 924 ft and no diameters (Gerrard 1969); any size will do on fixed plots.
  StemMap map{"lansing", Feet{924.0}, Feet{924.0}, {}};
  for (const auto& row : written_by("demo_plots/lansing/extract.R", "")) {
    map.stems.push_back(stem_of(Feet{number_of(row[0])}, Feet{number_of(row[1])},
                                to_centimetres(Inches{12.0}), row[2]));
  }
  return map;
}

StemMap measured(const std::string& name, Metres width, Metres height) {
  StemMap map{name, to_feet(width), to_feet(height), {}};
  for (const auto& row : written_by("tests/support/stem_map.R ", name)) {
    map.stems.push_back(stem_of(to_feet(Metres{number_of(row[0])}),
                                to_feet(Metres{number_of(row[1])}), Centimetres{number_of(row[2])},
                                ""));
  }
  return map;
}

}  // namespace

const StemMap& stem_map(const std::string& name) {
  static std::map<std::string, StemMap> read;
  const auto found = read.find(name);
  if (found != read.end()) return found->second;
  // Sides as the help pages of the R package give them.
  StemMap map = name == "lansing"    ? lansing()
                : name == "longleaf" ? measured(name, Metres{200.0}, Metres{200.0})
                : name == "waka"     ? measured(name, Metres{100.0}, Metres{100.0})
                                     : measured(name, Metres{56.0}, Metres{38.0});
  return read.emplace(name, std::move(map)).first->second;
}

const std::vector<FelledTree>& black_cherries() {
  static const auto trees = [] {
    std::vector<FelledTree> all;
    for (const auto& row : written_by("tests/support/stem_map.R ", "cherry")) {
      all.push_back({Inches{number_of(row[0])}, number_of(row[2])});
    }
    return all;
  }();
  return trees;
}

bool maps_are_installed() {
  static const bool there =
      run_program("Rscript -e 'stopifnot(requireNamespace(\"spatstat.data\"))'").exit_code == 0;
  return there;
}

PickStem any_stem() {
  return [](const Stem&) { return true; };
}

PickStem of_kind(const std::string& kind) {
  if (kind == "all") return any_stem();
  if (kind == "oaks") return [](const Stem& s) { return s.kind.ends_with("oak"); };
  return [kind](const Stem& s) { return s.kind == kind; };
}

PickStem at_least(Inches dbh) {
  // 12.7 cm are 5 in, whatever the division leaves behind the fifteenth digit.
  return [dbh](const Stem& s) { return s.dbh.value >= dbh.value - 1e-9; };
}

Census census_of(const StemMap& map, const PickStem& pick) {
  Census sum;
  for (const Stem& stem : map.stems) {
    if (!pick(stem)) continue;
    sum.trees += Trees{1.0} / map.acres();
    sum.ba += basal_area(stem.dbh) / map.acres();
  }
  return sum;
}

}  // namespace oaklight::test
