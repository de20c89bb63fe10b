// What a hurried person would do on the demo tract, stand by stand, beside the recommendation. The
// table is printed; the test holds the recommendation to what it promises.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <map>
#include <set>
#include <sstream>

#include "core/base/embedded.hpp"
#include "core/forms/read_cruise.hpp"
#include "core/forms/read_form.hpp"
#include "core/release/groundwork.hpp"
#include "core/release/objections.hpp"
#include "core/release/stand_facts.hpp"
#include "core/stand/stand_stocking.hpp"
#include "tests/support/places.hpp"
#include "tests/support/set_clock.hpp"
#include "tests/support/trees.hpp"

namespace oaklight {
namespace {

std::optional<NamedText> file_of(const std::string& name) {
  std::ifstream in(test::source_path(std::string("demo_plots/") + name), std::ios::binary);
  std::stringstream text;
  text << in.rdbuf();
  return NamedText{name, text.str()};
}

TractData demo() {
  std::string_view form_json;
  for (const EmbeddedFile& file : embedded_forms()) {
    if (file.path == "tally.form.json") form_json = file.text;
  }
  const auto form = read_form(form_json, "tally.form.json");
  EXPECT_TRUE(form);
  test::SetClock clock(1'777'000'000'000);
  std::uint64_t state = 1;
  // Knuth's MMIX generator; any would do, as long as each run gives the same ids.
  IdSource ids(clock, [&] { return state = state * 6364136223846793005U + 1442695040888963407U; });
  const CruiseFiles files{file_of("tract.csv"),        file_of("stands.csv"),
                          file_of("plots.csv"),        file_of("trees.csv"),
                          file_of("regeneration.csv"), file_of("crop_trees.csv"),
                          file_of("map.geojson")};
  CruiseImport read = read_cruise(files, *form, test::shipped_knowledge().species, {}, ids);
  EXPECT_TRUE(read.faults.empty());
  return std::move(read.data);
}

/// One card: a crop tree and its neighbours with their distance, as far as taped.
struct Near {
  std::uint32_t tree = 0;
  double feet = 0.0;
};

class Walk {
 public:
  Walk(const TractData& data, const ReleaseInput& input) : input_(input) {
    std::map<Uuid, std::uint32_t> place;
    for (std::uint32_t i = 0; i < trees().size(); ++i) place[trees()[i].id] = i;
    for (const Contact& c : data.contacts) {
      const auto crop = place.find(c.crop.value);
      const auto other = place.find(c.neighbour.value);
      if (crop == place.end() || other == place.end() || !c.distance) continue;
      cards_[crop->second].push_back({other->second, c.distance->feet().value});
    }
  }

  const std::vector<ReleaseTree>& trees() const { return input_.graph.trees(); }
  double dbh(std::uint32_t tree) const { return trees()[tree].facts.dbh.inches().value; }

  /// Two neighbours of each crop tree, first by `before`; no crop tree among them.
  template <class Before>
  HandPlan two_each(Before before) const {
    HandPlan plan = all_crops();
    for (const auto& [crop, card] : cards_) {
      std::vector<Near> near = card;
      std::erase_if(near, [&](const Near& n) { return trees()[n.tree].proposed; });
      std::stable_sort(near.begin(), near.end(), before);
      for (std::size_t i = 0; i < near.size() && i < 2; ++i) cut(plan, near[i].tree);
    }
    return plan;
  }

  /// Everything nearer than 1.75 ft for each inch of DBH (R2.22).
  HandPlan by_spacing() const {
    HandPlan plan = all_crops();
    for (const auto& [crop, card] : cards_) {
      for (const Near& n : card) {
        if (!trees()[n.tree].proposed && n.feet < 1.75 * dbh(crop)) cut(plan, n.tree);
      }
    }
    return plan;
  }

  static HandPlan of(const ReleasePlan& plan) {
    return {test::released_tags(plan), test::cut_tags(plan)};
  }

 private:
  HandPlan all_crops() const {
    HandPlan plan;
    for (const auto& [crop, card] : cards_) plan.crop_tags.push_back(trees()[crop].tag);
    return plan;
  }
  void cut(HandPlan& plan, std::uint32_t tree) const {
    const std::string& tag = trees()[tree].tag;
    if (std::find(plan.cut_tags.begin(), plan.cut_tags.end(), tag) == plan.cut_tags.end()) {
      plan.cut_tags.push_back(tag);
    }
  }

  const ReleaseInput& input_;
  std::map<std::uint32_t, std::vector<Near>> cards_;
};

struct Row {
  std::size_t crops = 0, cut = 0, against = 0, guards = 0, kept = 0;
  int before = 0, after = 0;
  double stocking = 0.0;
};

Row judged(const ReleaseInput& input, const HandPlan& plan) {
  const Groundwork ground(input);
  const auto& trees = input.graph.trees();
  std::vector<bool> gone(trees.size(), false);
  Selection selection(trees.size());
  CutTally tally;
  Row row{plan.crop_tags.size(), plan.cut_tags.size()};
  const std::set<std::string> cut(plan.cut_tags.begin(), plan.cut_tags.end());
  const std::set<std::string> crops(plan.crop_tags.begin(), plan.crop_tags.end());
  for (std::uint32_t i = 0; i < trees.size(); ++i) {
    if (crops.count(trees[i].tag) > 0) selection.standing[i] = Standing::released;
    if (cut.count(trees[i].tag) == 0) continue;
    gone[i] = true;
    tally.take(trees[i].facts, ground.traits[i], 1.0);
    const Keep keep = ground.keeps[i];
    if (keep != Keep::no && keep != Keep::bank && keep != Keep::scarce_species) ++row.kept;
  }
  const std::vector<bool> nothing(trees.size(), false);
  for (std::uint32_t i = 0; i < trees.size(); ++i) {
    if (crops.count(trees[i].tag) == 0) continue;
    row.before += light_of(ground.problem, selection, nothing, i).sides_free;
    row.after += light_of(ground.problem, selection, gone, i).sides_free;
  }
  for (const Objection& objection : objections(input, plan)) {
    ++row.against;
    row.guards += objection.tag.empty() ? 1U : 0U;
  }
  if (ground.problem.guards) {
    row.stocking = upland_oak_stocking(density_after(*ground.problem.guards, tally).guard).value;
  }
  return row;
}

void print(const std::string& stand, const char* name, const Row& r) {
  std::printf("%-12s %-10s %6zu %5zu %7d %6d %9.1f %10zu %12zu %11zu\n", stand.c_str(), name,
              r.crops, r.cut, r.before, r.after, r.stocking, r.kept, r.guards, r.against);
}

TEST(NaiveOnTheDemo, OnlyTheRecommendationHasNothingAgainstIt) {
  const TractData data = demo();
  std::printf("%-12s %-10s %6s %5s %7s %6s %9s %10s %12s %11s\n", "stand", "choice", "crops", "cut",
              "before", "after", "stocking", "keeps cut", "whole plan", "objections");
  std::size_t stands = 0;
  for (const Stand& stand : data.stands) {
    const auto input = input_from_cards(data, stand.id, test::shipped_knowledge());
    ASSERT_TRUE(input) << to_text(input.error());
    if (input->graph.trees().empty()) continue;
    ++stands;
    const Walk walk(data, *input);
    const Row nearest =
        judged(*input, walk.two_each([](const Near& a, const Near& b) { return a.feet < b.feet; }));
    const Row biggest = judged(*input, walk.two_each([&](const Near& a, const Near& b) {
      return walk.dbh(a.tree) > walk.dbh(b.tree);
    }));
    const Row spacing = judged(*input, walk.by_spacing());
    const ReleasePlan plan = recommend(*input);
    const HandPlan ours = Walk::of(plan);
    const Row best = judged(*input, ours);
    print(stand.name, "nearest", nearest);
    print(stand.name, "biggest", biggest);
    print(stand.name, "spacing", spacing);
    print(stand.name, "ours", best);
    EXPECT_EQ(best.kept, 0U) << stand.name;
    EXPECT_EQ(best.guards, 0U) << stand.name;
    for (const Objection& objection : objections(*input, ours)) {
      ADD_FAILURE() << stand.name << " " << objection.tag << ": " << objection.text;
    }
    EXPECT_GT(nearest.against, 0U) << stand.name;
    EXPECT_GT(biggest.against, 0U) << stand.name;
    EXPECT_GT(spacing.against, 0U) << stand.name;
  }
  EXPECT_GE(stands, 1U);
}

}  // namespace
}  // namespace oaklight
