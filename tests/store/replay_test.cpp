// What undo and redo hand back, so that a copy in memory can follow the file; and that a store
// which refused goes on working.
#include <algorithm>

#include "tests/store/store_fixture.hpp"
#include "tests/support/readings.hpp"

namespace oaklight::test {
namespace {

class Replay : public StoreTest {
 protected:
  Replay() {
    data_ = sample_records(store_.ids(), true);
    EXPECT_TRUE(worked(store_.apply(as_action(data_, "import"))));
  }
  Tree new_tree(double inches) {
    Tree tree = data_.trees[0];
    tree.id = store_.ids().next_id<TreeTag>();
    tree.tag.clear();
    tree.facts.dbh = dbh_in(inches);
    return tree;
  }

  TractStore store_ = make();
  TractData data_;
};

TEST_F(Replay, UndoOfAnAdditionHandsBackARemoval) {
  const Tree tree = new_tree(5.0);
  ASSERT_TRUE(worked(store_.apply({"tally", {tree}})));
  const auto undone = store_.undo();
  ASSERT_TRUE(worked(undone));
  ASSERT_EQ(undone->size(), 1U);
  const auto* removal = std::get_if<Remove>(&undone->front());
  ASSERT_NE(removal, nullptr);
  EXPECT_EQ(std::get<TreeId>(removal->id), tree.id);
}

TEST_F(Replay, RedoHandsTheRecordBack) {
  const Tree tree = new_tree(5.0);
  ASSERT_TRUE(worked(store_.apply({"tally", {tree}})));
  ASSERT_TRUE(worked(store_.undo()));
  const auto redone = store_.redo();
  ASSERT_TRUE(worked(redone));
  ASSERT_EQ(redone->size(), 1U);
  const auto* back = std::get_if<Tree>(&redone->front());
  ASSERT_NE(back, nullptr);
  TractData wanted = data_;
  wanted.trees.push_back(tree);
  TractData got = data_;
  got.trees.push_back(*back);
  EXPECT_EQ(difference(got, wanted), "");
}

TEST_F(Replay, UndoOfACorrectionHandsBackWhatStoodThereBefore) {
  Stand renamed = data_.stands[0];
  renamed.name = "renamed";
  ASSERT_TRUE(worked(store_.apply({"rename", {renamed}})));
  const auto undone = store_.undo();
  ASSERT_TRUE(worked(undone));
  ASSERT_EQ(undone->size(), 1U);
  EXPECT_EQ(std::get<Stand>(undone->front()).name, data_.stands[0].name);
}

TEST_F(Replay, OfARecordTouchedTwiceHandsItBackOnceAsItIs) {
  Tree first = new_tree(5.0);
  Tree second = first;
  second.facts.dbh = dbh_in(6.0);
  ASSERT_TRUE(worked(store_.apply({"twice", {first, second}})));
  ASSERT_EQ(store_.undo()->size(), 1U);
  const auto redone = store_.redo();
  ASSERT_TRUE(worked(redone));
  ASSERT_EQ(redone->size(), 1U);
  EXPECT_EQ(std::get<Tree>(redone->front()).facts.dbh, second.facts.dbh);
}

TEST_F(Replay, HandsBackEveryKindOfRecord) {
  const auto undone = store_.undo();  // the import: one of each, two trees of the walk, two counts
  ASSERT_TRUE(worked(undone));
  EXPECT_EQ(undone->size(), 15U);
  const auto removals = std::count_if(undone->begin(), undone->end(), [](const Change& change) {
    return std::holds_alternative<Remove>(change);
  });
  EXPECT_EQ(removals, 14) << "all but the tract, which is as it was before";
  const auto redone = store_.redo();
  ASSERT_TRUE(worked(redone));
  EXPECT_EQ(redone->size(), 15U);
}

TEST_F(Replay, OfAFormHandsBackNoRecord) {
  const std::string path = store_.form_paths().value().front();
  ASSERT_TRUE(worked(store_.set_form_text(path, "local practice\n")));
  const auto undone = store_.undo();
  ASSERT_TRUE(worked(undone));
  EXPECT_TRUE(undone->empty());
}

TEST_F(Replay, AnActionThatWasRefusedCanBeTriedAgain) {
  const Tree tree = new_tree(5.0);
  const Action tally{"tally", {tree}};
  {
    const RawWriter other(folder_ / "woods.gpkg");
    const auto refused = store_.apply(tally);
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().code, ErrorCode::busy);
  }
  ASSERT_TRUE(worked(store_.apply(tally)));
  EXPECT_EQ(store_.load()->trees.size(), 2U);
  ASSERT_TRUE(worked(store_.undo()));
  EXPECT_EQ(difference(store_.load().value(), data_), "");
}

}  // namespace
}  // namespace oaklight::test
