#include "tests/support/faults/fault_disk.hpp"

#include <sqlite3.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <set>
#include <vector>

#include "tests/support/faults/fault_vfs.hpp"
#include "tests/support/temp_dir.hpp"

namespace oaklight::test {
namespace fault_disk {

constexpr std::size_t kSector = 512;
constexpr const char* kStatement = "statement";

/// What one operation did to a file that was not synced since.
struct Pending {
  std::size_t offset = 0;
  std::string bytes;
  bool truncates = false;  ///< to offset
};

struct Inode {
  std::string synced;
  std::vector<Pending> pending;
};

namespace {

/// A change of names that was not synced since. An empty name: none before, or none after.
struct Naming {
  std::string from, to;
  File file;  ///< nullptr: a folder
};

using Names = std::map<std::string, File>;

struct Disk {
  int operations = 0;
  int failed = 0;
  std::vector<std::string> statements;
  fault_vfs::Fault fault;
  bool in_statement = false;  ///< the one whose turn it is
  bool records = false;
  int cut_at = 0;
  bool dead = false;
  Names live;     ///< as the program sees them
  Names durable;  ///< as they are on disk for sure
  std::vector<Naming> namings;
  std::set<std::string> seen;
};
Disk disk;
thread_local bool in_sqlite = false;

std::string folder_of(const std::string& path) {
  return std::filesystem::path(path).parent_path().string();
}

void name(Names& names, const Naming& change) {
  if (!change.from.empty()) names.erase(change.from);
  if (!change.to.empty()) names[change.to] = change.file;
}

void rename_now(Naming change) {
  if (!disk.records) return;
  for (const std::string& path : {change.from, change.to}) {
    if (!path.empty()) disk.seen.insert(path);
  }
  name(disk.live, change);
  disk.namings.push_back(std::move(change));
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

/// How the cache went to the disk when the power went.
enum class Fate { nothing, all, by_write, by_sector };

/// What became of one unsynced write.
void lay_by_chance(std::string& image, Pending change, std::mt19937& chance) {
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

/// Each sector of a write is there or not, whatever came before or after it.
void lay_sectors(std::string& image, const Pending& change, std::mt19937& chance) {
  if (change.truncates) {
    if (chance() % 2 == 0) lay_on(image, change);
    return;
  }
  for (std::size_t at = 0; at < change.bytes.size();) {
    const std::size_t size =
        std::min(kSector - (change.offset + at) % kSector, change.bytes.size() - at);
    if (chance() % 2 == 0) lay_on(image, {change.offset + at, change.bytes.substr(at, size)});
    at += size;
  }
}

std::string image_after_cut(const Inode& file, Fate fate, std::mt19937& chance) {
  std::string image = file.synced;
  for (const Pending& change : file.pending) {
    if (fate == Fate::all) lay_on(image, change);
    if (fate == Fate::by_write) lay_by_chance(image, change, chance);
    if (fate == Fate::by_sector) lay_sectors(image, change, chance);
  }
  return image;
}

/// The names that are on disk: those that are for sure, and what came later up to some moment.
Names names_after_cut(Fate fate, std::mt19937& chance) {
  Names names = disk.durable;
  std::size_t kept = chance() % (disk.namings.size() + 1);
  if (fate == Fate::nothing) kept = 0;
  if (fate == Fate::all) kept = disk.namings.size();
  for (std::size_t i = 0; i < kept; ++i) name(names, disk.namings[i]);
  return names;
}

void put_on_real_disk(Fate fate, std::mt19937& chance) {
  const Names names = names_after_cut(fate, chance);
  for (const std::string& path : disk.seen) {
    if (names.count(path) == 0) std::filesystem::remove_all(path);
    std::filesystem::remove(path + "-shm");
  }
  for (const auto& [path, file] : names) {
    if (file == nullptr) {
      std::filesystem::create_directory(path);
    } else if (std::filesystem::is_directory(folder_of(path))) {  // a lost folder takes all in it
      write_bytes(path, image_after_cut(*file, fate, chance));
    }
  }
}

bool is_its_turn() {
  return disk.fault.at > 0 &&
         (disk.fault.lasts ? disk.operations >= disk.fault.at : disk.operations == disk.fault.at);
}

Ending ending(bool fails) {
  disk.failed += fails ? 1 : 0;
  return fails ? Ending{disk.fault.sqlite_code, disk.fault.half} : Ending{};
}

}  // namespace

InSqlite::InSqlite() : before_(in_sqlite) { in_sqlite = true; }
InSqlite::~InSqlite() { in_sqlite = before_; }
bool InSqlite::now() { return in_sqlite; }

bool dead() { return disk.dead; }

Ending count(const std::string& kind) {
  if (disk.dead) return {SQLITE_IOERR, false};
  if (disk.fault.only == kStatement) return ending(disk.in_statement);
  if (disk.fault.only.empty() ? kind == "read" : disk.fault.only != kind) return {};
  ++disk.operations;
  if (disk.records && disk.operations == disk.cut_at) {
    disk.dead = true;
    return {SQLITE_IOERR, false};
  }
  return ending(is_its_turn());
}

bool begins(const std::string& statement) {
  if (disk.fault.only != kStatement) return false;
  ++disk.operations;
  disk.statements.push_back(statement);
  disk.in_statement = is_its_turn();
  return true;
}

void ends() { disk.in_statement = false; }

File opened(const std::string& path, bool was_there) {
  if (!disk.records) return nullptr;
  if (const auto known = disk.live.find(path); known != disk.live.end()) return known->second;
  auto file = std::make_shared<Inode>();
  disk.seen.insert(path);
  if (was_there) {
    // What a file holds when it is opened first was written by earlier work and is on disk.
    file->synced = bytes_of(path);
    disk.live[path] = disk.durable[path] = file;
  } else {
    rename_now({"", path, file});
  }
  return file;
}

void wrote(const File& file, std::size_t at, std::string bytes) {
  if (file != nullptr) file->pending.push_back({at, std::move(bytes), false});
}

void truncated(const File& file, std::size_t size) {
  if (file != nullptr) file->pending.push_back({size, "", true});
}

void synced(const File& file) {
  if (file == nullptr) return;
  for (const Pending& change : file->pending) lay_on(file->synced, change);
  file->pending.clear();
}

void removed(const std::string& path) {
  if (!disk.records) return;
  opened(path, true);
  rename_now({path, "", nullptr});
}

void renamed(const std::string& from, const std::string& to) {
  if (!disk.records) return;
  if (std::filesystem::exists(to)) opened(to, true);
  rename_now({from, to, opened(from, true)});
}

void made_folder(const std::string& path) { rename_now({"", path, nullptr}); }

void synced_folder(const std::string& folder) {
  std::erase_if(disk.namings, [&](const Naming& change) {
    const std::string& path = change.to.empty() ? change.from : change.to;
    if (folder_of(path) != folder) return false;
    name(disk.durable, change);
    return true;
  });
}

}  // namespace fault_disk

namespace fault_vfs {

using fault_disk::disk;

void install();  // fault_vfs.cpp

void fail(const Fault& fault) {
  install();
  disk = {};
  disk.fault = fault;
}

void fail_at(int at, int sqlite_code, const std::string& only) {
  fail({.at = at, .sqlite_code = sqlite_code, .only = only});
}

void cut_power_at(int at) {
  install();
  disk = {};
  disk.records = true;
  disk.cut_at = at;
}

int operations() { return disk.operations; }
const std::vector<std::string>& statements() { return disk.statements; }
int failed() { return disk.failed; }

void recover(std::mt19937& chance) {
  const fault_disk::Disk after = std::move(disk);
  disk = {};
  if (!after.dead) return;
  disk.durable = after.durable;
  disk.namings = after.namings;
  disk.seen = after.seen;
  fault_disk::put_on_real_disk(static_cast<fault_disk::Fate>(chance() % 4), chance);
  disk = {};
}

}  // namespace fault_vfs
}  // namespace oaklight::test
