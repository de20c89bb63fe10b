#include "core/session/local.hpp"

#include "core/measure/local_curves.hpp"

namespace oaklight {

LocalNumbersPtr local_numbers(const TractData& data, const TractKnowledge& knowledge) {
  return std::make_shared<const LocalNumbers>(LocalNumbers{height_curves(data), knowledge.volumes});
}

EstimateOptions with_local(EstimateOptions options, const TractData& data,
                           const TractKnowledge& knowledge) {
  if (!options.local) options.local = local_numbers(data, knowledge);
  return options;
}

}  // namespace oaklight
