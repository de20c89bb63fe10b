// Boost 1.74 includes a header of its own that it calls deprecated.
#define BOOST_ALLOW_DEPRECATED_HEADERS
#include <algorithm>
#include <boost/geometry.hpp>
#include <boost/geometry/geometries/box.hpp>
#include <boost/geometry/geometries/point.hpp>
#include <boost/geometry/index/rtree.hpp>
#include <cmath>
#include <iterator>
#include <numeric>
#include <tuple>

#include "core/measure/crown_width.hpp"
#include "core/release/release_graph.hpp"

namespace oaklight {
namespace {

namespace bg = boost::geometry;
using Point = bg::model::point<double, 2, bg::cs::cartesian>;
using Box = bg::model::box<Point>;
using Entry = std::pair<Box, std::uint32_t>;
using Tree2d = bg::index::rtree<Entry, bg::index::rstar<16>>;

/// One tree of the map, ready to be met.
struct Crown {
  double east, north;
  Feet crowded, open;
};

Box square(const Crown& crown, double half) {
  return {Point(crown.east - half, crown.north - half),
          Point(crown.east + half, crown.north + half)};
}

bool can_compete(const TreeFacts& facts) {
  return facts.status == TreeStatus::live && facts.crown_class != CrownClass::overtopped;
}

bool inside(const MapBounds& bounds, double east, double north) {
  if (const auto* circle = std::get_if<CircleBounds>(&bounds)) {
    return std::hypot(east, north) <= circle->radius.value;
  }
  if (const auto* box = std::get_if<BoxBounds>(&bounds)) {
    return east >= box->west.value && east <= box->east.value && north >= box->south.value &&
           north <= box->north.value;
  }
  return true;
}

/// Sides whose neighbours the map shows: those where a tree like this one, standing as far off as
/// the two crowns allow, would still be on the map.
Sides shown_sides(const Crown& crown, const MapBounds& bounds, Feet gap) {
  const double reach = 2.0 * crown.crowded.value + gap.value;
  Sides sides;
  if (inside(bounds, crown.east, crown.north + reach)) sides.add(Side::north);
  if (inside(bounds, crown.east + reach, crown.north)) sides.add(Side::east);
  if (inside(bounds, crown.east, crown.north - reach)) sides.add(Side::south);
  if (inside(bounds, crown.east - reach, crown.north)) sides.add(Side::west);
  return sides;
}

/// Every neighbour of one crop tree that touches it or will.
class Meeting {
 public:
  Meeting(const std::vector<ReleaseTree>& trees, const std::vector<Crown>& crowns,
          const ContactSettings& settings)
      : trees_(trees), crowns_(crowns), settings_(settings) {
    // Open radii exceed crowded ones by more than half the gap, so squares of the open radius, with
    // half the gap around, overlap whenever two crowns touch or will meet.
    std::vector<Entry> entries;
    entries.reserve(crowns.size());
    for (std::uint32_t i = 0; i < crowns.size(); ++i) {
      if (can_compete(trees[i].facts)) entries.emplace_back(square(crowns[i], reach(i)), i);
    }
    index_ = Tree2d(entries.begin(), entries.end());  // packed: n log n, and the same every time
  }

  void add_contacts(std::uint32_t crop, std::vector<CrownContact>& contacts) {
    found_.clear();
    index_.query(bg::index::intersects(square(crowns_[crop], reach(crop))),
                 std::back_inserter(found_));
    for (const Entry& entry : found_) {
      if (entry.second != crop) add_contact(crop, entry.second, contacts);
    }
  }

 private:
  [[nodiscard]] double reach(std::uint32_t i) const {
    return std::max(crowns_[i].open, crowns_[i].crowded).value + settings_.gap.value / 2.0;
  }

  void add_contact(std::uint32_t crop, std::uint32_t other, std::vector<CrownContact>& contacts) {
    const Crown& a = crowns_[crop];
    const Crown& b = crowns_[other];
    const double east = b.east - a.east;
    const double north = b.north - a.north;
    const Feet distance{std::hypot(east, north)};
    const bool touching = distance < a.crowded + b.crowded + settings_.gap;
    CrownContact contact;
    contact.crop = crop;
    contact.neighbour = other;
    contact.will_meet = trees_[other].proposed && distance < a.open + b.open;
    if (!touching && !contact.will_meet) return;
    const Degrees bearing{std::atan2(east, north) * 180.0 / std::numbers::pi};
    contact.sides = sides_at(bearing, settings_.side_blur);
    contact.arc = closed_arc(a.crowded, b.crowded, distance, bearing, settings_.gap);
    contact.closeness = Closeness::clear;
    contact.basis = ContactBasis::far_enough;
    if (touching && trees_[other].facts.crown_class) {
      contact.closeness = Closeness::touching;
      contact.basis = ContactBasis::near_enough;
    } else if (touching) {
      contact.closeness = Closeness::doubtful;
      contact.basis = ContactBasis::no_crown_class;
    }
    contacts.push_back(contact);
  }

  const std::vector<ReleaseTree>& trees_;
  const std::vector<Crown>& crowns_;
  const ContactSettings& settings_;
  Tree2d index_;
  std::vector<Entry> found_;
};

}  // namespace

ReleaseGraph graph_from_map(std::span<const MappedTree> map, const MapBounds& bounds,
                            const ContactSettings& settings) {
  std::vector<std::uint32_t> order(map.size());
  std::iota(order.begin(), order.end(), 0U);
  std::sort(order.begin(), order.end(), [&](std::uint32_t a, std::uint32_t b) {
    return std::tie(map[a].tag, map[a].id) < std::tie(map[b].tag, map[b].id);
  });
  std::vector<ReleaseTree> trees;
  std::vector<Crown> crowns;
  trees.reserve(map.size());
  crowns.reserve(map.size());
  for (const std::uint32_t i : order) {
    const MappedTree& tree = map[i];
    const Inches dbh = tree.facts.dbh.inches();
    crowns.push_back(
        {tree.east.value, tree.north.value, crowded_crown_radius(dbh), open_crown_radius(dbh)});
    trees.push_back({tree.id, tree.tag, tree.facts, can_compete(tree.facts),
                     shown_sides(crowns.back(), bounds, settings.gap)});
  }
  std::vector<CrownContact> contacts;
  Meeting meeting(trees, crowns, settings);
  for (std::uint32_t i = 0; i < trees.size(); ++i) {
    if (trees[i].proposed) meeting.add_contacts(i, contacts);
  }
  return ReleaseGraph(ReleaseGraph::Source::map, std::move(trees), std::move(contacts));
}

}  // namespace oaklight
