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

/// The name under which a file is written before it takes its own.
std::filesystem::path part_of(const std::filesystem::path& path) {
  return std::filesystem::path(path) += ".part";
}

Status write_part(const std::filesystem::path& path, std::string_view bytes) {
  const auto part = part_of(path);
  // What lies there under that name may be a link to a file of somebody's.
  ::unlink(part.c_str());
  OpenFile file(::open(part.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, 0644));
  if (file.get() < 0) return cannot_write(path);
  if (write_all(file.get(), bytes) && ::fsync(file.get()) == 0 && file.close()) return Done{};
  Error error = cannot_write(path);
  ::unlink(part.c_str());
  return error;
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
  if (std::filesystem::is_directory(folder, problem)) return Done{};
  const auto above = std::filesystem::absolute(folder / "").parent_path().parent_path();
  if (const Status made = make_folder(above); !made) return made;
  std::filesystem::create_directory(folder, problem);
  if (!problem && sync_folder(above)) return Done{};
  const std::string why = problem ? problem.message() : std::strerror(errno);
  return Error{ErrorCode::cannot_write, "This folder cannot be made (" + why + ").",
               folder.string(), "Choose another folder."};
}

Status write_whole_file(const std::filesystem::path& path, std::string_view bytes) {
  if (const Status written = write_part(path, bytes); !written) return written;
  if (::rename(part_of(path).c_str(), path.c_str()) == 0 && sync_folder(path.parent_path()))
    return Done{};
  Error error = cannot_write(path);
  ::unlink(part_of(path).c_str());
  return error;
}

Status write_sealed_files(const std::filesystem::path& folder, std::span<const NamedBytes> files) {
  const auto give_up = [&](const Error& error) {
    for (const NamedBytes& file : files) ::unlink(part_of(folder / file.name).c_str());
    return error;
  };
  for (const NamedBytes& file : files) {
    const Status written = write_part(folder / file.name, file.bytes);
    if (!written) return give_up(written.error());
  }
  const auto seal = folder / files.back().name;
  if (::unlink(seal.c_str()) != 0 && errno != ENOENT) return give_up(cannot_write(seal));
  if (!sync_folder(folder)) return give_up(cannot_write(seal));
  for (const NamedBytes& file : files) {
    const auto path = folder / file.name;
    // The seal goes on when all else is there for sure.
    if (path == seal && !sync_folder(folder)) return give_up(cannot_write(seal));
    if (::rename(part_of(path).c_str(), path.c_str()) != 0) return give_up(cannot_write(path));
  }
  return sync_folder(folder) ? Status(Done{}) : give_up(cannot_write(seal));
}

}  // namespace oaklight
