#include "tests/support/test_cruise.hpp"

#include <array>
#include <fstream>
#include <map>
#include <sstream>
#include <stdexcept>

#include "core/base/csv_text.hpp"
#include "core/base/number_text.hpp"
#include "tests/support/places.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/test_ids.hpp"

namespace oaklight::test {
namespace {

struct Kind {
  const char* letters;
  int fia;
  const char* name;
  const char* scientific;
  OakGroup group;
  bool sawn;
};
constexpr std::array<Kind, 8> kKinds{{
    {"AB", 531, "American beech", "Fagus grandifolia", OakGroup::none, false},
    {"BO", 837, "black oak", "Quercus velutina", OakGroup::red, true},
    {"HI", 400, "hickory", "Carya", OakGroup::none, true},
    {"RM", 316, "red maple", "Acer rubrum", OakGroup::none, false},
    {"RO", 833, "northern red oak", "Quercus rubra", OakGroup::red, true},
    {"SM", 318, "sugar maple", "Acer saccharum", OakGroup::none, true},
    {"WO", 802, "white oak", "Quercus alba", OakGroup::white, true},
    {"YP", 621, "yellow-poplar", "Liriodendron tulipifera", OakGroup::none, true},
}};

using Record = std::map<std::string, std::string>;

std::vector<Record> read_records(const std::string& path) {
  std::ifstream in(path);
  if (!in) throw std::runtime_error("cannot read " + path);
  std::ostringstream text;
  text << in.rdbuf();
  const auto rows = read_csv(text.str(), path).value();
  std::vector<Record> records;
  for (std::size_t i = 1; i < rows.size(); ++i) {
    Record& record = records.emplace_back();
    for (std::size_t c = 0; c < rows[i].cells.size(); ++c) {
      record[rows[0].cells.at(c)] = rows[i].cells[c];
    }
  }
  return records;
}

double number_in(const Record& record, const std::string& column) {
  return number_from_text(record.at(column)).value();
}

}  // namespace

TestCruise::TestCruise(Design design) { next_cruise(design); }

Cruise& TestCruise::next_cruise(Design design) {
  return data.cruises.emplace_back(Cruise{.id = nth_id<CruiseId>(++last_),
                                          .name = "test",
                                          .design = design,
                                          .min_dbh = {},
                                          .regen_area = {},
                                          .crew = {},
                                          .date = {}});
}

StandId TestCruise::stand(const std::string& name, double acres) {
  Stand stand;
  stand.id = nth_id<StandId>(++last_);
  stand.name = name;
  stand.acres = Acres{acres};
  return data.stands.emplace_back(stand).id;
}

PlotId TestCruise::plot(StandId stand, PlotStatus status) {
  Plot plot;
  plot.id = nth_id<PlotId>(++last_);
  plot.stand = stand;
  plot.cruise = data.cruises.back().id;
  plot.label = std::to_string(data.plots.size() + 1);
  plot.status = status;
  return data.plots.emplace_back(plot).id;
}

Tree& TestCruise::tree(PlotId plot, int fia, double dbh) {
  return data.trees.emplace_back(
      Tree{.id = nth_id<TreeId>(++last_),
           .plot = plot,
           .facts = TreeFacts{.species = SpeciesCode{fia}, .dbh = dbh_in(dbh)}});
}

Regen& TestCruise::regen(PlotId plot, int fia, RegenHeight height, int count) {
  return data.regens.emplace_back(
      Regen{nth_id<RegenId>(++last_), plot, SpeciesCode{fia}, height, count});
}

int fia_of(const std::string& letters) {
  for (const Kind& k : kKinds) {
    if (letters == k.letters) return k.fia;
  }
  return 0;
}

SpeciesTable test_species() {
  std::vector<Species> rows;
  for (const Kind& k : kKinds) {
    Species& s = rows.emplace_back();
    s.code.fia = k.fia;
    s.common_name = k.name;
    s.scientific_name = k.scientific;
    s.oak_group = k.group;
    if (k.sawn) s.min_sawlog_dbh = Inches{11.0};
  }
  return SpeciesTable(std::move(rows));
}

namespace {

/// One visit to the points of stands A, B and C.
OracleCruise read_points(const std::string& folder, const std::string& points,
                         const std::string& trees) {
  TestCruise cruise(PointDesign{10.0, UnitSystem::us});
  OracleCruise oracle;
  std::map<std::string, StandId> stands;
  for (const Record& r : read_records(folder + "cruise_stands.csv")) {
    stands[r.at("stand")] = cruise.stand(r.at("stand"), number_in(r, "acres"));
  }
  std::map<std::string, PlotId> plots;
  for (const Record& r : read_records(folder + points)) {
    const bool empty = r.at("tally") == "0";
    const std::string label = r.at("stand") + r.at("point");
    plots[label] =
        cruise.plot(stands.at(r.at("stand")), empty ? PlotStatus::empty : PlotStatus::measured);
    cruise.data.plots.back().label = label;
    oracle.measured.push_back(r.contains("measured") && r.at("measured") == "1");
  }
  for (const Record& r : read_records(folder + trees)) {
    cruise.tree(plots.at(r.at("stand") + r.at("point")), fia_of(r.at("species")),
                number_in(r, "dbh_in"));
    oracle.letters.push_back(r.at("species"));
    const bool told = r.contains("volume_cuft") && !r.at("volume_cuft").empty();
    oracle.cubic_feet.push_back(told ? std::optional(number_in(r, "volume_cuft")) : std::nullopt);
  }
  oracle.data = std::move(cruise.data);
  return oracle;
}

}  // namespace

OracleCruise read_oracle_points() {
  return read_points(source_path("tests/golden/oracle/"), "cruise_points.csv", "cruise_trees.csv");
}

OracleCruise read_oracle_later() {
  return read_points(source_path("tests/golden/oracle/"), "later_points.csv", "later_trees.csv");
}

OracleCruise read_oracle_fixed() {
  const std::string folder = source_path("tests/golden/oracle/");
  TestCruise cruise(FixedDesign{0.1, 0.01, dbh_in(4.5), UnitSystem::us});
  OracleCruise oracle;
  const StandId stand = cruise.stand("D", 30.0);
  const auto trees = read_records(folder + "fixed_trees.csv");
  std::map<std::string, PlotId> plots;
  for (const Record& r : read_records(folder + "fixed_plots.csv")) {
    bool empty = true;
    for (const Record& t : trees) empty = empty && t.at("plot") != r.at("plot");
    plots[r.at("plot")] = cruise.plot(stand, empty ? PlotStatus::empty : PlotStatus::measured);
  }
  for (const Record& r : trees) {
    cruise.tree(plots.at(r.at("plot")), fia_of(r.at("species")), number_in(r, "dbh_in"));
    oracle.letters.push_back(r.at("species"));
  }
  oracle.data = std::move(cruise.data);
  return oracle;
}

}  // namespace oaklight::test
