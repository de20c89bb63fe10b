// Files of several tablets put together.
#include <algorithm>

#include "tests/store/join_fixture.hpp"

namespace oaklight::test {
namespace {

TEST_F(Join, BringsWhatTheOtherTallied) {
  act("a", "tally", {new_tree("a", 12.3)});
  act("b", "tally", {new_tree("b", 14.5)});
  const auto before = bytes_of(folder_ / "b.gpkg");
  const auto report = joined("a", "b");
  EXPECT_EQ(data("a").trees.size(), 5U);
  ASSERT_EQ(report.files.size(), 1U);
  EXPECT_EQ(report.files[0].actions, 1);
  EXPECT_EQ(report.files[0].records, 1);
  EXPECT_FALSE(report.files[0].started_apart);
  EXPECT_EQ(report.added, 1);
  EXPECT_TRUE(report.questions.empty());
  EXPECT_EQ(bytes_of(folder_ / "b.gpkg"), before) << "the other file is only read";
  EXPECT_EQ(report.copy, folder_ / "a.before-join.gpkg");
}

TEST_F(Join, OfTheSameFileAgainChangesNothing) {
  act("b", "tally", {new_tree("b", 14.5)});
  joined("a", "b");
  const auto said = said_by(folder_ / "a.gpkg");
  const auto again = joined("a", "b");
  EXPECT_EQ(said_by(folder_ / "a.gpkg"), said);
  EXPECT_EQ(again.copy, "");
  EXPECT_EQ(again.added + again.changed, 0);
}

TEST_F(Join, FilesBegunApartAreOneTractWhenTheyHaveOneName) {
  make_crew_file(folder_ / "c.gpkg", 2);
  const std::string path = on("c").form_paths()->front();
  { ASSERT_TRUE(worked(on("c").set_form_text(path, "theirs\n"))); }
  const auto report = joined("a", "c");
  EXPECT_TRUE(report.files.front().started_apart);
  const TractData both = data("a");
  EXPECT_EQ(both.tract.name, "Bear Hollow");
  ASSERT_EQ(both.stands.size(), 2U);
  EXPECT_EQ(both.stands[1].name, "Cove 0 (2nd)");
  EXPECT_EQ(both.plots.size(), 6U);
  EXPECT_EQ(on("a").form_text(path).value(), "theirs\n") << "a person's word before a built-in one";
  EXPECT_EQ(on("a").form_paths()->size(), on("b").form_paths()->size());
  EXPECT_FALSE(joined("a", "c").files.front().started_apart);
}

TEST_F(Join, AnotherTractIsRefusedUnlessAskedFor) {
  make_crew_file(folder_ / "c.gpkg", 2);
  {
    auto store = on("c");
    Tract tract = store.load()->tract;
    tract.name = "Cold Spring";
    ASSERT_TRUE(worked(store.apply({"rename", {tract}})));
  }
  auto store = on("a");
  const auto before = said_by(folder_ / "a.gpkg");
  const auto refused = store.join({folder_ / "c.gpkg"});
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().code, ErrorCode::contradiction);
  EXPECT_EQ(refused.error().where, (folder_ / "c.gpkg").string());
  EXPECT_EQ(said_by(folder_ / "a.gpkg"), before);
  EXPECT_FALSE(std::filesystem::exists(folder_ / "a.before-join.gpkg"));
  const auto taken = store.join({folder_ / "c.gpkg"}, OtherTract::take);
  ASSERT_TRUE(worked(taken));
  ASSERT_FALSE(taken->questions.empty());
  EXPECT_EQ(taken->questions[0].table, "tract") << "which name it has is a person's choice";
  ASSERT_TRUE(worked(store.decide(taken->questions[0], 1)));
  EXPECT_EQ(store.load()->tract.name, "Bear Hollow");
}

TEST_F(Join, ADamagedFileIsRefusedByNameAndChangesNothing) {
  act("b", "tally", {new_tree("b", 14.5)});
  raw_sql("UPDATE tree SET dbh_tenths = 77 WHERE dbh_tenths = 145", "b.gpkg");
  write_bytes(folder_ / "c.gpkg", bytes_of(folder_ / "base.gpkg"));
  raw_sql("UPDATE change SET after_json = replace(after_json, '101', '109')", "c.gpkg");
  auto store = on("a");
  const auto before = said_by(folder_ / "a.gpkg");
  for (const std::string name : {"b", "c"}) {
    const auto refused = store.join({folder_ / (name + ".gpkg")});
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().code, ErrorCode::damaged);
    EXPECT_NE(refused.error().where.find(name + ".gpkg"), std::string::npos);
  }
  EXPECT_EQ(said_by(folder_ / "a.gpkg"), before);
  EXPECT_FALSE(store.join({folder_ / "none.gpkg"}));
}

TEST_F(Join, UndoTakesBackOnlyOnesOwn) {
  act("a", "mine", {new_tree("a", 12.3)});
  act("b", "theirs", {new_tree("b", 14.5)});
  joined("a", "b");
  auto store = on("a");
  EXPECT_EQ(store.undo_state()->undo, "mine");
  ASSERT_TRUE(worked(store.undo()));
  EXPECT_EQ(store.load()->trees.size(), 4U);
  EXPECT_EQ(store.undo_state()->undo, std::nullopt);
  EXPECT_EQ(store.undo_state()->redo, "mine");
  ASSERT_TRUE(worked(store.redo()));
  EXPECT_EQ(store.load()->trees.size(), 5U);
}

TEST_F(Join, UndoOfWhatTheOtherBuiltOnIsRefused) {
  Tree tree = new_tree("a", 12.3);
  act("a", "mine", {tree});
  joined("b", "a");
  tree.facts.dbh = dbh_in(13.3);
  act("b", "built on", {tree});
  joined("a", "b");
  auto store = on("a");
  const auto undone = store.undo();
  ASSERT_FALSE(undone);
  EXPECT_EQ(undone.error().code, ErrorCode::contradiction);
  EXPECT_NE(undone.error().fix.find("another tablet"), std::string::npos);
  EXPECT_EQ(store.load()->trees.size(), 4U);
}

TEST_F(Join, AClockSetBackKeepsTheOrder) {
  Tree tree = first_tree("b");
  tree.facts.dbh = dbh_in(11.1);
  act("b", "first", {tree});
  joined("a", "b");
  clock_.ms -= 400LL * 86'400'000;  // a tablet that believes it is last year
  tree.facts.dbh = dbh_in(22.2);
  act("a", "second", {tree});
  EXPECT_TRUE(joined("b", "a").questions.empty());
  EXPECT_EQ(first_tree("b").facts.dbh, dbh_in(22.2));
  EXPECT_EQ(on("b").history(1)->front().label, "second");
}

TEST_F(Join, ANewFileIsMadeOfSeveral) {
  act("a", "tally", {new_tree("a", 12.3)});
  act("b", "tally", {new_tree("b", 14.5)});
  const auto report = TractStore::join_to_new(
      folder_ / "all.gpkg", {folder_ / "a.gpkg", folder_ / "b.gpkg"}, context("office"));
  ASSERT_TRUE(worked(report));
  EXPECT_EQ(data("all").trees.size(), 5U);
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator(folder_.path()))
    if (entry.path().string().find("all") != std::string::npos)
      names.push_back(entry.path().filename().string());
  std::ranges::sort(names);
  EXPECT_EQ(names, std::vector<std::string>{"all.gpkg"});
  EXPECT_FALSE(TractStore::join_to_new(folder_ / "all.gpkg", {folder_ / "a.gpkg"}, context()));
}

TEST_F(Join, OfEachKindOfRecordComesWhole) {
  TractData all;
  {
    auto store = on("b");
    all = sample_records(store.ids(), true);
    ASSERT_TRUE(worked(store.apply(as_action(all, "import"))));
    all = store.load().value();
  }
  joined("a", "b");
  EXPECT_EQ(difference(data("a"), all), "");
}

TEST_F(Join, ALookAheadWritesNothing) {
  act("b", "tally", {new_tree("b", 14.5)});
  auto store = on("a");
  const auto before = said_by(folder_ / "a.gpkg");
  const auto report = store.preview_join({folder_ / "b.gpkg"});
  ASSERT_TRUE(worked(report));
  EXPECT_EQ(report->added, 1);
  EXPECT_EQ(said_by(folder_ / "a.gpkg"), before);
}

}  // namespace
}  // namespace oaklight::test
