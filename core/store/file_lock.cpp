#include "core/store/file_lock.hpp"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <system_error>
#include <utility>

namespace oaklight::store {
namespace {

std::string read_holder(int descriptor) {
  std::array<char, 200> text{};
  const ssize_t n = ::pread(descriptor, text.data(), text.size(), 0);
  return n > 0 ? std::string(text.data(), static_cast<std::size_t>(n)) : "another program";
}

/// The same for each name of the file: a link to it must not get round the lock.
std::filesystem::path lock_of(const std::filesystem::path& file) {
  std::error_code unknown;
  const auto real = std::filesystem::canonical(file, unknown);
  return (unknown ? file : real).string() + ".lock";
}

/// A holder that is just leaving takes its lock file away; a lock on the file that is gone says
/// nothing about the one that is there now.
bool still_there(int descriptor, const std::filesystem::path& path) {
  struct stat ours {};
  struct stat there {};
  return ::fstat(descriptor, &ours) == 0 && ::stat(path.c_str(), &there) == 0 &&
         ours.st_ino == there.st_ino && ours.st_dev == there.st_dev;
}

}  // namespace

Result<FileLock> FileLock::take(const std::filesystem::path& file, const std::string& holder) {
  const std::filesystem::path path = lock_of(file);
  for (;;) {
    const int descriptor = ::open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW, 0644);
    if (descriptor < 0) {
      return Error{ErrorCode::cannot_open, "The folder of the tract file cannot be written to.",
                   file.string(), "Open the file for looking only, or copy it elsewhere."};
    }
    if (::flock(descriptor, LOCK_EX | LOCK_NB) != 0) {
      const Error busy{ErrorCode::busy,
                       "The tract file is open for writing in " + read_holder(descriptor) + ".",
                       file.string(), "Close it there first, or open it here for looking only."};
      ::close(descriptor);
      return busy;
    }
    if (still_there(descriptor, path)) {
      const std::string name = holder + " (process " + std::to_string(::getpid()) + ")";
      // The name is a courtesy to the next one; the lock holds without it.
      if (::ftruncate(descriptor, 0) == 0) (void)!::pwrite(descriptor, name.data(), name.size(), 0);
      return FileLock(descriptor, path);
    }
    ::close(descriptor);
  }
}

std::optional<std::string> FileLock::holder_of(const std::filesystem::path& file) {
  const int descriptor = ::open(lock_of(file).c_str(), O_RDONLY | O_CLOEXEC | O_NOFOLLOW);
  if (descriptor < 0) return std::nullopt;
  std::optional<std::string> holder;
  if (::flock(descriptor, LOCK_EX | LOCK_NB) != 0) holder = read_holder(descriptor);
  ::close(descriptor);
  return holder;
}

FileLock::FileLock(FileLock&& other) noexcept
    : descriptor_(std::exchange(other.descriptor_, -1)), path_(std::move(other.path_)) {}

FileLock& FileLock::operator=(FileLock&& other) noexcept {
  if (this != &other) {
    release();
    descriptor_ = std::exchange(other.descriptor_, -1);
    path_ = std::move(other.path_);
  }
  return *this;
}

FileLock::~FileLock() { release(); }

void FileLock::release() {
  if (descriptor_ < 0) return;
  ::unlink(path_.c_str());  // before unlocking, so that nobody locks a file about to go
  ::close(std::exchange(descriptor_, -1));
}

}  // namespace oaklight::store
