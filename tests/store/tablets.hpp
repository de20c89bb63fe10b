#pragma once

#include <memory>
#include <optional>
#include <random>
#include <string>
#include <vector>

#include "core/store/tract_store.hpp"
#include "tests/support/set_clock.hpp"
#include "tests/support/temp_dir.hpp"

namespace oaklight::test {

/// A tablet of a crew: its own file, its own clock, which may be wrong by days, and its own chance.
class Tablet {
 public:
  Tablet(std::filesystem::path file, std::string device, std::int64_t clock_ms, unsigned seed);

  [[nodiscard]] const std::filesystem::path& file() const { return file_; }
  [[nodiscard]] const std::string& device() const { return device_; }
  TractStore& store();
  /// So that the file is complete in itself.
  void close() { store_.reset(); }

  /// Something that a crew does: tallies, corrects, removes, undoes, marks, changes a form ...
  /// Where the store refuses it, nothing was done.
  void do_something();
  Status join(const Tablet& other);
  /// Decides one of the open questions, if there is one.
  void decide_something();

 private:
  [[nodiscard]] StoreContext context();
  unsigned pick(std::size_t n) { return static_cast<unsigned>(chance_() % n); }
  std::optional<Action> some_action();

  std::filesystem::path file_;
  std::string device_;
  SetClock clock_;
  std::mt19937_64 chance_;
  std::unique_ptr<TractStore> store_;
};

/// A file with a stand, a cruise, plots, tallied trees and trees of a walk, to copy for a crew.
void make_crew_file(const std::filesystem::path& path, unsigned seed);

/// All that a file says: every record with all columns and every line of history in order of
/// events. Where in the file it stands is left out.
std::vector<std::string> said_by(const std::filesystem::path& path);

}  // namespace oaklight::test
