#include "tests/crash/tally_file.hpp"

#include <stdexcept>

#include "tests/support/readings.hpp"

namespace oaklight::test {

void make_tally_file(const std::filesystem::path& path) {
  SystemClock clock;
  auto store = TractStore::create(path, {clock, system_random(), "parent"});
  if (!store) throw std::runtime_error(to_text(store.error()));
  Stand stand;
  stand.id = store->ids().next_id<StandTag>();
  stand.name = "A";
  Cruise cruise;
  cruise.id = store->ids().next_id<CruiseTag>();
  Plot plot;
  plot.id = store->ids().next_id<PlotTag>();
  plot.stand = stand.id;
  plot.cruise = cruise.id;
  plot.label = "1";
  plot.status = PlotStatus::measured;
  const auto applied = store->apply({"plot 1", {stand, cruise, plot}});
  if (!applied) throw std::runtime_error(to_text(applied.error()));
}

namespace {

Tree next_tree(TractStore& store, PlotId plot) {
  const TreeFacts facts{SpeciesCode{833}, dbh_in(12.3), {}, {}, {}, {}, {}, {}, {}, {}};
  return {store.ids().next_id<TreeTag>(), plot, facts, 1, 1, {}, {}, ""};
}

}  // namespace

Result<TreeId> tally_one(TractStore& store) {
  const auto data = store.load();
  if (!data) return data.error();
  const Tree tree = next_tree(store, data->plots.front().id);
  const auto applied = store.apply({"tally red oak 12.3 in", {tree}});
  if (!applied) return applied.error();
  return tree.id;
}

TalliedTrees trees_in(const std::filesystem::path& path) {
  SystemClock clock;
  const auto store = TractStore::open(path, OpenMode::read_write, {clock, system_random(), "me"});
  if (!store) return {{}, to_text(store.error())};
  const auto data = store->load();
  if (!data) return {{}, to_text(data.error())};
  const auto report = store->check();
  if (!report) return {{}, to_text(report.error())};
  TalliedTrees found;
  for (const Tree& tree : data->trees) found.trees.insert(to_text(tree.id));
  if (!report->problems.empty()) found.problem = to_text(report->problems.front());
  return found;
}

}  // namespace oaklight::test
