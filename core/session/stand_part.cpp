#include "core/session/stand_part.hpp"

#include <algorithm>
#include <set>

#include "core/session/records_named.hpp"

namespace oaklight {
namespace {

template <class R>
void add_all(std::vector<R>& records, const std::vector<const R*>& found) {
  for (const R* record : found) records.push_back(*record);
}

template <class R>
void sort_by_id(std::vector<R>& records) {
  std::ranges::sort(records, {}, [](const R& record) { return record.id; });
}

/// A card that reaches into another stand is told as the fault it is, so both of its ends count.
void add_cards(const LiveTract& live, TractData& part) {
  std::set<ContactId> seen;
  for (const WalkTree& tree : part.walk_trees) {
    for (const auto& contacts : {live.contacts_of(tree.id), live.contacts_with(tree.id)}) {
      for (const Contact* contact : contacts) {
        if (seen.insert(contact->id).second) part.contacts.push_back(*contact);
      }
    }
    if (const Mark* mark = live.mark_of(tree.id)) part.marks.push_back(*mark);
    add_all(part.acorn_counts, live.acorn_counts_of(tree.id));
  }
}

}  // namespace

Result<TractData> stand_plots(const LiveTract& live, StandId id) {
  const Stand* stand = live.find(id);
  if (stand == nullptr) return no_such("stand", to_text(id));
  TractData part;
  part.tract = live.data().tract;
  part.stands = {*stand};
  part.cruises = live.data().cruises;
  add_all(part.plots, live.plots_of(id));
  for (const Plot& plot : part.plots) {
    add_all(part.trees, live.trees_of(plot.id));
    add_all(part.regens, live.regens_of(plot.id));
  }
  sort_by_id(part.trees);
  sort_by_id(part.regens);
  return part;
}

Result<TractData> stand_part(const LiveTract& live, StandId id) {
  auto whole = stand_plots(live, id);
  if (!whole) return whole;
  TractData& part = *whole;
  part.lines = live.data().lines;
  part.acorn_years = live.data().acorn_years;
  add_all(part.walk_trees, live.walk_trees_of(id));
  add_cards(live, part);
  sort_by_id(part.contacts);
  sort_by_id(part.marks);
  sort_by_id(part.acorn_counts);
  return whole;
}

}  // namespace oaklight
