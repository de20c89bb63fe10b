#include "core/release/growth.hpp"

#include <algorithm>
#include <map>

namespace oaklight {
namespace {

/// What one visit says of one tag.
struct Reading {
  const TreeFacts* facts = nullptr;
  Uuid record;
  StandId stand;
  bool crop = false;
};
struct Readings {
  std::optional<Reading> on_card, on_plot;
};
using ByTag = std::map<std::string, Readings>;

ByTag readings_of(const TractData& data) {
  ByTag tags;
  for (const WalkTree& tree : data.walk_trees) {
    if (tree.tag.empty()) continue;
    tags[tree.tag].on_card = Reading{&tree.facts, tree.id.value, tree.stand, tree.crop};
  }
  std::map<PlotId, StandId> stands;
  for (const Plot& plot : data.plots) stands.emplace(plot.id, plot.stand);
  for (const Tree& tree : data.trees) {
    if (tree.tag.empty()) continue;
    const auto stand = stands.find(tree.plot);
    if (stand == stands.end()) continue;
    tags[tree.tag].on_plot = Reading{&tree.facts, tree.id.value, stand->second, false};
  }
  return tags;
}

/// Two readings of one tree at two visits.
struct ReadingPair {
  Reading then;
  std::optional<Reading> now;
};

bool carried_on(const Reading& then, const Reading& now) {
  return then.record == now.record && then.facts->dbh == now.facts->dbh;
}

/// Records of one kind first, and of those a reading that is a new one.
ReadingPair pair_of(const Readings& then, const Readings* now) {
  const Reading first = then.on_card ? *then.on_card : *then.on_plot;
  if (now == nullptr) return {first, std::nullopt};
  const std::array<std::pair<const std::optional<Reading>*, const std::optional<Reading>*>, 4>
      choices{{{&then.on_card, &now->on_card},
               {&then.on_plot, &now->on_plot},
               {&then.on_card, &now->on_plot},
               {&then.on_plot, &now->on_card}}};
  std::optional<ReadingPair> old;
  for (const auto& [a, b] : choices) {
    if (!*a || !*b) continue;
    if (!carried_on(**a, **b)) return {**a, **b};
    if (!old) old = ReadingPair{**a, **b};
  }
  return old ? *old : ReadingPair{first, std::nullopt};
}

TagFate fate_of(const ReadingPair& pair, bool taken) {
  const bool new_reading = pair.now && !carried_on(pair.then, *pair.now);
  if (!new_reading) {
    if (taken) return TagFate::taken;
    return pair.now ? TagFate::not_read : TagFate::not_met;
  }
  if (pair.now->facts->species != pair.then.facts->species) return TagFate::other_species;
  if (pair.now->facts->status == TreeStatus::dead) return taken ? TagFate::taken : TagFate::dead;
  return TagFate::grown;
}

/// Digits count as numbers: 9 before 10.
bool tag_before(const std::string& a, const std::string& b) {
  const auto number = [](const std::string& tag) {
    const bool digits = !tag.empty() && tag.size() < 10 &&
                        std::ranges::all_of(tag, [](char c) { return c >= '0' && c <= '9'; });
    return digits ? std::optional(std::stol(tag)) : std::nullopt;
  };
  const auto x = number(a);
  const auto y = number(b);
  if (x && y && *x != *y) return *x < *y;
  if (x.has_value() != y.has_value()) return x.has_value();
  return a < b;
}

}  // namespace

std::vector<TaggedTree> trees_by_tag(const TractData& first, const TractData& second,
                                     const std::set<WalkTreeId>& taken) {
  const ByTag now = readings_of(second);
  std::vector<TaggedTree> trees;
  for (const auto& [tag, then] : readings_of(first)) {
    const auto found = now.find(tag);
    const ReadingPair pair = pair_of(then, found == now.end() ? nullptr : &found->second);
    if (pair.then.facts->status == TreeStatus::dead) continue;
    const bool gone = then.on_card && taken.contains(WalkTreeId{then.on_card->record});
    TaggedTree tree{.tag = tag,
                    .stand = pair.then.stand,
                    .species = pair.then.facts->species,
                    .crop = then.on_card && then.on_card->crop,
                    .fate = fate_of(pair, gone),
                    .before = pair.then.facts->dbh.inches(),
                    .after = {}};
    if (tree.fate == TagFate::grown) tree.after = pair.now->facts->dbh.inches();
    trees.push_back(std::move(tree));
  }
  std::ranges::sort(trees, tag_before, &TaggedTree::tag);
  return trees;
}

GrowthComparison compare_growth(std::span<const TaggedTree> trees, Confidence confidence) {
  std::vector<double> released, unreleased;
  for (const TaggedTree& tree : trees) {
    const auto growth = tree.per_year();
    if (growth && tree.released) (*tree.released ? released : unreleased).push_back(growth->value);
  }
  GrowthComparison comparison{.released = {},
                              .unreleased = {},
                              .difference = welch_difference(released, unreleased, confidence)};
  if (const auto group = group_mean(released, confidence)) comparison.released = *group;
  if (const auto group = group_mean(unreleased, confidence)) comparison.unreleased = *group;
  return comparison;
}

}  // namespace oaklight
