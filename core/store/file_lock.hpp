#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "core/base/result.hpp"

namespace oaklight::store {

/// The right to write to one tract file, held until the object goes. It is a lock on a small file
/// beside it ("demo.gpkg.lock"), which names the holder; the system drops the lock when the holder
/// dies, so that a crash never shuts anyone out.
class FileLock {
 public:
  /// Errors: busy, naming the holder; cannot_open when the folder is not writable.
  static Result<FileLock> take(const std::filesystem::path& file, const std::string& holder);

  /// Who holds the lock of a file now; nothing when nobody does. Writes nothing.
  static std::optional<std::string> holder_of(const std::filesystem::path& file);

  FileLock(FileLock&& other) noexcept;
  FileLock& operator=(FileLock&& other) noexcept;
  ~FileLock();

 private:
  FileLock(int descriptor, std::filesystem::path path)
      : descriptor_(descriptor), path_(std::move(path)) {}
  void release();

  int descriptor_ = -1;
  std::filesystem::path path_;
};

}  // namespace oaklight::store
