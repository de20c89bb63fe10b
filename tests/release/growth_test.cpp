// Trees met again by their tag, and whether released crop trees grew faster.

#include "core/release/growth.hpp"

#include <gtest/gtest.h>

#include "core/release/taken.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/test_ids.hpp"

namespace oaklight::test {
namespace {

constexpr int kWhiteOak = 802;
constexpr int kRedMaple = 316;

/// One visit to one stand with trees that wear tags.
class Visit {
 public:
  explicit Visit(std::uint32_t first_id) : last_(first_id) {
    data_.stands.push_back(Stand{.id = nth_id<StandId>(++last_), .name = "Upland"});
    data_.plots.push_back({.id = nth_id<PlotId>(++last_), .stand = data_.stands[0].id});
  }
  WalkTree& card(const std::string& tag, double dbh, bool crop = true, int fia = kWhiteOak) {
    WalkTree& tree = data_.walk_trees.emplace_back(
        WalkTree{.id = nth_id<WalkTreeId>(++last_),
                 .stand = data_.stands[0].id,
                 .tag = tag,
                 .facts = TreeFacts{.species = SpeciesCode{fia}, .dbh = dbh_in(dbh)}});
    tree.crop = crop;
    return tree;
  }
  Tree& tally(const std::string& tag, double dbh) {
    Tree& tree = data_.trees.emplace_back(
        Tree{.id = nth_id<TreeId>(++last_),
             .plot = data_.plots[0].id,
             .facts = TreeFacts{.species = SpeciesCode{kWhiteOak}, .dbh = dbh_in(dbh)}});
    tree.tag = tag;
    return tree;
  }
  void mark(const WalkTree& tree, Verdict verdict) {
    Mark& mark = data_.marks.emplace_back();
    mark.id = nth_id<MarkId>(++last_);
    mark.tree = tree.id;
    mark.verdict = verdict;
  }
  void stump(const WalkTree& tree, Finding finding) {
    Stump& stump = data_.stumps.emplace_back();
    stump.id = nth_id<StumpId>(++last_);
    stump.tree = tree.id;
    stump.finding = finding;
  }
  [[nodiscard]] const TractData& data() const { return data_; }

 private:
  std::uint32_t last_;
  TractData data_;
};

std::vector<TaggedTree> met(const Visit& first, const Visit& second) {
  return trees_by_tag(first.data(), second.data(), taken_trees(first.data()));
}

TEST(TaggedTrees, AreMetAgainByTheirTag) {
  // By hand: 15.5 less 14.0.
  Visit first(0), second(1000);
  first.card("101", 14.0);
  first.tally("9", 8.0);
  second.tally("9", 8.6);
  second.card("101", 15.5);
  const auto trees = met(first, second);
  ASSERT_EQ(trees.size(), 2U);
  EXPECT_EQ(trees[0].tag, "9") << "9 before 101, as people count";
  EXPECT_EQ(trees[0].fate, TagFate::grown);
  EXPECT_FALSE(trees[0].crop);
  EXPECT_NEAR(trees[0].after->value, 8.6, 1e-9);
  EXPECT_TRUE(trees[1].crop);
  EXPECT_NEAR(trees[1].after->value - trees[1].before.value, 1.5, 1e-9);
  EXPECT_FALSE(trees[1].per_year().has_value()) << "nobody said how many years lie between";
}

TEST(TaggedTrees, EachHasItsFate) {
  Visit first(0), second(1000);
  first.card("1", 14.0);
  first.card("2", 14.0);
  first.mark(first.card("3", 10.0, false), Verdict::take);
  first.mark(first.card("4", 10.0, false), Verdict::kill_standing);
  first.card("5", 14.0);
  first.mark(first.card("6", 10.0, false), Verdict::take);
  first.card("7", 14.0).facts.status = TreeStatus::dead;
  second.card("1", 14.2).facts.status = TreeStatus::dead;
  second.card("4", 10.0, false).facts.status = TreeStatus::dead;
  second.card("5", 14.4, true, kRedMaple);
  second.card("6", 10.3, false);
  std::map<std::string, TagFate> fates;
  for (const TaggedTree& tree : met(first, second)) fates[tree.tag] = tree.fate;
  const std::map<std::string, TagFate> want = {
      {"1", TagFate::dead},
      {"2", TagFate::not_met},
      {"3", TagFate::taken},
      {"4", TagFate::taken},
      {"5", TagFate::other_species},
      {"6", TagFate::grown}};  // marked and alive: it was left; 7 was dead at the first visit
  EXPECT_EQ(fates, want);
}

TEST(TaggedTrees, AReadingThatWasCarriedOnIsNoGrowthOfZero) {
  Visit first(0);
  first.card("1", 14.0);
  EXPECT_EQ(met(first, first)[0].fate, TagFate::not_read);
  Visit second(0);  // the same ids: the file was carried on, and the tree measured again
  second.card("1", 14.6);
  EXPECT_EQ(met(first, second)[0].fate, TagFate::grown);
  Visit fresh(1000);  // another file, the same diameter: read again, and no growth
  fresh.card("1", 14.0);
  EXPECT_EQ(met(first, fresh)[0].fate, TagFate::grown);
}

TEST(TaggedTrees, OnACardAndOnAPlotAreReadFromOneKindOfRecord) {
  Visit first(0), second(1000);
  first.card("1", 14.0);
  first.tally("1", 14.2);
  second.tally("1", 15.0);
  EXPECT_NEAR(met(first, second)[0].before.value, 14.2, 1e-9);
  second.card("1", 15.3);
  const TaggedTree tree = met(first, second)[0];
  EXPECT_NEAR(tree.before.value, 14.0, 1e-9);
  EXPECT_NEAR(tree.after->value, 15.3, 1e-9);
}

TEST(TakenTrees, AreThoseWhoseLastMarkSaysSo) {
  Visit visit(0);
  const WalkTree tree = visit.card("1", 10.0, false);
  visit.mark(tree, Verdict::take);
  EXPECT_TRUE(taken_trees(visit.data()).contains(tree.id));
  visit.mark(tree, Verdict::keep);
  EXPECT_TRUE(taken_trees(visit.data()).empty());
  visit.mark(tree, Verdict::look_again);
  EXPECT_TRUE(taken_trees(visit.data()).empty());
  visit.mark(tree, Verdict::kill_standing);
  EXPECT_EQ(taken_trees(visit.data()), std::set<WalkTreeId>{tree.id});
}

TEST(TakenTrees, AreThoseFoundCutWhateverTheMarksSay) {
  Visit visit(0);
  const WalkTree left = visit.card("1", 10.0, false);
  const WalkTree cut = visit.card("2", 10.0, false);
  const WalkTree hung = visit.card("3", 10.0, false);
  const WalkTree hurt = visit.card("4", 10.0, false);
  const WalkTree not_looked_at = visit.card("5", 10.0, false);
  for (const auto& tree : {left, hung, not_looked_at}) visit.mark(tree, Verdict::take);
  visit.stump(left, Finding::standing);
  visit.stump(cut, Finding::not_marked);
  visit.stump(hung, Finding::hung);
  visit.stump(hurt, Finding::hurt);
  EXPECT_EQ(taken_trees(visit.data()), (std::set<WalkTreeId>{cut.id, hung.id, not_looked_at.id}));
  visit.stump(left, Finding::as_marked);  // somebody came back and cut it
  EXPECT_TRUE(taken_trees(visit.data()).contains(left.id));
}

TEST(TakenTrees, ReplaceTheMarks) {
  Visit visit(0);
  const WalkTree one = visit.card("1", 10.0, false);
  const WalkTree other = visit.card("2", 10.0, false);
  visit.mark(one, Verdict::take);
  const TractData done = with_taken(visit.data(), {other.id});
  ASSERT_EQ(done.marks.size(), 1U);
  EXPECT_EQ(done.marks[0].tree, other.id);
}

TaggedTree crop(double growth, bool released) {
  TaggedTree tree;
  tree.crop = true;
  tree.fate = TagFate::grown;
  tree.before = Inches{12.0};
  tree.after = Inches{12.0 + 5.0 * growth};
  tree.years = 5.0;
  tree.released = released;
  return tree;
}

TEST(Growth, OfReleasedTreesAgainstTheOthersByWelch) {
  const std::vector<TaggedTree> trees = {crop(0.20, true), crop(0.26, true),  crop(0.22, true),
                                         crop(0.24, true), crop(0.12, false), crop(0.16, false),
                                         crop(0.14, false)};
  const GrowthComparison growth = compare_growth(trees, Confidence{});
  EXPECT_EQ(growth.released->n, 4);
  EXPECT_NEAR(growth.released->mean, 0.23, 1e-12);
  EXPECT_NEAR(growth.unreleased->mean, 0.14, 1e-12);
  ASSERT_TRUE(growth.difference) << to_text(growth.difference.error());
  // Derived with R: t.test(c(.20,.26,.22,.24), c(.12,.16,.14)), df 4.959184, se 0.017320508.
  EXPECT_NEAR(growth.difference->difference, 0.09, 1e-12);
  EXPECT_NEAR(growth.difference->se, 0.017320508, 1e-9);
  EXPECT_NEAR(growth.difference->df, 4.959184, 1e-6);
  EXPECT_TRUE(growth.difference->clear());
}

TEST(Growth, IsNotComparedWithoutTwoTreesOfEachGroup) {
  const std::vector<TaggedTree> trees = {crop(0.20, true), crop(0.26, true), crop(0.12, false)};
  const GrowthComparison growth = compare_growth(trees, Confidence{});
  EXPECT_EQ(growth.unreleased->n, 1);
  EXPECT_FALSE(growth.unreleased->se.has_value());
  EXPECT_EQ(growth.difference.error().code, ErrorCode::too_few_plots);
  EXPECT_FALSE(compare_growth({}, Confidence{}).released.has_value());
}

TEST(Growth, LeavesOutTreesOfUnknownYearsAndTreesThatAreNoCropTrees) {
  std::vector<TaggedTree> trees = {crop(0.20, true), crop(0.26, true)};
  trees[0].years.reset();
  trees[1].released.reset();
  EXPECT_FALSE(compare_growth(trees, Confidence{}).released.has_value());
}

}  // namespace
}  // namespace oaklight::test
