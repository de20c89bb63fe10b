#include "core/session/live_tract.hpp"

#include <algorithm>
#include <atomic>
#include <optional>
#include <type_traits>
#include <utility>
#include <variant>

namespace oaklight {
namespace {

/// Where a record of this id stands or would stand. New records have the highest id.
template <class R>
auto place_of(std::vector<R>& records, const Uuid& id) {
  if (records.empty() || records.back().id.value < id) return records.end();
  return std::lower_bound(records.begin(), records.end(), id,
                          [](const R& record, const Uuid& key) { return record.id.value < key; });
}

template <class R>
const R* find_in(const std::vector<R>& records, const Uuid& id) {
  const auto found =
      std::lower_bound(records.begin(), records.end(), id,
                       [](const R& record, const Uuid& key) { return record.id.value < key; });
  return found != records.end() && found->id.value == id ? &*found : nullptr;
}

template <class R>
std::vector<const R*> all_in(const std::vector<R>& records, std::span<const Uuid> ids) {
  std::vector<const R*> found;
  found.reserve(ids.size());
  for (const Uuid& id : ids) {
    if (const R* record = find_in(records, id)) found.push_back(record);
  }
  return found;
}

/// The list of a tract that holds records with this kind of id, or of this kind.
std::vector<Stand>& list_of(TractData& d, const Stand* /*kind*/) { return d.stands; }
std::vector<Cruise>& list_of(TractData& d, const Cruise* /*kind*/) { return d.cruises; }
std::vector<Plot>& list_of(TractData& d, const Plot* /*kind*/) { return d.plots; }
std::vector<Tree>& list_of(TractData& d, const Tree* /*kind*/) { return d.trees; }
std::vector<Regen>& list_of(TractData& d, const Regen* /*kind*/) { return d.regens; }
std::vector<WalkTree>& list_of(TractData& d, const WalkTree* /*kind*/) { return d.walk_trees; }
std::vector<Contact>& list_of(TractData& d, const Contact* /*kind*/) { return d.contacts; }
std::vector<Mark>& list_of(TractData& d, const Mark* /*kind*/) { return d.marks; }
std::vector<MapLine>& list_of(TractData& d, const MapLine* /*kind*/) { return d.lines; }
std::vector<Stump>& list_of(TractData& d, const Stump* /*kind*/) { return d.stumps; }
std::vector<AcornCount>& list_of(TractData& d, const AcornCount* /*kind*/) {
  return d.acorn_counts;
}
std::vector<AcornYear>& list_of(TractData& d, const AcornYear* /*kind*/) { return d.acorn_years; }

const Stand* kind_of(const StandId& /*id*/) { return nullptr; }
const Cruise* kind_of(const CruiseId& /*id*/) { return nullptr; }
const Plot* kind_of(const PlotId& /*id*/) { return nullptr; }
const Tree* kind_of(const TreeId& /*id*/) { return nullptr; }
const Regen* kind_of(const RegenId& /*id*/) { return nullptr; }
const WalkTree* kind_of(const WalkTreeId& /*id*/) { return nullptr; }
const Contact* kind_of(const ContactId& /*id*/) { return nullptr; }
const Mark* kind_of(const MarkId& /*id*/) { return nullptr; }
const MapLine* kind_of(const MapLineId& /*id*/) { return nullptr; }
const Stump* kind_of(const StumpId& /*id*/) { return nullptr; }
const AcornCount* kind_of(const AcornCountId& /*id*/) { return nullptr; }
const AcornYear* kind_of(const AcornYearId& /*id*/) { return nullptr; }

/// The plot that a record is or belongs to, whose figures change with it.
template <class R>
std::optional<PlotId> plot_of(const R& record) {
  if constexpr (std::is_same_v<R, Plot>) return record.id;
  if constexpr (std::is_same_v<R, Tree> || std::is_same_v<R, Regen>) return record.plot;
  return std::nullopt;
}

}  // namespace

void IdGroups::add(const Uuid& group, const Uuid& member) {
  std::vector<Uuid>& members = groups_[group];
  members.insert(std::upper_bound(members.begin(), members.end(), member), member);
}

void IdGroups::remove(const Uuid& group, const Uuid& member) {
  const auto found = groups_.find(group);
  if (found == groups_.end()) return;
  const auto range = std::equal_range(found->second.begin(), found->second.end(), member);
  found->second.erase(range.first, range.second);
  if (found->second.empty()) groups_.erase(found);
}

std::span<const Uuid> IdGroups::of(const Uuid& group) const {
  const auto found = groups_.find(group);
  return found == groups_.end() ? std::span<const Uuid>{} : std::span<const Uuid>(found->second);
}

LiveTract::LiveTract(TractData data) : data_(std::make_shared<TractData>(std::move(data))) {
  for (const Plot& plot : data_->plots) enter(plot);
  for (const Tree& tree : data_->trees) enter(tree);
  for (const Regen& regen : data_->regens) enter(regen);
  for (const WalkTree& tree : data_->walk_trees) enter(tree);
  for (const Contact& contact : data_->contacts) enter(contact);
  for (const Mark& mark : data_->marks) enter(mark);
  for (const Stump& stump : data_->stumps) enter(stump);
  for (const AcornCount& count : data_->acorn_counts) enter(count);
}

template <class R>
void LiveTract::put(std::vector<R>& records, const R& record) {
  const auto place = place_of(records, record.id.value);
  if (place != records.end() && place->id == record.id) {
    leave(*place);
    if (const auto plot = plot_of(*place)) touch(*plot);
    *place = record;
  } else {
    records.insert(place, record);
  }
  enter(record);
  if (const auto plot = plot_of(record)) touch(*plot);
}

template <class R>
void LiveTract::take(std::vector<R>& records, const Uuid& id) {
  const auto place = place_of(records, id);
  if (place == records.end() || place->id.value != id) return;
  leave(*place);
  if (const auto plot = plot_of(*place)) touch(*plot);
  records.erase(place);
}

/// Nobody else may see the records change.
void LiveTract::own_data() {
  if (data_.use_count() > 1) {
    data_ = std::make_shared<TractData>(*data_);
  } else {
    // The count alone does not say that what another thread read before it let go is over.
    std::atomic_thread_fence(std::memory_order_acquire);
  }
}

void LiveTract::follow(std::span<const Change> changes) {
  own_data();
  touched_.clear();
  ++followed_;
  const auto one = [this]<class R>(const R& change) {
    if constexpr (std::is_same_v<R, Tract>) {
      data_->tract = change;
    } else if constexpr (std::is_same_v<R, Remove>) {
      std::visit([this](const auto& id) { take(list_of(*data_, kind_of(id)), id.value); },
                 change.id);
    } else {
      put(list_of(*data_, &change), change);
    }
  };
  for (const Change& change : changes) std::visit(one, change);
}

/// Trees mostly come plot by plot, so that a plot is noted once and not for each.
void LiveTract::touch(PlotId plot) {
  if (touched_.empty() || touched_.back() != plot) touched_.push_back(plot);
}

void LiveTract::enter(const Plot& plot) { plots_.add(plot.stand.value, plot.id.value); }
void LiveTract::leave(const Plot& plot) { plots_.remove(plot.stand.value, plot.id.value); }
void LiveTract::enter(const Tree& tree) { trees_.add(tree.plot.value, tree.id.value); }
void LiveTract::leave(const Tree& tree) { trees_.remove(tree.plot.value, tree.id.value); }
void LiveTract::enter(const Regen& regen) { regens_.add(regen.plot.value, regen.id.value); }
void LiveTract::leave(const Regen& regen) { regens_.remove(regen.plot.value, regen.id.value); }
void LiveTract::enter(const Mark& mark) { marks_.add(mark.tree.value, mark.id.value); }
void LiveTract::leave(const Mark& mark) { marks_.remove(mark.tree.value, mark.id.value); }

void LiveTract::enter(const Stump& stump) {
  if (stump.tree) stumps_.add(stump.tree->value, stump.id.value);
}

void LiveTract::leave(const Stump& stump) {
  if (stump.tree) stumps_.remove(stump.tree->value, stump.id.value);
}
void LiveTract::enter(const AcornCount& count) { acorns_.add(count.tree.value, count.id.value); }
void LiveTract::leave(const AcornCount& count) { acorns_.remove(count.tree.value, count.id.value); }

void LiveTract::enter(const WalkTree& tree) {
  walk_trees_.add(tree.stand.value, tree.id.value);
  tags_.insert_or_assign(tree.tag, tree.id);
}

void LiveTract::leave(const WalkTree& tree) {
  walk_trees_.remove(tree.stand.value, tree.id.value);
  // Two trees may swap tags in one action; then the tag is the other's by now.
  const auto tag = tags_.find(tree.tag);
  if (tag != tags_.end() && tag->second == tree.id) tags_.erase(tag);
}

void LiveTract::enter(const Contact& contact) {
  contacts_.add(contact.crop.value, contact.id.value);
  towards_.add(contact.neighbour.value, contact.id.value);
}

void LiveTract::leave(const Contact& contact) {
  contacts_.remove(contact.crop.value, contact.id.value);
  towards_.remove(contact.neighbour.value, contact.id.value);
}

const Stand* LiveTract::find(StandId id) const { return find_in(data_->stands, id.value); }
const Cruise* LiveTract::find(CruiseId id) const { return find_in(data_->cruises, id.value); }
const Plot* LiveTract::find(PlotId id) const { return find_in(data_->plots, id.value); }
const Tree* LiveTract::find(TreeId id) const { return find_in(data_->trees, id.value); }
const Regen* LiveTract::find(RegenId id) const { return find_in(data_->regens, id.value); }
const WalkTree* LiveTract::find(WalkTreeId id) const {
  return find_in(data_->walk_trees, id.value);
}
const Contact* LiveTract::find(ContactId id) const { return find_in(data_->contacts, id.value); }
const Mark* LiveTract::find(MarkId id) const { return find_in(data_->marks, id.value); }
const MapLine* LiveTract::find(MapLineId id) const { return find_in(data_->lines, id.value); }
const Stump* LiveTract::find(StumpId id) const { return find_in(data_->stumps, id.value); }

const WalkTree* LiveTract::by_tag(std::string_view tag) const {
  const auto found = tags_.find(tag);
  return found == tags_.end() ? nullptr : find(found->second);
}

const Mark* LiveTract::mark_of(WalkTreeId tree) const {
  const auto marks = marks_.of(tree.value);
  return marks.empty() ? nullptr : find_in(data_->marks, marks.back());
}

std::vector<const Stump*> LiveTract::stumps_of(WalkTreeId tree) const {
  return all_in(data_->stumps, stumps_.of(tree.value));
}
std::vector<const Plot*> LiveTract::plots_of(StandId stand) const {
  return all_in(data_->plots, plots_.of(stand.value));
}
std::vector<const Tree*> LiveTract::trees_of(PlotId plot) const {
  return all_in(data_->trees, trees_.of(plot.value));
}
std::size_t LiveTract::tree_records_of(PlotId plot) const { return trees_.of(plot.value).size(); }
std::vector<const Regen*> LiveTract::regens_of(PlotId plot) const {
  return all_in(data_->regens, regens_.of(plot.value));
}
std::vector<const WalkTree*> LiveTract::walk_trees_of(StandId stand) const {
  return all_in(data_->walk_trees, walk_trees_.of(stand.value));
}
std::vector<const Contact*> LiveTract::contacts_of(WalkTreeId crop) const {
  return all_in(data_->contacts, contacts_.of(crop.value));
}
std::vector<const Contact*> LiveTract::contacts_with(WalkTreeId neighbour) const {
  return all_in(data_->contacts, towards_.of(neighbour.value));
}
std::vector<const AcornCount*> LiveTract::acorn_counts_of(WalkTreeId tree) const {
  return all_in(data_->acorn_counts, acorns_.of(tree.value));
}

}  // namespace oaklight
