#include "core/handoff/owner_part.hpp"

#include <array>
#include <map>
#include <string_view>

#include "core/measure/local_curves.hpp"
#include "core/release/guards.hpp"
#include "core/release/work_site.hpp"

namespace oaklight {
namespace {

/// What happens to one tree of the walk.
enum class Fate { stays, felled, killed_standing };

using Fates = std::map<std::string_view, Fate>;

Fates fates_of(const Packet& packet) {
  Fates fates;
  for (const auto* list : {&packet.cut, &packet.trained}) {
    for (const PacketTree& tree : *list) {
      const bool killed = tree.verdict == Verdict::kill_standing || tree.method == Method::girdle;
      fates[tree.tag] = killed ? Fate::killed_standing : Fate::felled;
    }
  }
  return fates;
}

Fate fate_of(const Fates& fates, std::string_view tag) {
  const auto at = fates.find(tag);
  return at == fates.end() ? Fate::stays : at->second;
}

/// Figures of the plots; left empty where there are none.
Status add_plots(OwnerStand& stand, const TractData& data, StandId id, const PacketTables& tables,
                 const PacketOptions& options) {
  const auto sample = stand_sample(data, id);
  if (!sample && sample.error().code == ErrorCode::no_data) return Done{};
  if (!sample) return sample.error();
  EstimateOptions asked;
  asked.log_rule = options.log_rule;
  asked.local = tables.local;
  const std::array<const StandSample*, 1> one = {&*sample};
  auto area = area_estimate(one, tables.species, asked);
  if (!area) return area.error();
  stand.area = *std::move(area);
  const auto stocking =
      stand_stocking(one, tables.species, asked, tables.release->settings.guards.counted_from);
  if (!stocking) return stocking.error();
  stand.stocking = *stocking;
  if (auto made_of = composition(one, tables.species)) stand.composition = *std::move(made_of);
  const auto density =
      stand_density(data, id, tables.species, tables.release->settings.guards.counted_from);
  if (!density) return density.error();
  stand.before = *density;
  return Done{};
}

void add_after(OwnerStand& stand, const Stand& record, const PacketTables& tables) {
  if (!stand.before || !record.walked || !(record.walked->value > 0.0)) return;
  const Guards guards{.before = *stand.before,
                      .covered = *record.walked,
                      .goal = record.goal,
                      .limits = tables.release->settings.guards,
                      .counts = {}};
  CutTally cut;
  for (const TreeFacts& facts : stand.removed) {
    Traits traits;
    traits.species = tables.species.find(facts.species);
    traits.counted = counts_for_guard(facts, guards.limits.counted_from);
    cut.take(facts, traits, 1.0);
  }
  const StandDensity after = density_after(guards, cut);
  // More marked than the plots let one expect: nothing can be told of what is left.
  if (after.ba.value < 0.0 || after.live.trees < 0.0) return;
  stand.after = after;
}

Result<OwnerStand> owner_stand(const Stand& record, const TractData& data, const Fates& fates,
                               const PacketTables& tables, const PacketOptions& options) {
  OwnerStand stand;
  const Status plots = add_plots(stand, data, record.id, tables, options);
  if (!plots) return plots.error();
  std::vector<const WalkTree*> felled, killed, crops;
  for (const WalkTree& tree : data.walk_trees) {
    if (tree.stand != record.id) continue;
    const Fate fate = fate_of(fates, tree.tag);
    if (fate == Fate::stays) {
      if (tree.crop) crops.push_back(&tree);
      continue;
    }
    (fate == Fate::felled ? felled : killed).push_back(&tree);
    if (tree.facts.status == TreeStatus::live) stand.removed.push_back(tree.facts);
  }
  stand.record = practice_record(record, stand.area ? &*stand.area : nullptr, felled, killed, crops,
                                 tables.species);
  add_after(stand, record, tables);
  stand.oak_wilt = oak_wilt_words(stand.before, tables.release->settings.work);
  auto graph =
      graph_from_cards(data.walk_trees, data.contacts, record.id, tables.release->settings.contact);
  if (!graph) return graph.error();
  stand.graph = *std::move(graph);
  stand.crowns = crown_curves(data.walk_trees, record.id);
  for (const ReleaseTree& tree : stand.graph.trees()) {
    stand.goes.push_back(fate_of(fates, tree.tag) != Fate::stays);
  }
  return stand;
}

}  // namespace

Result<OwnerPart> owner_part(const TractData& data, const Packet& packet,
                             const PacketTables& tables, const PacketOptions& options) {
  OwnerPart part{tables.species, data.contacts, {}, {}};
  if (tables.local) part.heights = tables.local->curves;
  const Fates fates = fates_of(packet);
  for (const Stand& record : packet.stands) {
    auto stand = owner_stand(record, data, fates, tables, options);
    if (!stand) return stand.error();
    part.stands.push_back(*std::move(stand));
  }
  return part;
}

}  // namespace oaklight
