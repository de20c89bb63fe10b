#include "mobile/viewmodels/workspace.hpp"

Workspace::Workspace(std::unique_ptr<TractDesk> desk, Settings& settings, Locator& locator,
                     QObject* parent)
    : QObject(parent),
      desk_(std::move(desk)),
      room_(desk_->path()),
      snapshots_(*desk_, plot_, settings),
      desk_view_(*desk_, room_),
      turns_(*desk_, settings),
      walk_(*desk_, plot_, settings, room_, locator),
      tract_view_(*desk_, plot_, settings, locator, walk_, turns_),
      layout_(*desk_, settings, turns_),
      boundary_(*desk_, locator, settings),
      tally_(*desk_, plot_, settings),
      point_(*desk_, settings),
      stand_now_(*desk_, plot_, settings),
      stand_(*desk_, plot_, settings),
      light_(*desk_, settings),
      marks_(*desk_, settings),
      setup_(*desk_, settings),
      tree_(*desk_, settings),
      border_(*desk_, plot_, settings),
      seedlings_(*desk_, plot_, settings),
      search_(desk_->knowledge().species()),
      join_(*desk_) {
  connect(&snapshots_, &SnapshotKeeper::failed, desk_.get(), &TractDesk::refused);
  connect(&plot_, &CurrentPlot::changed, &point_, [this] { point_.of(plot_.id()); });
  // The plot worked last, or the first to do: the person is seldom anywhere else.
  const auto& plots = desk_->data().plots;
  if (!plots.empty()) plot_.set(plots.front().id);
}

Workspace::~Workspace() = default;

void Workspace::chooseTree(int row) { tree_.choose(tally_.treeAt(row)); }

void Workspace::pinFound(int row) {
  if (const auto code = search_.codeAt(row)) tally_.pinCode(*code);
}

void Workspace::setTreeSpecies(int row) {
  if (const auto code = search_.codeAt(row)) tree_.changeSpecies(*code);
}

void Workspace::addSeedlingSpecies(int row) {
  if (const auto code = search_.codeAt(row)) seedlings_.add(*code);
}
