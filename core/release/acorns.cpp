#include "core/release/acorns.hpp"

#include <algorithm>

namespace oaklight {
namespace {

Producer producer_of(double per_tip, const AcornSettings::Group& limits) {
  if (per_tip >= limits.excellent) return Producer::excellent;
  if (per_tip >= limits.good) return Producer::good;
  return per_tip >= limits.fair ? Producer::fair : Producer::poor;
}

}  // namespace

AcornRecord acorn_record(const Uuid& tree, OakGroup group, std::span<const AcornCount> counts,
                         std::span<const GoodAcornYear> good_years, const AcornSettings& settings) {
  AcornRecord record;
  if (group == OakGroup::none) return record;
  const AcornSettings::Group& limits = group == OakGroup::white ? settings.white : settings.red;
  double sum = 0.0;
  bool always_poor = true;
  bool saw_a_good_year = false;
  for (const AcornCount& count : counts) {
    if (count.tree != tree) continue;
    ++record.years;
    sum += count.per_tip;
    always_poor = always_poor && producer_of(count.per_tip, limits) == Producer::poor;
    saw_a_good_year =
        saw_a_good_year ||
        std::any_of(good_years.begin(), good_years.end(), [&](const GoodAcornYear& good) {
          return good.group == group && good.year == count.year;
        });
  }
  if (record.years == 0) return record;
  record.producer = producer_of(sum / record.years, limits);
  record.proven_poor = always_poor && saw_a_good_year && record.years >= settings.years;
  return record;
}

}  // namespace oaklight
