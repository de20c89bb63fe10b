#pragma once

#include <gtest/gtest.h>

#include <cstdint>
#include <filesystem>
#include <random>
#include <string>
#include <vector>

#include "core/store/tract_store.hpp"
#include "tests/support/difference.hpp"
#include "tests/support/set_clock.hpp"
#include "tests/support/temp_dir.hpp"

struct sqlite3;

namespace oaklight::test {

/// The same ids and times in every run.
class StoreTest : public testing::Test {
 protected:
  [[nodiscard]] StoreContext context(const std::string& device = "tablet A") {
    return {clock_, [this] { return chance_(); }, device};
  }
  TractStore make(const std::string& name = "woods.gpkg") {
    auto made = TractStore::create(folder_ / name, context());
    if (!made) throw std::runtime_error(to_text(made.error()));
    return std::move(*made);
  }
  TractStore open(const std::string& name = "woods.gpkg", OpenMode mode = OpenMode::read_write) {
    auto opened = TractStore::open(folder_ / name, mode, context());
    if (!opened) throw std::runtime_error(to_text(opened.error()));
    return std::move(*opened);
  }
  /// Opening that is expected to fail; gives the error.
  Error refused(const std::string& name = "woods.gpkg", OpenMode mode = OpenMode::read_write) {
    const auto opened = TractStore::open(folder_ / name, mode, context());
    return opened ? Error{ErrorCode::cannot_write, "it was opened", "", ""} : opened.error();
  }

  /// Runs SQL as another program would, with no care and none of our settings; gives the first
  /// column of every row.
  std::vector<std::string> raw_sql(const std::string& sql, const std::string& name = "woods.gpkg");

  TempDir folder_;
  SetClock clock_{1'777'900'020'000};  // 2026-05-04T13:07:00Z
  std::mt19937_64 chance_{20260504};
};

/// Another program in the middle of writing to a file, as long as the object lives.
class RawWriter {
 public:
  explicit RawWriter(const std::filesystem::path& path);
  ~RawWriter();
  RawWriter(const RawWriter&) = delete;
  RawWriter& operator=(const RawWriter&) = delete;

 private:
  sqlite3* db_ = nullptr;
};

/// Says where and why when a Status or Result is not what it should be.
template <class R>
testing::AssertionResult worked(const R& result) {
  if (result) return testing::AssertionSuccess();
  return testing::AssertionFailure()
         << name_of(result.error().code) << ": " << to_text(result.error());
}

/// One record of every kind, linked as they should be. `full`: every field that may be left out is
/// given; otherwise every one is left out.
TractData sample_records(IdSource& ids, bool full);

/// Everything in it as one action.
Action as_action(const TractData& data, const std::string& label);

}  // namespace oaklight::test
