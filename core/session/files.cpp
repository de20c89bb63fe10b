#include "core/session/files.hpp"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <fstream>
#include <sstream>
#include <system_error>
#include <utility>

namespace oaklight {
namespace {

constexpr std::uintmax_t kMaxBytes = 256ULL << 20U;

Error cannot_write(const std::filesystem::path& path) {
  const int problem = errno;
  if (problem == ENOSPC || problem == EDQUOT) {
    return {ErrorCode::disk_full, "There is no room left to write this file.", path.string(),
            "Free some room on the disk and try again; the old file is unchanged."};
  }
  return {ErrorCode::cannot_write,
          "This file cannot be written (" + std::string(std::strerror(problem)) + ").",
          path.string(), "Check that the folder exists and that you may write to it."};
}

/// A file descriptor that closes itself.
class OpenFile {
 public:
  explicit OpenFile(int descriptor) : descriptor_(descriptor) {}
  OpenFile(const OpenFile&) = delete;
  OpenFile& operator=(const OpenFile&) = delete;
  ~OpenFile() {
    if (descriptor_ >= 0) ::close(descriptor_);
  }
  [[nodiscard]] int get() const { return descriptor_; }
  bool close() {
    const int descriptor = std::exchange(descriptor_, -1);
    return ::close(descriptor) == 0;
  }

 private:
  int descriptor_;
};

bool write_all(int descriptor, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t n = ::write(descriptor, bytes.data(), bytes.size());
    if (n < 0 && errno == EINTR) continue;
    if (n < 0) return false;
    bytes.remove_prefix(static_cast<std::size_t>(n));
  }
  return true;
}

/// The rename itself is on disk only when its folder is.
bool sync_folder(const std::filesystem::path& folder) {
  const OpenFile open_folder(
      ::open(folder.empty() ? "." : folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  return open_folder.get() >= 0 && ::fsync(open_folder.get()) == 0;
}

}  // namespace

Result<std::string> read_whole_file(const std::filesystem::path& path) {
  std::error_code problem;
  const auto size = std::filesystem::file_size(path, problem);
  if (problem) {
    return Error{ErrorCode::cannot_open, "This file cannot be read (" + problem.message() + ").",
                 path.string(), "Check the name and that you may read it."};
  }
  if (size > kMaxBytes) {
    return Error{ErrorCode::out_of_range, "This file is larger than 256 MiB.", path.string(),
                 "Is it the right file?"};
  }
  std::ifstream in(path, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  if (!in) {
    return Error{ErrorCode::cannot_open, "This file cannot be read to its end.", path.string(),
                 "Copy it again from where it came from."};
  }
  return std::move(text).str();
}

Status make_folder(const std::filesystem::path& folder) {
  std::error_code problem;
  std::filesystem::create_directories(folder, problem);
  if (!problem) return Done{};
  return Error{ErrorCode::cannot_write, "This folder cannot be made (" + problem.message() + ").",
               folder.string(), "Choose another folder."};
}

Status write_whole_file(const std::filesystem::path& path, std::string_view bytes) {
  std::filesystem::path part = path;
  part += ".part";
  OpenFile file(::open(part.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0644));
  if (file.get() < 0) return cannot_write(path);
  const bool written = write_all(file.get(), bytes) && ::fsync(file.get()) == 0 && file.close() &&
                       ::rename(part.c_str(), path.c_str()) == 0 && sync_folder(path.parent_path());
  if (!written) {
    Error error = cannot_write(path);
    ::unlink(part.c_str());
    return error;
  }
  return Done{};
}

}  // namespace oaklight
