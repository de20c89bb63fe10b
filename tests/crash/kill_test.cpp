// The program dies at any moment; nothing that was acknowledged may be lost. This shows the death
// of a process only; loss of power is power_test.cpp.
#include <gtest/gtest.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <chrono>

#include "tests/crash/tally_file.hpp"

namespace oaklight::test {
namespace {

constexpr int kKills = 20;

/// Tallies and reports each tree until it is killed.
[[noreturn]] void tally_for_ever(const std::filesystem::path& path, int report) {
  SystemClock clock;
  auto store = TractStore::open(path, OpenMode::read_write, {clock, system_random(), "child"});
  while (store) {
    const auto tree = tally_one(*store);
    if (!tree) break;
    const std::string line = to_text(*tree);  // 36 characters: one write to a pipe is whole
    if (::write(report, line.data(), line.size()) != static_cast<ssize_t>(line.size())) break;
  }
  ::_exit(1);
}

/// Reads whole reports until there are `wanted` or the pipe ends.
void read_reports(int pipe, std::vector<std::string>& trees, std::size_t wanted) {
  std::array<char, 36> line{};
  while (trees.size() < wanted) {
    std::size_t got = 0;
    while (got < line.size()) {
      const ssize_t n = ::read(pipe, line.data() + got, line.size() - got);
      if (n <= 0) return;
      got += static_cast<std::size_t>(n);
    }
    trees.emplace_back(line.data(), line.size());
  }
}

void spin(std::chrono::microseconds time) {
  const auto until = std::chrono::steady_clock::now() + time;
  while (std::chrono::steady_clock::now() < until) {
  }
}

TEST(Kill, LosesNoTreeThatWasReported) {
  const unsigned seed = std::random_device{}();
  SCOPED_TRACE("seed " + std::to_string(seed));
  std::mt19937 chance(seed);
  const TempDir folder;
  const auto path = folder / "woods.gpkg";
  make_tally_file(path);
  std::vector<std::string> reported;
  std::size_t unreported = 0;
  for (int kill = 0; kill < kKills; ++kill) {
    std::array<int, 2> pipe{};
    ASSERT_EQ(::pipe(pipe.data()), 0);
    const pid_t child = ::fork();
    ASSERT_GE(child, 0);
    if (child == 0) tally_for_ever(path, pipe[1]);
    ::close(pipe[1]);
    read_reports(pipe[0], reported, reported.size() + 1 + chance() % 12);
    spin(std::chrono::microseconds(chance() % 8000));
    ::kill(child, SIGKILL);
    int status = 0;
    ::waitpid(child, &status, 0);
    ASSERT_TRUE(WIFSIGNALED(status)) << "the child ended by itself";
    read_reports(pipe[0], reported, SIZE_MAX);
    ::close(pipe[0]);

    const auto file = trees_in(path);
    ASSERT_EQ(file.problem, "") << "kill " << kill;
    for (const std::string& tree : reported) ASSERT_EQ(file.trees.count(tree), 1U) << tree;
    // At most the one that was being saved, for each kill so far.
    ASSERT_LE(file.trees.size(), reported.size() + static_cast<std::size_t>(kill) + 1);
    unreported = file.trees.size() - reported.size();
  }
  ASSERT_GE(reported.size(), static_cast<std::size_t>(kKills));
  RecordProperty("reported", std::to_string(reported.size()));
  RecordProperty("saved_but_not_reported", std::to_string(unreported));
}

}  // namespace
}  // namespace oaklight::test
