#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "core/base/result.hpp"

namespace oaklight::store {

/// A copy to work on of a file that may be damaged in any way, with what its log still held; gone
/// with the object. The file itself is only ever read.
class RescueCopy {
 public:
  /// file     also one that a dying card gives only in part: what cannot be read is left zero
  /// work     where the copy goes, which takes the place of whatever is there
  /// returns  a file of whole pages that is marked as an SQLite file, whatever the old one says
  /// errors   cannot_open; cannot_write, disk_full
  static Result<RescueCopy> make(const std::filesystem::path& file,
                                 const std::filesystem::path& work);

  RescueCopy(RescueCopy&& other) noexcept;
  RescueCopy& operator=(RescueCopy&&) = delete;
  ~RescueCopy();

  [[nodiscard]] const std::filesystem::path& path() const { return work_; }
  /// What was wrong with the file as a whole, one sentence each.
  [[nodiscard]] const std::vector<std::string>& notes() const { return notes_; }

 private:
  explicit RescueCopy(std::filesystem::path work) : work_(std::move(work)) {}
  Status copy(const std::filesystem::path& file, const char* ending);
  Status mend_header();
  void take_in_log();

  std::filesystem::path work_;
  std::vector<std::string> notes_;
};

}  // namespace oaklight::store
