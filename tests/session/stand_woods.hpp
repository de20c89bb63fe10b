#pragma once

#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <set>

#include "core/session/live_stand.hpp"
#include "core/session/plot_figures.hpp"
#include "core/session/plot_work.hpp"
#include "tests/session/work_fixture.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/set_clock.hpp"
#include "tests/support/test_cruise.hpp"

namespace oaklight::test {

inline constexpr double kHeld = 0x1p-49;  // what RunningMoments may be off in a plot's value
inline constexpr double kUnit = 0x1p-53;  // of rounding in double

/// What the header of RunningMoments allows, in one place: the mean, and root of the squares.
template <class Q>
void expect_same(const Estimate<Q>& now, const Estimate<Q>& full, const char* what) {
  SCOPED_TRACE(what);
  const double n = full.plots;
  const double mean_off = kHeld + (n + 4.0) * kUnit * full.mean.value;
  const double rounding = (n / 2.0 + 12.0) * kUnit;
  EXPECT_NEAR(now.mean.value, full.mean.value, mean_off);
  EXPECT_EQ(now.plots, full.plots);
  EXPECT_EQ(now.found, full.found);
  EXPECT_EQ(now.trust, full.trust);
  EXPECT_EQ(now.df, full.df);
  EXPECT_EQ(now.on_at_most, full.on_at_most);
  ASSERT_EQ(now.se.has_value(), full.se.has_value());
  ASSERT_EQ(now.cv.has_value(), full.cv.has_value());
  if (!full.se) return;
  const double se_off = mean_off / std::sqrt(n - 1.0) + rounding * full.se->value;
  const double t = student_t(full.confidence, *full.df);
  EXPECT_NEAR(now.se->value, full.se->value, se_off);
  EXPECT_NEAR(now.sd->value, full.sd->value,
              mean_off * std::sqrt(n / (n - 1.0)) + rounding * full.sd->value);
  EXPECT_NEAR(now.half_width->value, full.half_width->value, t * se_off);
  EXPECT_NEAR(now.lo->value, full.lo->value, mean_off + t * se_off + kUnit * full.mean.value);
  EXPECT_NEAR(now.hi->value, full.hi->value, mean_off + t * se_off + 2.0 * kUnit * full.hi->value);
}

/// Two stands that are worked at random, in memory, by what people do and by what joined or
/// damaged files may hold; both are read in full after each step.
class Woods {
 public:
  Woods(Design design, std::optional<Dbh> min_dbh, unsigned seed)
      : chance_(seed),
        ids_(clock_, [this] { return chance_(); }),
        live_(begin(design, min_dbh)),
        a_(live_, shipped_tract_knowledge().species(), live_.data().stands[0].id),
        b_(live_, shipped_tract_knowledge().species(), live_.data().stands[1].id) {
    points_ = std::holds_alternative<PointDesign>(design);
    metric_ = std::visit([](const auto& d) { return d.system; }, design) == UnitSystem::metric;
  }

  void act() {
    const auto what = chance_() % 20;
    // Where a record contradicts another, somebody soon takes it back.
    if ((what < 3 || (contradiction_ && what < 10)) && !done_.empty()) {
      undone_.push_back(apply(done_.back()));
      done_.pop_back();
    } else if (what < 4 && !undone_.empty()) {
      done_.push_back(apply(undone_.back()));
      undone_.pop_back();
    } else {
      const auto made = what < 19 ? proper() : odd();
      if (made) {
        done_.push_back(apply(made->changes));
        undone_.clear();
      }
    }
    a_.follow();
    b_.follow();
  }

  void compare(const EstimateOptions& options) {
    contradiction_ = false;
    for (const LiveStand* stand : {&a_, &b_}) {
      const auto full = running_figures(live_, shipped_tract_knowledge(), stand->stand(), options);
      const auto now = stand->now(options);
      std::set<CruiseId> cruises;
      for (const Plot* plot : live_.plots_of(stand->stand())) cruises.insert(plot->cruise);
      // What it leaves to the full computation is several cruises and what that refuses: no more.
      ASSERT_EQ(now.has_value(), full.has_value() && cruises.size() == 1)
          << (full ? "" : to_text(full.error()));
      if (!now) {
        ++(full ? left_to_full : refused);
        contradiction_ = contradiction_ || (!full && full.error().code != ErrorCode::no_data);
        continue;
      }
      ++told;
      EXPECT_EQ(now->plots, full->plots);
      expect_same(now->ba, full->live.ba, "basal area");
      if (now->trees) expect_same(*now->trees, full->live.trees, "trees");
      // Nothing but trees without a size keeps the number of trees back.
      ASSERT_EQ(now->trees.has_value(), !full->live.sized.by_ratio || !has_counts(*stand));
      counted += now->trees ? 0 : 1;
      ASSERT_EQ(now->need.has_value(), full->need.has_value());
      if (!full->need) {
        EXPECT_EQ(now->need.error().code, full->need.error().code);
        continue;
      }
      EXPECT_EQ(now->need->more, full->need->more);
      EXPECT_EQ(now->need->plan.plots, full->need->plan.plots);
      EXPECT_EQ(now->need->plan.by_stand, full->need->plan.by_stand);
      needs += full->need->more > 0 ? 1 : 0;
    }
  }
  int told = 0, refused = 0, left_to_full = 0, counted = 0, needs = 0;

 private:
  LiveTract begin(Design design, std::optional<Dbh> min_dbh) {
    TractData data;
    for (const char* name : {"A", "B"}) {
      Stand stand;
      stand.id = ids_.next_id<StandTag>();
      stand.name = name;
      stand.acres = Acres{12.5};
      data.stands.push_back(stand);
    }
    Cruise cruise;
    cruise.id = ids_.next_id<CruiseTag>();
    cruise.name = "first";
    cruise.design = design;
    cruise.min_dbh = min_dbh;
    cruise.regen_area = 0.001;
    data.cruises = {cruise};
    return LiveTract(std::move(data));
  }

  bool has_counts(const LiveStand& stand) {
    return std::ranges::any_of(live_.plots_of(stand.stand()), [](const Plot* plot) {
      return in_sample(*plot) && !taken_at(*plot).counted.empty();
    });
  }

  /// Follows changes; what undoes them.
  std::vector<Change> apply(const std::vector<Change>& changes) {
    std::vector<Change> back;
    for (const Change& change : changes) {
      back.insert(back.begin(), std::visit([this](const auto& c) { return before(c); }, change));
    }
    live_.follow(changes);
    return back;
  }
  template <class R>
  Change before(const R& record) {
    if constexpr (std::is_same_v<R, Tract> || std::is_same_v<R, AcornCount> ||
                  std::is_same_v<R, AcornYear>) {
      return record;
    } else if constexpr (std::is_same_v<R, Remove>) {
      return std::visit(
          [&](const auto& id) -> Change {
            if constexpr (requires { live_.find(id); }) {
              if (const auto* there = live_.find(id)) return *there;
            }
            return record;
          },
          record.id);
    } else {
      if (const auto* there = live_.find(record.id)) return *there;
      return Remove{record.id};
    }
  }

  template <class R>
  const R* any(const std::vector<R>& records) {
    return records.empty() ? nullptr : &records[chance_() % records.size()];
  }
  Dbh dbh() {
    const auto tenths = static_cast<std::int32_t>(5 + chance_() % 300);
    return Dbh::from_tenths(metric_ ? tenths * 5 / 2 : tenths,
                            metric_ ? UnitSystem::metric : UnitSystem::us)
        .value();
  }
  TreeDraft draft() {
    TreeDraft draft{{SpeciesCode{std::array{802, 833, 316, 621}[chance_() % 4]}, dbh()}};
    if (chance_() % 8 == 0) draft.facts.status = TreeStatus::dead;
    if (chance_() % 6 == 0) draft.stems = 1 + static_cast<int>(chance_() % 9);
    if (chance_() % 6 == 0) draft.edge_count = chance_() % 2 == 0 ? 2 : 4;
    return draft;
  }

  /// What the screens let a person do; many are refused, as they should be.
  Result<Action> proper() {
    const auto& knowledge = shipped_tract_knowledge();
    const Plot* plot = any(live_.data().plots);
    const Tree* tree = any(live_.data().trees);
    const auto what = chance_() % 24;
    if (plot == nullptr || what == 0) {
      Plot added;
      added.stand = live_.data().stands[chance_() % 2].id;
      added.cruise = live_.data().cruises.front().id;
      return add_plot(live_, knowledge, ids_, added);
    }
    switch (what) {
      case 1:
        return call_empty(live_, plot->id);
      case 2:
        return plan_again(live_, plot->id);
      case 3:
        return skip_plot(live_, knowledge, plot->id, "river");
      case 4:
      case 5:
        if (tree != nullptr) return remove_tree(live_, knowledge, tree->id);
        break;
      case 6:
      case 7:
        if (tree != nullptr) return correct_tree(live_, knowledge, tree->id, draft());
        break;
      case 8:
        if (points_) return set_task(live_, plot->id, PlotTask::count);
        break;
      case 9:
        if (points_) return set_task(live_, plot->id, PlotTask::measure);
        break;
      case 10:
        return count_regen(live_, knowledge, ids_, {plot->id, SpeciesCode{802}}, 1);
      case 11:
      case 12:
        return count_tree(live_, knowledge, plot->id, SpeciesCode{833},
                          chance_() % 4 == 0 ? -1 : 1);
      default:
        break;
    }
    return tally_tree(live_, knowledge, ids_, plot->id, draft());
  }

  /// What no screen does and a joined file or another program may: plots and trees that move,
  /// change their design, contradict one another.
  Result<Action> odd() {
    const Plot* found = any(live_.data().plots);
    if (found == nullptr) return Action{};
    Plot plot = *found;
    const Plot* other = any(live_.data().plots);
    const Tree* there = any(live_.data().trees);
    Cruise cruise = live_.data().cruises.front();
    switch (chance_() % 12) {
      case 0:
        plot.stand = live_.data().stands[chance_() % 2].id;
        return Action{"move plot", {plot}};
      case 1:
        plot.label = other->label;
        return Action{"same label", {plot}};
      case 2:
        plot.status = static_cast<PlotStatus>(chance_() % 4);
        return Action{"status", {plot}};
      case 3:
        cruise.min_dbh = chance_() % 2 == 0 ? std::nullopt : std::optional(dbh_in(6.0));
        return Action{"smallest tree", {cruise}};
      case 4:
        if (auto* point = std::get_if<PointDesign>(&cruise.design)) point->factor += 5.0;
        if (auto* fixed = std::get_if<FixedDesign>(&cruise.design)) fixed->area *= 2.0;
        return Action{"design", {cruise}};
      case 5:
        cruise.id = ids_.next_id<CruiseTag>();
        cruise.date = "2027-05-04";
        plot.cruise = cruise.id;
        return Action{"later visit", {cruise, plot}};
      case 6: {
        Action gone{"plot with its trees", {}};
        for (const Tree* tree : live_.trees_of(plot.id))
          gone.changes.emplace_back(Remove{tree->id});
        for (const Regen* r : live_.regens_of(plot.id)) gone.changes.emplace_back(Remove{r->id});
        gone.changes.emplace_back(Remove{plot.id});
        return gone;
      }
      case 7: {
        Stand stand = live_.data().stands[chance_() % 2];
        stand.acres = Acres{1.0 + static_cast<double>(chance_() % 30)};
        return Action{"acres", {stand}};
      }
      default:
        break;
    }
    if (there == nullptr) return Action{};
    Tree tree = *there;
    switch (chance_() % 4) {
      case 0:
        tree.plot = other->id;
        break;
      case 1:
        tree.stems = chance_() % 2 == 0 ? 0 : 10'001;
        break;
      case 2:
        tree.facts.species = SpeciesCode{9'999};
        break;
      default:
        tree.edge_count = 5;
    }
    return Action{"odd tree", {tree}};
  }

  std::mt19937_64 chance_;
  SetClock clock_{1'777'900'020'000};
  IdSource ids_;
  LiveTract live_;
  LiveStand a_, b_;
  bool points_ = false, metric_ = false, contradiction_ = false;
  std::vector<std::vector<Change>> done_, undone_;
};

}  // namespace oaklight::test
