#include "core/release/crop_trees.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/release/acorns.hpp"
#include "tests/support/test_ids.hpp"
#include "tests/support/trees.hpp"

namespace oaklight {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::Not;

const ReleaseKnowledge& know() { return test::shipped_knowledge(); }

Traits traits_for(const TreeFacts& facts) {
  Traits traits;
  traits.species = know().species.find(facts.species);
  if (traits.species != nullptr) {
    traits.food = know().food.of(*traits.species, facts.conditions, false);
  }
  return traits;
}

std::vector<CropFault> faults(const std::string& text, Goal goal = Goal::mast) {
  const TreeFacts facts = test::trees(text)[0].facts;
  return crop_faults(facts, traits_for(facts), goal, know().settings);
}

int worth(const std::string& text, Goal goal = Goal::mast, OakGroup scarce = OakGroup::none,
          Producer producer = Producer::no_record) {
  const TreeFacts facts = test::trees(text)[0].facts;
  Traits traits = traits_for(facts);
  traits.acorns.producer = producer;
  return crop_worth(facts, traits, goal, scarce, know().settings);
}

TEST(CropFaults, AFullOakOfTheCanopyHasNone) {
  EXPECT_THAT(faults("WO 14 co lc=45 db=5"), IsEmpty());
  EXPECT_THAT(faults("WO 14 dom"), IsEmpty());  // what is not recorded is not held against it
  EXPECT_THAT(faults("WO 14 open lc=80"), IsEmpty());
}

TEST(CropFaults, EachFilterFindsItsFault) {
  EXPECT_THAT(faults("WO 14 dead"), ElementsAre(CropFault::dead));
  EXPECT_THAT(faults("WO 14"), ElementsAre(CropFault::crown_class_unknown));
  EXPECT_THAT(faults("WO 14 int"), ElementsAre(CropFault::crown_class));
  EXPECT_THAT(faults("WO 14 co lc=29"), ElementsAre(CropFault::live_crown));
  EXPECT_THAT(faults("WO 14 co lc=30"), IsEmpty());
  EXPECT_THAT(faults("WO 14 co db=25"), ElementsAre(CropFault::dieback));
  EXPECT_THAT(faults("WO 14 co db=20"), IsEmpty());
  EXPECT_THAT(faults("WO 14 co v_fork"), ElementsAre(CropFault::fork));
  EXPECT_THAT(faults("WO 4.9 co"), ElementsAre(CropFault::too_thin));
  EXPECT_THAT(faults("WO 5 co ht=20"), ElementsAre(CropFault::too_low));
  for (const char* risk : {"conk", "canker", "basal_wound", "root_lift", "lean_15", "lightning",
                           "wilt", "broken_top", "crack", "cavity_low"}) {
    EXPECT_THAT(faults(std::string("WO 14 co ") + risk), ElementsAre(CropFault::risk)) << risk;
  }
  EXPECT_THAT(faults("WO 14 co lean_10"), IsEmpty());
}

TEST(CropFaults, TwinsOnOneStumpPassForFoodButNotForTimber) {
  EXPECT_THAT(faults("WO 9 co v_fork clump"), IsEmpty());
  EXPECT_THAT(faults("WO 9 co v_fork clump", Goal::timber), Contains(CropFault::fork));
}

TEST(CropFaults, TheGoalDecidesWhatItMustGive) {
  EXPECT_THAT(faults("RM 14 co"), ElementsAre(CropFault::feeds_nothing));
  EXPECT_THAT(faults("RM 14 co den"), IsEmpty());
  EXPECT_THAT(faults("RM 14 co", Goal::look), IsEmpty());
  EXPECT_THAT(faults("YP 14 co", Goal::timber), IsEmpty());
  EXPECT_THAT(faults("YP 14 co"), ElementsAre(CropFault::feeds_nothing));
  EXPECT_THAT(faults("YP 14 co", Goal::mixed), IsEmpty());
  EXPECT_THAT(faults("WO 21 co", Goal::timber), ElementsAre(CropFault::too_thick));
  EXPECT_THAT(faults("WO 21 co"), IsEmpty());
  EXPECT_THAT(faults("WO 14 co crooked", Goal::timber), ElementsAre(CropFault::stem));
  EXPECT_THAT(faults("WO 14 co logs=0.5", Goal::timber), ElementsAre(CropFault::stem));
  EXPECT_THAT(faults("WO 14 co logs=1", Goal::timber), IsEmpty());
  EXPECT_THAT(faults("WO 14 co crooked"), IsEmpty());
  EXPECT_THAT(faults("TOH 14 co", Goal::look), ElementsAre(CropFault::invasive));
}

TEST(CropFaults, AHalfLogIsEightFeet) {
  // Definition: merchantable height is read in half logs of 8 ft. Asked for 8 ft, one is enough.
  const TreeFacts facts = test::trees("WO 14 co logs=0.5")[0].facts;
  const auto with_clean_log = [&](double feet) {
    const auto settings = test::knowledge_with({{"R1.10", {feet}}}).settings;
    return crop_faults(facts, traits_for(facts), Goal::timber, settings);
  };
  EXPECT_THAT(with_clean_log(8.0), IsEmpty());
  EXPECT_THAT(with_clean_log(8.05), ElementsAre(CropFault::stem));
}

TEST(CropFaults, AnIntermediateFruitTreePassesAsSmallSpeciesOnly) {
  TreeFacts dogwood = test::trees("BC 6 int")[0].facts;
  EXPECT_THAT(crop_faults(dogwood, traits_for(dogwood), Goal::mast, know().settings),
              ElementsAre(CropFault::crown_class));
  dogwood.species = SpeciesCode{491};
  EXPECT_THAT(crop_faults(dogwood, traits_for(dogwood), Goal::mast, know().settings), IsEmpty());
}

TEST(CropFaults, EveryFaultHasWordsAndARule) {
  for (int i = 0; i <= static_cast<int>(CropFault::poor_producer); ++i) {
    const FaultWords words = words_of(static_cast<CropFault>(i));
    EXPECT_FALSE(words.text.empty()) << i;
    EXPECT_THAT(words.rules, Not(IsEmpty())) << i;
  }
}

TEST(CropWorth, FollowsTheOrderOfTies) {
  // Rule R1.25, common practice: proven producer, larger crown, scarcer group, lower risk.
  EXPECT_GT(worth("WO 14 co", Goal::mast, OakGroup::none, Producer::excellent),
            worth("WO 20 dom", Goal::mast, OakGroup::none, Producer::no_record));
  EXPECT_GT(worth("WO 14 dom"), worth("WO 14 co"));
  EXPECT_GT(worth("WO 15 co"), worth("WO 14 co"));
  EXPECT_GT(worth("BO 14 co", Goal::mast, OakGroup::red),
            worth("BO 14 co", Goal::mast, OakGroup::white));
  EXPECT_GT(worth("WO 14 co db=0"), worth("WO 14 co db=20"));
  EXPECT_GT(worth("WO 14 co lc=40"), worth("WO 14 co lc=32"));
  EXPECT_EQ(worth("WO 14 co lc=40"), worth("WO 14 co lc=60"));
}

TEST(CropWorth, AWholeTreeIsWorthAThousandAndNoneIsWorthless) {
  // By definition: full marks come to 1000.
  EXPECT_EQ(worth("WO 30 dom lc=50 db=0", Goal::mast, OakGroup::white, Producer::excellent), 1000);
  EXPECT_GE(worth("BX 1 over"), 1);
}

TEST(CropWorth, TheGoalChangesTheOrder) {
  EXPECT_GT(worth("BO 12 co"), worth("YP 12 dom"));
  EXPECT_LT(worth("PH 12 co", Goal::timber), worth("BC 12 co", Goal::timber));
  EXPECT_GT(worth("RM 24 dom", Goal::look), worth("WO 12 co", Goal::look));
}

TEST(Acorns, ARecordIsJudgedByItsMeanAndItsGroup) {
  const AcornSettings& settings = know().settings.acorns;
  const Uuid tree = test::nth_id<WalkTreeId>(1).value;
  const auto record = [&](OakGroup group, std::initializer_list<double> tips) {
    std::vector<AcornCount> counts;
    int year = 2020;
    for (const double tip : tips) {
      counts.push_back({{}, WalkTreeId{tree}, year++, "", BranchTipCount{tip, {}}, ""});
    }
    const std::vector<AcornYear> years = {{{}, OakGroup::red, 2022, AcornCrop::good, ""},
                                          {{}, OakGroup::white, 2022, AcornCrop::fair, ""}};
    return acorn_record({tree, SpeciesCode{802}}, group, counts, years, {}, settings);
  };
  EXPECT_EQ(record(OakGroup::white, {18}).producer, Producer::excellent);
  EXPECT_EQ(record(OakGroup::red, {18}).producer, Producer::good);
  EXPECT_EQ(record(OakGroup::white, {6}).producer, Producer::fair);
  EXPECT_EQ(record(OakGroup::red, {7}).producer, Producer::poor);
  EXPECT_EQ(record(OakGroup::white, {21, 4, 19}).producer, Producer::good);  // mean 14.7
  EXPECT_EQ(record(OakGroup::white, {}).producer, Producer::no_record);
  EXPECT_EQ(record(OakGroup::none, {30}).producer, Producer::no_record);
  EXPECT_TRUE(record(OakGroup::red, {2, 1, 3}).proven_poor);
  EXPECT_FALSE(record(OakGroup::red, {2, 1}).proven_poor);       // two years
  EXPECT_FALSE(record(OakGroup::red, {2, 1, 9}).proven_poor);    // one fair year
  EXPECT_FALSE(record(OakGroup::white, {2, 1, 3}).proven_poor);  // no good year of its group
}

TEST(FoodRanks, ConditionAndGoalPickTheRow) {
  const Species& beech = *know().species.find(SpeciesCode{531});
  EXPECT_EQ(know().food.of(beech, {}, false).rank, 8);
  EXPECT_EQ(know().food.of(beech, {Condition::beech_bark}, false).rank, 2);
  const Species& aspen = *know().species.find(SpeciesCode{746});
  EXPECT_EQ(know().food.of(aspen, {}, false).rank, 2);
  EXPECT_EQ(know().food.of(aspen, {}, true).rank, 7);
  EXPECT_TRUE(know().food.of(*know().species.find(SpeciesCode{421}), {}, false).always_keep);
}

TEST(FoodRanks, ASpeciesWithoutARowTakesTwiceItsSpeciesRank) {
  const Species& sweetgum = *know().species.find(SpeciesCode{611});
  EXPECT_EQ(know().food.of(sweetgum, {}, false).rank, 2 * sweetgum.mast_rank);
}

TEST(FoodRanks, ABrokenTableIsRefusedWithTheLine) {
  const std::string head = "fia_code,when,kind,rank,always_keep,note\n";
  const auto fault = [&](const std::string& row) {
    return FoodTable::from_csv(head + row, "mast_rank.csv").error();
  };
  EXPECT_EQ(fault("802,,hard,11,0,x\n").code, ErrorCode::out_of_range);
  EXPECT_EQ(fault("802,,hard,11,0,x\n").where, "mast_rank.csv:2");
  EXPECT_EQ(fault("802,,tasty,9,0,x\n").code, ErrorCode::not_a_choice);
  EXPECT_EQ(fault("802,moon,hard,9,0,x\n").code, ErrorCode::not_a_choice);
  EXPECT_EQ(fault("802,,hard,9\n").code, ErrorCode::bad_csv);
  EXPECT_EQ(fault("802,,hard,9,0,x\n802,,hard,8,0,x\n").code, ErrorCode::duplicate);
}

}  // namespace
}  // namespace oaklight
