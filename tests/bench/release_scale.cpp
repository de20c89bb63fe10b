// How long a mapped wood takes to decide, and how much memory, by its size. One size a process, so
// that each peak of memory is its own: run all of them with tests/bench/run.
#include <sys/resource.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>

#include "core/release/candidates.hpp"
#include "core/release/choose.hpp"
#include "core/release/groundwork.hpp"
#include "tests/support/wood.hpp"

namespace {

/// Seconds of this program's own work: other programs on the machine do not count.
struct Stopwatch {
  using time_point = double;
  static time_point now() {
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    const auto seconds = [](const timeval& t) {
      return static_cast<double>(t.tv_sec) + 1e-6 * static_cast<double>(t.tv_usec);
    };
    return seconds(usage.ru_utime) + seconds(usage.ru_stime);
  }
};

double seconds_since(Stopwatch::time_point start) { return Stopwatch::now() - start; }

double peak_megabytes() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return static_cast<double>(usage.ru_maxrss) / 1024.0;
}

}  // namespace

int main(int argc, char** argv) {
  using namespace oaklight;
  const auto count = static_cast<std::uint32_t>(argc > 1 ? std::atol(argv[1]) : 10'000);
  const auto seed = static_cast<std::uint32_t>(argc > 2 ? std::atol(argv[2]) : 1);
  const std::vector<MappedTree> map = test::mapped_wood(count, seed);
  (void)test::shipped_knowledge();

  // The yardstick: a plain sort of the same trees by place.
  std::vector<MappedTree> sorted = map;
  const auto sort_start = Stopwatch::now();
  std::sort(sorted.begin(), sorted.end(), [](const MappedTree& a, const MappedTree& b) {
    return std::pair(a.east.value, a.north.value) < std::pair(b.east.value, b.north.value);
  });
  const double sort = seconds_since(sort_start);
  sorted = {};
  const double before = peak_megabytes();

  const auto start = Stopwatch::now();
  const ReleaseInput input = test::input_of_wood(map);
  const double graph = seconds_since(start);
  const auto choice_start = Stopwatch::now();
  {
    const Groundwork ground(input);
    const double groundwork = seconds_since(choice_start);
    const ReleaseChoice choice = choose(ground.problem);
    const double chosen = seconds_since(choice_start);
    if (std::getenv("OAKLIGHT_DETAIL") != nullptr) {
      Candidates all(ground.problem, std::vector<bool>(map.size(), false));
      std::size_t largest = 0;
      const auto parts = all.components();
      for (const auto& c : parts) largest = std::max(largest, c.size());
      std::printf(
          "  graph %.3f s, groundwork %.3f s, choice %.3f s, %zu candidates, %zu parts, "
          "largest %zu, objective %lld bound %lld\n",
          graph, groundwork, chosen - groundwork, all.size(), parts.size(), largest,
          static_cast<long long>(choice.optimality.objective),
          static_cast<long long>(choice.optimality.bound));
      for (const GuardState& g : choice.guards_of_full_plan) {
        std::printf("  full plan: %s %.2f limit %.2f %s\n", g.name.c_str(), g.after, g.limit,
                    g.holds ? "holds" : "BROKEN");
      }
    }
  }
  const auto whole_start = Stopwatch::now();
  const ReleasePlan plan = recommend(input);
  const double whole = graph + seconds_since(whole_start);
  const double peak = peak_megabytes();
  const auto released = std::count_if(plan.trees.begin(), plan.trees.end(),
                                      [](const TreeVerdict& t) { return t.released; });
  const auto taken = std::count_if(plan.trees.begin(), plan.trees.end(), [](const TreeVerdict& t) {
    return t.verdict == Verdict::take || t.verdict == Verdict::kill_standing;
  });
  std::printf("%u\t%.4f\t%.4f\t%.2f\t%.3f\t%ld\t%ld\t%s\t%.3f\t%s\n", count, sort, whole,
              1e6 * whole / count, 1024.0 * (peak - before) / count, static_cast<long>(released),
              static_cast<long>(taken), plan.optimality.proven ? "proven" : "bound",
              100.0 * plan.optimality.gap(), std::string(word_of(plan.advice.treatment)).c_str());
  return 0;
}
