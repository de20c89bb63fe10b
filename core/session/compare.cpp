#include "core/session/compare.hpp"

#include <algorithm>
#include <chrono>
#include <map>
#include <memory>
#include <set>

#include "core/base/day.hpp"
#include "core/release/taken.hpp"
#include "core/sample/visits.hpp"
#include "core/session/crown_change.hpp"

namespace oaklight {
namespace {

/// Years from one ISO day to another. Nothing when a day is missing or they do not rise.
std::optional<double> years_between(const std::string& first, const std::string& second) {
  constexpr double kDaysPerYear = 365.25;
  const auto a = day_from_text(first);
  const auto b = day_from_text(second);
  if (!a || !b) return std::nullopt;
  const auto days = (std::chrono::sys_days{*b} - std::chrono::sys_days{*a}).count();
  return days > 0 ? std::optional(static_cast<double>(days) / kDaysPerYear) : std::nullopt;
}

const Cruise* cruise_of(const TractData& data, const StandSample& sample) {
  for (const Cruise& cruise : data.cruises) {
    if (cruise.id == sample.plots.front()->cruise) return &cruise;
  }
  return nullptr;
}

/// The part of a tract that one side of the comparison is about.
Result<TractData> part_named(const TractData& data, const std::string& cruise) {
  if (cruise.empty()) return data;
  TractData part = of_cruise(data, cruise);
  if (!part.plots.empty()) return part;
  std::string known;
  for (const Cruise& c : data.cruises) known += (known.empty() ? "" : ", ") + c.name;
  return Error{ErrorCode::unknown_reference, "No cruise \"" + cruise + "\" is in the tract.",
               "cruise", known.empty() ? "The tract has no cruise." : "It has: " + known + "."};
}

using Samples = std::map<std::string, const CruisedStand*>;

Samples by_name(const std::vector<CruisedStand>& stands) {
  Samples samples;
  for (const CruisedStand& s : stands) samples.emplace(s.stand->name, &s);
  return samples;
}

/// The same plots on both sides: the stand was cruised once, and stands in both.
bool same_visit(const CruisedStand& a, const CruisedStand& b) {
  if (!a.sample || !b.sample) return false;
  return a.sample->plots.front()->id == b.sample->plots.front()->id;
}

/// Two visits to a tract while they are compared.
class Two {
 public:
  Two(const TractData& first, const TractData& second, const TractKnowledge& knowledge,
      const CompareOptions& options)
      : first_(first), second_(second), knowledge_(knowledge), options_(options) {
    // The volume table is one at both visits; a curve of heights would not be, and its change would
    // pass for growth.
    options_.estimate.local =
        std::make_shared<const LocalNumbers>(LocalNumbers{{}, knowledge.volumes});
  }

  Result<Comparison> compare();

 private:
  Status add_stands(Comparison& c);
  void add_stand(Comparison& c, const CruisedStand& a, const CruisedStand& b);
  Status add_trees(Comparison& c);
  Status add_acorns(Comparison& c) const;
  [[nodiscard]] Result<AreaChange> change_of_all(const Comparison& c) const;
  [[nodiscard]] std::optional<double> years_of(StandId stand) const;

  const TractData& first_;
  const TractData& second_;
  const TractKnowledge& knowledge_;
  CompareOptions options_;
  std::vector<CruisedStand> samples_first_, samples_second_;
  std::vector<std::unique_ptr<PairedStand>> pairs_;
  std::map<StandId, double> years_;  ///< by stand of the first visit
};

void Two::add_stand(Comparison& c, const CruisedStand& a, const CruisedStand& b) {
  StandComparison row{.stand = a.stand->name,
                      .first_cruise = {},
                      .second_cruise = {},
                      .first_day = {},
                      .second_day = {},
                      .years = options_.years,
                      .only_first = {},
                      .only_second = {},
                      .change = Error{}};
  if (!a.sample || !b.sample) {
    row.change = !a.sample ? a.sample.error() : b.sample.error();
    c.stands.push_back(std::move(row));
    return;
  }
  if (const Cruise* cruise = cruise_of(first_, *a.sample)) {
    row.first_cruise = cruise->name;
    row.first_day = cruise->date;
  }
  if (const Cruise* cruise = cruise_of(second_, *b.sample)) {
    row.second_cruise = cruise->name;
    row.second_day = cruise->date;
  }
  if (!row.years) row.years = years_between(row.first_day, row.second_day);
  if (row.years) years_.emplace(a.stand->id, *row.years);
  auto pair = pair_stand(*a.sample, *b.sample);
  if (!pair) {
    row.change = pair.error();
  } else {
    row.only_first = pair->only_first;
    row.only_second = pair->only_second;
    pairs_.push_back(std::make_unique<PairedStand>(*std::move(pair)));
    const PairedStand* one = pairs_.back().get();
    row.change = area_change({&one, 1}, knowledge_.species(), options_.estimate);
  }
  c.stands.push_back(std::move(row));
}

Status Two::add_stands(Comparison& c) {
  auto first = cruised_stands(first_);
  if (!first) return first.error();
  auto second = cruised_stands(second_);
  if (!second) return second.error();
  samples_first_ = *std::move(first);
  samples_second_ = *std::move(second);
  const Samples later = by_name(samples_second_);
  std::set<std::string> met;
  for (const CruisedStand& a : samples_first_) {
    const auto b = later.find(a.stand->name);
    if (b == later.end() || same_visit(a, *b->second)) {
      c.only_first.push_back(a.stand->name);
      met.insert(a.stand->name);
      continue;
    }
    met.insert(a.stand->name);
    add_stand(c, a, *b->second);
  }
  for (const CruisedStand& b : samples_second_) {
    if (!met.contains(b.stand->name)) c.only_second.push_back(b.stand->name);
  }
  return Done{};
}

Result<AreaChange> Two::change_of_all(const Comparison& c) const {
  std::vector<const PairedStand*> all;
  for (const StandComparison& stand : c.stands) {
    if (!stand.change) return stand.change.error();
  }
  for (const auto& pair : pairs_) all.push_back(pair.get());
  if (all.empty()) {
    return Error{ErrorCode::no_data, "No stand was cruised at both visits.", "stands",
                 "Plots are paired by stand and label: a second cruise keeps the names of the "
                 "first. Give both cruises their day."};
  }
  return area_change(all, knowledge_.species(), options_.estimate);
}

std::optional<double> Two::years_of(StandId stand) const {
  if (options_.years) return options_.years;
  if (const auto found = years_.find(stand); found != years_.end()) return found->second;
  return std::nullopt;
}

Status Two::add_trees(Comparison& c) {
  const std::set<WalkTreeId> taken = taken_trees(first_);
  auto crop_trees = crown_changes(first_, second_, taken, knowledge_);
  if (!crop_trees) return crop_trees.error();
  c.crop_trees = *std::move(crop_trees);
  std::map<std::string, bool> released;
  for (const CropTreeChange& tree : c.crop_trees) released.emplace(tree.tag, tree.released);
  c.trees = trees_by_tag(first_, second_, taken);
  for (TaggedTree& tree : c.trees) {
    tree.years = years_of(tree.stand);
    if (const auto found = released.find(tree.tag); found != released.end() && tree.crop) {
      tree.released = found->second;
    }
  }
  c.growth = compare_growth(c.trees, options_.estimate.confidence);
  return Done{};
}

Status Two::add_acorns(Comparison& c) const {
  const ReleaseKnowledge& release = knowledge_.release;
  const auto years = YearSettings::from(release.rules);
  if (!years) return years.error();
  auto trees = acorn_trees(first_, second_, release.species, release.settings.acorns);
  if (!trees) return trees.error();
  c.acorn_trees = *std::move(trees);
  c.acorn_indices = acorn_indices(c.acorn_trees, years->acorn_trees, options_.estimate.confidence);
  return Done{};
}

Result<Comparison> Two::compare() {
  const Error nothing{ErrorCode::no_data, "Nothing was compared.", "stands", ""};
  Comparison c{.stands = {},
               .only_first = {},
               .only_second = {},
               .all = nothing,
               .trees = {},
               .growth = {.released = {}, .unreleased = {}, .difference = nothing},
               .crop_trees = {},
               .acorn_trees = {},
               .acorn_indices = {}};
  if (const auto done = add_stands(c); !done) return done.error();
  c.all = change_of_all(c);
  if (const auto done = add_trees(c); !done) return done.error();
  if (const auto done = add_acorns(c); !done) return done.error();
  const bool any_tree = std::ranges::any_of(c.trees, [](const TaggedTree& tree) {
    return tree.fate != TagFate::not_met && tree.fate != TagFate::not_read;
  });
  const bool any = any_tree || !c.crop_trees.empty() || !c.acorn_trees.empty();
  if (c.stands.empty() && !any) return c.all.error();
  return c;
}

}  // namespace

Result<Comparison> compare_files(const TractData& first, const TractData& second,
                                 const TractKnowledge& knowledge, const CompareOptions& options) {
  const auto a = part_named(first, options.first_cruise);
  if (!a) return a.error();
  const auto b = part_named(second, options.second_cruise);
  if (!b) return b.error();
  return Two(*a, *b, knowledge, options).compare();
}

Result<Comparison> compare_visits(const TractData& data, const TractKnowledge& knowledge,
                                  const CompareOptions& options) {
  if (!options.first_cruise.empty()) return compare_files(data, data, knowledge, options);
  const auto second = part_named(data, options.second_cruise);
  if (!second) return second.error();
  return Two(before_newest_visit(data), *second, knowledge, options).compare();
}

}  // namespace oaklight
