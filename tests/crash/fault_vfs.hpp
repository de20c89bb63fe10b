#pragma once

#include <filesystem>
#include <random>
#include <string>

namespace oaklight::test {

/// A layer between SQLite and the disk, for this whole program, that lets a test break the disk. It
/// sees what changes files: writes, cuts (truncation) and syncs.
namespace fault_vfs {

/// From now on operation number `at` (counted from 1) fails with an SQLite code, once. `only`: the
/// kind of operation counted, "write", "sync", or "" for all.
void fail_at(int at, int sqlite_code, const std::string& only);

/// From now on what is written is "in the cache" until a sync; at operation `at` the power goes,
/// and every later operation fails.
void cut_power_at(int at);

/// How many operations there were since the last call of the two above.
int operations();

/// Works as the disk does again. After a power cut call it when every file is closed: each file is
/// then what was synced, and of what was written later a random part: whole, torn, lost or noise.
void recover(std::mt19937& chance);

}  // namespace fault_vfs
}  // namespace oaklight::test
