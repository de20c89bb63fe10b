#pragma once

#include <optional>
#include <vector>

#include "core/handoff/packet.hpp"
#include "core/handoff/packet_inputs.hpp"
#include "core/handoff/practice_record.hpp"
#include "core/stand/composition.hpp"
#include "core/stand/stand_density.hpp"
#include "core/stand/stand_stocking.hpp"

namespace oaklight {

/// One stand before the work, and after it as it is marked.
struct OwnerStand {
  PracticeRecord record;
  // From the plots; nothing without them:
  std::optional<AreaEstimate> area;
  std::optional<StandStocking> stocking;
  std::optional<Composition> composition;
  std::optional<StandDensity> before;
  std::optional<StandDensity> after;  ///< nothing also where the ground walked is not known
  std::string oak_wilt;               ///< its risk in words
  // From the walk:
  std::vector<TreeFacts> removed;  ///< live trees that go
  ReleaseGraph graph;
  std::vector<bool> goes;          ///< by tree of the graph
  std::vector<LocalCurve> crowns;  ///< the stand's own curves of crown width
};

/// What the owner is told beside the lists.
struct OwnerPart {
  SpeciesTable species;
  std::vector<Contact> contacts;
  std::vector<OwnerStand> stands;   ///< those of Packet::stands
  std::vector<LocalCurve> heights;  ///< the tract's own curves of height
};

/// The figures of each stand with listed trees. Trees on the lists `cut` and `trained` are gone
/// afterwards, the others stay.
///
/// packet   for the owner, its lists filled
/// errors   of stand_sample and the estimates, but for no_data; of graph_from_cards
/// assumes  tables.release is given
Result<OwnerPart> owner_part(const TractData& data, const Packet& packet,
                             const PacketTables& tables, const PacketOptions& options);

}  // namespace oaklight
