#include "mobile/viewmodels/workspace.hpp"

Workspace::Workspace(std::unique_ptr<TractDesk> desk, Settings& /*settings*/, QObject* parent)
    : QObject(parent), desk_(std::move(desk)), desk_view_(*desk_) {}

Workspace::~Workspace() = default;
