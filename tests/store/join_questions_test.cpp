// What several tablets leave to decide, and a person's answer.
#include <algorithm>

#include "tests/store/join_fixture.hpp"

namespace oaklight::test {
namespace {

class JoinQuestions : public Join {};

TEST_F(JoinQuestions, AsksWhereBothChangedOneRecord) {
  correct_on_both(11.1, 22.2);
  const auto report = joined("a", "b");
  ASSERT_EQ(report.questions.size(), 1U);
  const Question& question = report.questions[0];
  EXPECT_EQ(question.kind, QuestionKind::both_changed);
  EXPECT_EQ(question.table, "tree");
  ASSERT_EQ(question.sides.size(), 2U);
  EXPECT_EQ(question.sides[0].device, "tablet b") << "the newest shows";
  EXPECT_EQ(question.sides[1].label, "correct on a");
  EXPECT_EQ(first_tree("a").facts.dbh, dbh_in(22.2));
  EXPECT_EQ(on("a").questions().value(), report.questions) << "it is still open after a restart";
  EXPECT_EQ(on("a").history(10)->size(), 3U) << "both are in the history";
}

TEST_F(JoinQuestions, AsksNothingWhereBothSaidTheSame) {
  correct_on_both(11.1, 11.1);
  EXPECT_TRUE(joined("a", "b").questions.empty());
  Tree tree = first_tree("a");
  tree.facts.dbh = dbh_in(33.3);
  act("a", "correct again", {tree});
  EXPECT_TRUE(on("a").questions()->empty()) << "a later change follows both";
}

TEST_F(JoinQuestions, ADecisionHoldsWhereverItIsJoined) {
  correct_on_both(11.1, 22.2);
  joined("a", "b");
  {
    auto store = on("a");
    const auto records = store.decide(store.questions()->front(), 1);
    ASSERT_TRUE(worked(records));
    ASSERT_EQ(records->size(), 1U);
    EXPECT_EQ(std::get<Tree>(records->front()).facts.dbh, dbh_in(11.1));
    EXPECT_TRUE(store.questions()->empty());
  }
  EXPECT_EQ(first_tree("a").facts.dbh, dbh_in(11.1));
  EXPECT_TRUE(joined("b", "a").questions.empty());
  EXPECT_EQ(first_tree("b").facts.dbh, dbh_in(11.1));
}

TEST_F(JoinQuestions, ADecisionForWhatShowsHoldsToo) {
  correct_on_both(11.1, 22.2);
  joined("a", "b");
  {
    auto store = on("a");
    ASSERT_TRUE(worked(store.decide(store.questions()->front(), 0)));
    EXPECT_TRUE(store.questions()->empty());
  }
  EXPECT_TRUE(joined("b", "a").questions.empty());
}

TEST_F(JoinQuestions, ADecisionThatIsUndoneIsOpenAgain) {
  correct_on_both(11.1, 22.2);
  joined("a", "b");
  for (const std::size_t side : {0U, 1U}) {
    auto store = on("a");
    ASSERT_TRUE(worked(store.decide(store.questions()->front(), side)));
    const auto undone = store.undo();
    ASSERT_TRUE(worked(undone));
    EXPECT_EQ(std::get<Tree>(undone->front()).facts.dbh, dbh_in(22.2));
    ASSERT_EQ(store.questions()->size(), 1U);
    EXPECT_EQ(store.questions()->front().sides.size(), 2U);
    ASSERT_TRUE(worked(store.redo()));
    EXPECT_TRUE(store.questions()->empty());
    EXPECT_EQ(store.load()->trees.front().facts.dbh, dbh_in(side == 0 ? 22.2 : 11.1));
    ASSERT_TRUE(worked(store.undo()));
    EXPECT_TRUE(store.check()->problems.empty());
  }
  EXPECT_EQ(joined("b", "a").questions.size(), 1U);
}

TEST_F(JoinQuestions, AnAnswerToWhatIsNoLongerOpenIsRefused) {
  correct_on_both(11.1, 22.2);
  joined("a", "b");
  auto store = on("a");
  const Question question = store.questions()->front();
  ASSERT_TRUE(worked(store.decide(question, 0)));
  const auto again = store.decide(question, 1);
  ASSERT_FALSE(again);
  EXPECT_EQ(again.error().code, ErrorCode::contradiction);
  EXPECT_EQ(store.decide(question, 7).error().code, ErrorCode::not_a_choice);
}

TEST_F(JoinQuestions, ARemovalAgainstAChangeKeepsTheRecordInSightAndAsks) {
  Tree tree = first_tree("a");
  act("a", "remove tree", {Remove{tree.id}});
  tree.facts.dbh = dbh_in(22.2);
  act("b", "correct", {tree});
  auto report = joined("a", "b");
  ASSERT_EQ(report.questions.size(), 1U);
  EXPECT_FALSE(report.questions[0].sides[0].removed);
  EXPECT_TRUE(report.questions[0].sides[1].removed);
  EXPECT_EQ(first_tree("a").facts.dbh, dbh_in(22.2));
  auto store = on("a");
  ASSERT_TRUE(worked(store.decide(report.questions[0], 1)));
  EXPECT_EQ(store.load()->trees.size(), 2U);
  EXPECT_TRUE(store.questions()->empty());
}

TEST_F(JoinQuestions, APlotThatWasRemovedWhileTheOtherTalliedThereStays) {
  const TractData before = data("a");
  const Plot plot = before.plots.front();
  std::vector<Change> removal;
  for (const Tree& tree : before.trees)
    if (tree.plot == plot.id) removal.emplace_back(Remove{tree.id});
  removal.emplace_back(Remove{plot.id});
  act("a", "remove plot", removal);
  Tree tree = new_tree("b", 9.9);
  tree.plot = plot.id;
  act("b", "tally", {tree});
  const auto report = joined("a", "b");
  ASSERT_EQ(report.questions.size(), 1U);
  EXPECT_EQ(report.questions[0].kind, QuestionKind::removed_in_use);
  EXPECT_EQ(report.questions[0].users, 1);
  EXPECT_EQ(report.questions[0].name, plot.label);
  EXPECT_EQ(data("a").plots.size(), 3U);
  write_bytes(folder_ / "c.gpkg", bytes_of(folder_ / "a.gpkg"));
  {
    auto keeps = on("a");
    ASSERT_TRUE(worked(keeps.decide(report.questions[0], 0)));
    EXPECT_TRUE(keeps.questions()->empty());
    EXPECT_EQ(keeps.load()->plots.size(), 3U);
  }
  auto removes = on("c");
  ASSERT_TRUE(worked(removes.decide(report.questions[0], 1)));
  EXPECT_TRUE(removes.questions()->empty());
  EXPECT_EQ(removes.load()->plots.size(), 2U);
  EXPECT_EQ(removes.load()->trees.size(), 2U);
}

TEST_F(JoinQuestions, ATagUsedTwiceIsToldAndMended) {
  for (const std::string name : {"a", "b"}) {
    auto store = on(name);
    WalkTree tree = store.load()->walk_trees.front();
    tree.id = store.ids().next_id<WalkTreeTag>();
    tree.tag = "140";
    ASSERT_TRUE(worked(store.apply({"card", {tree}})));
  }
  const auto report = joined("a", "b");
  ASSERT_EQ(report.questions.size(), 1U);
  EXPECT_EQ(report.questions[0].kind, QuestionKind::used_twice);
  EXPECT_EQ(report.questions[0].name, "140");
  auto store = on("a");
  auto trees = store.load()->walk_trees;
  ASSERT_EQ(trees.size(), 5U);
  EXPECT_EQ(trees[3].tag, "140");
  EXPECT_EQ(trees[4].tag, "140 (2nd)");
  trees[4].facts.note = "something else is changed first";
  ASSERT_TRUE(worked(store.apply({"note", {trees[4]}})));
  EXPECT_EQ(store.questions()->size(), 1U) << "it is told until the tag is another";
  trees[4].tag = "141";
  ASSERT_TRUE(worked(store.apply({"new tag", {trees[4]}})));
  EXPECT_TRUE(store.questions()->empty());
}

TEST_F(JoinQuestions, MarksOfOneTreeAreOneMarkAndThoseByHandAreAskedAbout) {
  for (const std::string name : {"a", "b"}) {
    auto store = on(name);
    const auto trees = store.load()->walk_trees;
    std::vector<Change> marks;
    for (std::size_t i = 0; i < 3; ++i) {
      Mark mark;
      mark.id = store.ids().next_id<MarkTag>();
      mark.tree = trees[i].id;
      mark.verdict = name == "a" ? Verdict::keep : Verdict::take;
      mark.by_hand = i == 2 || (i == 1 && name == "a");
      marks.emplace_back(mark);
    }
    ASSERT_TRUE(worked(store.apply({"marks", marks})));
  }
  const auto report = joined("a", "b");
  ASSERT_EQ(report.questions.size(), 1U);
  EXPECT_EQ(report.questions[0].table, "mark");
  EXPECT_EQ(report.questions[0].name, "103");
  auto marks = data("a").marks;
  ASSERT_EQ(marks.size(), 3U);
  const auto verdict_of = [&](const std::string& tag) {
    const auto tract = data("a");
    const auto tree = std::ranges::find(tract.walk_trees, tag, &WalkTree::tag);
    return std::ranges::find(tract.marks, tree->id, &Mark::tree)->verdict;
  };
  EXPECT_EQ(verdict_of("101"), Verdict::take) << "computed on both: the newest";
  EXPECT_EQ(verdict_of("102"), Verdict::keep) << "a person's word before a computed one";
  EXPECT_EQ(verdict_of("103"), Verdict::take);
  {
    auto store = on("a");
    ASSERT_TRUE(worked(store.decide(report.questions[0], 1)));
    EXPECT_TRUE(store.questions()->empty());
  }
  EXPECT_EQ(verdict_of("103"), Verdict::keep);
  EXPECT_TRUE(joined("b", "a").questions.empty());
}

TEST_F(JoinQuestions, AMarkThatGaveWayDoesNotComeBack) {
  const WalkTree tree = data("a").walk_trees.front();
  for (const std::string name : {"a", "b"}) {
    auto store = on(name);
    Mark mark;
    mark.id = store.ids().next_id<MarkTag>();
    mark.tree = tree.id;
    ASSERT_TRUE(worked(store.apply({"mark", {mark}})));
  }
  joined("a", "b");
  {
    auto store = on("a");
    const Mark shown = store.load()->marks.front();
    ASSERT_TRUE(worked(store.apply({"remove card", {Remove{shown.id}, Remove{tree.id}}})));
    ASSERT_TRUE(worked(store.undo()));
    EXPECT_EQ(store.load()->marks.size(), 1U);
    ASSERT_TRUE(worked(store.redo()));
  }
  EXPECT_TRUE(joined("a", "b").questions.empty());
  EXPECT_TRUE(data("a").marks.empty());
  EXPECT_EQ(data("a").walk_trees.size(), 2U);
}

TEST_F(JoinQuestions, FormsThatEachChangedAreAskedAbout) {
  const std::string path = on("a").form_paths()->front();
  { ASSERT_TRUE(worked(on("a").set_form_text(path, "ours\n"))); }
  { ASSERT_TRUE(worked(on("b").set_form_text(path, "theirs\n"))); }
  const auto report = joined("a", "b");
  ASSERT_EQ(report.questions.size(), 1U);
  EXPECT_EQ(report.questions[0].name, path);
  auto store = on("a");
  EXPECT_EQ(store.form_text(path).value(), "theirs\n");
  ASSERT_TRUE(worked(store.decide(report.questions[0], 1)));
  EXPECT_EQ(store.form_text(path).value(), "ours\n");
}

TEST_F(JoinQuestions, AnUndoAgainstAChangeIsAsked) {
  Tree tree = new_tree("a", 12.3);
  act("a", "mine", {tree});
  joined("b", "a");
  { ASSERT_TRUE(worked(on("a").undo())); }
  tree.facts.dbh = dbh_in(13.3);
  act("b", "built on", {tree});
  EXPECT_EQ(joined("a", "b").questions.size(), 1U);
  EXPECT_EQ(data("a").trees.size(), 4U);
}

}  // namespace
}  // namespace oaklight::test
