// What lies between SQLite and the disk.
#include "tests/support/faults/fault_vfs.hpp"

#include <sqlite3.h>
#include <unistd.h>

#include "tests/support/faults/fault_disk.hpp"

namespace oaklight::test {
namespace {

using fault_disk::count;
using fault_disk::Ending;
using fault_disk::InSqlite;

struct File {
  sqlite3_file base;
  sqlite3_file* real;
  fault_disk::File* disk;  ///< holds nullptr for temporary files, which no crash outlives
};
File* of(sqlite3_file* file) { return reinterpret_cast<File*>(file); }
sqlite3_file* real_of(sqlite3_file* file) { return of(file)->real; }
const sqlite3_io_methods& real_calls(sqlite3_file* file) { return *real_of(file)->pMethods; }

int x_close(sqlite3_file* file) {
  const InSqlite inside;
  const int code = real_calls(file).xClose(real_of(file));
  delete of(file)->disk;
  return code;
}
int x_read(sqlite3_file* file, void* to, int size, sqlite3_int64 at) {
  if (const Ending ending = count("read"); ending.fails() && !fault_disk::dead())
    return ending.code;
  return real_calls(file).xRead(real_of(file), to, size, at);
}
int x_write(sqlite3_file* file, const void* from, int size, sqlite3_int64 at) {
  // The write that the power goes in may have reached the disk in part.
  const bool lost = fault_disk::dead();
  const Ending ending = count("write");
  if (!lost) {
    fault_disk::wrote(*of(file)->disk, static_cast<std::size_t>(at),
                      std::string(static_cast<const char*>(from), static_cast<std::size_t>(size)));
  }
  if (!ending.fails() || ending.half) {
    const int code =
        real_calls(file).xWrite(real_of(file), from, ending.half ? size / 2 : size, at);
    if (code != SQLITE_OK) return code;
  }
  return ending.code;
}
int x_truncate(sqlite3_file* file, sqlite3_int64 size) {
  if (const Ending ending = count("truncate"); ending.fails()) return ending.code;
  fault_disk::truncated(*of(file)->disk, static_cast<std::size_t>(size));
  return real_calls(file).xTruncate(real_of(file), size);
}
int x_sync(sqlite3_file* file, int flags) {
  if (const Ending ending = count("sync"); ending.fails()) return ending.code;
  fault_disk::synced(*of(file)->disk);
  const InSqlite inside;  // the folder of a new file is synced as well, in a call of its own
  return real_calls(file).xSync(real_of(file), flags);
}
int x_size(sqlite3_file* file, sqlite3_int64* size) {
  return real_calls(file).xFileSize(real_of(file), size);
}
int x_lock(sqlite3_file* file, int level) { return real_calls(file).xLock(real_of(file), level); }
int x_unlock(sqlite3_file* file, int level) {
  return real_calls(file).xUnlock(real_of(file), level);
}
int x_reserved(sqlite3_file* file, int* held) {
  return real_calls(file).xCheckReservedLock(real_of(file), held);
}
int x_control(sqlite3_file* file, int op, void* argument) {
  return real_calls(file).xFileControl(real_of(file), op, argument);
}
int x_sector(sqlite3_file* file) { return real_calls(file).xSectorSize(real_of(file)); }
// As the system's own: what lies beside a torn write stays whole, and nothing else is promised.
int x_device(sqlite3_file*) { return SQLITE_IOCAP_POWERSAFE_OVERWRITE; }
int x_shm_map(sqlite3_file* file, int page, int size, int extend, void volatile** memory) {
  const InSqlite inside;
  return real_calls(file).xShmMap(real_of(file), page, size, extend, memory);
}
int x_shm_lock(sqlite3_file* file, int offset, int n, int flags) {
  return real_calls(file).xShmLock(real_of(file), offset, n, flags);
}
void x_shm_barrier(sqlite3_file* file) { real_calls(file).xShmBarrier(real_of(file)); }
int x_shm_unmap(sqlite3_file* file, int remove) {
  const InSqlite inside;
  return real_calls(file).xShmUnmap(real_of(file), remove);
}

const sqlite3_io_methods kMethods = {
    2,          x_close,       x_read,      x_write,   x_truncate, x_sync,   x_size,
    x_lock,     x_unlock,      x_reserved,  x_control, x_sector,   x_device, x_shm_map,
    x_shm_lock, x_shm_barrier, x_shm_unmap, nullptr,   nullptr};

sqlite3_vfs* real_vfs = nullptr;
sqlite3_vfs our_vfs;

int x_open(sqlite3_vfs*, const char* name, sqlite3_file* file, int flags, int* out_flags) {
  File* ours = of(file);
  ours->real = reinterpret_cast<sqlite3_file*>(ours + 1);
  ours->base.pMethods = nullptr;
  const bool was_there = name != nullptr && ::access(name, F_OK) == 0;
  if (name != nullptr && !was_there && (flags & SQLITE_OPEN_CREATE) != 0) {
    if (const Ending ending = count("create"); ending.fails()) return SQLITE_CANTOPEN;
  }
  const InSqlite inside;
  const auto as_it_was = was_there ? fault_disk::opened(name, true) : nullptr;
  const int code = real_vfs->xOpen(real_vfs, name, ours->real, flags, out_flags);
  if (code != SQLITE_OK) return code;
  ours->base.pMethods = &kMethods;
  ours->disk = new fault_disk::File(name == nullptr || was_there ? as_it_was
                                                                 : fault_disk::opened(name, false));
  return SQLITE_OK;
}

int x_delete(sqlite3_vfs*, const char* name, int sync_folder) {
  if (::access(name, F_OK) == 0) {
    if (const Ending ending = count("delete"); ending.fails()) return SQLITE_IOERR_DELETE;
    fault_disk::removed(name);
  }
  const InSqlite inside;
  return real_vfs->xDelete(real_vfs, name, sync_folder);
}

/// Not what a trigger runs, which SQLite shows as a comment.
int on_statement(unsigned event, void* db, void*, void* text) {
  if (event == SQLITE_TRACE_PROFILE) {
    fault_disk::ends();
    return 0;
  }
  const std::string statement = static_cast<const char*>(text);
  if (!statement.starts_with("--") && fault_disk::begins(statement))
    sqlite3_db_release_memory(static_cast<sqlite3*>(db));
  return 0;
}

int watch(sqlite3* db, char**, const sqlite3_api_routines*) {
  return sqlite3_trace_v2(db, SQLITE_TRACE_STMT | SQLITE_TRACE_PROFILE, on_statement, db);
}

}  // namespace

namespace fault_vfs {

void install() {
  if (real_vfs != nullptr) return;
  sqlite3_auto_extension(reinterpret_cast<void (*)()>(watch));
  real_vfs = sqlite3_vfs_find(nullptr);
  our_vfs = *real_vfs;
  our_vfs.zName = "fault";
  our_vfs.szOsFile = static_cast<int>(sizeof(File)) + real_vfs->szOsFile;
  our_vfs.pNext = nullptr;
  our_vfs.xOpen = x_open;
  our_vfs.xDelete = x_delete;
  sqlite3_vfs_register(&our_vfs, 1);
}

}  // namespace fault_vfs
}  // namespace oaklight::test
