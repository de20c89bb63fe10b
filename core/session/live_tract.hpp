#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/store/tract_store.hpp"

namespace oaklight {

/// Which records belong to which, by id, in rising order of id.
class IdGroups {
 public:
  void add(const Uuid& group, const Uuid& member);
  void remove(const Uuid& group, const Uuid& member);
  [[nodiscard]] std::span<const Uuid> of(const Uuid& group) const;

 private:
  std::map<Uuid, std::vector<Uuid>> groups_;
};

/// A tract in memory for screens, kept in step with its file: the records as TractStore::load()
/// gives them, and the look-ups that a screen needs at every touch.
///
/// Use: one thread holds it and makes actions from it (plot_work.hpp, card_work.hpp); another owns
/// the store and applies them; follow() is called with an action's changes, or with what undo() and
/// redo() return, only after the store said that they are on disk. Make the next action after the
/// last one was followed: an action is made from what the tract holds now.
///
/// cost     look-ups and changes of the newest records O(log n); taking out or bringing back an old
///          record also moves the newer records of its kind along by one place
/// assumes  changes that the store accepted; pointers and spans hold until the next follow()
class LiveTract {
 public:
  /// data   as TractStore::load() gives it: each kind in order of its ids
  explicit LiveTract(TractData data);

  [[nodiscard]] const TractData& data() const { return *data_; }
  /// The records as they are now, never to change; for work on another thread. It costs nothing,
  /// but while somebody holds one, the next follow() copies the tract.
  [[nodiscard]] std::shared_ptr<const TractData> snapshot() const { return data_; }
  void follow(std::span<const Change> changes);
  /// The plots whose own record, trees or seedlings the last follow() changed: as they were before
  /// and as they are now, each at least once.
  [[nodiscard]] std::span<const PlotId> touched() const { return touched_; }
  /// How often follow() was called: who keeps figures beside the tract sees whether it missed one.
  [[nodiscard]] std::uint64_t followed() const { return followed_; }

  // nullptr when there is no such record in use.
  [[nodiscard]] const Stand* find(StandId id) const;
  [[nodiscard]] const Cruise* find(CruiseId id) const;
  [[nodiscard]] const Plot* find(PlotId id) const;
  [[nodiscard]] const Tree* find(TreeId id) const;
  [[nodiscard]] const Regen* find(RegenId id) const;
  [[nodiscard]] const WalkTree* find(WalkTreeId id) const;
  [[nodiscard]] const Contact* find(ContactId id) const;
  [[nodiscard]] const Mark* find(MarkId id) const;
  [[nodiscard]] const MapLine* find(MapLineId id) const;
  [[nodiscard]] const Stump* find(StumpId id) const;
  /// The tree of the walk that wears this tag.
  [[nodiscard]] const WalkTree* by_tag(std::string_view tag) const;
  /// The mark of a tree of the walk; of several the one with the highest id.
  [[nodiscard]] const Mark* mark_of(WalkTreeId tree) const;

  /// What was found of a tree of the walk after the cut, in the order in which it was noted.
  [[nodiscard]] std::vector<const Stump*> stumps_of(WalkTreeId tree) const;

  [[nodiscard]] std::vector<const Plot*> plots_of(StandId stand) const;
  /// In the order in which they were tallied.
  [[nodiscard]] std::vector<const Tree*> trees_of(PlotId plot) const;
  /// How many records of trees a plot has, without building the list.
  [[nodiscard]] std::size_t tree_records_of(PlotId plot) const;
  [[nodiscard]] std::vector<const Regen*> regens_of(PlotId plot) const;
  [[nodiscard]] std::vector<const WalkTree*> walk_trees_of(StandId stand) const;
  /// The neighbours on the card of a crop tree.
  [[nodiscard]] std::vector<const Contact*> contacts_of(WalkTreeId crop) const;
  /// The cards on which a tree stands as a neighbour.
  [[nodiscard]] std::vector<const Contact*> contacts_with(WalkTreeId neighbour) const;
  /// Every count of acorns on one tree.
  [[nodiscard]] std::vector<const AcornCount*> acorn_counts_of(WalkTreeId tree) const;

 private:
  void own_data();
  void touch(PlotId plot);
  template <class R>
  void put(std::vector<R>& records, const R& record);
  template <class R>
  void take(std::vector<R>& records, const Uuid& id);
  // A kind of record without groups or tags is only kept in its list.
  template <class R>
  void enter(const R& /*record*/) {}
  template <class R>
  void leave(const R& /*record*/) {}
  void enter(const Plot& plot);
  void leave(const Plot& plot);
  void enter(const Tree& tree);
  void leave(const Tree& tree);
  void enter(const Regen& regen);
  void leave(const Regen& regen);
  void enter(const WalkTree& tree);
  void leave(const WalkTree& tree);
  void enter(const Contact& contact);
  void leave(const Contact& contact);
  void enter(const Mark& mark);
  void leave(const Mark& mark);
  void enter(const Stump& stump);
  void leave(const Stump& stump);
  void enter(const AcornCount& count);
  void leave(const AcornCount& count);

  std::shared_ptr<TractData> data_;  ///< never null
  IdGroups plots_, trees_, regens_, walk_trees_, contacts_, towards_, marks_, stumps_, acorns_;
  std::map<std::string, WalkTreeId, std::less<>> tags_;
  std::vector<PlotId> touched_;
  std::uint64_t followed_ = 0;
};

}  // namespace oaklight
