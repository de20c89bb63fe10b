#include "tests/crash/fault_vfs.hpp"

#include <sqlite3.h>

#include <cstdint>
#include <map>
#include <new>
#include <vector>

#include "tests/support/temp_dir.hpp"

namespace oaklight::test::fault_vfs {
namespace {

constexpr std::size_t kSector = 512;

/// What one operation did to a file that was not synced since.
struct Pending {
  std::size_t offset = 0;
  std::string bytes;
  bool truncates = false;  ///< to offset
};

struct Disk {
  int operations = 0;
  int fail_at = 0;
  int code = SQLITE_OK;
  std::string only;
  bool records = false;
  int cut_at = 0;
  bool dead = false;
  std::map<std::string, std::string> synced;
  std::map<std::string, std::vector<Pending>> pending;
};
Disk disk;

struct File {
  sqlite3_file base;
  sqlite3_file* real;
  std::string* name;  ///< nullptr for temporary files, which no crash outlives
};
File* of(sqlite3_file* file) { return reinterpret_cast<File*>(file); }
sqlite3_file* real_of(sqlite3_file* file) { return of(file)->real; }

/// Counts an operation; the code with which it must fail, or SQLITE_OK.
int count(const std::string& kind) {
  if (disk.dead) return SQLITE_IOERR;
  if (!disk.only.empty() && disk.only != kind) return SQLITE_OK;
  ++disk.operations;
  if (disk.records && disk.operations == disk.cut_at) {
    disk.dead = true;
    return SQLITE_IOERR;
  }
  return disk.operations == disk.fail_at ? disk.code : SQLITE_OK;
}

void lay_on(std::string& image, const Pending& change) {
  if (change.truncates) {
    image.resize(change.offset);
    return;
  }
  if (image.size() < change.offset + change.bytes.size())
    image.resize(change.offset + change.bytes.size());
  image.replace(change.offset, change.bytes.size(), change.bytes);
}

void note(sqlite3_file* file, Pending change) {
  if (disk.records && of(file)->name != nullptr)
    disk.pending[*of(file)->name].push_back(std::move(change));
}

int x_close(sqlite3_file* file) {
  const int code = real_of(file)->pMethods->xClose(real_of(file));
  delete of(file)->name;
  return code;
}
int x_read(sqlite3_file* file, void* to, int size, sqlite3_int64 at) {
  return real_of(file)->pMethods->xRead(real_of(file), to, size, at);
}
int x_write(sqlite3_file* file, const void* from, int size, sqlite3_int64 at) {
  // The write that the power goes in may have reached the disk in part.
  const bool lost = disk.dead;
  const int fault = count("write");
  if (!lost)
    note(file,
         {static_cast<std::size_t>(at),
          std::string(static_cast<const char*>(from), static_cast<std::size_t>(size)), false});
  if (fault != SQLITE_OK) return fault;
  return real_of(file)->pMethods->xWrite(real_of(file), from, size, at);
}
int x_truncate(sqlite3_file* file, sqlite3_int64 size) {
  if (const int fault = count("truncate"); fault != SQLITE_OK) return fault;
  note(file, {static_cast<std::size_t>(size), "", true});
  return real_of(file)->pMethods->xTruncate(real_of(file), size);
}
int x_sync(sqlite3_file* file, int flags) {
  if (const int fault = count("sync"); fault != SQLITE_OK) return fault;
  if (!disk.records) return real_of(file)->pMethods->xSync(real_of(file), flags);
  if (of(file)->name != nullptr) {
    auto& changes = disk.pending[*of(file)->name];
    for (const Pending& change : changes) lay_on(disk.synced[*of(file)->name], change);
    changes.clear();
  }
  return SQLITE_OK;  // the image in memory is the disk now; the real one need not be waited for
}
int x_size(sqlite3_file* file, sqlite3_int64* size) {
  return real_of(file)->pMethods->xFileSize(real_of(file), size);
}
int x_lock(sqlite3_file* file, int level) {
  return real_of(file)->pMethods->xLock(real_of(file), level);
}
int x_unlock(sqlite3_file* file, int level) {
  return real_of(file)->pMethods->xUnlock(real_of(file), level);
}
int x_reserved(sqlite3_file* file, int* held) {
  return real_of(file)->pMethods->xCheckReservedLock(real_of(file), held);
}
int x_control(sqlite3_file* file, int op, void* argument) {
  return real_of(file)->pMethods->xFileControl(real_of(file), op, argument);
}
int x_sector(sqlite3_file* file) { return real_of(file)->pMethods->xSectorSize(real_of(file)); }
int x_device(sqlite3_file*) { return 0; }  // promises nothing: writes may be torn and reordered
int x_shm_map(sqlite3_file* file, int page, int size, int extend, void volatile** memory) {
  return real_of(file)->pMethods->xShmMap(real_of(file), page, size, extend, memory);
}
int x_shm_lock(sqlite3_file* file, int offset, int n, int flags) {
  return real_of(file)->pMethods->xShmLock(real_of(file), offset, n, flags);
}
void x_shm_barrier(sqlite3_file* file) { real_of(file)->pMethods->xShmBarrier(real_of(file)); }
int x_shm_unmap(sqlite3_file* file, int remove) {
  return real_of(file)->pMethods->xShmUnmap(real_of(file), remove);
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
  const int code = real_vfs->xOpen(real_vfs, name, ours->real, flags, out_flags);
  if (code != SQLITE_OK) return code;
  ours->base.pMethods = &kMethods;
  ours->name = name == nullptr ? nullptr : new std::string(name);
  // What a file holds when it is opened first was written by earlier work and is on disk.
  if (disk.records && name != nullptr && disk.synced.count(name) == 0)
    disk.synced[name] = bytes_of(name);
  return SQLITE_OK;
}

int x_delete(sqlite3_vfs*, const char* name, int sync_folder) {
  if (disk.dead) return SQLITE_IOERR;
  disk.synced.erase(name);
  disk.pending.erase(name);
  return real_vfs->xDelete(real_vfs, name, sync_folder);
}

void install() {
  if (real_vfs != nullptr) return;
  real_vfs = sqlite3_vfs_find(nullptr);
  our_vfs = *real_vfs;
  our_vfs.zName = "fault";
  our_vfs.szOsFile = static_cast<int>(sizeof(File)) + real_vfs->szOsFile;
  our_vfs.pNext = nullptr;
  our_vfs.xOpen = x_open;
  our_vfs.xDelete = x_delete;
  sqlite3_vfs_register(&our_vfs, 1);
}

/// What became of one unsynced change when the power went.
void apply_by_chance(std::string& image, Pending change, std::mt19937& chance) {
  switch (chance() % 4) {
    case 0:
      return;  // never left the cache
    case 1:
      change.bytes.resize(change.bytes.size() * (chance() % 100) / 100 / kSector * kSector);
      break;
    case 2:
      if (!change.bytes.empty())
        change.bytes[chance() % change.bytes.size()] = static_cast<char>(chance());
      break;
    default:
      break;
  }
  lay_on(image, change);
}

}  // namespace

void fail_at(int at, int sqlite_code, const std::string& only) {
  install();
  disk = {};
  disk.fail_at = at;
  disk.code = sqlite_code;
  disk.only = only;
}

void cut_power_at(int at) {
  install();
  disk = {};
  disk.records = true;
  disk.cut_at = at;
}

int operations() { return disk.operations; }

void recover(std::mt19937& chance) {
  if (disk.dead) {
    for (auto& [name, image] : disk.synced) {
      for (const Pending& change : disk.pending[name]) apply_by_chance(image, change, chance);
      write_bytes(name, image);
      std::filesystem::remove(name + "-shm");
    }
  }
  disk = {};
}

}  // namespace oaklight::test::fault_vfs
