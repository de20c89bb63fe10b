// Laws of joining, over random histories of two to five tablets: in any order, in any grouping,
// twice as once, and nothing missing. OAKLIGHT_JOIN_HISTORIES says how many (2,000 by hand).
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <random>
#include <set>

#include "tests/store/tablets.hpp"

namespace oaklight::test {
namespace {

namespace fs = std::filesystem;

int histories_wanted() {
  const char* text = std::getenv("OAKLIGHT_JOIN_HISTORIES");
  return text == nullptr ? 12 : std::max(1, std::atoi(text));
}

class Crew {
 public:
  Crew(const std::string& base, const std::string& other_base, unsigned seed) : chance_(seed) {
    const unsigned n = 2 + pick(4);
    for (unsigned i = 0; i < n; ++i) {
      const fs::path file = folder_ / ("t" + std::to_string(i) + ".gpkg");
      write_bytes(file, pick(5) == 0 ? other_base : base);
      // Clocks that are wrong by up to two days either way.
      const auto wrong = static_cast<std::int64_t>(pick(4 * 86'400)) * 1000 - 2 * 86'400'000;
      tablets.push_back(std::make_unique<Tablet>(file, "tablet " + std::to_string(i), wrong,
                                                 static_cast<unsigned>(chance_())));
    }
    const unsigned steps = n * (2 + pick(8));
    for (unsigned step = 0; step < steps; ++step) {
      Tablet& tablet = *tablets[pick(n)];
      const unsigned what = pick(20);
      if (what == 0) {
        const Status joined = tablet.join(*tablets[pick(n)]);
        EXPECT_TRUE(joined) << to_text(joined.error());
      } else if (what == 1) {
        tablet.decide_something();
      } else {
        tablet.do_something();
      }
    }
    for (const auto& tablet : tablets) tablet->close();
  }

  /// A file that all of these were joined to, one after the other or all at once.
  fs::path joined(std::vector<fs::path> files, bool at_once) {
    const fs::path path = folder_ / ("joined" + std::to_string(++made_) + ".gpkg");
    SetClock clock(1'800'000'000'000);
    const StoreContext context{clock, [this] { return chance_(); }, "office"};
    if (at_once) {
      const auto done = TractStore::join_to_new(path, files, context, OtherTract::take);
      EXPECT_TRUE(done) << to_text(done.error());
      return path;
    }
    fs::copy_file(files.front(), path);
    for (std::size_t i = 1; i < files.size(); ++i) {
      auto store = TractStore::open(path, OpenMode::read_write, context);
      EXPECT_TRUE(store) << to_text(store.error());
      const auto done = store->join({files[i]}, OtherTract::take);
      EXPECT_TRUE(done) << to_text(done.error());
    }
    return path;
  }

  std::vector<fs::path> files_in_any_order() {
    std::vector<fs::path> files;
    for (const auto& tablet : tablets) files.push_back(tablet->file());
    std::ranges::shuffle(files, chance_);
    return files;
  }

  unsigned pick(std::size_t n) { return static_cast<unsigned>(chance_() % n); }

  std::vector<std::unique_ptr<Tablet>> tablets;

 private:
  TempDir folder_;
  std::mt19937_64 chance_;
  int made_ = 0;
};

/// The first line that only one of them says.
std::string first_difference(const std::vector<std::string>& a, const std::vector<std::string>& b) {
  for (std::size_t i = 0; i < std::min(a.size(), b.size()); ++i) {
    if (a[i] != b[i]) return a[i] + "\n" + b[i];
  }
  return a.size() == b.size() ? "" : "one has more lines";
}

/// Every record and every line of history of the part is in the whole. A form that gave way to that
/// of another tablet is in the history only when somebody changed it.
std::string missing(const fs::path& part, const fs::path& whole) {
  const auto key = [](const std::string& line) {
    if (line.starts_with("user_action") || line.starts_with("change")) return line;
    const auto uid = line.find("'0");  // ids begin with their time
    return line.substr(0, line.find(':')) + line.substr(uid, 38);
  };
  std::set<std::string> there;
  for (const std::string& line : said_by(whole)) there.insert(key(line));
  for (const std::string& line : said_by(part)) {
    if (!line.starts_with("form_file") && !there.contains(key(line))) return line;
  }
  return "";
}

void hold_the_laws(Crew& crew) {
  const fs::path whole = crew.joined(crew.files_in_any_order(), true);
  const auto said = said_by(whole);
  // Any order.
  ASSERT_EQ(first_difference(said, said_by(crew.joined(crew.files_in_any_order(), true))), "");
  ASSERT_EQ(first_difference(said, said_by(crew.joined(crew.files_in_any_order(), false))), "");
  // Any grouping.
  auto files = crew.files_in_any_order();
  const std::size_t cut = 1 + crew.pick(files.size() - 1);
  const auto middle = files.begin() + static_cast<std::ptrdiff_t>(cut);
  const fs::path left = crew.joined({files.begin(), middle}, false);
  const fs::path right = crew.joined({middle, files.end()}, false);
  ASSERT_EQ(first_difference(said, said_by(crew.joined({right, left}, true))), "");
  // Twice is once.
  files.push_back(whole);
  files.insert(files.begin(), whole);
  ASSERT_EQ(first_difference(said, said_by(crew.joined(files, false))), "");
  // Nothing is missing, and the file is sound.
  for (const auto& tablet : crew.tablets) ASSERT_EQ(missing(tablet->file(), whole), "");
  SetClock clock(1'800'000'000'000);
  const auto store =
      TractStore::open(whole, OpenMode::read_only, {clock, system_random(), "office"});
  ASSERT_TRUE(store) << to_text(store.error());
  ASSERT_TRUE(store->load());
  const auto report = store->check();
  ASSERT_TRUE(report);
  ASSERT_TRUE(report->problems.empty()) << to_text(report->problems.front());
}

TEST(JoinLaws, HoldForRandomHistories) {
  const TempDir folder;
  make_crew_file(folder / "base.gpkg", 1);
  make_crew_file(folder / "other.gpkg", 2);
  const std::string base = bytes_of(folder / "base.gpkg");
  const std::string other = bytes_of(folder / "other.gpkg");
  const char* from = std::getenv("OAKLIGHT_JOIN_SEED");
  const unsigned seed =
      from == nullptr ? std::random_device{}() : static_cast<unsigned>(std::atoi(from));
  for (int i = 0; i < histories_wanted(); ++i) {
    const unsigned one = seed + static_cast<unsigned>(i);
    SCOPED_TRACE("OAKLIGHT_JOIN_HISTORIES=1 OAKLIGHT_JOIN_SEED=" + std::to_string(one));
    Crew crew(base, other, one);
    hold_the_laws(crew);
    if (testing::Test::HasFailure()) return;
  }
}

}  // namespace
}  // namespace oaklight::test
