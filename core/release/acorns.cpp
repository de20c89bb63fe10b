#include "core/release/acorns.hpp"

#include <algorithm>
#include <cmath>

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

/// What was counted on one tree in one autumn.
struct Autumn {
  std::optional<double> per_tip;
  std::optional<int> n30;
};

std::map<int, Autumn> autumns_of(const Uuid& tree, std::span<const AcornCount> counts) {
  std::map<int, Autumn> autumns;
  for (const AcornCount& count : counts) {
    if (count.tree.value != tree) continue;
    Autumn& autumn = autumns[count.year];
    if (const auto* tips = std::get_if<BranchTipCount>(&count.count)) {
      autumn.per_tip = tips->per_tip;
    } else {
      autumn.n30 = std::get<TimedCount>(count.count).n30;
    }
  }
  return autumns;
}

bool was_poor(const Autumn& autumn, const AcornSettings::Group& limits) {
  if (autumn.per_tip) return producer_of(*autumn.per_tip, limits) == Producer::poor;
  return autumn.n30 == 0;
}

double transformed(int n30) { return std::log(n30 + 1.0); }

/// By timed counts alone.
Producer timed_producer(SpeciesCode species, const std::map<int, Autumn>& autumns,
                        const TimedMeans& means, const AcornSettings& settings) {
  int counted = 0;
  int compared = 0;
  bool none_seen = true;
  double above = 0.0;
  for (const auto& [year, autumn] : autumns) {
    if (!autumn.n30) continue;
    ++counted;
    none_seen = none_seen && *autumn.n30 == 0;
    const auto mean = means.find({species, year});
    if (mean == means.end()) continue;
    ++compared;
    above += transformed(*autumn.n30) - mean->second;
  }
  if (none_seen) return counted >= settings.years ? Producer::poor : Producer::no_record;
  if (compared < settings.years) return Producer::no_record;
  constexpr double kRounding = 1e-12;  // a tree that equals the mean is not below it
  return above >= -kRounding ? Producer::good : Producer::fair;
}

}  // namespace

TimedMeans timed_means(std::span<const CountedOak> trees, std::span<const AcornCount> counts,
                       const AcornSettings& settings) {
  std::map<Uuid, SpeciesCode> species;
  for (const CountedOak& oak : trees) species.emplace(oak.tree, oak.species);
  struct Sum {
    int trees = 0;
    double of = 0.0;
  };
  std::map<std::pair<SpeciesCode, int>, Sum> sums;
  for (const AcornCount& count : counts) {
    const auto* timed = std::get_if<TimedCount>(&count.count);
    const auto oak = species.find(count.tree.value);
    if (timed == nullptr || oak == species.end()) continue;
    Sum& sum = sums[{oak->second, count.year}];
    ++sum.trees;
    sum.of += transformed(timed->n30);
  }
  TimedMeans means;
  for (const auto& [key, sum] : sums) {
    if (sum.trees >= settings.index_trees) means.emplace(key, sum.of / sum.trees);
  }
  return means;
}

AcornRecord acorn_record(const CountedOak& oak, OakGroup group, std::span<const AcornCount> counts,
                         std::span<const AcornYear> years, const TimedMeans& means,
                         const AcornSettings& settings) {
  AcornRecord record;
  if (group == OakGroup::none) return record;
  const AcornSettings::Group& limits = group == OakGroup::white ? settings.white : settings.red;
  const std::map<int, Autumn> autumns = autumns_of(oak.tree, counts);
  int with_tips = 0;
  double sum = 0.0;
  bool always_poor = true;
  bool saw_a_good_year = false;
  for (const auto& [year, autumn] : autumns) {
    always_poor = always_poor && was_poor(autumn, limits);
    saw_a_good_year = saw_a_good_year || bore_well(years, group, year);
    if (!autumn.per_tip) continue;
    ++with_tips;
    sum += *autumn.per_tip;
  }
  record.years = static_cast<int>(autumns.size());
  if (record.years == 0) return record;
  if (with_tips > 0) {
    record.per_tip = sum / with_tips;
    record.producer = producer_of(*record.per_tip, limits);
  } else {
    record.producer = timed_producer(oak.species, autumns, means, settings);
  }
  record.proven_poor = always_poor && saw_a_good_year && record.years >= settings.years;
  return record;
}

}  // namespace oaklight
