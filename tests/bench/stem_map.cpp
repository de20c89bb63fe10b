// A real stem map decided as one mapped wood, and drawn before and after as SVG:
//   bench_stem_map lansing lansing.csv out.svg     columns x_ft,y_ft,species
//   bench_stem_map longleaf longleaf.csv out.svg   columns x,y,dbh in metres and centimetres
// The maps are data of others and not kept here: demo_plots/lansing/extract.R and
// tests/support/stem_map.R write them from an installed R package. Lansing has no diameters: these
// are drawn by seed, and so are all crown classes, from the size of a tree beside that of its
// neighbours. Nothing about the real crowns is claimed.
#include <chrono>
#include <cstdio>
#include <fstream>
#include <iostream>
#include <sstream>

#include "core/measure/crown_width.hpp"
#include "tests/support/wood.hpp"

namespace oaklight {
namespace {

constexpr double kFeetPerMetre = 1.0 / 0.3048;  // exact
constexpr double kInchesPerCentimetre = 1.0 / 2.54;
constexpr std::uint32_t kSeed = 1969;
constexpr double kAround = 37.0;  // ft within which trees are compared for the crown class

struct Stem {
  double east, north, dbh;
  SpeciesCode species;
};

std::vector<std::vector<std::string>> rows_of(const std::string& path) {
  std::ifstream in(path);
  std::vector<std::vector<std::string>> rows;
  for (std::string line; std::getline(in, line);) {
    if (line.empty() || line.front() == '#') continue;
    std::vector<std::string> cells;
    std::istringstream parts(line);
    for (std::string cell; std::getline(parts, cell, ',');) cells.push_back(cell);
    rows.push_back(cells);
  }
  if (!rows.empty()) rows.erase(rows.begin());  // the names of the columns
  return rows;
}

/// Log-normal by the sum of twelve draws: median and spread of the logarithm.
double drawn_dbh(std::mt19937& random, double median, double spread) {
  double sum = -6.0;
  for (int i = 0; i < 12; ++i) sum += test::wood_part(random);
  return std::clamp(median * std::exp(spread * sum), 3.0, 30.0);
}

std::vector<Stem> lansing(const std::string& path) {
  std::mt19937 random(kSeed);
  std::vector<Stem> stems;
  for (const auto& row : rows_of(path)) {
    const std::string& group = row.at(2);
    const int fia = group == "blackoak"   ? 837
                    : group == "redoak"   ? 833
                    : group == "whiteoak" ? 802
                    : group == "hickory"  ? 403
                    : group == "maple"    ? 316
                                          : 951;
    const bool oak = fia > 800 && fia < 900;
    stems.push_back({std::stod(row[0]), std::stod(row[1]),
                     drawn_dbh(random, oak ? 14.0 : 9.0, oak ? 0.27 : 0.34), SpeciesCode{fia}});
  }
  return stems;
}

/// Longleaf pine is not in the species table: it goes as a pine whose species is not told.
std::vector<Stem> longleaf(const std::string& path) {
  std::vector<Stem> stems;
  for (const auto& row : rows_of(path)) {
    stems.push_back({kFeetPerMetre * std::stod(row[0]), kFeetPerMetre * std::stod(row[1]),
                     kInchesPerCentimetre * std::stod(row[2]), SpeciesCode{100}});
  }
  return stems;
}

CrownClass class_of(const std::vector<Stem>& stems, const Stem& stem) {
  double sum = 0.0;
  int count = 0;
  for (const Stem& other : stems) {
    if (std::hypot(other.east - stem.east, other.north - stem.north) > kAround) continue;
    sum += other.dbh;
    ++count;
  }
  const double beside = stem.dbh * count / sum;
  if (beside >= 1.35) return CrownClass::dominant;
  if (beside >= 0.9) return CrownClass::codominant;
  return beside >= 0.7 ? CrownClass::intermediate : CrownClass::overtopped;
}

std::vector<MappedTree> map_of(const std::vector<Stem>& stems) {
  std::vector<MappedTree> map;
  for (std::uint32_t i = 0; i < stems.size(); ++i) {
    TreeFacts facts{stems[i].species, test::dbh_in(std::round(10.0 * stems[i].dbh) / 10.0)};
    facts.crown_class = class_of(stems, stems[i]);
    map.push_back({test::nth_id<TreeId>(i + 1).value, std::to_string(10'001 + i), facts,
                   Feet{stems[i].east}, Feet{stems[i].north}});
  }
  return map;
}

/// One panel: crowns as circles; released trees green, trees to take red, all others grey.
void draw(std::ostream& out, const std::vector<MappedTree>& map, const ReleasePlan& plan,
          double side, double left, bool after) {
  out << "<g transform='translate(" << left << ",40)'><rect width='" << side << "' height='" << side
      << "' fill='#fbfaf5' stroke='#555'/>\n<text x='4' y='-10' font-size='24'>"
      << (after ? "after" : "before") << "</text>\n";
  for (const bool released : {false, true}) {
    for (std::size_t i = 0; i < map.size(); ++i) {
      const TreeVerdict& v = plan.trees[i];
      if (v.released != released) continue;
      const bool goes = v.verdict == Verdict::take || v.verdict == Verdict::kill_standing;
      if (goes && after) continue;
      const double radius = crowded_crown_radius(map[i].facts.dbh.inches()).value;
      const bool low = map[i].facts.crown_class == CrownClass::overtopped;
      const char* fill = v.released ? "#4a9a4a" : goes ? "#d2553a" : low ? "none" : "#c9c6bb";
      out << "<circle cx='" << map[i].east.value << "' cy='" << side - map[i].north.value << "' r='"
          << radius << "' fill='" << fill << "' fill-opacity='0.75' stroke='"
          << (v.released ? "#1d5c1d" : "#777") << "' stroke-width='" << (v.released ? 1.6 : 0.5)
          << "'/>\n";
    }
  }
  out << "</g>\n";
}

int run(const std::string& name, const std::string& path, const std::string& out_path) {
  const bool oaks = name == "lansing";
  const std::vector<MappedTree> map = map_of(oaks ? lansing(path) : longleaf(path));
  const double side = oaks ? 924.0 : 200.0 * kFeetPerMetre;
  const double acres = side * side / 43'560.0;
  const ReleaseKnowledge& know = test::shipped_knowledge();
  const auto start = std::chrono::steady_clock::now();
  const BoxBounds bounds{Feet{0.0}, Feet{0.0}, Feet{side}, Feet{side}};
  ReleaseInput input{know, graph_from_map(map, bounds, know.settings.contact), {}, {}, {}, {}};
  std::vector<TreeFacts> facts;
  for (const MappedTree& tree : map) facts.push_back(tree.facts);
  input.stand.before = test::density_of(facts, 1.0 / acres);
  input.stand.covered = Acres{acres};
  input.stand.goal = oaks ? Goal::mast : Goal::timber;
  const ReleasePlan plan = recommend(input);
  const double took =
      std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
  int released = 0, taken = 0, before = 0, after = 0;
  for (const TreeVerdict& v : plan.trees) {
    taken += v.verdict == Verdict::take || v.verdict == Verdict::kill_standing ? 1 : 0;
    if (!v.released) continue;
    ++released;
    before += v.before->sides_free;
    after += v.after->sides_free;
  }
  std::cout << name << ": " << map.size() << " stems on " << acres << " ac; " << released
            << " released, " << taken << " taken; sides free " << before << " -> " << after << "; "
            << (plan.optimality.proven ? "proven best" : "bounded") << ", gap "
            << 100.0 * plan.optimality.gap() << " %; " << took << " s\n"
            << plan.advice.text << '\n';
  for (const GuardState& g : plan.guards) {
    std::cout << "  " << g.name << ": " << g.before << " -> " << g.after << ' ' << g.unit
              << (g.floor ? ", at least " : ", at most ") << g.limit << '\n';
  }
  std::ofstream out(out_path);
  out << "<svg xmlns='http://www.w3.org/2000/svg' width='" << 2 * side + 60 << "' height='"
      << side + 60 << "'><rect width='100%' height='100%' fill='white'/>\n";
  draw(out, map, plan, side, 20, false);
  draw(out, map, plan, side, side + 40, true);
  out << "</svg>\n";
  return 0;
}

}  // namespace
}  // namespace oaklight

int main(int argc, char** argv) {
  if (argc != 4) {
    std::cerr << "usage: bench_stem_map lansing|longleaf map.csv out.svg\n";
    return 2;
  }
  return oaklight::run(argv[1], argv[2], argv[3]);
}
