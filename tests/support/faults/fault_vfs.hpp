#pragma once

#include <random>
#include <string>
#include <vector>

namespace oaklight::test {

/// A disk, for this whole program, that a test breaks. Two layers see what happens on it: a VFS
/// below SQLite (fault_vfs.cpp) and the system calls by which our own code writes files
/// (fault_calls.cpp). Of the latter only those count that touch a TempDir.
///
/// Kinds of operation: "write", "truncate", "sync", "create", "delete", "rename", "folder" (one is
/// made), and "read", which changes nothing and counts only when it is named. "statement" counts
/// the statements that SQLite runs, and fails all that one of them does on the disk: each reads
/// afresh what it needs, so that the disk is met wherever our own code asks SQLite for something.
namespace fault_vfs {

struct Fault {
  int at = 0;           ///< which operation, counted from 1
  int sqlite_code = 0;  ///< SQLITE_FULL: no room (ENOSPC to a system call); others: EIO
  std::string only;     ///< the kind counted; "" for all that change the disk
  bool lasts = false;   ///< every later one of the kind fails as well, until recover()
  bool half = false;    ///< a write puts down half of its bytes before it fails
};

/// From now on an operation fails.
void fail(const Fault& fault);
/// Once, and clean.
void fail_at(int at, int sqlite_code, const std::string& only);

/// From now on what is written is "in the cache" until a sync; at operation `at` the power goes,
/// and every later operation fails.
void cut_power_at(int at);

/// How many operations there were since the last call of the three above.
int operations();

/// The text of each statement since then, in order, while "statement" is what counts.
const std::vector<std::string>& statements();

/// How many operations were made to fail since then.
int failed();

/// Works as the disk does again. After a power cut call it when every file is closed. Each file is
/// then what was synced, and of what was written later a random part: whole, torn, lost or noise,
/// in no order. Files made, renamed and taken away since their folder was synced are so up to some
/// moment, in order, as file systems with a journal keep it.
void recover(std::mt19937& chance);

}  // namespace fault_vfs
}  // namespace oaklight::test
