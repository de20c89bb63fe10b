#include <gtest/gtest.h>

#include <set>

#include "tests/forms/cruise_files.hpp"

namespace oaklight {
namespace {

using test::form_file;
using test::replace_once;
using test::short_faults;
using test::species_names;
using test::species_table;
using Wants = std::vector<std::string>;

int code_of(const char* text) {
  const auto found = species_names().find(text);
  EXPECT_TRUE(found) << to_text(found.error());
  return found ? found->fia : 0;
}

Error refused(const char* text) {
  const auto found = species_names().find(text);
  EXPECT_FALSE(found) << text << " is taken for " << found->fia;
  return found ? Error{} : found.error();
}

TEST(SpeciesFile, IsReadWithoutFault) {
  const auto read = read_species(form_file("species/species.csv"));
  for (const Error& fault : read.faults) ADD_FAILURE() << to_text(fault);
  EXPECT_EQ(read.table.rows().size(), 138U);
}

TEST(SpeciesFile, KeepsWhatARowSays) {
  const Species* oak = species_table().find({802});
  ASSERT_NE(oak, nullptr);
  EXPECT_EQ(oak->plants_symbol, "QUAL");
  EXPECT_EQ(oak->common_name, "white oak");
  EXPECT_EQ(oak->local_names,
            (std::vector<std::string>{"eastern white oak", "stave oak", "forked-leaf white oak"}));
  EXPECT_TRUE(oak->is_oak());
  EXPECT_EQ(oak->oak_group, OakGroup::white);
  EXPECT_EQ(oak->mast, MastClass::hard);
  EXPECT_EQ(oak->mast_rank, 5);
  EXPECT_EQ(oak->stance, Stance::keep);
  EXPECT_EQ(oak->timber_value, Level::high);
  EXPECT_EQ(oak->min_sawlog_dbh, Inches{11.0});
  EXPECT_EQ(oak->pests, (std::vector<std::string>{"OW", "SM", "TLCB", "OD"}));
  EXPECT_FALSE(oak->invasive);
  const Species* shrub = species_table().find({6918});
  ASSERT_NE(shrub, nullptr);
  EXPECT_FALSE(species_table().find({491})->min_sawlog_dbh) << "empty is nothing, not zero";
}

TEST(SpeciesFile, EveryRowCanBeFoundByEachOfItsNames) {
  for (const Species& s : species_table().rows()) {
    EXPECT_EQ(code_of(std::to_string(s.code.fia).c_str()), s.code.fia);
    EXPECT_EQ(code_of(s.common_name.c_str()), s.code.fia) << s.common_name;
    EXPECT_EQ(code_of(s.scientific_name.c_str()), s.code.fia) << s.scientific_name;
    if (!s.plants_symbol.empty()) {
      EXPECT_EQ(code_of(s.plants_symbol.c_str()), s.code.fia) << s.plants_symbol;
    }
  }
}

TEST(SpeciesFile, WordsForLevelsAreOneSet) {
  const std::string text = form_file("species/species.csv").text;
  EXPECT_EQ(text.find(",med,"), std::string::npos);
}

TEST(SpeciesNames, AcceptWhatPeopleWrite) {
  EXPECT_EQ(code_of(" White  Oak "), 802);
  EXPECT_EQ(code_of("qual"), 802);
  EXPECT_EQ(code_of("0802"), 802);
  EXPECT_EQ(code_of("0068"), 68);
  EXPECT_EQ(code_of("quercus alba"), 802);
  EXPECT_EQ(code_of("yellow poplar"), 621);
  EXPECT_EQ(code_of("Hill\xE2\x80\x99s oak"), 809);
  EXPECT_EQ(code_of("stave oak"), 802) << "a local name of one species";
}

TEST(SpeciesNames, AskWhenANameHasTwoSpecies) {
  for (const char* name : {"popple", "soft maple", "hard maple", "soft elm", "swamp red oak"}) {
    const Error error = refused(name);
    EXPECT_EQ(error.code, ErrorCode::unknown_species);
    EXPECT_NE(error.what.find(" or "), std::string::npos) << error.what;
  }
  EXPECT_EQ(refused("soft maple").what,
            "\"soft maple\" is a name of more than one species: red maple (316) or silver maple "
            "(317).");
}

TEST(SpeciesNames, DoNotTrustARegionalOrMisusedName) {
  EXPECT_EQ(refused("pignut").what,
            "\"pignut\" is a name that is not sure: bitternut hickory (402) [misused].");
  EXPECT_NE(refused("jack oak").what.find("shingle oak (817) [Ohio Valley]"), std::string::npos);
  EXPECT_EQ(code_of("pin oak"), 830) << "the common name goes before another's local name";
}

TEST(SpeciesNames, SuggestTheNearName) {
  EXPECT_EQ(refused("wite oak").fix, "Did you mean \"white oak\"?");
  EXPECT_EQ(refused("red mapel").fix, "Did you mean \"red maple\"?");
  EXPECT_EQ(refused("QUAB").fix.substr(0, 12), "Did you mean");
  EXPECT_NE(refused("flagpole").fix.find("999"), std::string::npos);
}

TEST(SpeciesNames, RefuseACodeThatIsNotInTheTable) {
  EXPECT_EQ(refused("803").what, "There is no species with the code 803.");
  EXPECT_EQ(refused("99999999999999999999").code, ErrorCode::unknown_species);
  EXPECT_EQ(refused("").code, ErrorCode::unknown_species);
}

Wants faults_after(std::string_view from, std::string_view to) {
  NamedText file = form_file("species/species.csv");
  replace_once(file.text, from, to);
  return short_faults(read_species(file).faults);
}

TEST(SpeciesFile, EachKindOfFaultIsToldWithItsPlace) {
  EXPECT_EQ(faults_after("\n802,QUAL,", "\n,QUAL,"), Wants{"missing_value species.csv:2:fia_code"});
  EXPECT_EQ(faults_after("\n802,QUAL,", "\n8o2,QUAL,"),
            Wants{"not_a_number species.csv:2:fia_code"});
  EXPECT_EQ(faults_after("\n804,QUBI,", "\n802,QUBI,"), Wants{"duplicate species.csv:3:fia_code"});
  EXPECT_EQ(faults_after(",QUBI,", ",qual,"), Wants{"duplicate species.csv:3:plants_symbol"});
  EXPECT_EQ(faults_after(",swamp white oak,", ",white oak,"),
            Wants{"duplicate species.csv:3:common_name"});
  EXPECT_EQ(faults_after(",Quercus bicolor,", ",Quercus alba,"),
            Wants{"duplicate species.csv:3:scientific_name"});
  EXPECT_EQ(faults_after("Quercus alba,Fagaceae,hardwood", "Quercus alba,Fagaceae,hardwod"),
            Wants{"not_a_choice species.csv:2:leaf_type"});
  EXPECT_EQ(faults_after("Quercus alba,Fagaceae,hardwood,white,hard,5",
                         "Quercus alba,Fagaceae,hardwood,white,hard,6"),
            Wants{"out_of_range species.csv:2:wildlife_mast_rank"});
  EXPECT_EQ(
      faults_after(
          "25.8,hard_maple_oak_hickory_beech,upland_oak,cw_white_oak,11.0,0,OW|SM|TLCB|OD,high",
          "25.8,hard_maple_oak_hickory_beech,upland_oak,cw_white_oak,eleven,0,OW|SM|TLCB|OD,high"),
      Wants{"not_a_number species.csv:2:min_sawlog_dbh_in"});
  EXPECT_EQ(faults_after("fia_code,", "fia,"),
            (Wants{"bad_csv species.csv:1:fia", "bad_csv species.csv:1:fia_code"}));
  EXPECT_EQ(faults_after("\n802,QUAL,", "\n802,\"QUAL,"), Wants{"bad_csv species.csv:2"});
  EXPECT_EQ(faults_after("\n802,QUAL,", "\n0,QUAL,"), Wants{"out_of_range species.csv:2:fia_code"});
  for (const char* inches : {"0", "201", "-11"}) {
    EXPECT_EQ(
        faults_after("upland_oak,cw_white_oak,11.0,0,OW|SM|TLCB|OD,high",
                     std::string("upland_oak,cw_white_oak,") + inches + ",0,OW|SM|TLCB|OD,high"),
        Wants{"out_of_range species.csv:2:min_sawlog_dbh_in"})
        << inches;
  }
}

TEST(SpeciesFile, AnEmptyPlaceInAListIsPassedOver) {
  std::string text = form_file("species/species.csv").text;
  replace_once(text, "eastern white oak|stave oak|", "eastern white oak||stave oak|");
  const auto read = read_species({"species.csv", text});
  ASSERT_TRUE(read.faults.empty());
  EXPECT_EQ(read.table.find({802})->local_names, species_table().find({802})->local_names);
}

// Limits of read_species.cpp: 5,000 species, 200 sets, 500 species in a set.
TEST(SpeciesFile, MoreThanAnybodyHasUseForIsRefused) {
  std::string text = form_file("species/species.csv").text;
  const auto first = text.find('\n') + 1;
  const std::string row = text.substr(first, text.find('\n', first) + 1 - first);
  for (int i = 0; i < 5'000; ++i) text += row;
  // By hand: the header, 138 rows, and the 5,001st of all on line 5,002.
  EXPECT_EQ(short_faults(read_species({"species.csv", text}).faults),
            Wants{"bad_csv species.csv:5002"});
  std::string sets = "set_key,set_name,species_count,fia_codes,notes\n";
  for (int i = 0; i < 201; ++i) sets += "k" + std::to_string(i) + ",A,1,802,\n";
  EXPECT_EQ(short_faults(read_tally_sets({"sets.csv", sets}, species_table()).faults),
            Wants{"bad_csv sets.csv:202"});
}

TEST(TallySets, AreReadWithoutFaultAndEndInTheCatchAlls) {
  const auto read = read_tally_sets(form_file("species/species_sets.csv"), species_table());
  for (const Error& fault : read.faults) ADD_FAILURE() << to_text(fault);
  ASSERT_EQ(read.sets.size(), 6U);
  EXPECT_EQ(read.sets[0].key, "lake_oak_aspen");
  EXPECT_EQ(read.sets[0].species.front(), SpeciesCode{833});
  for (const TallySet& set : read.sets) {
    ASSERT_GT(set.species.size(), 4U);
    EXPECT_EQ(set.species.back(), SpeciesCode{299});
    std::set<int> codes;
    for (const SpeciesCode code : set.species) codes.insert(code.fia);
    EXPECT_EQ(codes.size(), set.species.size()) << set.key;
    EXPECT_TRUE(codes.count(9901) && codes.count(9902) && codes.count(998)) << set.key;
  }
}

TEST(TallySets, EachKindOfFaultIsToldWithItsPlace) {
  const auto faults = [](const char* text) {
    const std::string header = "set_key,set_name,species_count,fia_codes,notes\n";
    return short_faults(read_tally_sets({"sets.csv", header + text}, species_table()).faults);
  };
  EXPECT_EQ(faults("a,A,2,802|833,\n"), Wants{});
  EXPECT_EQ(faults("a,A,3,802|833,\n"), Wants{"contradiction sets.csv:2:species_count"});
  EXPECT_EQ(faults("a,A,two,802|833,\n"), (Wants{"not_a_number sets.csv:2:species_count",
                                                 "contradiction sets.csv:2:species_count"}));
  EXPECT_EQ(faults("a,A,2,802|803,\n"), Wants{"unknown_species sets.csv:2:fia_codes"});
  EXPECT_EQ(faults("a,A,2,802|oak,\n"), Wants{"not_a_number sets.csv:2:fia_codes"});
  EXPECT_EQ(faults("a,A,2,802|802,\n"), Wants{"duplicate sets.csv:2:fia_codes"});
  EXPECT_EQ(faults("a,A,1,802,\na,B,1,833,\n"), Wants{"duplicate sets.csv:3:set_key"});
  EXPECT_EQ(faults(",A,1,802,\n"), Wants{"missing_value sets.csv:2:set_key"});
  EXPECT_EQ(faults("a,A,1,0,\n"), Wants{"unknown_species sets.csv:2:fia_codes"});
  EXPECT_EQ(faults("a,A,1,100000,\n"), Wants{"unknown_species sets.csv:2:fia_codes"});
  std::string many = "802";
  for (int i = 0; i < 500; ++i) many += "|802";
  EXPECT_EQ(faults(("a,A,501," + many + ",\n").c_str()),
            Wants{"out_of_range sets.csv:2:fia_codes"});
  const std::string other = "set_key,set_name,count,fia_codes,notes\na,A,1,802,\n";
  EXPECT_FALSE(read_tally_sets({"sets.csv", other}, species_table()).faults.empty());
}

}  // namespace
}  // namespace oaklight
