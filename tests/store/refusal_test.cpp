// What the store must not let in, and that nothing is changed when it does not.
#include <limits>

#include "tests/store/store_fixture.hpp"
#include "tests/support/readings.hpp"

namespace oaklight::test {
namespace {

class Refusal : public StoreTest {
 protected:
  Refusal() {
    data_ = sample_records(store_.ids(), true);
    EXPECT_TRUE(worked(store_.apply(as_action(data_, "import"))));
  }
  /// Applies changes behind one good change; nothing of it may stay.
  Error refuses(std::vector<Change> bad) {
    Stand good = data_.stands[0];
    good.name = "renamed";
    bad.insert(bad.begin(), good);
    const auto applied = store_.apply({"bad", std::move(bad)});
    EXPECT_EQ(difference(store_.load().value(), data_), "");
    EXPECT_EQ(store_.history(10).value().size(), 1U);
    return applied ? Error{ErrorCode::no_data, "it was taken", "", ""} : applied.error();
  }
  Tree new_tree() {
    Tree tree = data_.trees[0];
    tree.id = store_.ids().next_id<TreeTag>();
    return tree;
  }

  TractStore store_ = make();
  TractData data_;
};

TEST_F(Refusal, OfATreeWhosePlotIsNotInTheFile) {
  Tree tree = new_tree();
  tree.plot = store_.ids().next_id<PlotTag>();
  const Error error = refuses({tree});
  EXPECT_EQ(error.code, ErrorCode::unknown_reference);
  EXPECT_EQ(error.where, "tree/" + to_text(tree.id) + "/plot_uid");
}

TEST_F(Refusal, OfATreeWhosePlotWasRemoved) {
  const Error error = refuses({Remove{data_.trees[0].id}, Remove{data_.regens[0].id},
                               Remove{data_.plots[0].id}, new_tree()});
  EXPECT_EQ(error.code, ErrorCode::unknown_reference);
}

TEST_F(Refusal, OfRemovingAPlotThatStillHasTrees) {
  const Error error = refuses({Remove{data_.plots[0].id}});
  EXPECT_EQ(error.code, ErrorCode::unknown_reference);
  EXPECT_EQ(error.where, "plot/" + to_text(data_.plots[0].id));
}

TEST_F(Refusal, OfRemovingWhatIsNotThere) {
  EXPECT_EQ(refuses({Remove{store_.ids().next_id<TreeTag>()}}).code, ErrorCode::unknown_reference);
}

TEST_F(Refusal, OfATagThatAnotherTreeWears) {
  WalkTree tree = data_.walk_trees[1];
  tree.tag = data_.walk_trees[0].tag;
  const Error error = refuses({tree});
  EXPECT_EQ(error.code, ErrorCode::duplicate);
  EXPECT_EQ(error.where, "walk_tree/" + to_text(tree.id));
}

TEST_F(Refusal, OfASecondVerdictOnOneTree) {
  Mark mark = data_.marks[0];
  mark.id = store_.ids().next_id<MarkTag>();
  EXPECT_EQ(refuses({mark}).code, ErrorCode::duplicate);
}

TEST_F(Refusal, OfASecondStandOrPlotOfTheSameName) {
  Stand stand = data_.stands[0];
  stand.id = store_.ids().next_id<StandTag>();
  stand.name = "renamed";
  EXPECT_EQ(refuses({stand}).code, ErrorCode::duplicate);
  Plot plot = data_.plots[0];
  plot.id = store_.ids().next_id<PlotTag>();
  EXPECT_EQ(refuses({plot}).code, ErrorCode::duplicate);
}

TEST_F(Refusal, OfARecordWithoutId) {
  Tree tree = data_.trees[0];
  tree.id = {};
  EXPECT_EQ(refuses({tree}).code, ErrorCode::missing_value);
}

TEST_F(Refusal, OfReadingsInTwoSystemsInOneRecord) {
  Tree tree = new_tree();
  tree.facts.dbh = dbh_cm(31.2);  // its height stays in feet
  const Error error = refuses({tree});
  EXPECT_EQ(error.code, ErrorCode::contradiction);
  EXPECT_EQ(error.where, "tree/" + to_text(tree.id) + "/units");
}

TEST_F(Refusal, OfAnAzimuthThatTheColumnCannotHold) {
  for (const double degrees : {123.45, -0.1, 360.1, std::numeric_limits<double>::quiet_NaN()}) {
    Tree tree = new_tree();
    tree.azimuth = Degrees{degrees};
    const Error error = refuses({tree});
    EXPECT_EQ(error.code, ErrorCode::out_of_range) << degrees;
    EXPECT_EQ(error.where, "tree/" + to_text(tree.id) + "/azimuth_tenths");
  }
}

TEST_F(Refusal, OfNumbersOutsideWhatTheTableAllows) {
  const auto code_for = [&](auto spoil) {
    Tree tree = new_tree();
    spoil(tree);
    return refuses({tree}).code;
  };
  EXPECT_EQ(code_for([](Tree& t) { t.stems = 0; }), ErrorCode::out_of_range);
  EXPECT_EQ(code_for([](Tree& t) { t.edge_count = 3; }), ErrorCode::out_of_range);
  EXPECT_EQ(code_for([](Tree& t) { t.facts.dieback = Percent{101}; }), ErrorCode::out_of_range);
  EXPECT_EQ(
      code_for([](Tree& t) { t.facts.dieback = Percent{std::numeric_limits<double>::infinity()}; }),
      ErrorCode::out_of_range);
  EXPECT_EQ(code_for([](Tree& t) { t.facts.half_logs = -1; }), ErrorCode::out_of_range);
  EXPECT_EQ(code_for([](Tree& t) { t.facts.species = {}; }), ErrorCode::out_of_range);
}

TEST_F(Refusal, OfTextThatIsNotUtf8) {
  Tree tree = new_tree();
  tree.facts.note = "caf\xE9";
  const Error error = refuses({tree});
  EXPECT_EQ(error.code, ErrorCode::not_a_choice);
  EXPECT_EQ(error.where, "tree/" + to_text(tree.id) + "/note");
  EXPECT_EQ(store_.apply({"caf\xE9", {new_tree()}}).error().code, ErrorCode::not_a_choice);
}

TEST_F(Refusal, OfAListEntryThatHoldsTheListMark) {
  Mark mark = data_.marks[0];
  mark.rules = {"R1|R2"};
  EXPECT_EQ(refuses({mark}).code, ErrorCode::out_of_range);
  mark.rules = {""};
  EXPECT_EQ(refuses({mark}).code, ErrorCode::out_of_range);
}

TEST_F(Refusal, OfAShapeThatIsNotOnEarthOrOpen) {
  Plot plot = data_.plots[0];
  plot.position = Position{Degrees{-81.0}, Degrees{190.0}};
  const Error error = refuses({plot});
  EXPECT_EQ(error.code, ErrorCode::bad_geometry);
  EXPECT_EQ(error.where, "plot/" + to_text(plot.id) + "/geom");
  Stand stand = data_.stands[0];
  stand.boundary->outer.pop_back();
  EXPECT_EQ(refuses({stand}).code, ErrorCode::bad_geometry);
}

TEST_F(Refusal, OfANeighbourThatIsTheCropTreeItself) {
  Contact contact = data_.contacts[0];
  contact.neighbour = contact.crop;
  EXPECT_EQ(refuses({contact}).code, ErrorCode::out_of_range);
}

TEST_F(Refusal, OfAFormThatTheFileDoesNotHold) {
  EXPECT_EQ(store_.form_text("nowhere.json").error().code, ErrorCode::missing_rule);
  EXPECT_EQ(store_.set_form_text("nowhere.json", "{}").error().code, ErrorCode::missing_rule);
}

TEST_F(Refusal, OfWritingWhenOpenForLooking) {
  TractStore looker = open("woods.gpkg", OpenMode::read_only);
  EXPECT_EQ(looker.apply({"tally", {new_tree()}}).error().code, ErrorCode::read_only);
  EXPECT_EQ(looker.undo().error().code, ErrorCode::read_only);
  EXPECT_EQ(looker.redo().error().code, ErrorCode::read_only);
  EXPECT_EQ(looker.set_form_text("x", "y").error().code, ErrorCode::read_only);
}

TEST_F(Refusal, OfASecondWriterNamesTheFirst) {
  const Error error = refused();
  EXPECT_EQ(error.code, ErrorCode::busy);
  EXPECT_NE(error.what.find("tablet A"), std::string::npos) << error.what;
  store_ = make("another.gpkg");
  EXPECT_EQ(refused().what, "it was opened");
}

TEST_F(Refusal, WhileAnotherProgramWrites) {
  const auto applied = [&] {
    const RawWriter other(folder_ / "woods.gpkg");
    return store_.apply({"tally", {new_tree()}});
  }();
  ASSERT_FALSE(applied);
  EXPECT_EQ(applied.error().code, ErrorCode::busy);
  EXPECT_TRUE(worked(store_.apply({"tally", {new_tree()}})));
}

TEST_F(Refusal, OfMakingAFileWhereOneIsOrUnderAnotherEnding) {
  EXPECT_EQ(TractStore::create(folder_ / "woods.gpkg", context()).error().code,
            ErrorCode::cannot_write);
  EXPECT_EQ(TractStore::create(folder_ / "woods.db", context()).error().code,
            ErrorCode::cannot_write);
  EXPECT_EQ(TractStore::create(folder_ / "no" / "folder.gpkg", context()).error().code,
            ErrorCode::cannot_write);
  EXPECT_EQ(difference(store_.load().value(), data_), "");
}

}  // namespace
}  // namespace oaklight::test
