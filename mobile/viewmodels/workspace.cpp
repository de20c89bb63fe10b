#include "mobile/viewmodels/workspace.hpp"

Workspace::Workspace(std::unique_ptr<TractDesk> desk, Settings& settings, QObject* parent)
    : QObject(parent),
      desk_(std::move(desk)),
      desk_view_(*desk_),
      walk_(*desk_, plot_, settings),
      tract_view_(*desk_, plot_, settings, walk_),
      tally_(*desk_, plot_, settings),
      stand_(*desk_, plot_, settings),
      setup_(*desk_, settings) {
  // The plot worked last, or the first to do: the person is seldom anywhere else.
  const auto& plots = desk_->data().plots;
  if (!plots.empty()) plot_.set(plots.front().id);
}

Workspace::~Workspace() = default;
