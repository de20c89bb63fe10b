// Every fault that an import can find in its tables, each with its exact place, and nothing else
// found beside it. Those of maps are in map_faults_test.cpp.
#include <gtest/gtest.h>

#include "tests/forms/cruise_files.hpp"

namespace oaklight {
namespace {

struct Edit {
  const char* file;
  const char* from;
  const char* to;
};

struct FaultCase {
  const char* label;
  std::vector<Edit> edits;
  std::vector<std::string> want;  ///< "code where", in the order told
};

class ImportFault : public testing::TestWithParam<FaultCase> {};

TEST_P(ImportFault, IsToldWithItsPlace) {
  CruiseFiles files = test::good_files();
  for (const Edit& edit : GetParam().edits) {
    test::replace_once(test::file_of(files, edit.file).text, edit.from, edit.to);
  }
  const auto faults = test::import_files(files).faults;
  EXPECT_EQ(test::short_faults(faults), GetParam().want);
  for (const Error& fault : faults) {
    EXPECT_FALSE(fault.what.empty()) << fault.where;
    EXPECT_FALSE(fault.fix.empty()) << fault.where;
  }
}

std::string label_of(const testing::TestParamInfo<FaultCase>& info) { return info.param.label; }

const FaultCase kCsvCases[] = {
    {"UnclosedQuote", {{"plots.csv", "rocks", "\"rocks"}}, {"bad_csv plots.csv:3"}},
    {"QuoteInsideACell", {{"trees.csv", "a snag", "5\" snag"}}, {"bad_csv trees.csv:4"}},
    {"TextAfterAQuote", {{"trees.csv", "a snag", "\"a\" snag"}}, {"bad_csv trees.csv:4"}},
    {"TooFewCells",
     {{"regeneration.csv", "QUAL,over_4_5_ft,0", "QUAL,over_4_5_ft"}},
     {"bad_csv regeneration.csv:3"}},
    {"TooManyCells",
     {{"regeneration.csv", "red maple,under", "maple, red,under"}},
     {"bad_csv regeneration.csv:4"}},
    {"NotUtf8", {{"trees.csv", "a snag", "a sn\xE9g"}}, {"bad_csv trees.csv:4"}},
    {"UnknownColumn", {{"stands.csv", "age_years", "age"}}, {"bad_csv stands.csv:1:age"}},
    {"ColumnTwice", {{"stands.csv", "age_years", "goal"}}, {"bad_csv stands.csv:1:goal"}},
    {"ColumnWithoutName", {{"stands.csv", "age_years", ""}}, {"bad_csv stands.csv:1"}},
    {"RequiredColumnMissing",
     {{"regeneration.csv", "height_class", "note"}},
     {"bad_csv regeneration.csv:1:note", "bad_csv regeneration.csv:1:height_class"}},
    {"TwoRowsInTract",
     {{"tract.csv", ",yes\n", ",yes\nOther,OH,,,,,,,,\n"}},
     {"contradiction tract.csv:3"}},
    {"TwoUnitSystems",
     {{"trees.csv", "height_ft", "height_m"}},
     {"contradiction trees.csv:1:height_m"}},
    {"SteeringCharacter",
     {{"trees.csv", "a snag", "a \x1B[31m snag"}},
     {"bad_csv trees.csv:4:note"}},
    {"SteeringCharacterOfUnicode",
     {{"trees.csv", "a snag", "a \xE2\x80\xAE snag"}},
     {"bad_csv trees.csv:4:note"}},
    {"LineBreakInATag", {{"trees.csv", ",901,", ",\"90\n1\","}}, {"bad_csv trees.csv:2:tag"}},
};
INSTANTIATE_TEST_SUITE_P(Csv, ImportFault, testing::ValuesIn(kCsvCases), label_of);

const FaultCase kCellCases[] = {
    {"EmptyRequiredCell",
     {{"trees.csv", "Ridge,1,833,6.3", "Ridge,1,,6.3"}},
     {"missing_value trees.csv:3:species"}},
    {"EmptyStatus",
     {{"plots.csv", "Ridge,2,empty", "Ridge,2,"}},
     {"missing_value plots.csv:3:status"}},
    {"NotANumber", {{"trees.csv", "14.2,1,2", "14-2,1,2"}}, {"not_a_number trees.csv:2:dbh_in"}},
    {"DecimalComma",
     {{"trees.csv", "14.2,1,2", "\"14,2\",1,2"}},
     {"not_a_number trees.csv:2:dbh_in"}},
    {"UnitInTheCell",
     {{"trees.csv", "14.2,1,2", "14.2 in,1,2"}},
     {"not_a_number trees.csv:2:dbh_in"}},
    {"NotANumberWord", {{"trees.csv", "14.2,1,2", "nan,1,2"}}, {"not_a_number trees.csv:2:dbh_in"}},
    {"DbhOutOfRange", {{"trees.csv", "14.2,1,2", "412,1,2"}}, {"out_of_range trees.csv:2:dbh_in"}},
    {"DbhZero", {{"trees.csv", "14.2,1,2", "0,1,2"}}, {"out_of_range trees.csv:2:dbh_in"}},
    {"DbhTooFine", {{"trees.csv", "14.2,1,2", "14.25,1,2"}}, {"out_of_range trees.csv:2:dbh_in"}},
    {"PercentOver100",
     {{"trees.csv", ",40,5,", ",140,5,"}},
     {"out_of_range trees.csv:2:live_crown_pct"}},
    {"EdgeCountThree",
     {{"trees.csv", "14.2,1,2", "14.2,1,3"}},
     {"out_of_range trees.csv:2:edge_count"}},
    {"NoStems", {{"trees.csv", "14.2,1,2", "14.2,0,2"}}, {"out_of_range trees.csv:2:stems"}},
    {"HalfAStem", {{"trees.csv", "14.2,1,2", "14.2,1.5,2"}}, {"not_a_number trees.csv:2:stems"}},
    {"AzimuthOver360", {{"trees.csv", ",360,", ",361,"}}, {"out_of_range trees.csv:5:azimuth_deg"}},
    {"LogsNotInHalves", {{"trees.csv", ",78,2.5,", ",78,2.3,"}}, {"out_of_range trees.csv:2:logs"}},
    {"UnknownWord",
     {{"trees.csv", "live,dominant", "live,domnant"}},
     {"not_a_choice trees.csv:2:crown_class"}},
    {"UnknownCondition",
     {{"trees.csv", "den|conk", "den|konk"}},
     {"not_a_choice trees.csv:2:conditions"}},
    {"UnknownSpecies",
     {{"trees.csv", "white oak", "wite oak"}},
     {"unknown_species trees.csv:2:species"}},
    {"AmbiguousSpecies",
     {{"trees.csv", "white oak", "soft maple"}},
     {"unknown_species trees.csv:2:species"}},
    {"NotADay", {{"plots.csv", "2026-05-05", "5/5/2026"}}, {"not_a_choice plots.csv:2:date"}},
    {"NoSuchDay", {{"plots.csv", "2026-05-05", "2026-02-29"}}, {"not_a_choice plots.csv:2:date"}},
    {"NeitherYesNorNo", {{"tract.csv", ",yes", ",maybe"}}, {"not_a_choice tract.csv:2:demo"}},
    {"StateNotTwoLetters", {{"tract.csv", ",OH,", ",O1,"}}, {"not_a_choice tract.csv:2:state"}},
    {"TextTooLong",
     {{"trees.csv", ",901,", ",a tag that nobody could nail on,"}},
     {"out_of_range trees.csv:2:tag"}},
    {"LatitudeAndLongitudeSwapped",
     {{"plots.csv", "39.3110,-82.2110", "-82.2110,39.3110"}},
     {"out_of_range plots.csv:2:lat"}},
    {"LatitudeAlone",
     {{"plots.csv", "39.3110,-82.2110", "39.3110,"}},
     {"missing_value plots.csv:2:lon"}},
    {"MinusSignMissing",
     {{"plots.csv", "39.3110,-82.2110", "39.3110,82.2110"}},
     {"contradiction plots.csv:2:lat"}},
    {"FarFromTheRest",
     {{"plots.csv", "39.3110,-82.2110", "38.3110,-82.2110"}},
     {"contradiction plots.csv:2:lat"}},
    {"AccuracyWithoutPosition",
     {{"plots.csv", "39.3120,-82.2120,,30", ",,5,30"}},
     {"contradiction plots.csv:3:accuracy_m"}},
};
INSTANTIATE_TEST_SUITE_P(Cell, ImportFault, testing::ValuesIn(kCellCases), label_of);

const FaultCase kStandCases[] = {
    {"StandTwice",
     {{"stands.csv", "Cove,20", "Ridge,20"}},
     {"duplicate stands.csv:3:stand", "unknown_reference plots.csv:5:stand"}},
    {"StandDiffersInCapitals",
     {{"stands.csv", "Cove,20,,timber,,\n", "Cove,20,,timber,,\ncove,5,,,,\n"}},
     {"duplicate stands.csv:4:stand"}},
    {"MoreWalkedThanThereIs",
     {{"stands.csv", "42.5,12", "42.5,47"}},
     {"contradiction stands.csv:2:walked_acres"}},
    {"UnknownStandIsToldOnceAFile",
     {{"stands.csv", "Ridge,42.5", "Rigde,42.5"}},
     // Trees and seedlings name plots of plots.csv, whose stand was told there.
     {"unknown_reference plots.csv:2:stand", "unknown_reference crop_trees.csv:2:stand",
      "unknown_reference map.geojson:/features/0/properties/stand"}},
    {"ABrokenStandsFileIsToldAlone",
     {{"stands.csv", "Ridge,42.5", "\"Ridge,42.5"}},
     {"bad_csv stands.csv:2"}},
};
INSTANTIATE_TEST_SUITE_P(Stand, ImportFault, testing::ValuesIn(kStandCases), label_of);

const FaultCase kPlotCases[] = {
    {"PlotTwice",
     {{"plots.csv", "points,Ridge,2,empty", "points,Ridge,1,measured"},
      {"regeneration.csv", "Ridge,2,QUAL", "Ridge,1,QUAL"},
      {"regeneration.csv", "Ridge,2,red", "Ridge,1,red"}},
     {"duplicate plots.csv:3:plot"}},
    {"SkippedWithoutReason",
     {{"plots.csv", "posted land", ""}},
     {"missing_value plots.csv:4:skip_reason"}},
    {"ReasonWithoutSkip",
     {{"plots.csv", "planned,,10", "planned,rain,10"}},
     {"contradiction plots.csv:5:skip_reason"}},
    {"FactorAndArea",
     {{"plots.csv", "fixed,Cove,F1,measured,,,0.1", "fixed,Cove,F1,measured,,10,0.1"}},
     {"contradiction plots.csv:6:baf_ft2_ac"}},
    {"NeitherFactorNorArea",
     {{"plots.csv", "measured,,,0.1,0.02,4.6,1.0", "measured,,,,,,1.0"}},
     {"missing_value plots.csv:6:baf_ft2_ac"}},
    {"AnotherDesignInOneCruise",
     {{"plots.csv", "empty,,10,", "empty,,20,"}},
     {"contradiction plots.csv:3:baf_ft2_ac"}},
    {"DesignLeftEmptyLater",
     {{"plots.csv", "planned,,10,,,,4.6", "planned,,10,,,,"}},
     {"contradiction plots.csv:5:min_dbh_in"}},
    {"SmallPlotNotSmaller",
     {{"plots.csv", "0.1,0.02,4.6", "0.1,0.1,4.6"}},
     {"contradiction plots.csv:6:small_plot_ac"}},
    {"SmallPlotWithoutItsSize",
     {{"plots.csv", "0.1,0.02,4.6", "0.1,0.02,"}},
     {"missing_value plots.csv:6:small_below_in"}},
    {"SmallPlotOfAPoint",
     {{"plots.csv", "planned,,10,,,,4.6", "planned,,10,,0.02,4.8,4.6"}},
     {"contradiction plots.csv:5:small_plot_ac", "contradiction plots.csv:5:small_plot_ac",
      "contradiction plots.csv:5:small_below_in"}},
    {"NothingFitsTheSmallPlot",
     {{"plots.csv", "0.1,0.02,4.6,1.0", "0.1,0.02,4.6,4.6"}},
     {"contradiction plots.csv:6:small_below_in", "contradiction trees.csv:6:dbh_in"}},
    {"PlotOfTreesUnknown",
     {{"plots.csv", "points,Ridge,1,", "points,Ridge,11,"}},
     {"contradiction plots.csv:2:status", "unknown_reference trees.csv:2:plot",
      "unknown_reference regeneration.csv:2:plot"}},
    {"MeasuredWithoutTrees",
     {{"plots.csv", "Ridge,2,empty", "Ridge,2,measured"}},
     {"contradiction plots.csv:3:status"}},
    {"EmptyWithTrees",
     {{"plots.csv", "Ridge,1,measured", "Ridge,1,empty"}},
     {"contradiction plots.csv:2:status"}},
    {"PlannedWithTrees",
     {{"plots.csv", "F1,measured", "F1,planned"}},
     {"contradiction plots.csv:6:status"}},
    {"SkippedWithTreesAndSeedlings",
     {{"plots.csv", "Ridge,1,measured,", "Ridge,1,skipped,rain"}},
     {"contradiction plots.csv:2:status", "contradiction regeneration.csv:2:plot"}},
};
INSTANTIATE_TEST_SUITE_P(Plot, ImportFault, testing::ValuesIn(kPlotCases), label_of);

const FaultCase kTreeCases[] = {
    {"UnderTheSmallestDbh",
     {{"trees.csv", "ACRU,5.1", "ACRU,4.5"}},
     {"contradiction trees.csv:4:dbh_in"}},
    {"AzimuthWithoutDistance",
     {{"trees.csv", "90,20.5", "90,"}},
     {"missing_value trees.csv:2:distance_ft"}},
    {"DistanceWithoutAzimuth",
     {{"trees.csv", "90,20.5", ",20.5"}},
     {"missing_value trees.csv:2:azimuth_deg"}},
    // A circle of 0.1 ac has a radius of sqrt(4356 / pi) = 37.24 ft, one of 0.02 ac 16.65 ft:
    // derived.
    {"OutsideThePlot",
     {{"trees.csv", "36.00", "37.30"}},
     {"contradiction trees.csv:5:distance_ft"}},
    {"OutsideTheSmallPlot",
     {{"trees.csv", "12,11.2", "12,16.75"}},
     {"contradiction trees.csv:6:distance_ft"}},
    {"TagTwice", {{"trees.csv", ",902,", ",901,"}}, {"duplicate trees.csv:5:tag"}},
    {"OneTagForSeveralStems",
     {{"trees.csv", "14.2,1,2", "14.2,2,2"}},
     {"contradiction trees.csv:2:tag"}},
    {"DeadWithALiveCrown",
     {{"trees.csv", "dead,,0,", "dead,,10,"}},
     {"contradiction trees.csv:4:live_crown_pct"}},
    {"LogsLongerThanTheTree",
     {{"trees.csv", ",78,2.5,", ",39,2.5,"}},
     {"contradiction trees.csv:2:logs"}},
    {"SeedlingsCountedTwice",
     {{"regeneration.csv", "Ridge,2,red maple,under_1_ft", "Ridge,2,QUAL,over_4_5_ft"}},
     {"duplicate regeneration.csv:4:species"}},
    {"SeedlingsWithoutPlotArea",
     {{"regeneration.csv", "Ridge,1,QUAL", "Cove,F1,QUAL"}},
     {"missing_value plots.csv:6:regen_plot_ac"}},
};
INSTANTIATE_TEST_SUITE_P(Tree, ImportFault, testing::ValuesIn(kTreeCases), label_of);

const FaultCase kCardCases[] = {
    {"CardWithoutCropTree",
     {{"crop_trees.csv", "Ridge,21,crop,", "Ridge,22,crop,"}},
     // Tree 21 is a neighbour on card 17, and the row that told what it is now tells of tree 22.
     {"missing_value crop_trees.csv:4:species", "missing_value crop_trees.csv:4:dbh_in",
      "missing_value crop_trees.csv:8:card"}},
    {"CardWithTwoCropTrees",
     {{"crop_trees.csv", "Ridge,21,crop,,,,black oak,13.3,codominant,,,,,,,,,39.3112,-82.2108",
       "Ridge,17,crop,,,,,,,,,,,,,,,,"}},
     {"missing_value crop_trees.csv:4:species", "missing_value crop_trees.csv:4:dbh_in",
      "duplicate crop_trees.csv:7:role", "missing_value crop_trees.csv:8:card"}},
    {"TagIsNotTheCard",
     {{"crop_trees.csv", "Ridge,17,crop,17", "Ridge,17,crop,71"}},
     {"contradiction crop_trees.csv:2:tag"}},
    {"ItsOwnNeighbour",
     {{"crop_trees.csv", "Ridge,21,neighbour,17", "Ridge,21,neighbour,21"}},
     {"contradiction crop_trees.csv:8:tag"}},
    {"NeighbourTwiceOnACard",
     {{"crop_trees.csv", "neighbour,19,W,over,beech,11.0,,live,,,,,beech_bark|den",
       "neighbour,18,W,over,,,,live,,,,,"}},
     {"duplicate crop_trees.csv:5:tag"}},
    {"NeighbourWithoutTag",
     {{"crop_trees.csv", "neighbour,19,", "neighbour,,"}},
     {"missing_value crop_trees.csv:5:tag"}},
    {"CardInTwoStands",
     {{"crop_trees.csv", "Ridge,17,neighbour,19", "Cove,17,neighbour,19"}},
     {"contradiction crop_trees.csv:5:stand"}},
    {"TouchesOnNoSide",
     {{"crop_trees.csv", "neighbour,19,W,over", "neighbour,19,,over"}},
     {"missing_value crop_trees.csv:5:side"}},
    {"AzimuthPointsAwayFromTheSide",
     {{"crop_trees.csv", "14.5,350", "14.5,170"}},
     {"contradiction crop_trees.csv:3:azimuth_deg"}},
    {"OpenSideIsCrowded",
     {{"crop_trees.csv", "17,open,,S", "17,open,,N"}},
     {"contradiction crop_trees.csv:6:side"}},
    {"OpenSideTwice",
     {{"crop_trees.csv", "Ridge,17,open,,S,,,,,,,,,,,,,,,,\n",
       "Ridge,17,open,,S,,,,,,,,,,,,,,,,\nRidge,17,open,,E|S,,,,,,,,,,,,,,,,\n"}},
     {"duplicate crop_trees.csv:7:side"}},
    {"OpenSideWithoutSide",
     {{"crop_trees.csv", "17,open,,S", "17,open,,"}},
     {"missing_value crop_trees.csv:6:side"}},
    {"OpenSideWithATree",
     {{"crop_trees.csv", "17,open,,S,,,", "17,open,,S,,beech,"}},
     {"contradiction crop_trees.csv:6:species"}},
    {"CropTreeWithASide",
     {{"crop_trees.csv", "crop,17,,,white", "crop,17,N,,white"}},
     {"contradiction crop_trees.csv:2:side"}},
    {"DistanceZero",
     {{"crop_trees.csv", "12.2,,", "0,,"}},
     {"out_of_range crop_trees.csv:5:distance_ft"}},
    {"FactsContradict",
     {{"crop_trees.csv", "not_looked,red maple,9.4", "not_looked,sugar maple,9.8"}},
     {"contradiction crop_trees.csv:9:species", "contradiction crop_trees.csv:9:dbh_in"}},
    {"PositionsOfOneTreeContradict",
     {{"crop_trees.csv", "22.0,300,,,,", "22.0,300,39.3110,-82.2110,,"},
      {"crop_trees.csv", "14.5,350,,,,", "14.5,350,39.3120,-82.2110,,"}},
     {"contradiction crop_trees.csv:9:lat"}},
    {"SpeciesToldNowhere",
     {{"crop_trees.csv", "over,beech,11.0", "over,,11.0"}},
     {"missing_value crop_trees.csv:5:species"}},
    {"DbhToldNowhere",
     {{"crop_trees.csv", "over,beech,11.0", "over,beech,"}},
     {"missing_value crop_trees.csv:5:dbh_in"}},
    {"TwoCardsSeeAPairOtherwise",
     {{"crop_trees.csv", "neighbour,17,W,none", "neighbour,17,W,touches"}},
     {"contradiction crop_trees.csv:8:seen"}},
    {"BothReachOverTheOther",
     {{"crop_trees.csv", "neighbour,17,W,none", "neighbour,17,W,over"},
      {"crop_trees.csv", "neighbour,21,,none", "neighbour,21,,over"}},
     {"contradiction crop_trees.csv:8:seen"}},
    {"TwoDistancesOfAPair",
     {{"crop_trees.csv", "31.4,278", "37.0,278"}},
     {"contradiction crop_trees.csv:8:distance_ft"}},
    {"AzimuthIsNotTheWayBack",
     {{"crop_trees.csv", "31.4,278", "31.4,310"}},
     {"contradiction crop_trees.csv:8:azimuth_deg"}},
    {"DeadOnOneRowWithALiveCrownOnAnother",
     {{"crop_trees.csv", "touches,red maple,9.4,codominant,,,,",
       "touches,red maple,9.4,codominant,dead,,,"},
      {"crop_trees.csv", "not_looked,red maple,9.4,,,,", "not_looked,red maple,9.4,,,30,"}},
     {"contradiction crop_trees.csv:3:live_crown_pct"}},
};
INSTANTIATE_TEST_SUITE_P(Card, ImportFault, testing::ValuesIn(kCardCases), label_of);

}  // namespace
}  // namespace oaklight
