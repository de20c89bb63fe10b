#pragma once

#include <functional>
#include <vector>

#include "core/sample/group_tally.hpp"
#include "tests/support/test_cruise.hpp"

namespace oaklight::test {

// What the results of tests/golden/oracle are about, by the product's own functions.

/// Which trees, and which of their sums.
using Pick = std::function<bool(const TreeFacts&)>;
using Figure = double (*)(const PlotSums&);

bool any_tree(const TreeFacts&);
bool is_oak(const TreeFacts&);
bool is_11_in(const TreeFacts&);  ///< 11 in and more
bool is_large(const TreeFacts&);  ///< 4.5 in and more: tallied on the large fixed plot
double ba_of(const PlotSums&);
double trees_of(const PlotSums&);
double present(const PlotSums&);  ///< 1 on each plot with such a tree

/// The samples of all stands, in order. data must outlive them.
std::vector<StandSample> samples_of(const TractData& data);

/// One figure of a group of trees over some stands.
Estimate<double> figure_of(const std::vector<StandSample>& samples, const Pick& pick, Figure figure,
                           const EstimateOptions& options = {});

/// One figure of all trees on each plot of a stand, zeros and all.
std::vector<double> values_of(const StandSample& sample, Figure figure);

/// Basal area and volume an acre on points where volumes were measured.
struct MeasuredPoints {
  std::vector<double> ba, volume;
};
MeasuredPoints measured_points(const OracleCruise& oracle, StandId stand);
MeasuredPoints measured_points(const OracleCruise& oracle);  ///< of all stands

/// Volume over basal area of each measured tree.
std::vector<double> tree_vbars(const OracleCruise& oracle);

/// The ratio of sums over measured points, as one sample.
Ratio vbar_of(const MeasuredPoints& points);

/// Basal area moments by stand, weighted by acres.
std::vector<Stratum> ba_strata(const std::vector<StandSample>& samples);

}  // namespace oaklight::test
