// The search for neighbours whose crowns meet, as core/release/graph_from_map.cpp does it
// (Boost.Geometry's R-tree over squares), beside a k-d tree (nanoflann, where it is installed) on
// the same invented crowns: bench_neighbours CROWNS. Both must find the same pairs. Prints a JSON
// object of seconds.
#include <algorithm>
#include <boost/geometry.hpp>
#include <boost/geometry/geometries/box.hpp>
#include <boost/geometry/geometries/point.hpp>
#include <boost/geometry/index/rtree.hpp>
#include <cmath>
#include <cstdint>
#include <ctime>
#include <iostream>
#include <random>
#include <string>
#include <vector>
#if __has_include(<nanoflann.hpp>)
#include <nanoflann.hpp>
#define OAKLIGHT_NANOFLANN
#endif

namespace {

namespace bg = boost::geometry;
using Point = bg::model::point<double, 2, bg::cs::cartesian>;
using Box = bg::model::box<Point>;
using Entry = std::pair<Box, std::uint32_t>;

struct Crown {
  double east, north, reach;
};

/// 165 trees an acre, crowns of 3 to 20 ft, a third of them crop trees.
std::vector<Crown> wood(std::size_t crowns) {
  std::mt19937 random(20261130);
  const auto part = [&] { return static_cast<double>(random() >> 8U) / 16'777'216.0; };
  const double side = std::sqrt(static_cast<double>(crowns) / 165.0 * 43'560.0);
  std::vector<Crown> trees(crowns);
  for (Crown& tree : trees)
    tree = {side * part(), side * part(), 3.0 + 17.0 * std::pow(part(), 3.0)};
  return trees;
}

struct Pairs {
  std::uint64_t count = 0, sum = 0;

  void add(const std::vector<Crown>& trees, std::uint32_t a, std::uint32_t b) {
    const double apart = std::hypot(trees[a].east - trees[b].east, trees[a].north - trees[b].north);
    if (a == b || apart >= trees[a].reach + trees[b].reach) return;
    ++count;
    sum += (std::uint64_t{a} * 1'000'003U + b) % 1'000'000'007U;
  }
  friend bool operator==(const Pairs&, const Pairs&) = default;
};

double now() { return static_cast<double>(std::clock()) / CLOCKS_PER_SEC; }

Pairs by_rtree(const std::vector<Crown>& trees) {
  const auto square = [&](std::uint32_t i) {
    const Crown& t = trees[i];
    return Box(Point(t.east - t.reach, t.north - t.reach),
               Point(t.east + t.reach, t.north + t.reach));
  };
  std::vector<Entry> entries;
  entries.reserve(trees.size());
  for (std::uint32_t i = 0; i < trees.size(); ++i) entries.emplace_back(square(i), i);
  const bg::index::rtree<Entry, bg::index::rstar<16>> index(entries.begin(), entries.end());
  Pairs pairs;
  std::vector<Entry> found;
  for (std::uint32_t crop = 0; crop < trees.size(); crop += 3) {
    found.clear();
    index.query(bg::index::intersects(square(crop)), std::back_inserter(found));
    for (const Entry& entry : found) pairs.add(trees, crop, entry.second);
  }
  return pairs;
}

#ifdef OAKLIGHT_NANOFLANN
struct Cloud {
  const std::vector<Crown>& trees;

  [[nodiscard]] std::size_t kdtree_get_point_count() const { return trees.size(); }
  [[nodiscard]] double kdtree_get_pt(std::size_t i, std::size_t axis) const {
    return axis == 0 ? trees[i].east : trees[i].north;
  }
  template <class Bounds>
  bool kdtree_get_bbox(Bounds& /*bounds*/) const {
    return false;
  }
};

Pairs by_kd_tree(const std::vector<Crown>& trees) {
  const Cloud cloud{trees};
  using Tree = nanoflann::KDTreeSingleIndexAdaptor<nanoflann::L2_Simple_Adaptor<double, Cloud>,
                                                   Cloud, 2, std::uint32_t>;
  const Tree index(2, cloud, nanoflann::KDTreeSingleIndexAdaptorParams(10));
  // It knows points and no sizes, so that it must look as far as the widest crown reaches.
  double widest = 0.0;
  for (const Crown& tree : trees) widest = std::max(widest, tree.reach);
  Pairs pairs;
  std::vector<std::pair<std::uint32_t, double>> found;
  for (std::uint32_t crop = 0; crop < trees.size(); crop += 3) {
    const double radius = trees[crop].reach + widest;
    const double place[2] = {trees[crop].east, trees[crop].north};
    index.radiusSearch(place, radius * radius, found, nanoflann::SearchParams(32, 0.0F, false));
    for (const auto& [other, squared] : found) pairs.add(trees, crop, other);
  }
  return pairs;
}
#endif

}  // namespace

int main(int argc, char** argv) {
  const auto trees = wood(argc == 2 ? std::stoul(argv[1]) : 100'000);
  double start = now();
  const Pairs ours = by_rtree(trees);
  std::cout << "{\"crowns\": " << trees.size() << ", \"pairs\": " << ours.count
            << ", \"r_tree_s\": " << now() - start;
#ifdef OAKLIGHT_NANOFLANN
  start = now();
  const Pairs theirs = by_kd_tree(trees);
  std::cout << ", \"kd_tree_s\": " << now() - start;
  if (!(theirs == ours)) return std::cerr << "the two differ\n", 1;
#endif
  std::cout << "}\n";
  return 0;
}
