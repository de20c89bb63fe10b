#include "tests/support/difference.hpp"

#include <tuple>
#include <vector>

namespace oaklight::test {
namespace {

// The structured bindings fail to compile when a record gains a field, so none is forgotten here.
auto fields(const TreeFacts& r) {
  const auto& [a, b, c, d, e, f, g, h, i, j] = r;
  return std::tie(a, b, c, d, e, f, g, h, i, j);
}
auto fields(const Tract& r) {
  const auto& [a, b, c, d, e, f, g, h, i] = r;
  return std::tie(a, b, c, d, e, f, g, h, i);
}
auto fields(const Stand& r) {
  const auto& [a, b, c, d, e, f, g, h] = r;
  return std::tie(a, b, c, d, e, f, g, h);
}
auto fields(const Cruise& r) {
  const auto& [a, b, c, d, e, f, g] = r;
  return std::tie(a, b, c, d, e, f, g);
}
auto fields(const Plot& r) {
  const auto& [a, b, c, d, e, f, g, h, i, j] = r;
  return std::tie(a, b, c, d, e, f, g, h, i, j);
}
auto fields(const Tree& r) {
  const auto& [a, b, c, d, e, f, g, h] = r;
  return std::tuple_cat(std::tie(a, b, d, e, f, g, h), fields(c));
}
auto fields(const Regen& r) {
  const auto& [a, b, c, d, e] = r;
  return std::tie(a, b, c, d, e);
}
auto fields(const WalkTree& r) {
  const auto& [a, b, c, d, e, f, g, h, i] = r;
  return std::tuple_cat(std::tie(a, b, c, e, f, g, h, i), fields(d));
}
auto fields(const Contact& r) {
  const auto& [a, b, c, d, e, f, g] = r;
  return std::tie(a, b, c, d, e, f, g);
}
auto fields(const Mark& r) {
  const auto& [a, b, c, d, e, f, g, h, i, j] = r;
  return std::tie(a, b, c, d, e, f, g, h, i, j);
}
auto fields(const MapLine& r) {
  const auto& [a, b, c, d, e] = r;
  return std::tie(a, b, c, d, e);
}
auto fields(const Stump& r) {
  const auto& [a, b, c, d, e, f, g, h, i, j, k, l, m] = r;
  return std::tie(a, b, c, d, e, f, g, h, i, j, k, l, m);
}
auto fields(const AcornCount& r) {
  const auto& [a, b, c, d, e, f] = r;
  return std::tie(a, b, c, d, e, f);
}
auto fields(const AcornYear& r) {
  const auto& [a, b, c, d, e] = r;
  return std::tie(a, b, c, d, e);
}

template <class R>
std::string difference_of(const char* kind, const std::vector<R>& a, const std::vector<R>& b) {
  if (a.size() != b.size())
    return std::string(kind) + ": " + std::to_string(a.size()) + " and " +
           std::to_string(b.size()) + "; ";
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (fields(a[i]) != fields(b[i])) return std::string(kind) + " " + std::to_string(i) + "; ";
  }
  return "";
}

}  // namespace

std::string difference(const TractData& a, const TractData& b) {
  const auto& [tract, stands, cruises, plots, trees, regens, walk_trees, contacts, marks, lines,
               stumps, acorn_counts, acorn_years] = a;
  return difference_of<Tract>("tract", {tract}, {b.tract}) +
         difference_of("stand", stands, b.stands) + difference_of("cruise", cruises, b.cruises) +
         difference_of("plot", plots, b.plots) + difference_of("tree", trees, b.trees) +
         difference_of("regen", regens, b.regens) +
         difference_of("walk_tree", walk_trees, b.walk_trees) +
         difference_of("contact", contacts, b.contacts) + difference_of("mark", marks, b.marks) +
         difference_of("line", lines, b.lines) + difference_of("stump", stumps, b.stumps) +
         difference_of("acorn_count", acorn_counts, b.acorn_counts) +
         difference_of("acorn_year", acorn_years, b.acorn_years);
}

}  // namespace oaklight::test
