// What the list of marks and the packets cost on a walked tract: bench_marks FILE. Prints a JSON
// object: seconds of the processor for the list with its cautions and for one packet, and the
// highest memory in megabytes after each.
#include <sys/resource.h>

#include <ctime>
#include <iostream>
#include <nlohmann/json.hpp>

#include "core/session/decide.hpp"
#include "core/session/marks_view.hpp"

namespace oaklight {
namespace {

double processor_seconds() { return static_cast<double>(std::clock()) / CLOCKS_PER_SEC; }

double peak_megabytes() {
  rusage used{};
  getrusage(RUSAGE_SELF, &used);
  return static_cast<double>(used.ru_maxrss) / 1024.0;
}

int measure(const std::string& path) {
  SystemClock clock;
  const auto store = TractStore::open(path, OpenMode::read_only, {clock, system_random(), "bench"},
                                      DamageCheck::by_caller);
  if (!store) return std::cerr << to_text(store.error()) << '\n', 1;
  const auto knowledge = read_knowledge(*store);
  const auto data = store->load();
  if (!data || !knowledge) return 1;
  nlohmann::ordered_json out{{"trees", data->walk_trees.size()}, {"loaded_mb", peak_megabytes()}};
  double start = processor_seconds();
  const auto view = marks_view(*data, *knowledge, std::nullopt, std::nullopt);
  if (!view) return std::cerr << to_text(view.error()) << '\n', 1;
  out["list_s"] = processor_seconds() - start;
  out["list_mb"] = peak_megabytes();
  start = processor_seconds();
  const auto packet = packet_for(*data, *knowledge, PacketReader::logger, {});
  if (!packet) return std::cerr << to_text(packet.error()) << '\n', 1;
  out["packet_s"] = processor_seconds() - start;
  out["packet_mb"] = peak_megabytes();
  out["stops"] = view->totals.stops;
  std::cout << out.dump() << '\n';
  return 0;
}

}  // namespace
}  // namespace oaklight

int main(int argc, char** argv) { return argc == 2 ? oaklight::measure(argv[1]) : 2; }
