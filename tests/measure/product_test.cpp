#include "core/measure/product.hpp"

#include <gtest/gtest.h>

#include "tests/support/readings.hpp"

namespace oaklight {
namespace {

using test::dbh_cm;
using test::dbh_in;

Species species(int fia, std::string scientific, std::optional<Inches> min_sawlog,
                LeafType leaf = LeafType::hardwood) {
  Species s;
  s.code.fia = fia;
  s.scientific_name = std::move(scientific);
  s.min_sawlog_dbh = min_sawlog;
  s.leaf = leaf;
  return s;
}

// Smallest saw log: 11 in hardwood, 9 in softwood, federal inventory definition.
const Species kRedOak = species(833, "Quercus rubra", Inches{11.0});
const Species kAspen = species(746, "Populus tremuloides", Inches{11.0});
const Species kPine = species(129, "Pinus strobus", Inches{9.0}, LeafType::softwood);
const Species kIronwood = species(701, "Ostrya virginiana", std::nullopt);

// As in the rules that come with the program (R7.21, R7.22, R7.26, R7.27, X7.05).
const ProductLimits kLimits{
    Inches{5.0},
    Inches{6.0},
    {Condition::crooked, Condition::conk, Condition::canker, Condition::crack,
     Condition::cavity_low, Condition::cavity_high, Condition::lightning, Condition::metal},
    {"Populus", "Tilia", "Liriodendron"},
    {SpeciesCode{313}}};

Product product(const Species& s, Dbh dbh, std::optional<int> half_logs = 3, Conditions c = {}) {
  const ProductCall call = product_of(s, dbh, half_logs, c, kLimits);
  EXPECT_FALSE(call.reason.empty());
  EXPECT_FALSE(call.rule.empty());
  return call.product;
}

TEST(Product, IsASawlogFromTheSpeciesSmallestDbh) {
  EXPECT_EQ(product(kRedOak, dbh_in(11.0)), Product::sawlog);
  EXPECT_EQ(product(kRedOak, dbh_in(10.9)), Product::firewood);
  EXPECT_EQ(product(kPine, dbh_in(9.0)), Product::sawlog);
}

TEST(Product, IsNoSawlogWithoutALog) {
  EXPECT_EQ(product(kRedOak, dbh_in(16.0), 0), Product::firewood);
  EXPECT_EQ(product(kRedOak, dbh_in(16.0), 1), Product::sawlog);
  EXPECT_EQ(product(kRedOak, dbh_in(16.0), std::nullopt), Product::sawlog)
      << "not recorded is not 0";
}

TEST(Product, IsNoSawlogOfARottenHollowCrookedOrWiredStem) {
  for (const Condition c :
       {Condition::crooked, Condition::conk, Condition::canker, Condition::crack,
        Condition::cavity_low, Condition::cavity_high, Condition::lightning, Condition::metal}) {
    EXPECT_EQ(product(kRedOak, dbh_in(16.0), 3, {c}), Product::firewood) << word_of(c);
  }
  EXPECT_EQ(product(kRedOak, dbh_in(16.0), 3, {Condition::vines}), Product::sawlog);
}

TEST(Product, OfASpeciesThatNobodySawsIsFirewood) {
  EXPECT_EQ(product(kIronwood, dbh_in(12.0)), Product::firewood);
}

TEST(Product, IsPulpwoodWhereFirewoodCuttersRefuseTheSpecies) {
  EXPECT_EQ(product(kAspen, dbh_in(9.0)), Product::pulpwood);
  EXPECT_EQ(product(kPine, dbh_in(8.9)), Product::pulpwood);
}

TEST(Product, StopsAtTheThinnestStemThatAnyoneTakes) {
  EXPECT_EQ(product(kRedOak, dbh_in(6.0)), Product::firewood);
  EXPECT_EQ(product(kRedOak, dbh_in(5.9)), Product::pulpwood);
  EXPECT_EQ(product(kRedOak, dbh_in(5.0)), Product::pulpwood);
  EXPECT_EQ(product(kRedOak, dbh_in(4.9)), Product::none);
  EXPECT_EQ(product(kRedOak, dbh_cm(12.7)), Product::pulpwood) << "12.7 cm is 5 in";
  EXPECT_EQ(product(kRedOak, dbh_cm(12.6)), Product::none);
}

}  // namespace
}  // namespace oaklight
