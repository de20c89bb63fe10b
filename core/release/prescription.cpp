#include "core/release/prescription.hpp"

#include <algorithm>
#include <map>
#include <tuple>

#include "core/measure/basal_area.hpp"
#include "core/measure/product.hpp"
#include "core/stand/stand_stocking.hpp"

namespace oaklight {
namespace {

bool goes(const TreeVerdict& verdict) {
  return verdict.verdict == Verdict::take || verdict.verdict == Verdict::kill_standing;
}

/// One amount an acre, plot by plot.
using Values = std::vector<double>;

struct Line {
  Values trees, ba;
};
using LineKey = std::tuple<SpeciesCode, DbhClass, Product>;

class Tally {
 public:
  Tally(std::span<const DecidedPlot> plots, const ReleaseKnowledge& knowledge)
      : plots_(plots), species_(knowledge.species), settings_(knowledge.settings) {
    for (Values* values : {&crops, &removals, &ba_before, &ba_after, &full_before, &full_after}) {
      values->assign(plots.size(), 0.0);
    }
    for (std::size_t p = 0; p < plots.size(); ++p) add(p);
  }

  Values crops, removals, ba_before, ba_after, full_before, full_after;
  std::map<LineKey, Line> lines;

 private:
  void add(std::size_t p) {
    const DecidedPlot& plot = plots_[p];
    const double each = 1.0 / plot.acres.value;
    StockingSums before;
    StockingSums after;
    for (std::size_t i = 0; i < plot.trees.size(); ++i) {
      const TreeFacts& facts = plot.trees[i];
      const TreeVerdict& verdict = plot.verdicts[i];
      crops[p] += verdict.released ? each : 0.0;
      const double ba = basal_area(facts.dbh.inches()).value * each;
      if (goes(verdict)) add_removal(p, facts, verdict, each, ba);
      if (facts.status == TreeStatus::dead) continue;
      ba_before[p] += ba;
      ba_after[p] += goes(verdict) ? 0.0 : ba;
      if (!counts_for_guard(facts, settings_.guards.counted_from)) continue;
      before.add(facts.dbh.inches(), TreesPerAcre{each});
      if (!goes(verdict)) after.add(facts.dbh.inches(), TreesPerAcre{each});
    }
    full_before[p] = upland_oak_stocking(before).value;
    full_after[p] = upland_oak_stocking(after).value;
  }

  void add_removal(std::size_t p, const TreeFacts& facts, const TreeVerdict& verdict, double each,
                   double ba) {
    removals[p] += each;
    const Species* species = species_.find(facts.species);
    const Product product =
        species == nullptr || verdict.verdict == Verdict::kill_standing
            ? Product::none
            : product_of(*species, facts.dbh, facts.half_logs, facts.conditions, settings_.product)
                  .product;
    Line& line = lines[{facts.species, dbh_class(facts.dbh, ClassWidth::two_inches), product}];
    line.trees.resize(plots_.size(), 0.0);
    line.ba.resize(plots_.size(), 0.0);
    line.trees[p] += each;
    line.ba[p] += ba;
  }

  std::span<const DecidedPlot> plots_;
  const SpeciesTable& species_;
  const ReleaseSettings& settings_;
};

}  // namespace

Result<Prescription> prescription(std::span<const DecidedPlot> plots,
                                  const ReleaseKnowledge& knowledge, Confidence confidence) {
  if (plots.empty()) {
    return Error{ErrorCode::too_few_plots, "No plot of this stand is mapped.", "plots",
                 "Record azimuth and distance of every tree of some plots."};
  }
  const Tally tally(plots, knowledge);
  const auto mean = [&]<class Q>(const Values& values, Q) {
    // Plots there are, and every value is a sum of finite figures: no error can come.
    return with_unit<Q>(*mean_of(values, confidence));
  };
  Prescription p;
  p.plots = static_cast<int>(plots.size());
  p.crop_trees = mean(tally.crops, TreesPerAcre{});
  p.removals = mean(tally.removals, TreesPerAcre{});
  p.ba_before = mean(tally.ba_before, SquareFeetPerAcre{});
  p.ba_after = mean(tally.ba_after, SquareFeetPerAcre{});
  p.stocking_before = mean(tally.full_before, Percent{});
  p.stocking_after = mean(tally.full_after, Percent{});
  for (const auto& [key, line] : tally.lines) {
    p.lines.push_back({std::get<0>(key), std::get<1>(key), std::get<2>(key),
                       mean(line.trees, TreesPerAcre{}), mean(line.ba, SquareFeetPerAcre{})});
  }
  std::stable_sort(p.lines.begin(), p.lines.end(), [](const RemovalLine& a, const RemovalLine& b) {
    return a.trees.mean > b.trees.mean;
  });
  return p;
}

}  // namespace oaklight
