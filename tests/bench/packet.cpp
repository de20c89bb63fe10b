// How long a packet takes and how large its files are. Prints a table; judges nothing.
//   bench_packet [most trees]            the PDF of each reader on both papers
//   bench_packet --kinds FOLDER trees    each kind of file by itself: seconds, bytes, most memory
//   bench_packet --files FOLDER trees    every file of each reader, of an odd tract, to be read
//   back
#include <QFile>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <functional>

#include "core/handoff/list_geojson.hpp"
#include "core/handoff/list_gpx.hpp"
#include "core/paper/packet_pdf.hpp"
#include "core/session/list_layers.hpp"
#include "core/session/list_xlsx.hpp"
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

/// Megabytes by a name of /proc/self/status: "VmRSS" now, "VmHWM" the most since forget_the_most().
double megabytes(const std::string& name) {
  std::ifstream status("/proc/self/status");
  for (std::string line; std::getline(status, line);) {
    if (line.starts_with(name + ":")) return std::stod(line.substr(name.size() + 1)) / 1024.0;
  }
  return 0.0;
}
void forget_the_most() { std::ofstream("/proc/self/clear_refs") << 5; }

/// The PDF goes to a file page by page, the others are made as bytes.
double pdf_bytes(const std::filesystem::path& folder, const Packet& packet) {
  QFile file(QString::fromStdString((folder / "pages.pdf").string()));
  if (!file.open(QIODevice::WriteOnly)) return 0.0;
  return write_packet_pdf(packet, PaperSize::letter, file) ? static_cast<double>(file.size()) : 0.0;
}

int kinds(const std::filesystem::path& folder, int trees) {
  const TractData data = many_trees({.trees = trees, .measured = true});
  const auto size = [](const Result<std::string>& bytes) {
    return bytes ? static_cast<double>(bytes->size()) : 0.0;
  };
  const std::pair<const char*, std::function<double(const Packet&)>> makers[] = {
      {"PDF", [&](const Packet& packet) { return pdf_bytes(folder, packet); }},
      {"XLSX", [&](const Packet& packet) { return size(list_xlsx(packet, folder.string())); }},
      {"GeoPackage",
       [&](const Packet& packet) { return size(list_geopackage(packet, folder.string())); }},
      {"GeoJSON", [&](const Packet& packet) { return size(list_geojson(packet)); }},
      {"GPX", [&](const Packet& packet) { return size(list_gpx(packet)); }},
  };
  std::printf("%-10s %-10s %8s %8s %8s %14s %14s\n", "reader", "file", "wall s", "cpu s", "MB",
              "memory before", "most meanwhile");
  for (const PacketReader reader : kReaders) {
    const auto packet = packet_of_all(data, reader);
    if (!packet) return 1;
    for (const auto& [kind, make] : makers) {
      forget_the_most();
      const double before = megabytes("VmRSS");
      const Watch watch;
      const double bytes = make(*packet);
      if (bytes == 0.0) return 1;
      std::printf("%-10s %-10s %8.2f %8.2f %8.2f %14.0f %14.0f\n",
                  std::string(word_of(reader)).c_str(), kind, watch.wall(), watch.cpu(),
                  bytes / 1e6, before, megabytes("VmHWM"));
      std::fflush(stdout);
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
  if (count == 4 && std::strcmp(words[1], "--kinds") == 0) {
    return oaklight::test::kinds(words[2], std::atoi(words[3]));
  }
  return oaklight::test::papers(count > 1 ? std::atoi(words[1]) : 20000);
}
