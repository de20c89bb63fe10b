// How long a packet takes and how large its files are. Prints a table; judges nothing.
//   bench_packet [most trees]            the PDF of each reader on both papers
//   bench_packet --files FOLDER trees    every file of each reader, of an odd tract, to be read
//   back
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <ctime>
#include <filesystem>

#include "core/paper/packet_pdf.hpp"
#include "core/session/packet_files.hpp"
#include "tests/handoff/odd_tract.hpp"

namespace oaklight::test {
namespace {

/// Seconds that a piece of work took: by the clock on the wall, and of the processor.
class Watch {
 public:
  [[nodiscard]] double wall() const {
    const std::chrono::duration<double> seconds = Clock::now() - wall_;
    return seconds.count();
  }
  [[nodiscard]] double cpu() const {
    return static_cast<double>(std::clock() - cpu_) / CLOCKS_PER_SEC;
  }

 private:
  using Clock = std::chrono::steady_clock;
  Clock::time_point wall_ = Clock::now();
  std::clock_t cpu_ = std::clock();
};

int papers(int most) {
  std::printf("%8s %10s %8s %8s %8s %8s %8s\n", "trees", "reader", "paper", "data s", "wall s",
              "cpu s", "MB");
  for (const int trees : {60, 500, 2000, 20000}) {
    if (trees > most) continue;
    const TractData data = many_trees({.trees = trees, .measured = true});
    for (const PacketReader reader : kReaders) {
      const Watch making;
      const auto packet = packet_of_all(data, reader);
      const double made = making.wall();
      if (!packet) return 1;
      for (const PaperSize paper : {PaperSize::letter, PaperSize::a4}) {
        const Watch watch;
        const auto pdf = packet_pdf(*packet, paper);
        const double wall = watch.wall();
        const double cpu = watch.cpu();
        if (!pdf) return 1;
        std::printf("%8d %10s %8s %8.2f %8.2f %8.2f %8.2f\n", trees,
                    std::string(word_of(reader)).c_str(), std::string(word_of(paper)).c_str(), made,
                    wall, cpu, static_cast<double>(pdf->size()) / 1e6);
        std::fflush(stdout);
      }
    }
  }
  return 0;
}

int files(const std::filesystem::path& folder, int trees) {
  const TractData data = many_trees({.trees = trees, .odd = true, .measured = true});
  for (const PacketReader reader : kReaders) {
    const Watch watch;
    const auto packet = packet_of_all(data, reader);
    if (!packet) return 1;
    const auto pdf = packet_pdf(*packet, PaperSize::letter);
    if (!pdf) return 1;
    const auto written = write_packet_files(folder, *packet, *pdf);
    if (!written) return 1;
    std::printf("%s: %d trees, %zu files, %.1f s\n", std::string(word_of(reader)).c_str(), trees,
                written->size(), watch.wall());
    std::fflush(stdout);
  }
  return 0;
}

}  // namespace
}  // namespace oaklight::test

int main(int count, char** words) {
  if (count == 4 && std::strcmp(words[1], "--files") == 0) {
    return oaklight::test::files(words[2], std::atoi(words[3]));
  }
  return oaklight::test::papers(count > 1 ? std::atoi(words[1]) : 20000);
}
