// A tract that another program wrote, or of which a part was lost: whatever is asked of it is
// answered, or refused with what, where and how to mend it. Nothing breaks, and nothing is made up.
#include <gtest/gtest.h>

#include <iostream>
#include <random>

#include "core/session/card_view.hpp"
#include "core/session/card_work.hpp"
#include "core/session/compare.hpp"
#include "core/session/decide.hpp"
#include "core/session/live_stand.hpp"
#include "core/session/marks_view.hpp"
#include "core/session/plot_figures.hpp"
#include "core/session/sheet_set.hpp"
#include "core/session/stand_view.hpp"
#include "core/session/tract_session.hpp"
#include "tests/support/demo_files.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/set_clock.hpp"
#include "tests/support/temp_dir.hpp"
#include "tests/support/test_ids.hpp"

namespace oaklight::test {
namespace {

constexpr std::uint32_t kNowhere = 999;

struct Tear {
  const char* name;
  void (*tear)(TractData&);
  bool refused = true;  ///< more than is refused of the whole tract
};

/// What is wrong with the tract then.
const std::vector<Tear> kTears = {
    {"a neighbour that is not there",
     [](TractData& d) { d.contacts.front().neighbour = nth_id<WalkTreeId>(kNowhere); }},
    {"a crop tree that is not there",
     [](TractData& d) { d.contacts.front().crop = nth_id<WalkTreeId>(kNowhere); }},
    {"a card that reaches into another stand",
     [](TractData& d) { d.walk_trees.front().stand = d.stands.back().id; }},
    {"a walk in a stand that is not there",
     [](TractData& d) { d.walk_trees.front().stand = nth_id<StandId>(kNowhere); }},
    {"a tree of the walk of no known species",
     [](TractData& d) { d.walk_trees.front().facts.species = SpeciesCode{9'999}; }},
    {"a plot of no cruise", [](TractData& d) { d.plots[3].cruise = nth_id<CruiseId>(kNowhere); }},
    {"a plot of no stand", [](TractData& d) { d.plots[3].stand = nth_id<StandId>(kNowhere); }},
    {"two plots of one id", [](TractData& d) { d.plots[3].id = d.plots[4].id; }},
    {"a tree of no plot", [](TractData& d) { d.trees[3].plot = nth_id<PlotId>(kNowhere); }},
    {"a tree of no known species",
     [](TractData& d) { d.trees[3].facts.species = SpeciesCode{9'999}; }},
    {"no stems", [](TractData& d) { d.trees[3].stems = 0; }},
    {"seedlings of no plot", [](TractData& d) { d.regens[3].plot = nth_id<PlotId>(kNowhere); }},
    {"a design of no size",
     [](TractData& d) {
       d.cruises.front().design = PointDesign{0.0, {}};
     }},
    {"a stand of no acres", [](TractData& d) { d.stands.front().acres = Acres{0.0}; }},
    {"a mark of no tree",
     [](TractData& d) { d.marks.front().tree = nth_id<WalkTreeId>(kNowhere); }},
    {"two marks of one tree", [](TractData& d) { d.marks[1].tree = d.marks[0].tree; }, false},
    {"acorns of no tree",
     [](TractData& d) {
       d.acorn_counts.push_back(
           {nth_id<AcornCountId>(1), nth_id<WalkTreeId>(kNowhere), 2025, "", TimedCount{10}, ""});
     },
     false},
    {"no plots", [](TractData& d) { d.plots.clear(), d.trees.clear(), d.regens.clear(); }},
    {"no trees", [](TractData& d) { d.trees.clear(); }, false},
    {"no walk", [](TractData& d) { d.walk_trees.clear(), d.contacts.clear(), d.marks.clear(); }},
    {"no stands", [](TractData& d) { d.stands.clear(); }},
    {"no cruises", [](TractData& d) { d.cruises.clear(); }},
    {"every mark by hand",
     [](TractData& d) {
       for (Mark& mark : d.marks) mark.by_hand = true, mark.verdict = Verdict::keep;
     }},
    {"marks by hand and a card of nobody",
     [](TractData& d) {
       d.marks.front().by_hand = true;
       d.contacts.front().neighbour = nth_id<WalkTreeId>(kNowhere);
     }},
};

class TornTract : public testing::Test {
 protected:
  TornTract() : ids_(clock_, std::mt19937_64{20260504}) {
    auto session =
        TractSession::create(folder_ / "woods.gpkg", {clock_, std::mt19937_64{20260504}, "tablet"})
            .value();
    const auto report = session.import_files(demo_files());
    EXPECT_TRUE(report && report->faults.empty());
    EXPECT_TRUE(session.store_marks(session.recommend().value()));
    whole_ = session.data().value();
    knowledge_ = session.knowledge();
  }

  /// Asks it; gives whether it was refused.
  template <class T>
  bool refuses(const char* what, const Result<T>& answer) {
    if (answer) return false;
    SCOPED_TRACE(what);
    EXPECT_FALSE(answer.error().what.empty());
    EXPECT_FALSE(answer.error().where.empty()) << answer.error().what;
    EXPECT_FALSE(answer.error().fix.empty()) << answer.error().what;
    return true;
  }
  int refusals_of(const TractData& data);

  TempDir folder_;
  SetClock clock_{1'777'900'020'000};  // 2026-05-04T13:07:00Z
  IdSource ids_;
  TractData whole_;
  std::optional<TractKnowledge> knowledge_;
};

int TornTract::refusals_of(const TractData& data) {
  const TractKnowledge& knowledge = *knowledge_;
  const StandId stand = whole_.stands.front().id;
  const WalkTreeId tree = whole_.walk_trees.back().id;
  const LiveTract live(data);
  const PacketOptions options{.today = *day_from_text("2026-05-04")};
  int refused = 0;
  const auto ask = [&](const char* what, const auto& answer) {
    refused += refuses(what, answer) ? 1 : 0;
  };
  ask("estimate", estimate_tract(data, knowledge, {}));
  ask("figures", stand_figures(data, knowledge, {}));
  ask("running figures", running_figures(live, knowledge, stand, {}));
  ask("view of all", stand_view(data, knowledge, std::nullopt, {}));
  ask("view of a stand", stand_view(data, knowledge, stand, {}));
  ask("plan", plan_stands(data, knowledge, ids_));
  ask("plan of a stand", plan_stand(data, knowledge, ids_, stand));
  ask("recommendation", recommend_stand(data, knowledge, ids_, stand));
  ask("mapped plots", plan_mapped_plots(data, knowledge));
  ask("cards", card_views(live, knowledge, stand));
  ask("marks", marks_view(data, knowledge, std::nullopt, std::nullopt));
  ask("overrule", overrule(live, knowledge, ids_, tree, Verdict::look_again, "a den"));
  ask("take back", take_back_overrule(live, knowledge, ids_, tree));
  ask("list", packet_for(data, knowledge, PacketReader::logger, options));
  ask("owner's packet", packet_for(data, knowledge, PacketReader::owner, options));
  ask("sheets", sheet_set(data, knowledge, false));
  ask("compared with what it was", compare_files(whole_, data, knowledge, {}));
  ask("compared with what it became", compare_files(data, whole_, knowledge, {}));
  ask("two visits", compare_visits(data, knowledge, {}));
  return refused;
}

constexpr int kOfTheWhole = 2;  // no plot is mapped, and nobody decided by hand

TEST_F(TornTract, IsWholeBefore) { EXPECT_EQ(refusals_of(whole_), kOfTheWhole); }

TEST_F(TornTract, IsAnsweredOrRefusedInWords) {
  for (const Tear& torn : kTears) {
    SCOPED_TRACE(torn.name);
    TractData data = whole_;
    torn.tear(data);
    const int refused = refusals_of(data);
    std::cout << torn.name << ": " << refused << " refusals\n";
    EXPECT_EQ(refused > kOfTheWhole, torn.refused) << refused;
  }
}

// Rules that a person edited so that an id is missing.
TEST_F(TornTract, RulesThatAreMissingAreNamed) {
  knowledge_->release.rules = RuleBook{};
  const auto compared = compare_files(whole_, whole_, *knowledge_, {});
  ASSERT_FALSE(compared);
  EXPECT_EQ(compared.error().code, ErrorCode::missing_rule);
  EXPECT_FALSE(compared.error().where.empty());
}

}  // namespace
}  // namespace oaklight::test
