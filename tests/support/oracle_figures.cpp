#include "tests/support/oracle_figures.hpp"

#include "core/measure/basal_area.hpp"

namespace oaklight::test {

bool any_tree(const TreeFacts&) { return true; }
bool is_oak(const TreeFacts& t) {
  static const SpeciesTable table = test_species();
  return table.find(t.species)->is_oak();
}
bool is_11_in(const TreeFacts& t) { return t.dbh.inches() >= Inches{11.0}; }
bool is_large(const TreeFacts& t) { return t.dbh.inches() >= Inches{4.5}; }

double ba_of(const PlotSums& p) { return p.ba; }
double trees_of(const PlotSums& p) { return p.sums.trees; }
double present(const PlotSums&) { return 1.0; }

std::vector<StandSample> samples_of(const TractData& data) {
  std::vector<StandSample> samples;
  for (const Stand& s : data.stands) samples.push_back(stand_sample(data, s.id).value());
  return samples;
}

Estimate<double> figure_of(const std::vector<StandSample>& samples, const Pick& pick, Figure figure,
                           const EstimateOptions& options) {
  std::vector<GroupTally> tallies(samples.size());
  std::vector<StandGroup> parts;
  for (std::size_t h = 0; h < samples.size(); ++h) {
    for (const TalliedTree& t : samples[h].trees) {
      if (pick(t.tree->facts)) tallies[h].add(t);
    }
    parts.push_back({&samples[h], &tallies[h]});
  }
  return estimate_over(parts, options, figure).value();
}

std::vector<double> values_of(const StandSample& sample, Figure figure) {
  GroupTally tally;
  for (const TalliedTree& t : sample.trees) tally.add(t);
  std::vector<double> values(sample.plots.size(), 0.0);
  for (const PlotSums& p : tally.plots()) values[static_cast<std::size_t>(p.plot)] = figure(p);
  return values;
}

MeasuredPoints measured_points(const OracleCruise& oracle, StandId stand) {
  MeasuredPoints m;
  for (std::size_t p = 0; p < oracle.data.plots.size(); ++p) {
    const Plot& plot = oracle.data.plots[p];
    if (plot.stand != stand || !oracle.measured[p]) continue;
    m.ba.push_back(0.0);
    m.volume.push_back(0.0);
    for (std::size_t t = 0; t < oracle.data.trees.size(); ++t) {
      const Tree& tree = oracle.data.trees[t];
      if (tree.plot != plot.id) continue;
      m.ba.back() += 10.0;
      m.volume.back() += 10.0 * *oracle.cubic_feet[t] / basal_area(tree.facts.dbh.inches()).value;
    }
  }
  return m;
}

MeasuredPoints measured_points(const OracleCruise& oracle) {
  MeasuredPoints all;
  for (const Stand& stand : oracle.data.stands) {
    const MeasuredPoints m = measured_points(oracle, stand.id);
    all.ba.insert(all.ba.end(), m.ba.begin(), m.ba.end());
    all.volume.insert(all.volume.end(), m.volume.begin(), m.volume.end());
  }
  return all;
}

std::vector<double> tree_vbars(const OracleCruise& oracle) {
  std::vector<double> vbars;
  for (std::size_t t = 0; t < oracle.data.trees.size(); ++t) {
    if (!oracle.cubic_feet[t]) continue;
    vbars.push_back(*oracle.cubic_feet[t] /
                    basal_area(oracle.data.trees[t].facts.dbh.inches()).value);
  }
  return vbars;
}

Ratio vbar_of(const MeasuredPoints& points) {
  const PairedStratum pairs{
      .plots = static_cast<int>(points.ba.size()), .x = points.ba, .y = points.volume};
  return ratio_of_sums({&pairs, 1}).value();
}

std::vector<Stratum> ba_strata(const std::vector<StandSample>& samples) {
  std::vector<Stratum> strata;
  for (const StandSample& s : samples) {
    const auto values = values_of(s, ba_of);
    strata.push_back({s.stand->acres.value,
                      moments_of(values, static_cast<int>(values.size())).value(), std::nullopt});
  }
  return strata;
}

}  // namespace oaklight::test
