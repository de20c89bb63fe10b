#include "core/measure/product.hpp"

#include <algorithm>
#include <array>

namespace oaklight {
namespace {

constexpr Inches kMinPulpwood{5.0};  // R7.22
constexpr Inches kMinFirewood{6.0};  // R7.27, common practice

// A stem with one of these has no sound straight log to saw, or breaks the saw. Common practice.
constexpr auto kNoLog = std::to_array<Condition>({
    Condition::crooked,
    Condition::conk,
    Condition::canker,
    Condition::crack,
    Condition::cavity_low,
    Condition::cavity_high,
    Condition::lightning,
    Condition::metal,
});

/// Wood that firewood cutters leave (R7.26, common practice): softwoods, and these.
bool is_refused_as_firewood(const Species& species) {
  constexpr auto kGenera = std::to_array<std::string_view>({"Populus", "Tilia", "Liriodendron"});
  constexpr int kBoxelder = 313;
  return species.leaf == LeafType::softwood || species.code.fia == kBoxelder ||
         std::find(kGenera.begin(), kGenera.end(), species.genus()) != kGenera.end();
}

/// Why the tree gives no saw log; an empty reason when it gives one.
ProductCall without_log(const Species& species, Dbh dbh, std::optional<int> half_logs,
                        Conditions conditions) {
  if (!species.min_sawlog_dbh) return {Product::none, "This species is not sawn.", "R7.29"};
  if (dbh.inches() < *species.min_sawlog_dbh) {
    return {Product::none, "Too thin for a saw log.", "R7.20"};
  }
  if (half_logs && *half_logs < 1) return {Product::none, "No 8-ft log in the stem.", "R7.21"};
  const bool unsound =
      std::any_of(kNoLog.begin(), kNoLog.end(), [&](Condition c) { return conditions.has(c); });
  if (unsound) return {Product::none, "The stem is not sound or not straight.", "R7.21"};
  return {Product::sawlog, "", "R7.20"};
}

}  // namespace

ProductCall product_of(const Species& species, Dbh dbh, std::optional<int> half_logs,
                       Conditions conditions) {
  ProductCall call = without_log(species, dbh, half_logs, conditions);
  if (call.product == Product::sawlog) {
    call.reason = "Thick and sound enough for a saw log.";
    return call;
  }
  if (dbh.inches() >= kMinFirewood && !is_refused_as_firewood(species)) {
    call.product = Product::firewood;
    return call;
  }
  if (dbh.inches() >= kMinPulpwood) {
    call.product = Product::pulpwood;
    return call;
  }
  return {Product::none, "Too thin for any product.", "R7.22"};
}

}  // namespace oaklight
