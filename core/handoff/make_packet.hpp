#pragma once

#include "core/handoff/packet.hpp"
#include "core/handoff/packet_inputs.hpp"

namespace oaklight {

/// Puts together what one reader is handed.
///
/// Each tree of the walk is on one list at most once: `cut` when its mark gives it to this reader
/// (logger, firewood cutter: taken, and sent to him; standing: killed standing; owner: either), no
/// caution is a stop and the rules leave the way that the mark names; a firewood cutter's tree
/// needs to be free of extra care too, and to be felled whole by hand;
/// firewood that for want of this went to the logger is named to him as well. Otherwise it is in
/// `trained`. Keeps, and crop trees without a decision, are in `keep`; all others in `others`. Of
/// stands where he has no work only the owner is told. Lists run in walking order inside a stand,
/// from the landing if known; the firewood cutter's has the easy trees first: known gentle slope,
/// then small. What a person typed as his reason is told to nobody but the owner. Volumes are of
/// the standing tree, gross, form class 78, rounded to whole board feet and hundredths of a cord;
/// totals are sums of the rounded figures.
///
/// errors   nothing_marked when no mark sends a tree to this reader; unknown_species;
///          unknown_reference when a mark's tree or a tree's stand is not in the data; owner: of
///          owner_part
/// assumes  of two marks of one tree the one with the higher id is the later decision
Result<Packet> make_packet(const TractData& data, const PacketTables& tables, PacketReader reader,
                           const PacketOptions& options);

}  // namespace oaklight
