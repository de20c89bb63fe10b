#include "tests/survey/random_cruise.hpp"

#include <array>
#include <cmath>

#include "core/base/number_text.hpp"
#include "core/place/seeded_draw.hpp"
#include "tests/support/temp_dir.hpp"

namespace oaklight::test {
namespace {

/// Columns of a design in plots.csv and its cells.
struct DesignCells {
  const char* columns;
  const char* cells;
  bool metric;
  double least;  ///< smallest DBH tallied, as read
};
constexpr std::array<DesignCells, 6> kDesigns{{
    {"baf_ft2_ac,min_dbh_in,regen_plot_ac", "10,,0.001", false, 1.0},
    {"plot_ac,min_dbh_in,regen_plot_ac", "0.1,,0.0025", false, 1.0},
    {"baf_m2_ha,min_dbh_cm,regen_plot_ha", "2.3,7.5,0.0004", true, 7.5},
    {"plot_ac,small_plot_ac,small_below_in,regen_plot_ac", "0.2,0.02,5,0.001", false, 1.0},
    {"plot_ha,min_dbh_cm,regen_plot_ha", "0.05,10,0.0004", true, 10.0},
    {"baf_ft2_ac,min_dbh_in,regen_plot_ac", "20,5,0.001", false, 5.0},
}};
constexpr std::array<const char*, 6> kSpecies{"white oak", "northern red oak", "black oak",
                                              "red maple", "white ash",        "American beech"};

class Writer {
 public:
  explicit Writer(std::uint64_t seed) : design_(kDesigns.at(seed % kDesigns.size())), draw_(seed) {}

  void write(const std::string& folder) {
    const int stands = whole(1, 4);
    for (int s = 0; s < stands; ++s) stand("Stand" + std::to_string(s + 1));
    const std::string unit = design_.metric ? "cm" : "in";
    write_bytes(folder + "/stands.csv",
                std::string(design_.metric ? "stand,hectares\n" : "stand,acres\n") + stands_);
    write_bytes(folder + "/plots.csv",
                std::string("cruise,stand,plot,status,") + design_.columns + "\n" + plots_);
    write_bytes(folder + "/trees.csv",
                "stand,plot,species,dbh_" + unit + ",stems,edge_count,status\n" + trees_);
    write_bytes(folder + "/regeneration.csv", "stand,plot,species,height_class,count\n" + young_);
  }

 private:
  int whole(int least, int most) {
    return least + static_cast<int>((most - least + 1) * draw_.uniform());
  }
  bool chance(double share) { return draw_.uniform() < share; }
  const char* species() { return kSpecies.at(static_cast<std::size_t>(whole(0, 5))); }

  void stand(const std::string& name) {
    stands_ += name + "," + number_text(20.0 + 100.0 * draw_.uniform(), 1) + "\n";
    const int plots = whole(2, 14);
    const double crowd = 2.0 + 8.0 * draw_.uniform();  // trees on a plot
    for (int p = 0; p < plots; ++p) plot(name + ",P" + std::to_string(p + 1), crowd);
  }

  void plot(const std::string& where, double crowd) {
    const int trees = chance(0.1) ? 0 : static_cast<int>(2.0 * crowd * draw_.uniform());
    plots_ += "Spring," + where + (trees == 0 ? ",empty," : ",measured,") + design_.cells + "\n";
    for (int t = 0; t < trees; ++t) tree(where);
    for (const char* height : {"under_1_ft", "from_1_to_4_5_ft", "over_4_5_ft"}) {
      if (chance(0.5)) {
        young_ += where + "," + species() + "," + height + "," + std::to_string(whole(0, 9)) + "\n";
      }
    }
  }

  void tree(const std::string& where) {
    const double above = 24.0 * draw_.uniform() * draw_.uniform() + 2.0 * draw_.uniform();
    const double reading = design_.least + (design_.metric ? 2.54 : 1.0) * above;
    trees_ += where + "," + species() + "," + number_text(reading, 1) + "," +
              std::to_string(chance(0.1) ? whole(2, 4) : 1) + "," + (chance(0.08) ? "2" : "1") +
              "," + (chance(0.1) ? "dead" : "live") + "\n";
  }

  DesignCells design_;
  SeededDraw draw_;
  std::string stands_, plots_, trees_, young_;
};

}  // namespace

void write_random_cruise(const std::string& folder, std::uint64_t seed) {
  Writer(seed).write(folder);
}

}  // namespace oaklight::test
