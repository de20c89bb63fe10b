#include "core/session/tract_estimate.hpp"

#include <algorithm>

#include "core/sample/stand_sample.hpp"
#include "core/session/local.hpp"
#include "core/store/tree_stream.hpp"

namespace oaklight {

Result<TractEstimate> estimate_of(const TractStore& store, const TractKnowledge& knowledge,
                                  EstimateOptions options) {
  SampleStream samples;
  std::vector<Tree> tall;
  const TreeStream stream{.begin =
                              [&](const TractData& data) {
                                tall.clear();
                                return samples.begin(data);
                              },
                          .take =
                              [&](const Tree& tree) {
                                if (tree.facts.height) tall.push_back(tree);
                                return samples.take(tree);
                              }};
  auto data = store.load(stream);
  if (!data) return data.error();
  const auto cruised = samples.finish(*data);
  if (!cruised) return cruised.error();
  // The curves are fitted to trees in order of id, as those of a tract in memory come.
  std::ranges::sort(tall, {}, &Tree::id);
  std::swap(data->trees, tall);
  options = with_local(std::move(options), *data, knowledge);
  data->trees = {};
  auto estimate = cruise_estimate(*data, *cruised, knowledge.species(), options);
  if (estimate.stands.empty()) return estimate.all.error();
  auto figures = stand_figures(*cruised, knowledge, options);
  if (!figures) return figures.error();
  return TractEstimate{*std::move(data), std::move(estimate), *std::move(figures),
                       std::move(options)};
}

}  // namespace oaklight
