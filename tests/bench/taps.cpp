// What one tap costs on a tract of any size: bench_taps FILE TAPS. Adds ten trees to each plot
// of the last stand in turn, and as many rows to a bare SQLite table of the same columns with the
// same settings beside it. Prints a JSON object: taps a second of both (by the wall: a commit waits
// for the disk), the middle microseconds to bring the tract in memory and the plot's figures up to
// date, and those to bring the stand's up to date; and the milliseconds in which the whole stand is
// computed again, and in which its live figures are begun once.
#include <sqlite3.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <filesystem>
#include <iostream>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "core/session/knowledge.hpp"
#include "core/session/live_stand.hpp"
#include "core/session/plot_figures.hpp"

namespace oaklight {
namespace {

using Clock = std::chrono::steady_clock;

double seconds_since(Clock::time_point start) {
  return std::chrono::duration<double>(Clock::now() - start).count();
}

double middle(std::vector<double> values) {
  std::ranges::sort(values);
  return values[values.size() / 2];
}

/// A database with the table `tree` as the tract file has it, no more.
class Bare {
 public:
  Bare(const std::string& path, const std::string& like) {
    std::filesystem::remove(path);
    sqlite3_open(path.c_str(), &db_);
    const std::string attach = "ATTACH '" + like + "' AS tract";
    run(attach.c_str());
    sqlite3_stmt* text = nullptr;
    sqlite3_prepare_v2(db_, "SELECT sql FROM tract.sqlite_schema WHERE name = 'tree'", -1, &text,
                       nullptr);
    sqlite3_step(text);
    const std::string create = reinterpret_cast<const char*>(sqlite3_column_text(text, 0));
    sqlite3_finalize(text);
    run("CREATE TABLE plot (uid TEXT UNIQUE)");
    run(create.c_str());
    run("INSERT INTO main.plot SELECT uid FROM tract.plot");
    run("DETACH tract");
    run("PRAGMA journal_mode = WAL");
    run("PRAGMA synchronous = FULL");
    run("PRAGMA foreign_keys = ON");
    sqlite3_prepare_v3(
        db_,
        "INSERT INTO tree (uid, changed_at, row_crc, plot_uid, units, species_fia, "
        "dbh_tenths, status, conditions, note, stems, edge_count, tag) VALUES (?1, "
        "'2026-11-30T00:00:00.000Z', 1, ?2, 'us', 802, 123, 'live', '', '', 1, 1, '')",
        -1, SQLITE_PREPARE_PERSISTENT, &insert_, nullptr);
  }
  ~Bare() {
    sqlite3_finalize(insert_);
    sqlite3_close(db_);
  }
  Bare(const Bare&) = delete;
  Bare& operator=(const Bare&) = delete;

  bool add(const std::string& uid, const std::string& plot) {
    sqlite3_bind_text(insert_, 1, uid.c_str(), -1, SQLITE_TRANSIENT);
    sqlite3_bind_text(insert_, 2, plot.c_str(), -1, SQLITE_TRANSIENT);
    const int code = sqlite3_step(insert_);
    if (code != SQLITE_DONE) std::cerr << sqlite3_errmsg(db_) << '\n';
    sqlite3_reset(insert_);
    return code == SQLITE_DONE;
  }

 private:
  void run(const char* sql) {
    char* problem = nullptr;
    if (sqlite3_exec(db_, sql, nullptr, nullptr, &problem) != SQLITE_OK)
      std::cerr << sql << ": " << (problem == nullptr ? "" : problem) << '\n';
  }
  sqlite3* db_ = nullptr;
  sqlite3_stmt* insert_ = nullptr;
};

constexpr int kTreesInTurn = 10;

/// Times mean nothing unless both told the same. Far above rounding, far below what a tree changes.
bool same(double a, double b) { return std::abs(a - b) <= 1e-9 * b; }

int measure(const std::string& path, int taps) {
  SystemClock clock;
  auto store = TractStore::open(path, OpenMode::read_write, {clock, system_random(), "bench"},
                                DamageCheck::by_caller);
  if (!store) return std::cerr << to_text(store.error()) << '\n', 1;
  const auto knowledge = read_knowledge(*store);
  auto data = store->load();
  if (!data || !knowledge) return 1;
  const auto trees = data->trees.size();
  LiveTract live(*std::move(data));
  const StandId stand_id = live.data().plots.back().stand;
  std::vector<PlotId> plots;
  for (const Plot* plot : live.plots_of(stand_id)) plots.push_back(plot->id);
  auto start = Clock::now();
  LiveStand kept(live, knowledge->species(), stand_id);
  const double begun_ms = 1e3 * seconds_since(start);
  std::optional<StandNow> now;
  Bare bare(path + ".bare", path);
  double ours_s = 0.0;
  double bare_s = 0.0;
  std::vector<double> figures_us, stand_us;
  for (int i = 0; i < taps; ++i) {
    const PlotId plot = plots[static_cast<std::size_t>(i / kTreesInTurn) % plots.size()];
    Tree tree{store->ids().next_id<TreeTag>(),
              plot,
              {SpeciesCode{802}, Dbh::from_tenths(123, UnitSystem::us).value()},
              1,
              1,
              {},
              {},
              ""};
    const Action action{"tally white oak 12.3 in", {tree}};
    start = Clock::now();
    if (const auto done = store->apply(action); !done)
      return std::cerr << to_text(done.error()) << '\n', 1;
    ours_s += seconds_since(start);
    start = Clock::now();
    live.follow(action.changes);
    const auto figures = plot_figures(live, plot);
    figures_us.push_back(1e6 * seconds_since(start));
    if (!figures || figures->stems < 1) return 1;
    start = Clock::now();
    kept.follow();
    now = kept.now({});
    stand_us.push_back(1e6 * seconds_since(start));
    start = Clock::now();
    if (!bare.add(to_text(tree.id), to_text(plot))) return 1;
    bare_s += seconds_since(start);
  }
  start = Clock::now();
  const auto stand = running_figures(live, *knowledge, stand_id, {});
  const double stand_ms = 1e3 * seconds_since(start);
  if (!stand) return std::cerr << to_text(stand.error()) << '\n', 1;
  if (!now || !same(now->ba.mean.value, stand->live.ba.mean.value) ||
      !same(now->ba.se->value, stand->live.ba.se->value) ||
      !same(now->trees->se->value, stand->live.trees.se->value)) {
    return std::cerr << "The live figures are not those of the full computation.\n", 1;
  }
  std::cout << nlohmann::ordered_json{{"trees", trees},
                                      {"taps_a_second", taps / ours_s},
                                      {"bare_a_second", taps / bare_s},
                                      {"figures_us", middle(figures_us)},
                                      {"stand_us", middle(stand_us)},
                                      {"begun_ms", begun_ms},
                                      {"stand_ms", stand_ms}}
                   .dump()
            << '\n';
  std::filesystem::remove(path + ".bare");
  return 0;
}

}  // namespace
}  // namespace oaklight

int main(int argc, char** argv) {
  return argc == 3 ? oaklight::measure(argv[1], std::stoi(argv[2])) : 2;
}
