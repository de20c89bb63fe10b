#include "tests/store/store_fixture.hpp"
#include "tests/support/readings.hpp"

namespace oaklight::test {
namespace {

using RoundTrip = StoreTest;

TEST_F(RoundTrip, ANewFileHoldsAnUnnamedTractAndNothingElse) {
  const TractStore store = make();
  const auto data = store.load();
  ASSERT_TRUE(worked(data));
  EXPECT_EQ(difference(*data, TractData{}), "");
  EXPECT_EQ(store.mode(), OpenMode::read_write);
  EXPECT_EQ(store.path(), folder_ / "woods.gpkg");
}

TEST_F(RoundTrip, EveryFieldOfEveryRecordComesBack) {
  TractStore store = make();
  const TractData data = sample_records(store.ids(), true);
  ASSERT_TRUE(worked(store.apply(as_action(data, "import"))));
  const auto back = store.load();
  ASSERT_TRUE(worked(back));
  EXPECT_EQ(difference(*back, data), "");
}

TEST_F(RoundTrip, WhatWasNotRecordedComesBackAsNotRecorded) {
  TractStore store = make();
  const TractData data = sample_records(store.ids(), false);
  ASSERT_TRUE(worked(store.apply(as_action(data, "import"))));
  const auto back = store.load();
  ASSERT_TRUE(worked(back));
  EXPECT_EQ(difference(*back, data), "");
}

TEST_F(RoundTrip, RecordsSurviveClosingTheFile) {
  TractData data;
  {
    TractStore store = make();
    data = sample_records(store.ids(), true);
    ASSERT_TRUE(worked(store.apply(as_action(data, "import"))));
  }
  const auto back = open().load();
  ASSERT_TRUE(worked(back));
  EXPECT_EQ(difference(*back, data), "");
}

TEST_F(RoundTrip, ALookerSeesTheSameRecords) {
  TractStore store = make();
  const TractData data = sample_records(store.ids(), true);
  ASSERT_TRUE(worked(store.apply(as_action(data, "import"))));
  const auto back = open("woods.gpkg", OpenMode::read_only).load();
  ASSERT_TRUE(worked(back));
  EXPECT_EQ(difference(*back, data), "");
}

TEST_F(RoundTrip, ACorrectionReplacesTheRecordAndClearsWhatItLeavesOut) {
  TractStore store = make();
  TractData data = sample_records(store.ids(), true);
  ASSERT_TRUE(worked(store.apply(as_action(data, "import"))));
  data.trees[0] = {data.trees[0].id,
                   data.trees[0].plot,
                   {SpeciesCode{802}, dbh_in(9.9), {}, {}, {}, {}, {}, {}, {}, {}},
                   1,
                   1,
                   {},
                   {},
                   ""};
  ASSERT_TRUE(worked(store.apply({"correct a tree", {data.trees[0]}})));
  EXPECT_EQ(difference(store.load().value(), data), "");
}

TEST_F(RoundTrip, ARemovedRecordIsLeftOutButItsRowStays) {
  TractStore store = make();
  TractData data = sample_records(store.ids(), true);
  ASSERT_TRUE(worked(store.apply(as_action(data, "import"))));
  ASSERT_TRUE(worked(store.apply({"remove a tree", {Remove{data.trees[0].id}}})));
  data.trees.clear();
  EXPECT_EQ(difference(store.load().value(), data), "");
  EXPECT_EQ(raw_sql("SELECT deleted FROM tree"), std::vector<std::string>{"1"});
}

TEST_F(RoundTrip, EachKindOfRecordCanBeRemoved) {
  TractStore store = make();
  const TractData data = sample_records(store.ids(), true);
  ASSERT_TRUE(worked(store.apply(as_action(data, "import"))));
  const Action all{
      "remove all",
      {Remove{data.stumps[0].id}, Remove{data.marks[0].id}, Remove{data.contacts[0].id},
       Remove{data.walk_trees[0].id}, Remove{data.walk_trees[1].id}, Remove{data.regens[0].id},
       Remove{data.trees[0].id}, Remove{data.plots[0].id}, Remove{data.cruises[0].id},
       Remove{data.stands[0].id}, Remove{data.lines[0].id}, Remove{data.acorn_counts[0].id},
       Remove{data.acorn_counts[1].id}, Remove{data.acorn_years[0].id}}};
  ASSERT_TRUE(worked(store.apply(all)));
  TractData bare;
  bare.tract = data.tract;
  EXPECT_EQ(difference(store.load().value(), bare), "");
}

// R1: a reading is stored as the whole number that the instrument shows.
TEST_F(RoundTrip, ReadingsLieInTheFileAsTheInstrumentShowedThem) {
  TractStore store = make();
  const TractData data = sample_records(store.ids(), true);
  ASSERT_TRUE(worked(store.apply(as_action(data, "import"))));
  EXPECT_EQ(raw_sql("SELECT units || ' ' || dbh_tenths || ' ' || height_hundredths || ' ' ||"
                    " distance_hundredths || ' ' || azimuth_tenths FROM tree"),
            std::vector<std::string>{"us 123 7125 3307 1234"});
  EXPECT_EQ(raw_sql("SELECT units || ' ' || distance_hundredths || ' ' || azimuth_tenths"
                    " FROM contact"),
            std::vector<std::string>{"metric 521 0"});
  EXPECT_EQ(raw_sql("SELECT conditions FROM tree"), std::vector<std::string>{"den|conk|legacy"});
  EXPECT_EQ(raw_sql("SELECT sides FROM contact"), std::vector<std::string>{"N|W"});
  EXPECT_EQ(raw_sql("SELECT rules FROM mark"), std::vector<std::string>{"R1.50|R4.02"});
}

// Null is not zero.
TEST_F(RoundTrip, NotRecordedIsNullInTheFile) {
  TractStore store = make();
  ASSERT_TRUE(worked(store.apply(as_action(sample_records(store.ids(), false), "import"))));
  EXPECT_EQ(raw_sql("SELECT count(*) FROM tree WHERE crown_class IS NULL AND live_crown_pct IS NULL"
                    " AND dieback_pct IS NULL AND height_hundredths IS NULL AND half_logs IS NULL"
                    " AND azimuth_tenths IS NULL AND distance_hundredths IS NULL"),
            std::vector<std::string>{"1"});
  EXPECT_EQ(raw_sql("SELECT geom FROM plot"), std::vector<std::string>{"NULL"});
}

TEST_F(RoundTrip, NewIdsComeAfterEveryIdInTheFileEvenWhenTheClockWasSetBack) {
  Uuid newest;
  {
    TractStore store = make();
    TractData data = sample_records(store.ids(), true);
    ASSERT_TRUE(worked(store.apply(as_action(data, "import"))));
    newest = store.ids().next();
    data.trees[0].id.value = newest;
    ASSERT_TRUE(worked(store.apply({"tally", {data.trees[0]}})));
  }
  clock_.ms -= 86'400'000;  // a day
  TractStore store = open();
  EXPECT_GT(store.ids().next(), newest);
}

TEST_F(RoundTrip, TheSameWorkGivesTheSameRecordsInTheFile) {
  const auto dump = [&](const std::string& name) {
    chance_.seed(1);
    TractStore store = make(name);
    EXPECT_TRUE(worked(store.apply(as_action(sample_records(store.ids(), true), "import"))));
    return raw_sql(
        "SELECT row_crc FROM tree UNION ALL SELECT row_crc FROM user_action UNION ALL"
        " SELECT row_crc FROM change UNION ALL SELECT last_change FROM gpkg_contents",
        name);
  };
  EXPECT_EQ(dump("one.gpkg"), dump("two.gpkg"));
}

}  // namespace
}  // namespace oaklight::test
