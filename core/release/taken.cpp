#include "core/release/taken.hpp"

#include <map>

namespace oaklight {
namespace {

bool goes(Verdict verdict) { return verdict == Verdict::take || verdict == Verdict::kill_standing; }

bool is_gone(Finding finding) {
  return finding == Finding::as_marked || finding == Finding::not_marked ||
         finding == Finding::hung;
}

/// Of several records of a tree the one with the highest id counts.
template <class Record>
using Last = std::map<WalkTreeId, const Record*>;
template <class Record>
void keep_last(Last<Record>& last, WalkTreeId tree, const Record& record) {
  const Record*& known = last[tree];
  if (known == nullptr || known->id < record.id) known = &record;
}

}  // namespace

std::set<WalkTreeId> taken_trees(const TractData& data) {
  Last<Mark> marks;
  for (const Mark& mark : data.marks) keep_last(marks, mark.tree, mark);
  Last<Stump> stumps;
  for (const Stump& stump : data.stumps) {
    if (stump.tree) keep_last(stumps, *stump.tree, stump);
  }
  std::set<WalkTreeId> taken;
  for (const auto& [tree, mark] : marks) {
    if (goes(mark->verdict)) taken.insert(tree);
  }
  for (const auto& [tree, stump] : stumps) {
    if (is_gone(stump->finding)) {
      taken.insert(tree);
    } else {
      taken.erase(tree);
    }
  }
  return taken;
}

TractData with_taken(const TractData& data, const std::set<WalkTreeId>& taken) {
  TractData done = data;
  done.marks.clear();
  for (const WalkTree& tree : done.walk_trees) {
    if (!taken.contains(tree.id)) continue;
    Mark& mark = done.marks.emplace_back();
    mark.id = MarkId{tree.id.value};  // ids of marks only have to differ from each other here
    mark.tree = tree.id;
    mark.verdict = Verdict::take;
  }
  return done;
}

}  // namespace oaklight
