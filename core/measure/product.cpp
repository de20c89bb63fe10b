#include "core/measure/product.hpp"

#include <algorithm>

namespace oaklight {
namespace {

bool is_refused_as_firewood(const Species& species, const ProductLimits& limits) {
  return species.leaf == LeafType::softwood ||
         std::ranges::find(limits.refused, species.code) != limits.refused.end() ||
         std::ranges::find(limits.refused_genera, species.genus()) != limits.refused_genera.end();
}

/// Why the tree gives no saw log; an empty reason when it gives one.
ProductCall without_log(const Species& species, Dbh dbh, std::optional<int> half_logs,
                        Conditions conditions, const ProductLimits& limits) {
  if (!species.min_sawlog_dbh) return {Product::none, "This species is not sawn.", "R7.29"};
  if (dbh.inches() < *species.min_sawlog_dbh) {
    return {Product::none, "Too thin for a saw log.", "R7.20"};
  }
  if (half_logs && *half_logs < 1) return {Product::none, "No 8-ft log in the stem.", "R7.21"};
  const bool unsound =
      std::ranges::any_of(limits.no_log, [&](Condition c) { return conditions.has(c); });
  if (unsound) return {Product::none, "The stem is not sound or not straight.", "R7.21"};
  return {Product::sawlog, "", "R7.20"};
}

}  // namespace

ProductCall product_of(const Species& species, Dbh dbh, std::optional<int> half_logs,
                       Conditions conditions, const ProductLimits& limits) {
  ProductCall call = without_log(species, dbh, half_logs, conditions, limits);
  if (call.product == Product::sawlog) {
    call.reason = "Thick and sound enough for a saw log.";
    return call;
  }
  if (dbh.inches() >= limits.firewood_from && !is_refused_as_firewood(species, limits)) {
    call.product = Product::firewood;
    return call;
  }
  if (dbh.inches() >= limits.pulpwood_from) {
    call.product = Product::pulpwood;
    return call;
  }
  return {Product::none, "Too thin for any product.", "R7.22"};
}

}  // namespace oaklight
