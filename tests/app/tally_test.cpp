// The tally by touch, beside the rows of field_rows.md.
#include "tests/app/tally_fixture.hpp"

namespace oaklight::test {
namespace {

TEST_F(Tally, OneGestureIsOneTree) {
  for (const Screen& screen : {kTablet, kTabletUpright, kPhone}) {
    SCOPED_TRACE(screen.name);
    begin(screen);
    slide(species(1), class_name("14"));
    ASSERT_EQ(trees().size(), 1U);
    EXPECT_EQ(trees()[0]->facts.species, tally().species()->at(1)->code);
    EXPECT_EQ(dbh_text(trees()[0]->facts.dbh), "14.0 in");
    EXPECT_EQ(tally().reading(), species(1) + " 14.0 in") << "read back";
    EXPECT_EQ(tally().figures().first(), "1");
    desk().undo();
    settle();
    stop();
  }
}

TEST_F(Tally, CellsStayWhereTheyAreWhileTreesComeIn) {
  for (const Screen& screen : {kTablet, kTabletUpright, kPhone}) {
    SCOPED_TRACE(screen.name);
    begin(screen);
    const QPoint before = middleOf(find(species(2)));
    for (const char* size : {"8", "10", "12", "14"}) {
      slide(species(1), class_name(size));
      ASSERT_NE(find(species(2)), nullptr);
      EXPECT_EQ(middleOf(find(species(2))), before);
    }
    for (int i = 0; i < 4; ++i) desk().undo();
    settle();
    stop();
  }
}

TEST_F(Tally, ACountPointTakesTheSpeciesAndNoMore) {
  begin();
  unhurried();
  desk().submit(
      [this] { return set_task(desk().live(), *workspace().plot().id(), PlotTask::count); });
  settle();
  EXPECT_TRUE(tally().plotName().endsWith("count point")) << tally().plotName().toStdString();
  EXPECT_EQ(tally().classes(), QStringList{"Count"});
  slide(species(1), class_name("Count"));
  slide(species(1), class_name("Count"));
  const Plot* plot = desk().live().find(*workspace().plot().id());
  const SpeciesCode code = tally().species()->at(1)->code;
  EXPECT_EQ(taken_at(*plot).counted, (std::vector<SpeciesCount>{{code, 2}}));
  EXPECT_TRUE(trees().empty());
  EXPECT_EQ(tally().figures().first(), "2");
  desk().undo();
  settle();
  EXPECT_EQ(tally().figures().first(), "1");
}

}  // namespace
}  // namespace oaklight::test
