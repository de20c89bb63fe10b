// The system calls by which our own code writes files, in place of those of the C library for this
// whole program. Each does what it says; those that touch a TempDir are counted first, and fail
// when it is their turn. What SQLite calls for an operation was counted by the VFS.
#include <fcntl.h>
#include <limits.h>
#include <sqlite3.h>
#include <stdio.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstdarg>
#include <map>
#include <string>
#include <string_view>

#include "tests/support/faults/fault_disk.hpp"

namespace {

namespace disk = oaklight::test::fault_disk;

/// What our own code has open for writing. A function, since calls come before main().
std::map<int, disk::File>& open_files() {
  static auto* files = new std::map<int, disk::File>;
  return *files;
}

bool counts(const char* path) {
  return !disk::InSqlite::now() &&
         std::string_view(path).find("/oaklight-test-") != std::string_view::npos;
}

std::string path_of(int descriptor) {
  const std::string link = "/proc/self/fd/" + std::to_string(descriptor);
  std::array<char, PATH_MAX> path{};
  const auto size = ::readlink(link.c_str(), path.data(), path.size());
  return size > 0 ? std::string(path.data(), static_cast<std::size_t>(size)) : std::string();
}

bool is_folder(const std::string& path) {
  struct stat there {};
  return ::stat(path.c_str(), &there) == 0 && S_ISDIR(there.st_mode);
}

bool exists(const char* path) { return ::faccessat(AT_FDCWD, path, F_OK, 0) == 0; }

/// Whether the operation must fail; errno is set then.
bool fails(const disk::Ending& ending) {
  if (ending.fails()) errno = ending.code == SQLITE_FULL ? ENOSPC : EIO;
  return ending.fails();
}

int open_file(const char* path, int flags, mode_t mode) {
  const bool writes = (flags & O_ACCMODE) != O_RDONLY && counts(path);
  const bool was_there = writes && exists(path);
  if (writes && !was_there && (flags & O_CREAT) != 0 && fails(disk::count("create"))) return -1;
  if (writes && disk::dead()) {
    errno = EIO;
    return -1;
  }
  const disk::File as_it_was = was_there ? disk::opened(path, true) : nullptr;
  const int descriptor = static_cast<int>(::syscall(SYS_openat, AT_FDCWD, path, flags, mode));
  if (!writes || descriptor < 0) return descriptor;
  if (was_there && (flags & O_TRUNC) != 0) disk::truncated(as_it_was, 0);
  open_files()[descriptor] = was_there ? as_it_was : disk::opened(path, false);
  return descriptor;
}

int sync_file(int descriptor, long call) {
  const std::string path = path_of(descriptor);
  if (counts(path.c_str()) && fails(disk::count("sync"))) return -1;
  if (is_folder(path)) {
    disk::synced_folder(path);
  } else if (counts(path.c_str())) {
    disk::synced(disk::opened(path, true));  // also one that is open for reading only
  }
  return static_cast<int>(::syscall(call, descriptor));
}

int take_away(const char* path, int flags) {
  if (counts(path) && exists(path)) {
    if (fails(disk::count("delete"))) return -1;
    disk::removed(path);
  }
  return static_cast<int>(::syscall(SYS_unlinkat, AT_FDCWD, path, flags));
}

}  // namespace

extern "C" {

int open(const char* path, int flags, ...) {
  va_list more;
  va_start(more, flags);
  const mode_t mode = (flags & (O_CREAT | O_TMPFILE)) != 0 ? va_arg(more, mode_t) : 0;
  va_end(more);
  return open_file(path, flags, mode);
}

int open64(const char* path, int flags, ...) {
  va_list more;
  va_start(more, flags);
  const mode_t mode = (flags & (O_CREAT | O_TMPFILE)) != 0 ? va_arg(more, mode_t) : 0;
  va_end(more);
  return open_file(path, flags, mode);
}

int close(int descriptor) {
  open_files().erase(descriptor);
  return static_cast<int>(::syscall(SYS_close, descriptor));
}

ssize_t write(int descriptor, const void* from, size_t size) {
  const auto file = open_files().find(descriptor);
  if (file == open_files().end()) return ::syscall(SYS_write, descriptor, from, size);
  const bool lost = disk::dead();
  const disk::Ending ending = disk::count("write");
  const auto at = static_cast<std::size_t>(::lseek(descriptor, 0, SEEK_CUR));
  if (!lost) disk::wrote(file->second, at, std::string(static_cast<const char*>(from), size));
  if (ending.half && size > 1) return ::syscall(SYS_write, descriptor, from, size / 2);
  if (fails(ending)) return -1;
  return ::syscall(SYS_write, descriptor, from, size);
}

int fsync(int descriptor) { return sync_file(descriptor, SYS_fsync); }
int fdatasync(int descriptor) { return sync_file(descriptor, SYS_fdatasync); }

int rename(const char* from, const char* to) noexcept {
  if (counts(to)) {
    if (fails(disk::count("rename"))) return -1;
    disk::renamed(from, to);
  }
  return static_cast<int>(::syscall(SYS_renameat2, AT_FDCWD, from, AT_FDCWD, to, 0));
}

int unlink(const char* path) noexcept { return take_away(path, 0); }

int remove(const char* path) noexcept {
  return is_folder(path) ? ::rmdir(path) : take_away(path, 0);
}

int mkdir(const char* path, mode_t mode) noexcept {
  if (counts(path) && !exists(path)) {
    if (fails(disk::count("folder"))) return -1;
    disk::made_folder(path);
  }
  return static_cast<int>(::syscall(SYS_mkdirat, AT_FDCWD, path, mode));
}

}  // extern "C"
