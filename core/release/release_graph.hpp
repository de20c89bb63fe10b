#pragma once

#include <cstdint>
#include <map>
#include <span>
#include <string>
#include <variant>
#include <vector>

#include "core/model/tract.hpp"
#include "core/release/crown_contact.hpp"
#include "core/release/crown_shape.hpp"

namespace oaklight {

/// One standing tree that may be released, taken or kept.
struct ReleaseTree {
  Uuid id;          ///< of the WalkTree or Tree that it came from
  std::string tag;  ///< "" when it wears none
  TreeFacts facts;
  bool proposed = false;  ///< may be a crop tree: it has a card, or it is on a map
  Sides looked;           ///< sides of its crown on which somebody, or the map, shows what stands
};

/// How we come to know whether two crowns compete.
enum class ContactBasis : std::uint8_t {
  seen_touching,   ///< a person saw them touch
  seen_over,       ///< a person saw the neighbour reach over
  seen_below,      ///< a person saw it stay below
  seen_clear,      ///< a person saw a gap
  near_enough,     ///< nobody looked; so near that they are expected to touch
  look_up,         ///< nobody looked; near enough that they may touch
  far_enough,      ///< nobody looked; too far
  no_crown_class,  ///< nobody looked, and whether it is overtopped is not recorded
  no_side,         ///< it touches, but neither side nor azimuth is recorded
  overtopped,      ///< stands under the canopy: competes at no distance
  dead,            ///< a dead crown takes no light
  one_crown,       ///< twins with a tight fork at the base: the other half of its own crown
};

/// One neighbour as a crop tree meets it. Indices into ReleaseGraph::trees.
struct CrownContact {
  std::uint32_t crop = 0;
  std::uint32_t neighbour = 0;
  Closeness closeness = Closeness::clear;
  ContactBasis basis = ContactBasis::seen_clear;
  Sides sides;             ///< of the crop crown
  bool will_meet = false;  ///< closer than the conflict distance of two crop trees (R2.25)
  bool one_base = false;   ///< both are stems of one clump (X6.03)
  Arc arc;                 ///< of the crop crown's edge; maps only
};

/// The trees of a walk whose four crown radii were taped.
struct MeasuredEdges {
  std::map<std::uint32_t, CrownShape> crowns;
  /// What a neighbour with azimuth and distance closes of such a crop tree's edge, by crop tree and
  /// neighbour; empty: nothing, as the two crowns were measured.
  std::map<std::pair<std::uint32_t, std::uint32_t>, std::vector<Arc>> closed;
};

/// Candidate trees and how their crowns meet. Trees are in the order of their tags, then ids, and
/// contacts in the order of crop tree, then neighbour, so that the order of the input is forgotten.
class ReleaseGraph {
 public:
  enum class Source { cards, map };

  ReleaseGraph() = default;
  /// Sorts the contacts and lists them by neighbour. Trees must be in order already.
  ReleaseGraph(Source source, std::vector<ReleaseTree> trees, std::vector<CrownContact> contacts,
               MeasuredEdges edges = {});

  [[nodiscard]] Source source() const { return source_; }
  [[nodiscard]] const std::vector<ReleaseTree>& trees() const { return trees_; }
  [[nodiscard]] const std::vector<CrownContact>& contacts() const { return contacts_; }
  [[nodiscard]] const MeasuredEdges& edges() const { return edges_; }
  /// Indices into contacts() of the neighbours of one tree.
  [[nodiscard]] std::span<const std::uint32_t> around(std::size_t crop) const;
  /// The parts of the crop crown's edge that a neighbour closes where it crowds: on a map its arc;
  /// on a crown whose four radii were taped what the outlines say, and where they say nothing of
  /// what somebody saw, its sides whole (R2.01); on any other card its sides whole.
  ///
  /// arcs  they are added to these
  void add_closed_by(const CrownContact& contact, std::vector<Arc>& arcs) const;
  /// Indices into contacts() in which a tree is the neighbour.
  [[nodiscard]] std::span<const std::uint32_t> towards(std::size_t neighbour) const;

 private:
  Source source_ = Source::cards;
  std::vector<ReleaseTree> trees_;
  std::vector<CrownContact> contacts_;
  MeasuredEdges edges_;
  std::vector<std::uint32_t> around_, around_from_, towards_, towards_from_;
};

/// The trees of one stand's crop tree cards. What a person saw decides (R2.01); where nobody
/// looked, size and distance do (R2.10 - R2.14). Of a tree whose four crown radii were taped the
/// crown is what they say and not a circle by size, where the card tells azimuth and distance: two
/// such crowns touch or not, by R1.52, and nobody has to look up. Two crop trees in contact meet on
/// both cards even when only one of them says so.
///
/// errors   unknown_reference when a contact names a tree that is not in the stand
Result<ReleaseGraph> graph_from_cards(std::span<const WalkTree> trees,
                                      std::span<const Contact> contacts, StandId stand,
                                      const ContactSettings& settings);

/// One tree of a stem map.
struct MappedTree {
  Uuid id;
  std::string tag;
  TreeFacts facts;
  Feet east, north;  ///< from any origin
};

/// How far a stem map was measured. What stands beyond is not known, so sides that look out of it
/// count as not looked at.
struct Unbounded {};  ///< the whole wood: nothing stands beyond
struct CircleBounds {
  Feet radius;  ///< around the origin
};
struct BoxBounds {
  Feet west, south, east, north;
};
using MapBounds = std::variant<Unbounded, CircleBounds, BoxBounds>;

/// The trees of a stem map with crowns drawn as circles of the crowded radius (R2.08). Crowns with
/// a gap narrower than R1.52 touch. Live trees of a main-canopy or unknown crown class are proposed
/// as crop trees. Time grows as n log n.
[[nodiscard]] ReleaseGraph graph_from_map(std::span<const MappedTree> trees,
                                          const MapBounds& bounds, const ContactSettings& settings);

/// The stem map of one fixed plot, its centre at the origin.
///
/// errors   missing_value when a tree has no azimuth or distance, contradiction when one record
///          stands for several stems
Result<std::vector<MappedTree>> map_of_plot(std::span<const Tree> trees);

}  // namespace oaklight
