#pragma once

#include <memory>
#include <string>

namespace oaklight::test::fault_disk {

/// How an operation must end; `code` is an SQLite code.
struct Ending {
  int code = 0;
  bool half = false;
  [[nodiscard]] bool fails() const { return code != 0; }
};

/// Counts an operation.
Ending count(const std::string& kind);
/// The power is gone.
bool dead();
/// SQLite begins a statement; whether what it reads shall come from the disk and from no cache.
bool begins(const std::string& statement);
void ends();

struct Inode;
using File = std::shared_ptr<Inode>;

/// A file that is open now; its name may go, or become another's. Nothing while no power cut is
/// awaited: all that follows is then not kept.
File opened(const std::string& path, bool was_there);
void wrote(const File& file, std::size_t at, std::string bytes);
void truncated(const File& file, std::size_t size);
void synced(const File& file);

/// These four are told of before they are done.
void removed(const std::string& path);
void renamed(const std::string& from, const std::string& to);
void made_folder(const std::string& path);
void synced_folder(const std::string& folder);

/// While it lives the system calls of this thread are those that SQLite makes for an operation that
/// the VFS has counted already.
class InSqlite {
 public:
  InSqlite();
  ~InSqlite();
  InSqlite(const InSqlite&) = delete;
  InSqlite& operator=(const InSqlite&) = delete;
  static bool now();

 private:
  bool before_;
};

}  // namespace oaklight::test::fault_disk
