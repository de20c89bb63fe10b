#include "core/store/records_changed.hpp"

#include <optional>
#include <set>
#include <tuple>
#include <utility>

#include "core/store/records.hpp"

namespace oaklight::store {
namespace {

template <class R>
struct Kind {};
using Kinds = std::tuple<Kind<Tract>, Kind<Stand>, Kind<Cruise>, Kind<Plot>, Kind<Tree>,
                         Kind<Regen>, Kind<WalkTree>, Kind<Contact>, Kind<Mark>, Kind<MapLine>,
                         Kind<Stump>, Kind<AcornCount>, Kind<AcornYear>>;

/// The change of a row of R; nothing when the row is of another kind, or out of use without a word.
template <class R>
std::optional<Result<Change>> change_of(Kind<R> /*kind*/, const RecordTable& table,
                                        const Row& row) {
  if (table.name() != Fields<R>::kTable) return std::nullopt;
  auto record = record_of<R>(table, row);
  if (!record) return Result<Change>(record.error());
  if constexpr (requires { record->id; }) {
    if (!table.is_live(row)) return Result<Change>(Change(Remove{record->id}));
  } else {
    // A tract that gave way to the one of another file is no tract here.
    if (!table.is_live(row)) return std::nullopt;
  }
  return Result<Change>(Change(*std::move(record)));
}

/// Nothing for a row of a form.
std::optional<Result<Change>> change_of(const RecordTable& table, const Row& row) {
  std::optional<Result<Change>> change;
  const auto try_kind = [&](auto kind) {
    if (!change) change = change_of(kind, table, row);
  };
  std::apply([&](auto... kinds) { (try_kind(kinds), ...); }, Kinds{});
  return change;
}

}  // namespace

Result<std::vector<Change>> records_as_changed(const std::vector<RowChange>& changes) {
  std::vector<Change> records;
  std::set<std::pair<const RecordTable*, std::string>> seen;
  // From the newest back: a record that was touched twice is what the last change left.
  for (auto row = changes.rbegin(); row != changes.rend(); ++row) {
    if (!seen.emplace(row->table, row->table->uid_of(row->after)).second) continue;
    auto change = change_of(*row->table, row->after);
    if (!change) continue;
    if (!*change) return change->error();
    records.push_back(**std::move(change));
  }
  return std::vector<Change>(records.rbegin(), records.rend());
}

}  // namespace oaklight::store
