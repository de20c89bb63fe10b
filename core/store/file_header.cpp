#include "core/store/file_header.hpp"

#include <fcntl.h>
#include <unistd.h>

#include <array>
#include <fstream>
#include <string_view>
#include <system_error>

namespace oaklight::store {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t kHeaderBytes = 100;
constexpr std::string_view kMagic{"SQLite format 3\0", 16};

/// Numbers of the header are big-endian.
std::uint32_t number_at(std::string_view bytes, std::size_t at, std::size_t size) {
  std::uint32_t number = 0;
  for (const char c : bytes.substr(at, size)) number = (number << 8) | static_cast<std::uint8_t>(c);
  return number;
}

bool sync_to_disk(const fs::path& path, int flags) {
  const int descriptor = ::open(path.c_str(), flags | O_CLOEXEC);
  if (descriptor < 0) return false;
  const bool synced = ::fsync(descriptor) == 0;
  ::close(descriptor);
  return synced;
}

}  // namespace

Result<FileHeader> read_file_header(const fs::path& path) {
  std::error_code problem;
  if (!fs::is_regular_file(path, problem)) {
    return Error{ErrorCode::cannot_open, "There is no such file.", path.string(),
                 "Check the name and the folder."};
  }
  std::array<char, kHeaderBytes> bytes{};
  std::ifstream in(path, std::ios::binary);
  if (!in) {
    return Error{ErrorCode::cannot_open, "The file cannot be read.", path.string(),
                 "Check that you may read it."};
  }
  in.read(bytes.data(), bytes.size());
  const std::string_view text(bytes.data(), static_cast<std::size_t>(in.gcount()));
  if (text.size() < kHeaderBytes || !text.starts_with(kMagic)) {
    return Error{ErrorCode::not_a_tract_file, "This is not a tract file.", path.string(),
                 "Choose a file that Oaklight made."};
  }
  return FileHeader{number_at(text, 68, 4)};
}

Status publish_file(const fs::path& finished, const fs::path& target) {
  const auto refuse = [&](const char* what) {
    return Error{ErrorCode::cannot_write, what, target.string(), "Choose another name or folder."};
  };
  if (!sync_to_disk(finished, O_RDONLY)) return refuse("The new file could not be put on disk.");
  std::error_code problem;
  if (fs::exists(target, problem)) return refuse("There is a file of that name already.");
  fs::rename(finished, target, problem);
  if (problem) return refuse("The new file could not be given its name.");
  if (sync_to_disk(fs::absolute(target).parent_path(), O_RDONLY | O_DIRECTORY)) return Done{};
  fs::remove(target, problem);  // so that it can be done again
  return refuse("The folder could not be put on disk.");
}

}  // namespace oaklight::store
