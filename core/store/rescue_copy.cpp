#include "core/store/rescue_copy.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <string_view>
#include <system_error>
#include <utility>

#include "core/store/file_header.hpp"
#include "core/store/page_reader.hpp"
#include "core/store/sqlite_guard.hpp"
#include "core/store/sqlite_handle.hpp"

namespace oaklight::store {
namespace {

namespace fs = std::filesystem;

constexpr std::array kEndings = {"", "-wal", "-journal"};

class Descriptor {
 public:
  Descriptor(const fs::path& path, int flags)
      : number_(::open(path.c_str(), flags | O_CLOEXEC, 0600)) {}
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor() {
    if (number_ >= 0) ::close(number_);
  }
  [[nodiscard]] int get() const { return number_; }
  [[nodiscard]] bool is_open() const { return number_ >= 0; }

 private:
  int number_;
};

Error cannot_write(const fs::path& path) {
  if (errno == ENOSPC || errno == EDQUOT) {
    return {ErrorCode::disk_full, "The disk is full.", path.string(),
            "Free some space, or rescue to another disk."};
  }
  return {ErrorCode::cannot_write, "A file cannot be made there.", path.string(),
          "Choose a folder where you may write."};
}

void remove_work(const fs::path& work) {
  std::error_code ignored;
  for (const char* ending : {"", "-wal", "-journal", "-shm"})
    fs::remove(work.string() + ending, ignored);
}

bool has_log(const fs::path& work) {
  std::error_code none;
  const auto size = fs::file_size(work.string() + "-wal", none);
  return !none && size > 0;
}

bool write_at(int descriptor, std::string_view bytes, off_t at) {
  return ::pwrite(descriptor, bytes.data(), bytes.size(), at) == static_cast<ssize_t>(bytes.size());
}

/// The bytes of the header that are the same in every tract file: what makes SQLite take it for a
/// database of pages of 4,096 bytes, and GeoPackage's mark.
/// Source: "Database File Format", sqlite.org/fileformat2.html, section 1.3.
struct Mark {
  off_t at;
  std::string_view bytes;
};
constexpr std::array kMarks = {Mark{0, {"SQLite format 3\0", 16}}, Mark{16, {"\x10\x00", 2}},
                               Mark{20, {"\x00\x40\x20\x20", 4}}, Mark{44, {"\0\0\0\x04", 4}},
                               Mark{56, {"\0\0\0\x01", 4}}};

}  // namespace

RescueCopy::RescueCopy(RescueCopy&& other) noexcept
    : work_(std::exchange(other.work_, {})), notes_(std::move(other.notes_)) {}

RescueCopy::~RescueCopy() {
  if (!work_.empty()) remove_work(work_);
}

Result<RescueCopy> RescueCopy::make(const fs::path& file, const fs::path& work) {
  remove_work(work);
  RescueCopy made(work);
  for (const char* ending : kEndings) {
    if (const auto copied = made.copy(file, ending); !copied) return copied.error();
  }
  if (!guard_journal(work)) fs::remove(work.string() + "-journal");
  if (const auto mended = made.mend_header(); !mended) return mended.error();
  made.take_in_log();
  return made;
}

/// Page by page, so that a bad place on a card costs no more than it must.
Status RescueCopy::copy(const fs::path& file, const char* ending) {
  const fs::path from = file.string() + ending;
  const bool beside = *ending != '\0';
  const Descriptor in(from, O_RDONLY | O_NOFOLLOW | O_NONBLOCK);
  struct stat about {};
  const bool readable =
      in.is_open() && ::fstat(in.get(), &about) == 0 && S_ISREG(about.st_mode) != 0;
  if (!readable) {
    if (beside) return Done{};
    return Error{ErrorCode::cannot_open, "The file cannot be read.", from.string(),
                 "Check the name, and that you may read it."};
  }
  const fs::path to = work_.string() + ending;
  const Descriptor out(to, O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW);
  if (!out.is_open()) return cannot_write(to);
  std::string page(PageReader::kPageBytes, '\0');
  std::int64_t lost = 0;
  for (off_t at = 0; at < about.st_size; at += static_cast<off_t>(page.size())) {
    page.assign(page.size(), '\0');
    const ssize_t n = ::pread(in.get(), page.data(), page.size(), at);
    if (n < 0) ++lost;
    const bool whole = n == static_cast<ssize_t>(page.size()) || !beside;
    const std::size_t size = whole ? page.size() : static_cast<std::size_t>(n < 0 ? 0 : n);
    if (!write_at(out.get(), std::string_view(page).substr(0, size), at)) return cannot_write(to);
  }
  if (lost > 0)
    notes_.push_back(std::to_string(lost) + " places of " + from.filename().string() +
                     " cannot be read from the disk.");
  if (!beside && about.st_size % static_cast<off_t>(page.size()) != 0)
    notes_.emplace_back("The file was cut off inside a page.");
  return Done{};
}

Status RescueCopy::mend_header() {
  const Descriptor file(work_, O_RDWR | O_NOFOLLOW);
  if (!file.is_open()) return cannot_write(work_);
  // With a log beside it the file is in the mode that reads one, whatever it says.
  const std::string_view mode = has_log(work_) ? "\x02\x02" : "\x01\x01";
  if (!write_at(file.get(), mode, 18)) return cannot_write(work_);
  bool differs = false;
  for (const Mark& mark : kMarks) {
    std::string there(mark.bytes.size(), '\0');
    if (::pread(file.get(), there.data(), there.size(), mark.at) < 0) return cannot_write(work_);
    if (there == mark.bytes) continue;
    differs = true;
    if (!write_at(file.get(), mark.bytes, mark.at)) return cannot_write(work_);
  }
  if (differs) notes_.emplace_back("The header of the file was damaged.");
  return Done{};
}

/// SQLite puts what the log holds into the copy when it closes it, also where it cannot make sense
/// of the tables. What it cannot even begin with is read page by page as it is.
void RescueCopy::take_in_log() {
  if (!has_log(work_)) return;
  (void)SqliteHandle::open(work_, Use::write);
  if (has_log(work_)) notes_.emplace_back("The log beside the file could not be read.");
}

}  // namespace oaklight::store
