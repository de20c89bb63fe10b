#pragma once

#include <optional>
#include <vector>

#include "core/handoff/make_packet.hpp"
#include "core/release/prescription.hpp"
#include "core/sample/cruise_estimate.hpp"
#include "core/session/knowledge.hpp"
#include "core/stand/composition.hpp"
#include "core/stand/stand_stocking.hpp"

// What is computed from a whole tract, as pure functions over its records and its knowledge, for
// the command line and for screens alike.

namespace oaklight {

/// What is recommended for one stand in which trees were walked.
struct StandPlan {
  StandId stand;
  ReleasePlan plan;
  std::vector<Mark> marks;  ///< in the order of the walked trees
};

/// What would be done on one stem-mapped plot: a sample of the stand's prescription, never a list.
struct MappedPlotPlan {
  PlotId plot;
  StandId stand;
  ReleasePlan plan;
  DecidedPlot decided;  ///< the same with the facts of its trees
};

/// What a release would do to one stand, an acre, with the error of its plots.
struct StandPrescription {
  StandId stand;
  Prescription prescription;
};

/// What the stand screen and the estimate report show of one area.
struct StandFigures {
  StandId stand;
  StandStocking stocking;
  std::optional<Composition> composition;  ///< nothing without live trees
};

/// Per-acre figures with their errors. Errors: of cruise_estimate.
Result<CruiseEstimate> estimate_tract(const TractData& data, const TractKnowledge& knowledge,
                                      const EstimateOptions& options);

/// Stocking and composition of each cruised stand, in the order of the tract.
Result<std::vector<StandFigures>> stand_figures(const TractData& data,
                                                const TractKnowledge& knowledge,
                                                const EstimateOptions& options);
Result<std::vector<StandFigures>> stand_figures(const std::vector<CruisedStand>& cruised,
                                                const TractKnowledge& knowledge,
                                                const EstimateOptions& options);

/// Decides each tree of one stand's marking walk, destinations of its marks included. The plan is
/// the rules' own; the reason of a crop tree's mark counts what people decided beside it.
/// Errors: no_data when no tree of the stand was walked; of stand_facts.
Result<StandPlan> plan_stand(const TractData& data, const TractKnowledge& knowledge, IdSource& ids,
                             StandId stand);
/// The same for every stand in which trees were walked. Errors: no_data when there is none; of
/// stand_facts.
Result<std::vector<StandPlan>> plan_stands(const TractData& data, const TractKnowledge& knowledge,
                                           IdSource& ids);

/// Decides the trees of each fixed plot whose trees all have azimuth and distance, crowns drawn
/// as circles, guards by the stand's own figures. Plots give a prescription and the marking walk
/// gives the list, so nothing is ever stored from here. Errors: no_data when no plot is mapped;
/// of stand_facts.
Result<std::vector<MappedPlotPlan>> plan_mapped_plots(const TractData& data,
                                                      const TractKnowledge& knowledge);

/// The prescription of each stand with mapped plots, in the order of the tract: its mapped plots
/// and those fixed plots that were found empty. Errors: of plan_mapped_plots.
Result<std::vector<StandPrescription>> prescriptions(const TractData& data,
                                                     const TractKnowledge& knowledge,
                                                     const std::vector<MappedPlotPlan>& plans,
                                                     Confidence confidence);

/// The marks of a recommendation as one action: "recommend". Trees that a person decided by hand
/// keep their mark; a mark that says the same already is not written again.
[[nodiscard]] Action marks_action(const TractData& data, const std::vector<StandPlan>& plans);

/// plan_stand and marks_action in one: "recommend for North Slope". No changes: nothing is new.
Result<Action> recommend_stand(const TractData& data, const TractKnowledge& knowledge,
                               IdSource& ids, StandId stand);

/// What one reader is handed, from the marks in the data. Errors: of make_packet; duplicate when
/// two trees wear one tag since files were joined, for all readers but the owner.
Result<Packet> packet_for(const TractData& data, const TractKnowledge& knowledge,
                          PacketReader reader, PacketOptions options);

}  // namespace oaklight
