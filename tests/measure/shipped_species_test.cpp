// Each species that a person can tally gets its figures, or an honest "not told".
#include <gtest/gtest.h>

#include <fstream>
#include <map>
#include <sstream>

#include "core/forms/read_species.hpp"
#include "core/measure/biomass.hpp"
#include "core/measure/cords.hpp"
#include "core/measure/crown_width.hpp"
#include "core/measure/product.hpp"
#include "tests/support/places.hpp"
#include "tests/support/readings.hpp"

namespace oaklight {
namespace {

using test::dbh_in;

SpeciesTable shipped() {
  std::ifstream in(test::source_path("forms/species/species.csv"), std::ios::binary);
  std::stringstream text;
  text << in.rdbuf();
  const SpeciesRead read = read_species({"species.csv", text.str()});
  EXPECT_TRUE(read.faults.empty());
  EXPECT_FALSE(read.table.rows().empty());
  return read.table;
}

TEST(ShippedSpecies, HaveACrown) {
  const SpeciesTable table = shipped();
  for (const Species& s : table.rows()) {
    const TreeFacts tree{.species = s.code, .dbh = dbh_in(12.0)};
    const CrownWidth crown = stand_grown_crown_width(s, tree);
    EXPECT_GT(crown.width, Feet{10.0}) << s.common_name;
    EXPECT_LE(crown.width, open_grown_crown_width(Inches{12.0})) << s.common_name;
    const Species* lead = table.find(crown.equation);
    ASSERT_NE(lead, nullptr) << s.common_name;
    EXPECT_EQ(lead->leaf, s.leaf) << s.common_name << " borrows from " << lead->common_name;
  }
}

TEST(ShippedSpecies, HaveABiomassGroupWithAnEquation) {
  const SpeciesTable table = shipped();
  for (const Species& s : table.rows()) {
    const auto mass = dry_biomass(dbh_in(10.0), s.jenkins_group);
    if (s.jenkins_group == "woodland") {
      EXPECT_EQ(mass.error().code, ErrorCode::outside_table) << s.common_name;
    } else {
      ASSERT_TRUE(mass.has_value()) << s.common_name << ": " << s.jenkins_group;
    }
  }
}

TEST(ShippedSpecies, HaveACordWeightWhenTheyAreHardwoods) {
  const SpeciesTable table = shipped();
  for (const Species& s : table.rows()) {
    if (s.leaf == LeafType::hardwood) {
      EXPECT_TRUE(cord_kind(s).has_value()) << s.common_name;
    }
  }
}

// Kinds as the rule prints their weights (Wisconsin Administrative Code NR 46.30); the code of each
// species is the species table's, not this test's.
TEST(ShippedSpecies, WeighAsTheirOwnKindWhereOneIsPrinted) {
  const std::map<std::string, CordKind> kinds{{"quaking aspen", CordKind::aspen},
                                              {"bigtooth aspen", CordKind::aspen},
                                              {"paper birch", CordKind::paper_birch},
                                              {"yellow birch", CordKind::yellow_birch},
                                              {"American basswood", CordKind::basswood},
                                              {"eastern hemlock", CordKind::hemlock},
                                              {"eastern white pine", CordKind::white_pine},
                                              {"red pine", CordKind::red_pine},
                                              {"jack pine", CordKind::jack_pine},
                                              {"balsam fir", CordKind::balsam_fir},
                                              {"tamarack", CordKind::tamarack},
                                              {"northern white-cedar", CordKind::cedar}};
  std::size_t found = 0;
  const SpeciesTable table = shipped();
  for (const Species& s : table.rows()) {
    const auto own = kinds.find(s.common_name);
    if (own == kinds.end()) continue;
    ++found;
    EXPECT_EQ(cord_kind(s), own->second) << s.common_name;
  }
  EXPECT_EQ(found, kinds.size());
}

TEST(ShippedSpecies, AreSawlogsOnlyWhereTheTableGivesASize) {
  const SpeciesTable table = shipped();
  for (const Species& s : table.rows()) {
    const ProductCall call = product_of(s, dbh_in(24.0), 4, {}, ProductLimits{});
    EXPECT_EQ(call.product == Product::sawlog, s.min_sawlog_dbh.has_value()) << s.common_name;
  }
}

}  // namespace
}  // namespace oaklight
