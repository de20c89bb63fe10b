// What the session promises beyond its parts: one action for one call, hands before rules, files
// written whole.
#include "core/session/tract_session.hpp"

#include <gtest/gtest.h>

#include "core/session/files.hpp"
#include "tests/support/demo_files.hpp"
#include "tests/support/temp_dir.hpp"

namespace oaklight::test {
namespace {

const NamedText kVolumes{"local_volume.csv",
                         "species,dbh_in,log_rule,board_feet,cords,source\n"
                         "802,12,international,60,0.2,invented\n"};

class SessionTest : public testing::Test {
 protected:
  StoreContext context() { return {clock_, system_random(), "test"}; }

  /// A session on the demo tract.
  TractSession demo() {
    auto session = TractSession::create(folder_ / "hollow.gpkg", context());
    EXPECT_TRUE(session) << to_text(session.error());
    const auto report = session->import_files(demo_files());
    EXPECT_TRUE(report);
    EXPECT_TRUE(report->faults.empty()) << to_text(report->faults.front());
    return *std::move(session);
  }

  TempDir folder_;
  SystemClock clock_;
};

TEST_F(SessionTest, AnImportIsOneStepToUndo) {
  TractSession session = demo();
  ASSERT_TRUE(session.store().undo());
  const auto data = session.data();
  ASSERT_TRUE(data);
  EXPECT_TRUE(data->plots.empty());
  EXPECT_TRUE(data->trees.empty());
  EXPECT_TRUE(data->walk_trees.empty());
  ASSERT_TRUE(session.store().redo());
  EXPECT_EQ(session.data()->plots.size(), 36U);
}

/// What undo and redo offer, the newest first.
std::vector<std::string> labels_of(const TractSession& session) {
  std::vector<std::string> labels;
  const auto history = session.store().history(10);
  for (const HistoryEntry& line : history.value()) labels.push_back(line.label);
  return labels;
}

TEST_F(SessionTest, AVolumeTableIsAStepToUndoAfterItsRecords) {
  auto session = TractSession::create(folder_ / "hollow.gpkg", context()).value();
  const std::string before = session.store().form_text(kVolumes.name).value();
  CruiseFiles files{.tract = demo_file("tract.csv"), .stands = demo_file("stands.csv")};
  files.local_volume = kVolumes;
  ASSERT_EQ(session.import_files(files)->volume_lines, 1);
  EXPECT_EQ(labels_of(session),
            (std::vector<std::string>{"import tract.csv, stands.csv", "change local_volume.csv"}));
  ASSERT_TRUE(session.store().undo());
  EXPECT_TRUE(session.data()->stands.empty());
  EXPECT_EQ(session.store().form_text(kVolumes.name).value(), kVolumes.text);
  ASSERT_TRUE(session.store().undo());
  EXPECT_EQ(session.store().form_text(kVolumes.name).value(), before);
}

// A kill between the two actions leaves the first.
TEST_F(SessionTest, AnImportThatWasKilledAfterItsVolumeTableIsFinishedByTheSame) {
  auto session = TractSession::create(folder_ / "hollow.gpkg", context()).value();
  ASSERT_TRUE(session.store().set_form_text(kVolumes.name, kVolumes.text));
  CruiseFiles files = demo_files();
  files.local_volume = kVolumes;
  const auto report = session.import_files(files);
  ASSERT_TRUE(report);
  EXPECT_TRUE(report->faults.empty());
  EXPECT_EQ(report->volume_lines, 1);
  EXPECT_EQ(session.data()->plots.size(), 36U) << "by hand: rows of demo_plots/plots.csv";
  EXPECT_EQ(labels_of(session).size(), 2U) << "the table was not written again";
}

TEST_F(SessionTest, AFaultyFileLeavesTheTractAsItWas) {
  TractSession session = demo();
  const std::size_t trees = session.data()->trees.size();
  CruiseFiles files;
  files.trees = NamedText{"trees.csv", "stand,plot,species,dbh_in\nNowhere,1,white oak,12.0\n"};
  const auto report = session.import_files(files);
  ASSERT_TRUE(report);
  EXPECT_FALSE(report->faults.empty());
  EXPECT_EQ(session.data()->trees.size(), trees);
  EXPECT_EQ(session.store().history(10)->size(), 1U) << "only the first import is in the history";
}

TEST_F(SessionTest, RecommendingAgainChangesNothingThatItSaidBefore) {
  TractSession session = demo();
  const auto first = session.recommend();
  ASSERT_TRUE(first);
  const auto written = session.store_marks(*first);
  ASSERT_TRUE(written);
  EXPECT_EQ(static_cast<std::size_t>(*written), session.data()->walk_trees.size());
  const auto second = session.recommend();
  ASSERT_TRUE(second);
  EXPECT_EQ(*session.store_marks(*second), 0);
}

TEST_F(SessionTest, AMarkMadeByHandStandsAgainstTheRules) {
  TractSession session = demo();
  const auto plans = session.recommend();
  ASSERT_TRUE(plans);
  ASSERT_TRUE(session.store_marks(*plans));
  auto data = session.data();
  ASSERT_TRUE(data);
  Mark by_hand = data->marks.front();
  by_hand.verdict = Verdict::look_again;
  by_hand.reason = "Look again: the owner wants to see it first.";
  by_hand.by_hand = true;
  ASSERT_TRUE(session.store().apply({"overrule", {by_hand}}));
  ASSERT_TRUE(session.store_marks(*session.recommend()));
  data = session.data();
  ASSERT_TRUE(data);
  int found = 0;
  for (const Mark& mark : data->marks) {
    if (mark.id != by_hand.id) continue;
    ++found;
    EXPECT_EQ(mark.verdict, Verdict::look_again);
    EXPECT_TRUE(mark.by_hand);
  }
  EXPECT_EQ(found, 1);
}

TEST_F(SessionTest, EveryTreeOfTheWalkHasOneVerdict) {
  TractSession session = demo();
  const auto plans = session.recommend();
  ASSERT_TRUE(plans);
  std::size_t verdicts = 0;
  for (const StandPlan& plan : *plans) {
    verdicts += plan.plan.trees.size();
    EXPECT_EQ(plan.plan.trees.size(), plan.marks.size());
  }
  EXPECT_EQ(verdicts, session.data()->walk_trees.size());
}

TEST_F(SessionTest, RecommendingWithoutCardsSaysWhatIsMissing) {
  auto session = TractSession::create(folder_ / "bare.gpkg", context());
  ASSERT_TRUE(session);
  const auto plans = session->recommend();
  ASSERT_FALSE(plans);
  EXPECT_EQ(plans.error().code, ErrorCode::no_data);
  EXPECT_NE(plans.error().fix.find("crop tree cards"), std::string::npos);
}

TEST_F(SessionTest, FormsThatAPersonBrokeAreNamedWhenTheTractIsOpened) {
  {
    TractSession session = demo();
    ASSERT_TRUE(session.store().set_form_text("release.rule.json", "{ not json"));
  }
  const auto opened = TractSession::open(folder_ / "hollow.gpkg", OpenMode::read_only, context());
  ASSERT_FALSE(opened);
  EXPECT_EQ(opened.error().code, ErrorCode::bad_json);
  EXPECT_NE(opened.error().where.find("release.rule.json"), std::string::npos);
}

TEST(Files, AWriteReplacesTheWholeFileAndLeavesNoPart) {
  const TempDir folder;
  ASSERT_TRUE(write_whole_file(folder / "list.csv", "first and longer"));
  ASSERT_TRUE(write_whole_file(folder / "list.csv", "second"));
  EXPECT_EQ(*read_whole_file(folder / "list.csv"), "second");
  EXPECT_FALSE(std::filesystem::exists(folder / "list.csv.part"));
}

TEST(Files, WhatCannotBeWrittenOrReadSaysSo) {
  const TempDir folder;
  const auto written = write_whole_file(folder.path() / "no" / "such" / "list.csv", "x");
  ASSERT_FALSE(written);
  EXPECT_EQ(written.error().code, ErrorCode::cannot_write);
  const auto read = read_whole_file(folder / "absent.csv");
  ASSERT_FALSE(read);
  EXPECT_EQ(read.error().code, ErrorCode::cannot_open);
}

}  // namespace
}  // namespace oaklight::test
