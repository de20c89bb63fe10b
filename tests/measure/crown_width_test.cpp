#include "core/measure/crown_width.hpp"

#include <gtest/gtest.h>

#include "tests/support/readings.hpp"

namespace oaklight {
namespace {

using test::dbh_in;

Species species(int fia, std::string scientific) {
  Species s;
  s.code.fia = fia;
  s.scientific_name = std::move(scientific);
  return s;
}
const Species kRedOak = species(833, "Quercus rubra");

TreeFacts tree(double inches, std::optional<double> live_crown = 40.0) {
  TreeFacts facts{.species = {}, .dbh = dbh_in(inches)};
  if (live_crown) facts.live_crown = Percent{*live_crown};
  return facts;
}

int equation_for(const Species& s) { return stand_grown_crown_width(s, tree(12.0)).equation.fia; }

// Values: tests/published/stocking.tsv and tree_tables.tsv.
TEST(CrownRadius, InACrowdIsSmallerThanInTheOpen) {
  for (int tenths = 1; tenths <= 400; ++tenths) {
    const Inches dbh{tenths / 10.0};
    ASSERT_GE(crowded_crown_radius(dbh), Feet{});
    ASSERT_LT(crowded_crown_radius(dbh), open_crown_radius(dbh));
  }
  EXPECT_EQ(crowded_crown_radius(Inches{0.1}), Feet{}) << "the guide gives it no ground";
}

TEST(StandGrownCrown, ShrinksInProportionUnderFiveInches) {
  const Feet at_5 = stand_grown_crown_width(kRedOak, tree(5.0, 20.0)).width;
  EXPECT_NEAR(stand_grown_crown_width(kRedOak, tree(2.5, 20.0)).width.value, at_5.value / 2.0,
              1e-12);
}

TEST(StandGrownCrown, IsNeverWiderThanInTheOpenNorShrinksWithSize) {
  for (const Species& s :
       {kRedOak, species(316, "Acer rubrum"), species(371, "Betula alleghaniensis"),
        species(832, "Quercus prinus"), species(125, "Pinus resinosa"), species(462, "Celtis")}) {
    Feet before{};
    for (int tenths = 1; tenths <= 600; ++tenths) {
      TreeFacts facts = tree(tenths / 10.0, 99.0);
      const Feet width = stand_grown_crown_width(s, facts).width;
      ASSERT_LE(width, open_grown_crown_width(facts.dbh.inches()));
      ASSERT_GE(width, before) << s.code.fia << " at " << tenths / 10.0;
      before = width;
    }
  }
}

TEST(StandGrownCrown, OfAnOpenGrownTreeIsTheOpenGrownWidth) {
  TreeFacts facts = tree(12.0);
  facts.crown_class = CrownClass::open_grown;
  EXPECT_EQ(stand_grown_crown_width(kRedOak, facts).width, open_grown_crown_width(Inches{12.0}));
}

TEST(StandGrownCrown, SaysWhetherTheCrownRatioWasAssumed) {
  EXPECT_FALSE(stand_grown_crown_width(kRedOak, tree(12.0)).crown_assumed);
  TreeFacts facts = tree(12.0, std::nullopt);
  CrownWidth crown = stand_grown_crown_width(kRedOak, facts);
  EXPECT_TRUE(crown.crown_assumed);
  EXPECT_EQ(crown.live_crown, Percent{40.0});
  // Our policy by crown class: 50, 40, 30, 20 %.
  facts.crown_class = CrownClass::dominant;
  EXPECT_EQ(stand_grown_crown_width(kRedOak, facts).live_crown, Percent{50.0});
  facts.crown_class = CrownClass::codominant;
  EXPECT_EQ(stand_grown_crown_width(kRedOak, facts).live_crown, Percent{40.0});
  facts.crown_class = CrownClass::intermediate;
  EXPECT_EQ(stand_grown_crown_width(kRedOak, facts).live_crown, Percent{30.0});
  facts.crown_class = CrownClass::overtopped;
  EXPECT_EQ(stand_grown_crown_width(kRedOak, facts).live_crown, Percent{20.0});
}

TEST(StandGrownCrown, ARecordedRatioOfZeroIsNotMissing) {
  const CrownWidth crown = stand_grown_crown_width(kRedOak, tree(12.0, 0.0));
  EXPECT_FALSE(crown.crown_assumed);
  EXPECT_EQ(crown.live_crown, Percent{});
}

TEST(StandGrownCrown, BorrowsTheEquationOfTheGroupsLeadSpecies) {
  // Which species lends its equation to which is our own judgement; codes by definition (FIA).
  EXPECT_EQ(equation_for(kRedOak), 833);
  Species s = species(804, "Quercus bicolor");
  s.oak_group = OakGroup::white;
  EXPECT_EQ(equation_for(s), 802);
  s = species(830, "Quercus palustris");
  s.oak_group = OakGroup::red;
  EXPECT_EQ(equation_for(s), 833);
  EXPECT_EQ(equation_for(species(402, "Carya cordiformis")), 407);
  s = species(314, "Acer nigrum");
  s.crown_width_group = "cw_hard_maple_beech";
  EXPECT_EQ(equation_for(s), 318);
  EXPECT_EQ(equation_for(species(313, "Acer negundo")), 316);
  EXPECT_EQ(equation_for(species(546, "Fraxinus quadrangulata")), 541);
  EXPECT_EQ(equation_for(species(742, "Populus deltoides")), 746);
  EXPECT_EQ(equation_for(species(373, "Betula nigra")), 375);
  EXPECT_EQ(equation_for(species(972, "Ulmus americana")), 951);
  EXPECT_EQ(equation_for(species(761, "Prunus pensylvanica")), 762);
  EXPECT_EQ(equation_for(species(731, "Platanus occidentalis")), 316);
  s = species(132, "Pinus virginiana");
  s.leaf = LeafType::softwood;
  EXPECT_EQ(equation_for(s), 129);
  EXPECT_EQ(equation_for(Species{}), 316) << "nothing known is another hardwood";
}

}  // namespace
}  // namespace oaklight
