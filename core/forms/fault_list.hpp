#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "core/forms/csv_file.hpp"

namespace oaklight {

/// The files of an import, in the order in which their faults are told.
enum class CruiseFile {
  tract,
  stands,
  plots,
  trees,
  regeneration,
  crop_trees,
  acorns,
  acorn_years,
  map,
  stumps,
  local_volume
};
inline constexpr std::size_t kCruiseFileCount = 11;

/// Gathers what is wrong with an import, from whichever check finds it, and tells it in the order
/// of the files and their lines. Keeps at most kMaxFaults of each file and counts the rest.
class FaultList {
 public:
  void add(CruiseFile file, int line, Error fault);
  /// Faults that were found and not kept.
  void add_uncounted(std::size_t more) { more_ += more; }
  [[nodiscard]] bool empty() const { return faults_.empty() && more_ == 0; }

  /// So much is wrong with a file that nobody gains by reading on: no further rows are judged.
  [[nodiscard]] bool hopeless(CruiseFile file) const {
    return found_[static_cast<std::size_t>(file)] >= kHopeless;
  }

  /// At most kMaxFaults; when there are more, one last entry says how many (import_refused).
  [[nodiscard]] std::vector<Error> told() const;

 private:
  struct Fault {
    CruiseFile file;
    int line;
    Error error;
  };
  std::vector<Fault> faults_;
  /// Each fault costs a look for what may have been meant.
  static constexpr std::size_t kHopeless = 1'000;

  std::array<std::size_t, kCruiseFileCount> kept_{};
  std::array<std::size_t, kCruiseFileCount> found_{};
  std::size_t more_ = 0;
};

}  // namespace oaklight
