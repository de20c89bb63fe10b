#include "core/release/release_graph.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace oaklight {
namespace {

/// Indices 0 .. n-1 grouped by a key 0 .. keys-1, in order within a group; from[k] .. from[k+1].
template <class KeyOf>
void group(std::size_t n, std::size_t keys, KeyOf key_of, std::vector<std::uint32_t>& items,
           std::vector<std::uint32_t>& from) {
  from.assign(keys + 1, 0);
  for (std::size_t i = 0; i < n; ++i) ++from[key_of(i) + 1];
  for (std::size_t k = 0; k < keys; ++k) from[k + 1] += from[k];
  items.resize(n);
  std::vector<std::uint32_t> next(from.begin(), from.end() - 1);
  for (std::size_t i = 0; i < n; ++i) items[next[key_of(i)]++] = static_cast<std::uint32_t>(i);
}

std::span<const std::uint32_t> part(const std::vector<std::uint32_t>& items,
                                    const std::vector<std::uint32_t>& from, std::size_t key) {
  return std::span(items).subspan(from[key], from[key + 1] - from[key]);
}

}  // namespace

ReleaseGraph::ReleaseGraph(Source source, std::vector<ReleaseTree> trees,
                           std::vector<CrownContact> contacts, MeasuredEdges edges)
    : source_(source),
      trees_(std::move(trees)),
      contacts_(std::move(contacts)),
      edges_(std::move(edges)) {
  std::sort(contacts_.begin(), contacts_.end(), [](const CrownContact& a, const CrownContact& b) {
    return std::tie(a.crop, a.neighbour) < std::tie(b.crop, b.neighbour);
  });
  group(
      contacts_.size(), trees_.size(), [&](std::size_t i) { return contacts_[i].crop; }, around_,
      around_from_);
  group(
      contacts_.size(), trees_.size(), [&](std::size_t i) { return contacts_[i].neighbour; },
      towards_, towards_from_);
}

std::span<const std::uint32_t> ReleaseGraph::around(std::size_t crop) const {
  return part(around_, around_from_, crop);
}

std::span<const std::uint32_t> ReleaseGraph::towards(std::size_t neighbour) const {
  return part(towards_, towards_from_, neighbour);
}

void ReleaseGraph::add_closed_by(const CrownContact& contact, std::vector<Arc>& arcs) const {
  if (source_ == Source::map) {
    arcs.push_back(contact.arc);
    return;
  }
  const auto drawn = edges_.closed.find({contact.crop, contact.neighbour});
  if (drawn == edges_.closed.end() || drawn->second.empty()) {
    add_quarters(contact.sides, arcs);
  } else {
    arcs.insert(arcs.end(), drawn->second.begin(), drawn->second.end());
  }
}

Result<std::vector<MappedTree>> map_of_plot(std::span<const Tree> trees) {
  std::vector<MappedTree> map;
  for (const Tree& tree : trees) {
    const std::string where = "tree/" + (tree.tag.empty() ? to_text(tree.id) : tree.tag);
    if (!tree.azimuth || !tree.distance) {
      return Error{ErrorCode::missing_value, "A tree of the plot has no azimuth or distance.",
                   where, "Measure both from the plot centre; a map with holes misleads."};
    }
    if (tree.stems != 1) {
      return Error{ErrorCode::contradiction, "One record stands for several stems.", where,
                   "Record each stem of a mapped plot on its own."};
    }
    const double r = tree.distance->feet().value;
    const double bearing = radians(*tree.azimuth);
    map.push_back({tree.id.value, tree.tag, tree.facts, Feet{r * std::sin(bearing)},
                   Feet{r * std::cos(bearing)}});
  }
  return map;
}

}  // namespace oaklight
