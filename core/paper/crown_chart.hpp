#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/model/local.hpp"
#include "core/paper/picture.hpp"
#include "core/release/release_graph.hpp"

namespace oaklight {

/// A crown to draw.
struct DrawnCrown {
  CrownShape shape = CrownShape::circle(Feet{0.0});
  bool taped = false;   ///< four radii were measured; else a circle by size
  bool fitted = false;  ///< that circle is by the tract's own curve; else by the book
  friend bool operator==(const DrawnCrown&, const DrawnCrown&) = default;
};

/// One neighbour as its card knows it. Nothing (nullopt) is "not recorded".
struct CrownNeighbour {
  std::string tag;
  std::string species;  ///< short: "red maple"
  DrawnCrown crown;
  Sides sides;  ///< of the crop crown; empty: not known
  std::optional<Degrees> azimuth;
  std::optional<Feet> distance;
  Closeness closeness = Closeness::clear;
  bool goes = false;           ///< taken or killed standing
  bool crop = false;           ///< proposed as a crop tree itself
  std::vector<Arc> arcs = {};  ///< of the crop crown's edge that it closes; see CrownCard::by_arcs
};

/// The four sides of a crown; each is in one set.
struct CrownEdge {
  Sides open, closed;
  Sides shared = {};   ///< closed only by another crop tree of its pair
  Sides unknown = {};  ///< nobody looked, or contact is in doubt
};

/// One crop tree and what stands around it.
struct CrownCard {
  std::string tag;
  std::string species;
  std::optional<Inches> dbh;
  DrawnCrown crown;
  bool map = false;      ///< of a stem map, of which nobody looked at sides
  bool by_arcs = false;  ///< the edge is drawn by the neighbours' arcs and not by whole sides
  std::vector<CrownNeighbour> neighbours;
  CrownEdge now;    ///< cards
  CrownEdge after;  ///< cards; once the neighbours that go are gone
};

/// The sides of a crown by its contacts alone: closed by each neighbour that touches it, unknown
/// where nobody looked, where contact is in doubt, and everywhere for a doubt of no known side.
///
/// looked      sides at which somebody looked up
/// goes_gone   leave the neighbours that go out
CrownEdge edge_of(std::span<const CrownNeighbour> neighbours, Sides looked, bool goes_gone);

/// A card without neighbours from the records of its tree, its crown as taped, or as wide as the
/// stand's own curve or else stand_grown_crown_width gives it. Its `now` and `after` are empty: the
/// caller knows the sides.
///
/// curves   crown_curves of the stand
CrownCard crown_card(const std::string& tag, const TreeFacts& facts, const CrownRadii& taped,
                     const SpeciesTable& species, std::span<const LocalCurve> curves = {});
/// One neighbour from its records and its contact.
/// sides    on which it stands; those of the contact, or of its azimuth
CrownNeighbour crown_neighbour(const std::string& tag, const TreeFacts& facts,
                               const CrownRadii& taped, const Contact& contact, Sides sides,
                               bool goes, const SpeciesTable& species,
                               std::span<const LocalCurve> curves = {});

/// The card of one tree of a graph of cards, crowns as above.
/// A caller that has the plan's own sides may put them into `now` and `after`.
///
/// crop      index into graph.trees()
/// contacts  as recorded, for azimuth and distance; those of other cards are passed over, but where
///           only the card of the neighbour says how they stand, that is turned around
/// goes      by tree of the graph
CrownCard crown_card(const ReleaseGraph& graph, std::size_t crop, std::span<const Contact> contacts,
                     const std::vector<bool>& goes, const SpeciesTable& species,
                     std::span<const LocalCurve> curves = {});

/// The same on a stem map, crowns as the circles of the graph.
CrownCard mapped_crown_card(const ReleaseGraph& graph, std::size_t crop,
                            std::span<const MappedTree> places, const std::vector<bool>& goes,
                            const SpeciesTable& species);

/// The crop crown from above in the middle, north up; its neighbours at their azimuth or side,
/// those that go hatched with a dashed edge, those that stay plain, each with its tag and species.
/// The edge of the crop crown is a thick arc where it is open now, thick and dashed where it opens
/// when the trees that go are gone, thin where it stays closed (a little stronger where only a crop
/// tree of its pair closes it), dotted where nobody looked. A neighbour of which only the side is
/// known stands in the middle of that side, its stem drawn hollow; a side that somebody saw closed
/// is closed from corner to corner. Neighbours of no known side are named below the picture.
///
/// assumes  a PaperApplication lives
Drawing draw_crowns(const CrownCard& card, const PictureFrame& frame);

}  // namespace oaklight
