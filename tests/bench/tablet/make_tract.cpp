// Makes an invented tract file, by seed: bench_tablet_tract FILE KIND TREES. KIND "tally": trees of
// plots, twenty a plot. KIND "walk": trees of a marking walk, every tenth a crop tree with the next
// nine around it, on stands that were cruised too. The first stand is decided by the rules; its
// marks are given to the trees of the other stands in the same order, since deciding them all would
// take minutes.
#include <cmath>
#include <cstdlib>
#include <iostream>
#include <map>
#include <random>
#include <string>

#include "core/session/decide.hpp"
#include "core/store/tract_store.hpp"
#include "tests/support/wood.hpp"

namespace oaklight {
namespace {

constexpr int kTreesOfAPlot = 20;
constexpr int kPlotsOfAStand = 250;
constexpr int kWalkOfAStand = 1000;
constexpr int kCruisedPlots = 6;  // of a walked stand
constexpr int kTreesOfACard = 10;
constexpr double kDegreesBetweenPlots = 0.0006;   // about 200 ft
constexpr double kDegreesBetweenTrees = 0.00006;  // about 20 ft

struct Maker {
  TractStore& store;
  std::mt19937 random{20260504};
  TractData data = {};
  CruiseId cruise = {};

  template <class Tag>
  Id<Tag> id() {
    return store.ids().next_id<Tag>();
  }

  TreeFacts facts() {
    const double dbh = 4.0 + 0.1 * std::round(220.0 * std::pow(test::wood_part(random), 2.2));
    TreeFacts facts{test::random_species(random), test::dbh_in(dbh)};
    facts.crown_class = test::random_class(random, dbh);
    if (test::wood_draw(random, 40) == 0) facts.conditions.add(Condition::den);
    if (test::wood_draw(random, 25) == 0) facts.status = TreeStatus::dead;
    return facts;
  }

  /// Squares side by side, row by row.
  static Position place(int row, int column, double apart) {
    return {Degrees{37.5 + apart * row}, Degrees{-81.5 + apart * column}};
  }

  StandId add_stand(int number, Acres walked) {
    Stand stand;
    stand.id = id<StandTag>();
    stand.name = "Stand " + std::to_string(number + 1);
    stand.acres = Acres{walked.value + 20.0};
    if (walked.value > 0.0) stand.walked = walked;
    data.stands.push_back(stand);
    return stand.id;
  }

  void add_plot(StandId stand, int label, Position at, int trees) {
    Plot plot{id<PlotTag>(),
              stand,
              cruise,
              std::to_string(label),
              PlotStatus::measured,
              "",
              at,
              {},
              {},
              ""};
    // Some are still to do, as on any day of a cruise.
    if (label % 20 == 0) plot.status = PlotStatus::planned;
    data.plots.push_back(plot);
    if (plot.status == PlotStatus::planned) return;
    for (int i = 0; i < trees; ++i)
      data.trees.push_back({id<TreeTag>(), plot.id, facts(), 1, 1, {}, {}, ""});
  }

  void tally(int trees) {
    // A planned plot has none, so a few more plots hold as many trees as were asked for.
    for (int plot = 0; static_cast<int>(data.trees.size()) < trees; ++plot) {
      if (plot % kPlotsOfAStand == 0) add_stand(plot / kPlotsOfAStand, Acres{0.0});
      const int left = trees - static_cast<int>(data.trees.size());
      add_plot(data.stands.back().id, 1 + plot % kPlotsOfAStand,
               place(plot / 100, plot % 100, kDegreesBetweenPlots), std::min(left, kTreesOfAPlot));
    }
  }

  void walk(int trees) {
    const int across = static_cast<int>(std::sqrt(trees));
    for (int i = 0; i < trees; ++i) {
      if (i % kWalkOfAStand == 0) {
        const StandId stand = add_stand(i / kWalkOfAStand, Acres{kWalkOfAStand / 60.0});
        for (int plot = 1; plot <= kCruisedPlots; ++plot)
          add_plot(stand, plot, place(i / across, plot, kDegreesBetweenPlots), kTreesOfAPlot);
      }
      WalkTree tree{id<WalkTreeTag>(), data.stands.back().id, std::to_string(i + 1), facts()};
      tree.crop = i % kTreesOfACard == 0;
      if (tree.crop) {
        tree.facts.species = SpeciesCode{i % 20 == 0 ? 802 : 833};
        tree.facts.dbh = test::dbh_in(14.0);
        tree.facts.crown_class = CrownClass::codominant;
        tree.facts.status = TreeStatus::live;
        tree.looked = Sides::all();
      }
      tree.position = place(i / across, i % across, kDegreesBetweenTrees);
      data.walk_trees.push_back(tree);
      if (tree.crop) continue;
      const WalkTree& crop = data.walk_trees[static_cast<std::size_t>(i - i % kTreesOfACard)];
      const Side side = *(kSides.begin() + i % 4);
      data.contacts.push_back({id<ContactTag>(), crop.id, tree.id, {side}, Seen::touches, {}, {}});
    }
  }

  Action marks_like(const std::vector<Mark>& decided) {
    std::map<WalkTreeId, const Mark*> of_tree;
    for (const Mark& mark : decided) of_tree[mark.tree] = &mark;
    Action action{"invented marks", {}};
    for (std::size_t i = 0; i < data.walk_trees.size(); ++i) {
      const auto found = of_tree.find(data.walk_trees[i % kWalkOfAStand].id);
      if (found == of_tree.end()) continue;
      Mark mark = *found->second;
      mark.id = id<MarkTag>();
      mark.tree = data.walk_trees[i].id;
      action.changes.emplace_back(std::move(mark));
    }
    return action;
  }

  Action everything() {
    Action action{"invented tract", {data.tract}};
    const auto add = [&](const auto& records) {
      action.changes.insert(action.changes.end(), records.begin(), records.end());
    };
    add(data.stands);
    add(data.cruises);
    add(data.plots);
    add(data.trees);
    add(data.walk_trees);
    add(data.contacts);
    return action;
  }
};

Status make(const std::string& path, const std::string& kind, int trees) {
  SystemClock clock;
  std::mt19937_64 chance{20260504};
  auto store = TractStore::create(path, {clock, [&chance] { return chance(); }, "bench"});
  if (!store) return store.error();
  Maker maker{*store};
  maker.data.tract.name = "Invented wood";
  maker.data.tract.demo = true;
  maker.cruise = maker.id<CruiseTag>();
  maker.data.cruises = {{maker.cruise, "", PointDesign{10.0, UnitSystem::us}, {}, {}, "", ""}};
  kind == "walk" ? maker.walk(trees) : maker.tally(trees);
  if (const auto written = store->apply(maker.everything()); !written) return written;
  if (kind != "walk") return Done{};
  const auto knowledge = read_knowledge(*store);
  if (!knowledge) return knowledge.error();
  const auto plan = plan_stand(maker.data, *knowledge, store->ids(), maker.data.stands.front().id);
  if (!plan) return plan.error();
  return store->apply(maker.marks_like(plan->marks));
}

}  // namespace
}  // namespace oaklight

int main(int argc, char* argv[]) {
  if (argc != 4) return 2;
  const auto made = oaklight::make(argv[1], argv[2], std::atoi(argv[3]));
  if (!made) std::cerr << oaklight::to_text(made.error()) << '\n';
  return made ? 0 : 1;
}
