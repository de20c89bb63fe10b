#include "core/paper/crown_edge.hpp"

#include <algorithm>
#include <cmath>

namespace oaklight {
namespace {

constexpr int kSteps = 720;
constexpr double kStep = 360.0 / kSteps;
constexpr double kStart = -45.0;   // the north side begins here
constexpr double kPerSide = 25.0;  // a side is a quarter of the edge

EdgeState state_of_side(const CrownCard& card, Side side) {
  if (card.now.open.has(side)) return EdgeState::open;
  if (card.after.open.has(side)) return EdgeState::opens;
  if (card.after.shared.has(side)) return EdgeState::shared;
  return card.after.unknown.has(side) ? EdgeState::unknown : EdgeState::closed;
}

bool covers(const Arc& arc, double bearing) {
  const double off = std::remainder(bearing - arc.middle.value, 360.0);
  return std::abs(off) < arc.half.value;
}

bool covers(const CrownNeighbour& n, double bearing) {
  return n.closeness == Closeness::touching &&
         std::any_of(n.arcs.begin(), n.arcs.end(),
                     [bearing](const Arc& arc) { return covers(arc, bearing); });
}

EdgeState state_at(const CrownCard& card, Side side, double bearing) {
  EdgeState state = card.now.unknown.has(side) ? EdgeState::unknown : EdgeState::open;
  for (const CrownNeighbour& n : card.neighbours) {
    if (!covers(n, bearing)) continue;
    if (!n.goes) return card.after.shared.has(side) ? EdgeState::shared : EdgeState::closed;
    state = card.after.unknown.has(side) ? EdgeState::unknown : EdgeState::opens;
  }
  return state;
}

/// As the light of the crop tree is reckoned: what nobody looked at is closed.
double share_by_arcs(const CrownCard& card, bool after) {
  std::vector<Arc> arcs;
  add_quarters(after ? card.after.unknown : card.now.unknown, arcs);
  for (const CrownNeighbour& n : card.neighbours) {
    if (n.closeness != Closeness::touching || (after && n.goes)) continue;
    arcs.insert(arcs.end(), n.arcs.begin(), n.arcs.end());
  }
  return open_share(arcs).value;
}

}  // namespace

EdgeRing::EdgeRing(const CrownCard& card) {
  states_.reserve(kSteps);
  for (int i = 0; i < kSteps; ++i) {
    const Side side = *(kSides.begin() + 4 * i / kSteps);
    states_.push_back(card.by_arcs ? state_at(card, side, kStart + (i + 0.5) * kStep)
                                   : state_of_side(card, side));
  }
  now_ = card.by_arcs ? share_by_arcs(card, false) : kPerSide * card.now.open.count();
  after_ = card.by_arcs ? share_by_arcs(card, true) : kPerSide * card.after.open.count();
}

std::vector<EdgePart> EdgeRing::parts() const {
  std::vector<EdgePart> out;
  for (int i = 0; i < kSteps; ++i) {
    const EdgeState state = states_[static_cast<std::size_t>(i)];
    const double from = kStart + i * kStep;
    if (out.empty() || out.back().state != state) out.push_back({from, from, state});
    out.back().to = from + kStep;
  }
  if (out.size() > 1 && out.back().state == out.front().state) {  // one run across the start
    out.front().from = out.back().from - 360.0;
    out.pop_back();
  }
  return out;
}

bool EdgeRing::has(EdgeState state) const {
  return std::find(states_.begin(), states_.end(), state) != states_.end();
}

}  // namespace oaklight
