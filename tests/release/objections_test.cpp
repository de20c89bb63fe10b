// What is said against a plan that somebody made by hand: one sentence for each thing that the
// rules would not do. Invented trees; the rules named are those of forms/release.rule.json.
#include "core/release/objections.hpp"

#include <gmock/gmock.h>

#include "tests/support/trees.hpp"

namespace oaklight::test {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

/// Everything said against the tree of a tag; "" where nothing is.
std::string said(const std::vector<Objection>& list, std::string_view tag) {
  std::string all;
  for (const Objection& one : list) {
    if (one.tag == tag) all += (all.empty() ? "" : " | ") + one.text;
  }
  return all;
}

/// Two oaks whose crowns touch on one side; a maple closes a side of each.
constexpr const char* kPair = R"(
  crop A WO 14 co
  crop B WO 12 co
  A B E 16 touches
  A m N 15 touches RM 9 co
  B n S 15 touches RM 9 co
)";

TEST(Objections, ASoundPlanHasNone) {
  EXPECT_THAT(objections(input_of(cards(kPair), 1.0), {{"A", "B"}, {"m", "n"}}), IsEmpty());
}

TEST(Objections, ATagThatNobodyWearsIsNamedAndTheRestIsJudged) {
  const auto list = objections(input_of(cards(kPair), 1.0), {{"A", "B", "A"}, {"m", "n", "x9"}});
  ASSERT_EQ(list.size(), 1U);
  EXPECT_EQ(list[0].text, "No tree of this stand wears the tag x9.");
  EXPECT_EQ(list[0].tag, "x9");
}

TEST(Objections, ACropTreeIsNotTakenToo) {
  const auto list = objections(input_of(cards(kPair), 1.0), {{"A", "B"}, {"m", "n", "B"}});
  EXPECT_THAT(said(list, "B"), HasSubstr("white oak B cannot be released and taken."));
}

TEST(Objections, AFellowThatCouldBeReleasedTooIsNotTaken) {
  const auto list = objections(input_of(cards(kPair), 1.0), {{"A"}, {"m", "B"}});
  EXPECT_THAT(said(list, "B"), HasSubstr("can both be released, as one unit with a shared side."));
}

/// Sound oaks close two sides of A and of B that nobody may open: one is left, and the shared one.
constexpr const char* kOneOfTwo = R"(
  crop A WO 12 co
  crop B WO 17 dom
  A B E 16 touches
  A s N|S 15 touches BO 14 co
  B t N|S 15 touches BO 14 co
)";

TEST(Objections, OfTwoThatCannotBothTheBetterStays) {
  const auto list = objections(input_of(cards(kOneOfTwo), 1.0), {{"A"}, {"B"}});
  EXPECT_THAT(said(list, "B"), HasSubstr("white oak B is the better tree of the two."));
  // The other way round the worse tree goes, and nothing is said against it.
  EXPECT_EQ(said(objections(input_of(cards(kOneOfTwo), 1.0), {{"B"}, {"A"}}), "A"), "");
}

TEST(Objections, ASoundOakIsNotTakenForItsPlace) {
  const auto list = objections(input_of(cards(kOneOfTwo), 1.0), {{"A"}, {"s"}});
  EXPECT_THAT(said(list, "s"), HasSubstr("is a sound oak that nobody has shown to be poor."));
}

TEST(Objections, WhoCrowdsNoReleasedTreeStays) {
  const auto list = objections(input_of(cards(kPair), 1.0), {{"A"}, {"m", "n"}});
  EXPECT_THAT(said(list, "n"), HasSubstr("red maple n crowds no crop tree of the plan."));
  EXPECT_EQ(said(list, "m"), "");
}

TEST(Objections, InvasiveTreesMayGoWhereverTheyStand) {
  const auto list = objections(
      input_of(cards("crop A WO 14 co\nA m N 15 touches RM 9 co\nA h W 30 none TOH 8 co"), 1.0),
      {{"A"}, {"m", "h"}});
  EXPECT_EQ(said(list, "h"), "");
}

// R1.67 as an owner may set it: four free sides for each of a pair, where one of four is shared.
TEST(Objections, APairNeedsFreeSidesOfItsOwn) {
  ReleaseInput input = input_of(cards(kPair), 1.0);
  input.knowledge = knowledge_with({{"R1.67", {4}}});
  const auto list = objections(input, {{"A", "B"}, {"m", "n"}});
  EXPECT_THAT(said(list, "A"), HasSubstr("has too few free sides of its own for a pair."));
}

}  // namespace
}  // namespace oaklight::test
