#include "tests/store/store_fixture.hpp"
#include "tests/support/readings.hpp"

namespace oaklight::test {
namespace {

/// A file with a plot to tally on.
class History : public StoreTest {
 protected:
  History() {
    data_ = sample_records(store_.ids(), true);
    EXPECT_TRUE(worked(store_.apply(as_action(data_, "import"))));
  }
  Tree tree(double inches) {
    Tree tree = data_.trees[0];
    tree.id = store_.ids().next_id<TreeTag>();
    tree.facts.dbh = dbh_in(inches);
    return tree;
  }
  std::string tally(double inches) {
    const std::string label = "tally " + std::to_string(inches);
    EXPECT_TRUE(worked(store_.apply({label, {tree(inches)}})));
    return label;
  }
  [[nodiscard]] std::size_t tree_count() const { return store_.load().value().trees.size(); }
  void reopen() {
    // Another file for a moment, so that this one is let go of before it is opened again.
    store_ = make("another" + std::to_string(++reopened_) + ".gpkg");
    store_ = open();
  }

  TractStore store_ = make();
  TractData data_;
  int reopened_ = 0;
};

TEST_F(History, UndoTakesBackOneWholeAction) {
  EXPECT_TRUE(worked(store_.undo()));
  EXPECT_EQ(difference(store_.load().value(), TractData{}), "");
  EXPECT_EQ(store_.undo_state().value().undo, std::nullopt);
  EXPECT_EQ(store_.undo_state().value().redo, "import");
}

TEST_F(History, RedoBringsItAllBack) {
  EXPECT_TRUE(worked(store_.undo()));
  EXPECT_TRUE(worked(store_.redo()));
  EXPECT_EQ(difference(store_.load().value(), data_), "");
  EXPECT_EQ(store_.undo_state().value().undo, "import");
  EXPECT_EQ(store_.undo_state().value().redo, std::nullopt);
}

TEST_F(History, ACorrectionIsUndoneToWhatStoodThereBefore) {
  Tree corrected = data_.trees[0];
  corrected.facts.height.reset();
  corrected.facts.note = "looked again";
  ASSERT_TRUE(worked(store_.apply({"correct", {corrected}})));
  ASSERT_TRUE(worked(store_.undo()));
  EXPECT_EQ(difference(store_.load().value(), data_), "");
  ASSERT_TRUE(worked(store_.redo()));
  TractData after = data_;
  after.trees[0] = corrected;
  EXPECT_EQ(difference(store_.load().value(), after), "");
}

TEST_F(History, ARemovalIsUndone) {
  ASSERT_TRUE(worked(store_.apply({"remove", {Remove{data_.trees[0].id}}})));
  ASSERT_TRUE(worked(store_.undo()));
  EXPECT_EQ(difference(store_.load().value(), data_), "");
}

TEST_F(History, AnActionThatTouchesOneRecordTwiceIsUndoneInTheRightOrder) {
  Tree first = tree(5.0);
  Tree second = first;
  second.facts.dbh = dbh_in(6.0);
  ASSERT_TRUE(worked(store_.apply({"twice", {first, second, Remove{first.id}}})));
  EXPECT_EQ(tree_count(), 1U);
  ASSERT_TRUE(worked(store_.undo()));
  EXPECT_EQ(difference(store_.load().value(), data_), "");
  ASSERT_TRUE(worked(store_.redo()));
  EXPECT_EQ(tree_count(), 1U);
}

// At least 200 steps back, as common practice in field recorders asks; here 250.
TEST_F(History, UndoGoesBackWithoutLimitAcrossRestarts) {
  for (int i = 1; i <= 250; ++i) tally(i / 10.0);
  for (int i = 250; i > 125; --i) ASSERT_TRUE(worked(store_.undo()));
  reopen();
  EXPECT_EQ(tree_count(), 126U);
  for (int i = 125; i > 0; --i) ASSERT_TRUE(worked(store_.undo()));
  EXPECT_EQ(difference(store_.load().value(), data_), "");
  reopen();
  for (int i = 1; i <= 250; ++i) ASSERT_TRUE(worked(store_.redo()));
  EXPECT_EQ(tree_count(), 251U);
  EXPECT_TRUE(store_.check().value().problems.empty());
}

TEST_F(History, ANewActionEndsTheLineOfRedo) {
  tally(5.0);
  ASSERT_TRUE(worked(store_.undo()));
  const std::string other = tally(6.0);
  const auto redo = store_.redo();
  ASSERT_FALSE(redo);
  EXPECT_EQ(redo.error().code, ErrorCode::nothing_to_undo);
  ASSERT_TRUE(worked(store_.undo()));
  EXPECT_EQ(store_.undo_state().value().redo, other);  // and not the one undone before it
  ASSERT_TRUE(worked(store_.redo()));
  ASSERT_FALSE(store_.redo());
}

TEST_F(History, UndoAndRedoMayAlternateForever) {
  tally(5.0);
  tally(6.0);
  for (int i = 0; i < 5; ++i) {
    ASSERT_TRUE(worked(store_.undo()));
    ASSERT_TRUE(worked(store_.undo()));
    EXPECT_EQ(tree_count(), 1U);
    ASSERT_TRUE(worked(store_.redo()));
    ASSERT_TRUE(worked(store_.redo()));
    EXPECT_EQ(tree_count(), 3U);
  }
}

TEST_F(History, WithNothingLeftUndoSaysSo) {
  ASSERT_TRUE(worked(store_.undo()));
  const auto undo = store_.undo();
  ASSERT_FALSE(undo);
  EXPECT_EQ(undo.error().code, ErrorCode::nothing_to_undo);
  EXPECT_FALSE(store_.redo() && store_.redo());
}

TEST_F(History, TellsWhoDidWhatAndWhenNewestFirst) {
  clock_.ms += 5000;
  tally(5.0);
  clock_.ms += 5000;
  ASSERT_TRUE(worked(store_.undo()));
  const auto history = store_.history(10).value();
  ASSERT_EQ(history.size(), 3U);
  EXPECT_EQ(history[0].kind, HistoryKind::undo);
  EXPECT_EQ(history[0].target, history[1].id);
  EXPECT_EQ(history[0].label, history[1].label);
  EXPECT_EQ(history[0].at, "2026-05-04T13:07:10.000Z");
  EXPECT_EQ(history[1].kind, HistoryKind::action);
  EXPECT_EQ(history[1].rows, 1);
  EXPECT_EQ(history[1].target, std::nullopt);
  EXPECT_EQ(history[2].label, "import");
  EXPECT_EQ(history[2].device, "tablet A");
  EXPECT_EQ(history[2].rows, 15);  // every sample record, the tract among them
  EXPECT_EQ(store_.history(1).value().size(), 1U);
}

TEST_F(History, OnlyGrows) {
  tally(5.0);
  ASSERT_TRUE(worked(store_.undo()));
  ASSERT_TRUE(worked(store_.redo()));
  ASSERT_TRUE(worked(store_.undo()));
  EXPECT_EQ(raw_sql("SELECT group_concat(kind) FROM user_action"),
            std::vector<std::string>{"do,do,undo,redo,undo"});
  EXPECT_EQ(raw_sql("SELECT count(*) FROM change"), std::vector<std::string>{"19"});
}

TEST_F(History, AnActionThatChangesNothingLeavesNoTrace) {
  ASSERT_TRUE(worked(store_.apply({"nothing", {}})));
  ASSERT_TRUE(worked(store_.apply({"the same again", {data_.trees[0], data_.tract}})));
  EXPECT_EQ(store_.history(10).value().size(), 1U);
}

TEST_F(History, UndoRefusesARecordThatAnotherProgramChanged) {
  Tree corrected = data_.trees[0];
  corrected.facts.note = "looked again";
  ASSERT_TRUE(worked(store_.apply({"correct", {corrected}})));
  raw_sql("UPDATE tree SET stems = 2");
  const auto undo = store_.undo();
  ASSERT_FALSE(undo);
  EXPECT_EQ(undo.error().code, ErrorCode::damaged);
  EXPECT_EQ(undo.error().where, "tree/" + to_text(corrected.id));
}

TEST_F(History, FormsAreChangedAndUndoneLikeRecords) {
  const auto paths = store_.form_paths().value();
  ASSERT_FALSE(paths.empty());
  const std::string path = paths.front();
  const std::string built_in = store_.form_text(path).value();
  const std::string local = "local practice \xC3\xA9\n";
  ASSERT_TRUE(worked(store_.set_form_text(path, local)));
  EXPECT_EQ(store_.form_text(path).value(), local);
  EXPECT_EQ(store_.undo_state().value().undo, "change " + path);
  ASSERT_TRUE(worked(store_.undo()));
  EXPECT_EQ(store_.form_text(path).value(), built_in);
}

}  // namespace
}  // namespace oaklight::test
