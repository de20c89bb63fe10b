#pragma once

#include <map>
#include <optional>
#include <string>
#include <unordered_map>

#include "core/sample/cruise_estimate.hpp"
#include "core/sample/running_moments.hpp"
#include "core/session/knowledge.hpp"
#include "core/session/live_tract.hpp"

namespace oaklight {

/// How a stand stands so far, as far as a person at a plot asks: a part of AreaEstimate.
struct StandNow {
  int plots = 0;                   ///< in the sample
  Estimate<SquareFeetPerAcre> ba;  ///< of live trees
  /// Of live trees; nothing where trees were counted without a size: only the full computation
  /// brings them in.
  std::optional<Estimate<TreesPerAcre>> trees;
  Result<PlotNeed> need;  ///< for basal area
};
[[nodiscard]] StandNow stand_now(const AreaEstimate& area);

/// The figures of one stand, brought up to date plot by plot in place of computed anew: those that
/// area_estimate tells of stand_sample, at a cost that depends neither on the number of trees in
/// the stand nor on that of its plots.
///
/// Use: make it once, call follow() after each LiveTract::follow(); when one was missed it starts
/// anew. A plot that was touched is taken as a stand of its own, through the very functions of a
/// whole cruise, so that every rule of what counts is theirs; its sums then go into RunningMoments,
/// and the last step from moments to an estimate is the one of every other.
///
/// cost     made: the trees of the stand, once. follow(): the trees and seedling counts of the
///          plots that were touched, and O(log n) look-ups. now(): constant
/// accuracy plot values are bit for bit those of the full computation; mean and error as
///          RunningMoments says; counts, trust and plots needed are equal
/// assumes  tract and species outlive it, and stay where they are
class LiveStand {
 public:
  LiveStand(const LiveTract& live, const SpeciesTable& species, StandId stand);

  void follow();
  /// Nothing where the figures must be computed in full, or can't be told at all:
  /// no plot in the sample; plots of several cruises (visits in later years, two designs at the
  /// same places); two plots of one label; a record that contradicts its plot or its design (the
  /// full computation tells which); a species that the table does not have; count points of double
  /// sampling without a tree that was measured.
  [[nodiscard]] std::optional<StandNow> now(const EstimateOptions& options) const;

  [[nodiscard]] StandId stand() const { return stand_; }
  /// Records of trees on its plots: what a full computation costs.
  [[nodiscard]] std::size_t records() const { return records_; }

 private:
  /// A cruise as it was when the parts of its plots were made.
  struct Laid {
    int plots = 0;
    std::optional<Cruise> cruise;
  };
  /// What one plot brings to the stand.
  struct Part {
    CruiseId cruise;
    std::string label;
    bool visited = false;      ///< it is in the sample
    bool fault = false;        ///< the full computation would refuse it
    bool count_point = false;  ///< not all of its trees need be measured
    bool counted = false;      ///< it has trees without a size
    bool small_plot = false;   ///< it has live trees of the small plot
    std::size_t records = 0;
    double ba = 0.0, trees = 0.0;  ///< live, an acre
  };

  void begin();
  [[nodiscard]] bool cruise_changed() const;
  [[nodiscard]] Part part_of(const Plot& plot) const;
  void bring_up(PlotId plot);
  /// Adds (by 1) or takes out (by -1) a part.
  void weigh(const Part& part, int by);
  [[nodiscard]] bool must_be_full() const;

  const LiveTract& live_;
  const SpeciesTable& species_;
  StandId stand_;
  std::uint64_t followed_ = 0;
  std::map<PlotId, Part> parts_;
  std::map<CruiseId, Laid> cruises_;
  std::unordered_map<std::string, int> labels_;  ///< plots in the sample of each
  RunningMoments ba_, trees_;
  int visited_ = 0, faults_ = 0, same_label_ = 0;
  int count_points_ = 0, counted_ = 0, small_plots_ = 0;
  int measured_with_trees_ = 0;  ///< measured plots with a live tree
  std::size_t records_ = 0;
};

}  // namespace oaklight
