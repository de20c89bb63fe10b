#include "core/handoff/stump_check.hpp"

#include <gmock/gmock.h>

#include <cmath>

#include "core/base/csv_text.hpp"
#include "core/measure/cords.hpp"
#include "core/measure/tree_volume.hpp"
#include "tests/handoff/test_tract.hpp"

namespace oaklight::test {
namespace {

const DamageSettings kLimits{Percent{5.0}, Percent{10.0}};

/// A tract after the cut.
class CutTract : public TestTract {
 public:
  WalkTreeId listed(const std::string& tag, double dbh = 12) {
    const WalkTreeId id = tree(tag, kRedMaple, dbh).id;
    take(id, Reader::logger, Product::sawlog);
    return id;
  }
  WalkTreeId left(const std::string& tag, bool crop = false) {
    WalkTree& one = tree(tag, kWhiteOak, 14);
    one.crop = crop;
    const WalkTreeId id = one.id;
    mark(id, {.verdict = Verdict::keep, .reason = "A crop tree."});
    return id;
  }
  Stump& found(std::optional<WalkTreeId> tree, Finding finding) {
    data.stumps.push_back(
        {.id = nth_id<StumpId>(++stumps_ + 5000), .tree = tree, .finding = finding});
    return data.stumps.back();
  }
  [[nodiscard]] Result<StumpCheck> check(LogRule rule = LogRule::international) const {
    PacketOptions options = winter();
    options.log_rule = rule;
    return make_stump_check(data, {sawn_species(), cautions(), seasons(), nullptr, local}, kLimits,
                            options);
  }
  LocalNumbersPtr local = {};  ///< the tract's own table
  /// As species(), with a size from which they are sawn.
  static const SpeciesTable& sawn_species() {
    static const SpeciesTable kTable = [] {
      std::vector<Species> rows = species().rows();
      for (Species& s : rows) s.min_sawlog_dbh = Inches{11.0};
      return SpeciesTable(std::move(rows));
    }();
    return kTable;
  }

 private:
  std::uint32_t stumps_ = 0;
};

std::vector<std::string> states(const StumpCheck& check) {
  std::vector<std::string> list;
  for (const ListedTree& tree : check.listed)
    list.push_back(tree.tag + " " + std::string(word_of(tree.state)));
  return list;
}

TEST(StumpCheck, HoldsEachListedTreeAgainstWhatWasFound) {
  CutTract tract;
  tract.found(tract.listed("1"), Finding::as_marked);
  tract.found(tract.listed("2"), Finding::standing);
  tract.found(tract.listed("10"), Finding::hung);
  tract.listed("9");
  const auto check = tract.check();
  ASSERT_TRUE(check.has_value()) << to_text(check.error());
  EXPECT_EQ(states(*check),
            (std::vector<std::string>{"10 hung", "2 standing", "9 not_seen", "1 done"}));
  EXPECT_EQ(check->looked_at(), 3);
  // Derived: one of three looked at.
  EXPECT_NEAR(check->share_done()->value, 100.0 / 3.0, 1e-12);
}

TEST(StumpCheck, HasNoShareBeforeAnybodyLooked) {
  CutTract tract;
  tract.listed("1");
  const auto check = tract.check().value();
  EXPECT_EQ(check.looked_at(), 0);
  EXPECT_FALSE(check.share_done().has_value());
}

TEST(StumpCheck, NeedsAList) {
  CutTract tract;
  tract.left("1");
  const auto check = tract.check();
  ASSERT_FALSE(check.has_value());
  EXPECT_EQ(check.error().code, ErrorCode::nothing_marked);
}

TEST(StumpCheck, CallsATagThatTurnsUpTwiceWithTwoFindingsUnclear) {
  CutTract tract;
  const auto one = tract.listed("1");
  tract.found(one, Finding::as_marked);
  tract.found(one, Finding::standing);
  const auto two = tract.listed("2");
  tract.found(two, Finding::as_marked);
  tract.found(two, Finding::as_marked);
  const auto check = tract.check().value();
  EXPECT_EQ(states(check), (std::vector<std::string>{"1 unclear", "2 done"}));
  ASSERT_EQ(check.twice.size(), 2U);
  EXPECT_EQ(check.twice[0].tag, "1");
  EXPECT_EQ(check.twice[0].findings, (std::vector<Finding>{Finding::as_marked, Finding::standing}));
}

TEST(StumpCheck, CallsAFindingThatTheListContradictsUnclear) {
  CutTract tract;
  tract.found(tract.listed("1"), Finding::hurt);
  tract.found(tract.listed("2"), Finding::not_marked);
  const auto check = tract.check().value();
  EXPECT_EQ(states(check), (std::vector<std::string>{"1 unclear", "2 unclear"}));
  EXPECT_TRUE(check.hurt.empty());
  EXPECT_TRUE(check.unmarked.empty());
}

TEST(StumpCheck, TellsALeaveTreeThatWasCutWithItsOwnSize) {
  // By hand: left() marks trees of 14 in.
  CutTract tract;
  tract.listed("1");
  const auto oak = tract.left("7", true);
  tract.found(oak, Finding::not_marked);
  const auto check = tract.check().value();
  ASSERT_EQ(check.unmarked.size(), 1U);
  const UnmarkedTree& tree = check.unmarked[0];
  EXPECT_EQ(tree.tag, "7");
  EXPECT_TRUE(tree.leave_tree);
  EXPECT_TRUE(tree.crop);
  EXPECT_TRUE(tree.measured);
  EXPECT_EQ(tree.dbh->low, Inches{14.0});
  EXPECT_EQ(tree.dbh->high, Inches{14.0});
}

TEST(StumpCheck, TakesAKeptTreeFoundAsMarkedForOneThatWasCut) {
  CutTract tract;
  tract.listed("1");
  tract.found(tract.left("7"), Finding::as_marked);
  EXPECT_EQ(tract.check().value().unmarked.size(), 1U);
}

// Log height from the tract's own maples of 11 to 17 in: 4, 5 and 6 half logs, the middle one 5.
// DBH and volumes then by the functions that tests/measure holds against their sources.
TEST(StumpCheck, ValuesAnUntaggedStumpByItsOwnSizeAndTheLogsOfTreesLikeIt) {
  CutTract tract;
  for (const int logs : {6, 4, 5}) {
    tract.listed(std::to_string(logs), 14);
    tract.data.walk_trees.back().facts.half_logs = logs;
  }
  WalkTree& far = tract.tree("90", kRedMaple, 24);
  far.facts.half_logs = 8;
  Stump& stump = tract.found({}, Finding::not_marked);
  stump.species = SpeciesCode{kRedMaple};
  stump.over_bark = stump_in(17.0);
  stump.height = tape_ft(0.5);
  const auto check = tract.check(LogRule::doyle).value();
  ASSERT_EQ(check.unmarked.size(), 1U);
  const UnmarkedTree& tree = check.unmarked[0];
  const StumpDbh size =
      dbh_from_stump({stump.over_bark, {}, stump.height}, species().find({kRedMaple})).value();
  EXPECT_EQ(tree.dbh->likely, size.dbh);
  EXPECT_FALSE(tree.measured);
  EXPECT_EQ(tree.half_logs, 5);
  ASSERT_TRUE(tree.board_feet.has_value());
  const double likely = tree_board_feet(LogRule::doyle, dbh_in(size.dbh.value), 5).value().value;
  EXPECT_EQ(tree.board_feet->likely.value, std::round(likely));
  EXPECT_LT(tree.board_feet->low, tree.board_feet->high);
  const double cords = firewood_cords(dbh_in(size.dbh.value)).value().value;
  EXPECT_EQ(tree.cords->likely.value, std::round(cords * 100.0) / 100.0) << "as it is printed";
  EXPECT_EQ(check.unmarked_totals.with_board_feet, 1);
  EXPECT_EQ(check.unmarked_totals.cords.likely, tree.cords->likely);
  EXPECT_EQ(check.log_rule, "Doyle");
}

TEST(StumpCheck, TellsNoVolumeThatNothingIsKnownOf) {
  CutTract tract;
  tract.listed("1");
  tract.found({}, Finding::not_marked);
  Stump& no_logs = tract.found({}, Finding::not_marked);
  no_logs.species = SpeciesCode{kRedMaple};
  no_logs.under_bark = stump_in(20.0);
  const auto check = tract.check().value();
  ASSERT_EQ(check.unmarked.size(), 2U);
  EXPECT_FALSE(check.unmarked[0].dbh.has_value());
  EXPECT_EQ(check.unmarked[0].species, "not known");
  EXPECT_FALSE(check.unmarked[0].cords.has_value());
  EXPECT_TRUE(check.unmarked[1].height_assumed);
  EXPECT_FALSE(check.unmarked[1].board_feet.has_value()) << "no tree of the tract has a log height";
  EXPECT_TRUE(check.unmarked[1].cords.has_value());
  EXPECT_EQ(check.unmarked_totals.without_dbh, 1);
  EXPECT_EQ(check.unmarked_totals.with_board_feet, 0);
}

// By hand: 0 at 10 in and 400 board feet, 2 cords at 30 in make 20 board feet and 0.1 cord an inch.
LocalNumbersPtr maple_table(double from, double to) {
  LocalNumbers local;
  local.volumes.log_rule = "doyle";
  local.volumes.source = "the invented mill";
  local.volumes.rows = {{kRedMaple, Inches{from}, 20.0 * (from - 10.0), 0.1 * (from - 10.0)},
                        {kRedMaple, Inches{to}, 20.0 * (to - 10.0), 0.1 * (to - 10.0)}};
  return std::make_shared<const LocalNumbers>(local);
}

TEST(StumpCheck, ValuesWoodByTheTractsOwnTableWhereItReachesTheWholeRange) {
  CutTract tract;
  tract.listed("1", 14);
  WalkTree& stays = tract.tree("2", kRedMaple, 15);
  stays.facts.half_logs = 4;
  tract.found(stays.id, Finding::not_marked);
  Stump& stump = tract.found({}, Finding::not_marked);
  stump.species = SpeciesCode{kRedMaple};
  stump.over_bark = stump_in(18.0);
  stump.height = tape_ft(0.5);
  tract.local = maple_table(10.0, 30.0);
  const auto check = tract.check(LogRule::doyle).value();
  ASSERT_EQ(check.unmarked.size(), 2U);
  const UnmarkedTree& taped = check.unmarked[0];
  // By hand: 5 in above 10 in, at 20 board feet and 0.1 cord an inch.
  EXPECT_EQ(taped.board_feet->likely, BoardFeet{100});
  EXPECT_EQ(taped.cords->likely, Cords{0.5});
  const UnmarkedTree& guessed = check.unmarked[1];
  EXPECT_TRUE(guessed.local_board_feet && guessed.local_cords);
  EXPECT_EQ(guessed.board_feet->high.value,
            std::round(20.0 * (dbh_in(guessed.dbh->high.value).inches().value - 10.0)));
  EXPECT_EQ(
      check.volumes_by,
      "By the local table (the invented mill) [local_volume]: board feet of 2 trees, cords of "
      "2 trees. All others by the book.");

  // The stump's range ends outside a table to 15 in: no figure of it mixes two tables.
  tract.local = maple_table(10.0, 15.0);
  const auto book = tract.check(LogRule::doyle).value();
  EXPECT_TRUE(book.unmarked[0].local_board_feet);
  EXPECT_FALSE(book.unmarked[1].local_board_feet || book.unmarked[1].local_cords);
  EXPECT_EQ(
      book.unmarked[1].board_feet->likely.value,
      std::round(
          tree_board_feet(LogRule::doyle, dbh_in(guessed.dbh->likely.value), 4).value().value));
  EXPECT_THAT(book.volumes_by, testing::HasSubstr("board feet of 1 tree, cords of 1 tree."));
}

TEST(StumpCheck, SaysNothingOfALocalTableThatIsNotThere) {
  CutTract tract;
  tract.listed("1");
  tract.found(tract.left("2"), Finding::not_marked);
  EXPECT_EQ(tract.check().value().volumes_by, "");
}

// Derived: 2 of 10 crop trees cut or badly hurt is 20 %, and 3 of 30 trees to be left is 10 %.
TEST(StumpCheck, HoldsDamageAgainstTheAgreedLimits) {
  CutTract tract;
  tract.listed("1");
  for (int i = 0; i < 30; ++i) tract.left("K" + std::to_string(i), i < 10);
  const auto& trees = tract.data.walk_trees;
  tract.found(trees[1].id, Finding::not_marked);
  tract.found(trees[2].id, Finding::hurt).wound = Wound::broken;
  tract.found(trees[3].id, Finding::hurt).wound = Wound::small;
  tract.found(trees[4].id, Finding::hurt);
  tract.found(trees[20].id, Finding::hurt).wound = Wound::large;
  tract.found({}, Finding::hurt).wound = Wound::large;
  const auto check = tract.check().value();
  EXPECT_EQ(check.crop_damage.left, 10);
  EXPECT_EQ(check.crop_damage.cut, 1);
  EXPECT_EQ(check.crop_damage.badly, 1);
  EXPECT_EQ(check.crop_damage.other, 2);
  EXPECT_EQ(check.crop_damage.share(), Percent{20.0});
  EXPECT_TRUE(check.crop_damage.over());
  EXPECT_EQ(check.left_damage.left, 30);
  EXPECT_EQ(check.left_damage.share(), Percent{10.0});
  EXPECT_FALSE(check.left_damage.over()) << "at the limit, not over it";
  EXPECT_EQ(check.hurt_without_tag, 1);
  ASSERT_EQ(check.hurt.size(), 5U);
  EXPECT_TRUE(check.hurt[0].badly());
  EXPECT_FALSE(check.hurt.back().badly());
}

TEST(StumpCheck, KeepsTheWorstWoundOfATreeNotedTwice) {
  CutTract tract;
  tract.listed("1");
  const auto oak = tract.left("7");
  tract.found(oak, Finding::hurt).wound = Wound::large;
  tract.found(oak, Finding::hurt).wound = Wound::small;
  const auto check = tract.check().value();
  ASSERT_EQ(check.hurt.size(), 1U);
  EXPECT_EQ(check.hurt[0].wound, Wound::large);
  EXPECT_EQ(check.left_damage.badly, 1);
}

TEST(StumpCheck, HasNoDamageShareWithoutTreesToBeLeft) {
  CutTract tract;
  tract.listed("1");
  const auto check = tract.check().value();
  EXPECT_FALSE(check.crop_damage.share().has_value());
  EXPECT_FALSE(check.crop_damage.over());
}

TEST(StumpCheck, BeginsWithWhatIsDangerous) {
  CutTract tract;
  tract.found(tract.listed("1"), Finding::hung);
  tract.listed("2");
  const auto check = tract.check().value();
  ASSERT_FALSE(check.before_you_go.empty());
  EXPECT_NE(check.before_you_go[0].find("hung up"), std::string::npos);
  EXPECT_NE(check.before_you_go[1].find("no order to cut"), std::string::npos);
  ASSERT_FALSE(check.listed[0].cautions.empty());
  EXPECT_EQ(check.listed[0].cautions[0].code, "HUNG_UP");
  EXPECT_EQ(check.listed[0].cautions[0].severity, Severity::stop);
  ASSERT_EQ(check.cautions.size(), 3U);
  EXPECT_EQ(check.cautions[0].code, "HUNG_IN");
  EXPECT_EQ(check.cautions[0].severity, Severity::stop);
}

TEST(StumpCheck, WarnsOfTheTreeItSendsSomebodyToAndNotOfOneThatIsDown) {
  CutTract tract;
  for (const char* tag : {"1", "2"}) {
    const WalkTreeId id = tract.tree(tag, kWhiteAsh, 15).id;
    tract.data.walk_trees.back().facts.status = TreeStatus::dead;
    tract.mark(id, {.verdict = Verdict::take, .method = Method::machine_fell, .by_hand = true});
  }
  tract.found(tract.data.walk_trees[0].id, Finding::as_marked);
  const auto check = tract.check().value();
  EXPECT_EQ(check.listed[0].tag, "2");
  EXPECT_FALSE(check.listed[0].cautions.empty());
  EXPECT_TRUE(check.listed[1].cautions.empty());
}

TEST(StumpAudit, DrawsTheSameTagsBeforeAndAfterTheWalk) {
  CutTract tract;
  for (int i = 1; i <= 60; ++i) tract.listed(std::to_string(i));
  const Confidence sure;
  const auto before = audit_stumps(tract.check().value(), 0, Percent{5.0}, sure, 7).value();
  for (const WalkTree& tree : tract.data.walk_trees) tract.found(tree.id, Finding::as_marked);
  const auto after = audit_stumps(tract.check().value(), 0, Percent{5.0}, sure, 7).value();
  EXPECT_EQ(before.tags, after.tags);
  EXPECT_EQ(before.not_seen, before.tags);
  EXPECT_FALSE(before.greatest_share.has_value());
  EXPECT_TRUE(after.not_seen.empty());
  EXPECT_TRUE(after.holds());
  EXPECT_EQ(after.plan.model, AuditModel::hypergeometric);
}

TEST(StumpAudit, FailsWhenMoreAreWrongThanAllowed) {
  CutTract tract;
  for (int i = 1; i <= 60; ++i) {
    tract.found(tract.listed(std::to_string(i)),
                i % 3 == 0 ? Finding::standing : Finding::as_marked);
  }
  const auto audit = audit_stumps(tract.check().value(), 0, Percent{5.0}, {}, 7).value();
  EXPECT_GT(audit.wrong, 0);
  ASSERT_TRUE(audit.greatest_share.has_value());
  EXPECT_FALSE(audit.holds());
  EXPECT_GE(*audit.greatest_share, Percent{100.0 / 3.0}) << "a third is wrong";
}

TEST(StumpAudit, LooksAtAsManyAsToldAndNoMoreThanThereAre) {
  CutTract tract;
  for (int i = 1; i <= 20; ++i) tract.listed(std::to_string(i));
  const auto check = tract.check().value();
  EXPECT_EQ(audit_stumps(check, 0, Percent{5.0}, {}, 7, 4).value().tags.size(), 4U);
  for (const int wrong : {0, 21, -1}) {
    EXPECT_EQ(audit_stumps(check, 0, Percent{5.0}, {}, 7, wrong).error().code,
              ErrorCode::out_of_range);
  }
}

TEST(StumpCheckCsv, HasARowForEachTreeAndNoFormula) {
  CutTract tract;
  tract.found(tract.listed("=1+1"), Finding::as_marked).note = "=cmd|' /C calc'!A0";
  tract.found(tract.left("7"), Finding::hurt).wound = Wound::large;
  Stump& stump = tract.found({}, Finding::not_marked);
  stump.species = SpeciesCode{kRedMaple};
  stump.over_bark = stump_in(17.0);
  stump.position = at(10, 10);
  const auto check = tract.check().value();
  const auto rows = read_csv(stump_check_csv(check), "check.csv");
  ASSERT_TRUE(rows.has_value());
  ASSERT_EQ(rows->size(), 1 + check.listed.size() + check.unmarked.size() + check.hurt.size());
  for (const CsvRow& row : *rows) {
    EXPECT_EQ(row.cells.size(), rows->front().cells.size());
    for (const std::string& cell : row.cells)
      EXPECT_TRUE(cell.empty() || cell.front() != '=') << cell;
  }
  EXPECT_EQ((*rows)[1].cells[0], "done");
  EXPECT_EQ((*rows)[2].cells[0], "cut_not_marked");
  EXPECT_EQ((*rows)[2].cells[8], "stump");
  EXPECT_EQ((*rows)[3].cells[0], "badly_hurt");
  EXPECT_EQ((*rows)[3].cells[10], "large");
}

}  // namespace
}  // namespace oaklight::test
