#include "core/handoff/stump_lists.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include "core/handoff/list_volumes.hpp"
#include "core/handoff/order.hpp"
#include "core/measure/product.hpp"
#include "core/place/walk_positions.hpp"

namespace oaklight {
namespace {

const std::vector<const Stump*> kNoFindings;

/// How far in DBH a standing tree may lie to tell the log height of one that is gone.
constexpr Inches kAlike{3.0};

bool says_cut(Finding finding) {
  return finding == Finding::not_marked || finding == Finding::as_marked ||
         finding == Finding::hung;
}

/// The nearest reading of a tape; nothing outside what a tape shows.
std::optional<Dbh> as_dbh(Inches inches) {
  const auto dbh =
      Dbh::from_tenths(static_cast<std::int32_t>(std::lround(inches.value * 10.0)), UnitSystem::us);
  return dbh ? std::optional(*dbh) : std::nullopt;
}

/// Log heights of the tract's trees, to tell those of trees that are gone.
class LogHeights {
 public:
  LogHeights(const TractData& data, const SpeciesTable& species) : species_(species) {
    for (const WalkTree& tree : data.walk_trees) add(tree.facts);
    for (const Tree& tree : data.trees) add(tree.facts);
  }

  /// The middle one, the lower of two; nothing when no tree is like it.
  [[nodiscard]] std::optional<int> of(const Species& species, Inches dbh) const {
    auto own = like(dbh, [&](const TreeFacts& facts) { return facts.species == species.code; });
    if (own) return own;
    return like(dbh, [&](const TreeFacts& facts) {
      const Species* other = species_.find(facts.species);
      return other != nullptr && other->leaf == species.leaf;
    });
  }

 private:
  void add(const TreeFacts& facts) {
    if (facts.half_logs) seen_.push_back(&facts);
  }
  template <class Alike>
  [[nodiscard]] std::optional<int> like(Inches dbh, Alike alike) const {
    std::vector<int> heights;
    for (const TreeFacts* facts : seen_) {
      const double apart = std::fabs(facts->dbh.inches().value - dbh.value);
      if (apart <= kAlike.value && alike(*facts)) heights.push_back(*facts->half_logs);
    }
    if (heights.empty()) return std::nullopt;
    const auto middle = heights.begin() + static_cast<std::ptrdiff_t>((heights.size() - 1) / 2);
    std::ranges::nth_element(heights, middle);
    return *middle;
  }

  const SpeciesTable& species_;
  std::vector<const TreeFacts*> seen_;
};

/// A figure of the low, likely and high DBH; nothing when one of them has none.
template <class Q>
std::optional<Between<Q>> between(const Between<ListVolumes>& of,
                                  std::optional<Q> ListVolumes::*which) {
  if (!(of.low.*which) || !(of.likely.*which) || !(of.high.*which)) return std::nullopt;
  return Between<Q>{*(of.low.*which), *(of.likely.*which), *(of.high.*which)};
}

/// What volumes of trees are told by.
struct VolumeTables {
  LogRule rule = LogRule::international;
  const ProductLimits& products;
  const LocalNumbers* local = nullptr;
};

/// By the tract's own table where it reaches the whole range of the DBH, else by the book: the ends
/// of one range are of one table.
void set_volume(UnmarkedTree& tree, const Species& species, Conditions conditions,
                const LogHeights& heights, const VolumeTables& tables) {
  if (!tree.dbh) return;
  if (!tree.half_logs) tree.half_logs = heights.of(species, tree.dbh->likely);
  const auto low = as_dbh(tree.dbh->low);
  const auto likely = as_dbh(tree.dbh->likely);
  const auto high = as_dbh(tree.dbh->high);
  if (!low || !likely || !high) return;
  const auto all = [&](auto volumes_of) {
    return Between<ListVolumes>{volumes_of(*low), volumes_of(*likely), volumes_of(*high)};
  };
  const auto own = all([&](Dbh dbh) {
    return local_volumes(tables.local, species.code, dbh, tree.half_logs, tables.rule);
  });
  const auto book = all([&](Dbh dbh) { return book_volumes(dbh, tree.half_logs, tables.rule); });
  tree.cords = between(own, &ListVolumes::cords);
  tree.local_cords = tree.cords.has_value();
  if (!tree.cords) tree.cords = between(book, &ListVolumes::cords);
  const auto product =
      product_of(species, *likely, tree.half_logs, conditions, tables.products).product;
  if (!tree.half_logs || product != Product::sawlog) return;
  tree.board_feet = between(own, &ListVolumes::board_feet);
  tree.local_board_feet = tree.board_feet.has_value();
  if (!tree.board_feet) tree.board_feet = between(book, &ListVolumes::board_feet);
}

/// What a stump alone tells of its tree.
void set_size_from_stump(UnmarkedTree& tree, const Stump& stump, const Species* species) {
  const auto found = dbh_from_stump({stump.over_bark, stump.under_bark, stump.height}, species);
  if (!found) return;
  tree.dbh = Between<Inches>{found->low, found->dbh, found->high};
  tree.height_assumed = found->height_assumed;
  tree.beyond_data = found->beyond_data;
}

UnmarkedTree tagged(const StumpWalk& walk, const WalkTree& tree, const Stump& stump) {
  const Inches dbh = tree.facts.dbh.inches();
  const auto mark = walk.marks.find(tree.id);
  return {.tag = tree.tag,
          .stand = walk.stand_name(tree.stand),
          .species = walk.species_name(tree.facts.species),
          .leave_tree = mark != walk.marks.end() && mark->second->verdict == Verdict::keep,
          .crop = tree.crop,
          .hung = stump.finding == Finding::hung,
          .dbh = Between<Inches>{dbh, dbh, dbh},
          .measured = true,
          .half_logs = tree.facts.half_logs,
          .position = stump.position ? stump.position : tree.position,
          .seen_on = stump.seen_on,
          .note = stump.note};
}

UnmarkedTree untagged(const StumpWalk& walk, const Stump& stump) {
  return {.stand = stump.stand ? walk.stand_name(*stump.stand) : "",
          .species = stump.species ? walk.species_name(*stump.species) : "not known",
          .position = stump.position,
          .seen_on = stump.seen_on,
          .note = stump.note};
}

int rank(const UnmarkedTree& tree) {
  return tree.crop ? 0 : tree.leave_tree ? 1 : tree.tag.empty() ? 3 : 2;
}

void add(Between<Cords>& sum, const Between<Cords>& more) {
  sum = {sum.low + more.low, sum.likely + more.likely, sum.high + more.high};
}
void add(Between<BoardFeet>& sum, const Between<BoardFeet>& more) {
  sum = {sum.low + more.low, sum.likely + more.likely, sum.high + more.high};
}

HurtTree hurt_tree(const StumpWalk& walk, const WalkTree* tree, const Stump& stump) {
  HurtTree row{.wound = stump.wound,
               .place = stump.wound_place,
               .position = stump.position,
               .seen_on = stump.seen_on,
               .note = stump.note};
  if (tree == nullptr) {
    row.stand = stump.stand ? walk.stand_name(*stump.stand) : "";
    row.species = stump.species ? walk.species_name(*stump.species) : "not known";
    return row;
  }
  row.tag = tree->tag;
  row.stand = walk.stand_name(tree->stand);
  row.species = walk.species_name(tree->facts.species);
  row.crop = tree->crop;
  if (!row.position) row.position = tree->position;
  return row;
}

int severity(const HurtTree& tree) { return tree.wound ? static_cast<int>(*tree.wound) + 1 : 0; }

}  // namespace

bool is_listed(const std::map<WalkTreeId, const Mark*>& marks, WalkTreeId tree) {
  const auto mark = marks.find(tree);
  return mark != marks.end() && (mark->second->verdict == Verdict::take ||
                                 mark->second->verdict == Verdict::kill_standing);
}

StumpWalk::StumpWalk(const TractData& the_data, const SpeciesTable& the_species,
                     const std::map<WalkTreeId, const Mark*>& the_marks)
    : data(the_data), species(the_species), marks(the_marks), trees(placed_walk_trees(the_data)) {
  for (const Stump& stump : data.stumps) {
    if (stump.tree) findings_[*stump.tree].push_back(&stump);
  }
  for (std::size_t i = 0; i < trees.size(); ++i) places_.emplace(trees[i].id, i);
}

const std::vector<const Stump*>& StumpWalk::findings_of(WalkTreeId tree) const {
  const auto found = findings_.find(tree);
  return found == findings_.end() ? kNoFindings : found->second;
}

const WalkTree* StumpWalk::find(WalkTreeId tree) const {
  const auto found = places_.find(tree);
  return found == places_.end() ? nullptr : &trees[found->second];
}

std::string StumpWalk::stand_name(StandId id) const {
  const auto stand = std::ranges::find(data.stands, id, &Stand::id);
  return stand == data.stands.end() ? std::string() : stand->name;
}

std::string StumpWalk::species_name(SpeciesCode code) const {
  const Species* found = species.find(code);
  return found == nullptr ? "species " + std::to_string(code.fia) : found->common_name;
}

std::vector<UnmarkedTree> unmarked_trees(const StumpWalk& walk, LogRule rule,
                                         const ProductLimits& products, const LocalNumbers* local) {
  const VolumeTables tables{rule, products, local};
  const LogHeights heights(walk.data, walk.species);
  std::vector<UnmarkedTree> rows;
  std::set<WalkTreeId> told;
  for (const Stump& stump : walk.data.stumps) {
    if (!says_cut(stump.finding)) continue;
    const WalkTree* tree = stump.tree ? walk.find(*stump.tree) : nullptr;
    if (tree != nullptr && (is_listed(walk.marks, tree->id) || !told.insert(tree->id).second)) {
      continue;
    }
    const std::optional<SpeciesCode> code =
        tree != nullptr ? std::optional(tree->facts.species) : stump.species;
    const Species* species = code ? walk.species.find(*code) : nullptr;
    UnmarkedTree row = tree != nullptr ? tagged(walk, *tree, stump) : untagged(walk, stump);
    if (tree == nullptr) set_size_from_stump(row, stump, species);
    if (species != nullptr) {
      set_volume(row, *species, tree != nullptr ? tree->facts.conditions : Conditions{}, heights,
                 tables);
    }
    rows.push_back(std::move(row));
  }
  std::ranges::stable_sort(rows, [](const UnmarkedTree& a, const UnmarkedTree& b) {
    if (rank(a) != rank(b)) return rank(a) < rank(b);
    return tag_before(a.tag, b.tag);
  });
  return rows;
}

UnmarkedTotals totals_of(const std::vector<UnmarkedTree>& trees) {
  UnmarkedTotals totals;
  totals.trees = static_cast<int>(trees.size());
  for (const UnmarkedTree& tree : trees) {
    totals.without_dbh += tree.dbh ? 0 : 1;
    if (tree.board_feet) {
      add(totals.board_feet, *tree.board_feet);
      ++totals.with_board_feet;
      totals.local_board_feet += tree.local_board_feet ? 1 : 0;
    }
    if (tree.cords) {
      add(totals.cords, *tree.cords);
      ++totals.with_cords;
      totals.local_cords += tree.local_cords ? 1 : 0;
    }
  }
  return totals;
}

std::vector<HurtTree> hurt_trees(const StumpWalk& walk) {
  std::vector<HurtTree> rows;
  std::map<WalkTreeId, std::size_t> at;
  for (const Stump& stump : walk.data.stumps) {
    if (stump.finding != Finding::hurt) continue;
    const WalkTree* tree = stump.tree ? walk.find(*stump.tree) : nullptr;
    // A tree that was to go is no loss; the list tells it as unclear.
    if (tree != nullptr && is_listed(walk.marks, tree->id)) continue;
    HurtTree row = hurt_tree(walk, tree, stump);
    if (tree == nullptr) {
      rows.push_back(std::move(row));
      continue;
    }
    const auto [known, fresh] = at.emplace(tree->id, rows.size());
    if (fresh) {
      rows.push_back(std::move(row));
    } else if (severity(row) > severity(rows[known->second])) {
      rows[known->second] = std::move(row);
    }
  }
  std::ranges::stable_sort(rows, [](const HurtTree& a, const HurtTree& b) {
    if (a.badly() != b.badly()) return a.badly();
    if (a.crop != b.crop) return a.crop;
    return tag_before(a.tag, b.tag);
  });
  return rows;
}

}  // namespace oaklight
