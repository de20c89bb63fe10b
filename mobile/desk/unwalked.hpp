#pragma once

#include "core/session/live_tract.hpp"

/// Whether trees of the marking walk are recorded in a stand, but not how much ground it covered:
/// then no tree of it can go on a cutting list.
bool is_unwalked(const oaklight::LiveTract& live, const oaklight::Stand& stand);

/// The row of the first such stand, in the tract's order; -1 without one.
int unwalked_row(const oaklight::LiveTract& live);
