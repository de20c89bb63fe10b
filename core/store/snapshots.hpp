#pragma once

#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

#include "core/base/result.hpp"
#include "core/store/tract_store.hpp"

namespace oaklight {

/// A copy of a tract file that was kept by itself. It is a tract file like any other.
struct Snapshot {
  std::filesystem::path path;
  std::int64_t number = 0;  ///< rises with each, whatever the clock says
  std::string day;          ///< by the clock of the device: "2026-11-30"
};

/// How many are kept: the newest ones, and the last of each of so many days. By their numbers, so
/// that a clock set back or ahead takes none away that is still wanted.
struct SnapshotRule {
  std::size_t newest = 5;
  std::size_t days = 14;
};

/// The folder where they lie when nobody chose another: "snapshots" beside the file.
std::filesystem::path snapshot_folder(const std::filesystem::path& tract);

/// Those of one tract file in a folder, oldest first; nothing where there is no such folder.
std::vector<Snapshot> snapshots_of(const std::filesystem::path& tract,
                                   const std::filesystem::path& folder);

/// Those that need not be kept any longer. `all` is sorted by number.
std::vector<Snapshot> superseded(const std::vector<Snapshot>& all, const SnapshotRule& rule);

/// Copies a tract file that may be open for writing elsewhere in this program or another, reads the
/// copy through against all its checksums, and takes away what the rule no longer keeps. A damaged
/// file is not copied, and older copies stay.
///
/// folder  made when there is none
/// errors  disk_full, also when the copy would leave less than 50 MiB for the tally; cannot_write;
///         damaged; as TractStore::open
Result<Snapshot> take_snapshot(const std::filesystem::path& tract,
                               const std::filesystem::path& folder, StoreContext context,
                               const SnapshotRule& rule = {});

/// A working file from a snapshot under a name that is free, checked.
/// Errors: as TractStore::open and copy_to; damaged when the snapshot is.
Status take_back(const std::filesystem::path& snapshot, const std::filesystem::path& target,
                 StoreContext context);

}  // namespace oaklight
