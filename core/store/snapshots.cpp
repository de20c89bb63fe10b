#include "core/store/snapshots.hpp"

#include <algorithm>
#include <set>
#include <system_error>

#include "core/base/day.hpp"
#include "core/base/number_text.hpp"
#include "core/base/sha256.hpp"
#include "core/base/today.hpp"

namespace oaklight {
namespace {

namespace fs = std::filesystem;

// What a tally needs to be finished safely is not spent on copies of it.
constexpr std::uintmax_t kLeaveFree = 50ULL * 1024 * 1024;
constexpr std::size_t kDigits = 6;
constexpr std::size_t kDayLength = 10;  // 2026-11-30

/// What the names of one file's snapshots begin with: its own name, and which file of that name.
std::string series_of(const fs::path& tract) {
  std::error_code unknown;
  auto real = fs::weakly_canonical(tract, unknown);
  if (unknown) real = fs::absolute(tract, unknown);
  return tract.stem().string() + "-" + sha256_hex(real.string()).substr(0, 8) + ".";
}

std::string name_of(const fs::path& tract, std::int64_t number, const std::string& day) {
  std::string digits = std::to_string(number);
  if (digits.size() < kDigits) digits.insert(0, kDigits - digits.size(), '0');
  return series_of(tract) + digits + "." + day + ".gpkg";
}

/// Only a name that is exactly one of ours: nothing else in the folder is ever looked at or taken.
std::optional<Snapshot> snapshot_named(const fs::path& path, const std::string& series) {
  const std::string name = path.filename().string();
  if (!name.starts_with(series) || path.extension() != ".gpkg") return std::nullopt;
  const std::string rest = path.stem().string().substr(series.size());
  if (rest.size() < kDigits + 1 + kDayLength) return std::nullopt;
  const std::size_t dot = rest.size() - kDayLength - 1;
  const std::string digits = rest.substr(0, dot);
  const auto number = whole_from_text(digits);
  const std::string day = rest.substr(dot + 1);
  const bool ours = rest[dot] == '.' && number && *number > 0 && day_from_text(day) &&
                    digits.find_first_not_of("0123456789") == std::string::npos;
  if (!ours) return std::nullopt;
  return Snapshot{path, *number, day};
}

Status make_room(const fs::path& tract, const fs::path& folder) {
  std::error_code problem;
  fs::create_directory(folder, problem);  // not those above it: a card that is not in
  if (problem) {
    return Error{ErrorCode::cannot_write, "The folder for copies of the tract cannot be made.",
                 folder.string(), "Is the card in? Choose another folder."};
  }
  std::uintmax_t needed = fs::file_size(tract, problem);
  const auto log = fs::file_size(tract.string() + "-wal", problem);
  if (!problem) needed += log;
  const auto room = fs::space(folder, problem);
  if (problem || room.available >= needed + kLeaveFree) return Done{};
  return Error{ErrorCode::disk_full, "There is no room for another copy of the tract.",
               folder.string(), "Give files away or delete what is not needed there."};
}

}  // namespace

fs::path snapshot_folder(const fs::path& tract) { return tract.parent_path() / "snapshots"; }

std::vector<Snapshot> snapshots_of(const fs::path& tract, const fs::path& folder) {
  std::vector<Snapshot> found;
  const std::string series = series_of(tract);
  std::error_code none;
  for (fs::directory_iterator entry(folder, none), end; !none && entry != end;
       entry.increment(none)) {
    if (auto snapshot = snapshot_named(entry->path(), series))
      found.push_back(*std::move(snapshot));
  }
  std::sort(found.begin(), found.end(), [](const Snapshot& a, const Snapshot& b) {
    return a.number != b.number ? a.number < b.number : a.path < b.path;
  });
  return found;
}

std::vector<Snapshot> superseded(const std::vector<Snapshot>& all, const SnapshotRule& rule) {
  std::vector<Snapshot> old;
  std::set<std::string> days;
  std::size_t seen = 0;
  for (auto snapshot = all.rbegin(); snapshot != all.rend(); ++snapshot) {
    const bool last_of_day = days.count(snapshot->day) == 0 && days.size() < rule.days;
    if (last_of_day) days.insert(snapshot->day);
    if (seen++ >= rule.newest && !last_of_day) old.push_back(*snapshot);
  }
  return old;
}

Result<Snapshot> take_snapshot(const fs::path& tract, const fs::path& folder, StoreContext context,
                               const SnapshotRule& rule) {
  auto store = TractStore::open(tract, OpenMode::read_only, context, DamageCheck::by_caller);
  if (!store) return store.error();
  if (const auto room = make_room(tract, folder); !room) return room.error();
  const auto before = snapshots_of(tract, folder);
  const std::int64_t number = before.empty() ? 1 : before.back().number + 1;
  const std::string day = to_text(today(context.clock));
  const Snapshot made{folder / name_of(tract, number, day), number, day};
  if (const auto copied = store->copy_to(made.path); !copied) return copied.error();
  {
    const auto copy =
        TractStore::open(made.path, OpenMode::read_only, context, DamageCheck::by_caller);
    const Status sound = copy ? copy->find_damage() : copy.error();
    if (!sound) {
      std::error_code ignored;
      fs::remove(made.path, ignored);
      return sound.error();
    }
  }
  for (const Snapshot& old : superseded(snapshots_of(tract, folder), rule)) {
    std::error_code ignored;
    fs::remove(old.path, ignored);
  }
  return made;
}

Status take_back(const fs::path& snapshot, const fs::path& target, StoreContext context) {
  const auto store = TractStore::open(snapshot, OpenMode::read_only, std::move(context));
  if (!store) return store.error();
  return store->copy_to(target);
}

}  // namespace oaklight
