#include "core/release/acorns.hpp"

#include <algorithm>

namespace oaklight {
namespace {

Producer producer_of(double per_tip, const AcornSettings::Group& limits) {
  if (per_tip >= limits.excellent) return Producer::excellent;
  if (per_tip >= limits.good) return Producer::good;
  return per_tip >= limits.fair ? Producer::fair : Producer::poor;
}

bool bore_well(std::span<const AcornYear> years, OakGroup group, int year) {
  return std::ranges::any_of(years, [&](const AcornYear& one) {
    return one.group == group && one.year == year && one.crop >= AcornCrop::good;
  });
}

}  // namespace

AcornRecord acorn_record(const Uuid& tree, OakGroup group, std::span<const AcornCount> counts,
                         std::span<const AcornYear> years, const AcornSettings& settings) {
  AcornRecord record;
  if (group == OakGroup::none) return record;
  const AcornSettings::Group& limits = group == OakGroup::white ? settings.white : settings.red;
  double sum = 0.0;
  bool always_poor = true;
  bool saw_a_good_year = false;
  for (const AcornCount& count : counts) {
    const auto* tips = std::get_if<BranchTipCount>(&count.count);
    if (count.tree.value != tree || tips == nullptr) continue;
    ++record.years;
    sum += tips->per_tip;
    always_poor = always_poor && producer_of(tips->per_tip, limits) == Producer::poor;
    saw_a_good_year = saw_a_good_year || bore_well(years, group, count.year);
  }
  if (record.years == 0) return record;
  record.producer = producer_of(sum / record.years, limits);
  record.proven_poor = always_poor && saw_a_good_year && record.years >= settings.years;
  return record;
}

}  // namespace oaklight
