#include "tests/session/work_fixture.hpp"

#include <stdexcept>

#include "tests/support/difference.hpp"

namespace oaklight::test {

const TractKnowledge& shipped_tract_knowledge() {
  static const TractKnowledge kKnowledge = [] {
    const TempDir folder;
    SystemClock clock;
    const auto store = TractStore::create(folder / "forms.gpkg", {clock, system_random(), "test"});
    if (!store) throw std::runtime_error(to_text(store.error()));
    auto read = read_knowledge(*store);
    if (!read) throw std::runtime_error(to_text(read.error()));
    return *std::move(read);
  }();
  return kKnowledge;
}

TractStore WorkTest::make() {
  auto store =
      TractStore::create(folder_ / "woods.gpkg", {clock_, [this] { return chance_(); }, "tablet"});
  if (!store) throw std::runtime_error(to_text(store.error()));
  return *std::move(store);
}

WorkTest::WorkTest()
    : store_(make()),
      live_(store_.load().value()),
      ids_(clock_, [this] { return chance_(); }),
      knowledge_(shipped_tract_knowledge()) {}

Action WorkTest::done(const Result<Action>& action) {
  EXPECT_TRUE(action) << to_text(action.error());
  const Status applied = store_.apply(*action);
  EXPECT_TRUE(applied) << to_text(applied.error());
  live_.follow(action->changes);
  return *action;
}

Error WorkTest::refused(const Result<Action>& action) {
  EXPECT_FALSE(action) << "it was allowed: " << action->label;
  if (action) return {ErrorCode::no_data, "", "", ""};
  EXPECT_FALSE(action.error().what.empty());
  EXPECT_FALSE(action.error().where.empty());
  EXPECT_FALSE(action.error().fix.empty());
  return action.error();
}

void WorkTest::undo() {
  const auto undone = store_.undo();
  ASSERT_TRUE(undone) << to_text(undone.error());
  live_.follow(*undone);
}

StandId WorkTest::stand_with_plots(int plots) {
  Stand stand;
  stand.id = ids_.next_id<StandTag>();
  stand.name = "North Slope";
  stand.acres = Acres{40.0};
  Cruise cruise;
  cruise.id = ids_.next_id<CruiseTag>();
  cruise.name = "first";
  cruise.regen_area = 0.001;
  Action action{"set up", {stand, cruise}};
  for (int i = 1; i <= plots; ++i) {
    Plot plot;
    plot.id = ids_.next_id<PlotTag>();
    plot.stand = stand.id;
    plot.cruise = cruise.id;
    plot.label = std::to_string(i);
    action.changes.emplace_back(plot);
  }
  done(action);
  return stand.id;
}

std::string WorkTest::difference_from_file() const {
  return difference(live_.data(), store_.load().value());
}

}  // namespace oaklight::test
