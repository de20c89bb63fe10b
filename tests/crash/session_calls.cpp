// What is asked of a session on the demo tract, and of what it writes beside the tract file.
#include <random>
#include <stdexcept>

#include "core/base/sha256.hpp"
#include "core/session/list_layers.hpp"
#include "core/session/tract_estimate.hpp"
#include "tests/crash/call.hpp"
#include "tests/support/demo_files.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/set_clock.hpp"
#include "tests/support/temp_dir.hpp"
#include "tests/support/test_cruise.hpp"

namespace oaklight::test {

namespace fs = std::filesystem;

namespace {

NamedText local_volume() {
  return {"local_volume.csv",
          "species,dbh_in,log_rule,board_feet,cords,source\n"
          "802,12,international,60,0.2,invented\n802,14,international,110,0.3,invented\n"};
}

Result<std::string> import(TractSession& session, const CruiseFiles& files) {
  const auto report = session.import_files(files);
  if (!report) return report.error();
  if (!report->faults.empty()) return report->faults.front();
  return std::to_string(report->trees) + " trees, " + std::to_string(report->volume_lines) +
         " lines of volumes";
}

/// A tract file before anything was done with it, with the demo cruise, and with its marks.
struct Demo {
  std::string empty, cruised, marked;
  std::string with_volumes;  ///< an empty one with a table of its own
};
const Demo& demo() {
  static const Demo kDemo = [] {
    Demo made;
    const TempDir folder;
    const fs::path path = folder / "woods.gpkg";
    SetClock clock(1'777'900'020'000);  // 2026-05-04T13:07:00Z
    const auto bytes_after = [&](const auto& work) {
      {
        const StoreContext context{clock, std::mt19937_64{7}, "tablet"};
        auto session = fs::exists(path) ? TractSession::open(path, OpenMode::read_write, context)
                                        : TractSession::create(path, context);
        if (!session) throw std::runtime_error(to_text(session.error()));
        work(*session);
      }
      return bytes_of(path);
    };
    made.empty = bytes_after([](TractSession&) {});
    made.with_volumes = bytes_after([](TractSession& session) {
      const auto set = session.store().set_form_text("local_volume.csv", local_volume().text);
      if (!set) throw std::runtime_error(to_text(set.error()));
    });
    write_bytes(path, made.empty);
    made.cruised = bytes_after([](TractSession& session) {
      const auto done = import(session, demo_files());
      if (!done) throw std::runtime_error(to_text(done.error()));
    });
    made.marked = bytes_after([](TractSession& session) {
      (void)session.store_marks(session.recommend().value()).value();
    });
    return made;
  }();
  return kDemo;
}

PacketOptions options() {
  return {.today = Day{std::chrono::year(2026), std::chrono::May, std::chrono::day(4)}};
}

std::vector<Call> calls_of_figures() {
  const Files cruised{{"woods.gpkg", demo().cruised}};
  return {{"open_session", cruised, false,
           [](Place& p) -> Result<std::string> {
             const auto session =
                 TractSession::open(p.folder / "woods.gpkg", OpenMode::read_only, p.context);
             if (!session) return session.error();
             return session->knowledge().table_versions;
           }},
          {"create_session",
           {},
           false,
           [](Place& p) { return told(TractSession::create(p.folder / "woods.gpkg", p.context)); }},
          {"knowledge",
           {{"woods.gpkg", demo().with_volumes}},
           true,
           [](Place& p) -> Result<std::string> {
             const auto knowledge = read_knowledge(p.store());
             if (!knowledge) return knowledge.error();
             return knowledge->table_versions + ", " +
                    std::to_string(knowledge->volumes.rows.size()) + " volumes";
           }},
          {"estimate", cruised, true,
           [](Place& p) -> Result<std::string> {
             const auto made = estimate_of(p.store(), p.session->knowledge(), {});
             if (!made) return made.error();
             return std::to_string(made->estimate.all->live.ba.mean.value);
           }},
          {"recommend", cruised, true, [](Place& p) -> Result<std::string> {
             const auto plans = p.session->recommend();
             if (!plans) return plans.error();
             std::string verdicts;
             for (const StandPlan& plan : *plans) {
               for (const Mark& mark : plan.marks) verdicts += word_of(mark.verdict).front();
             }
             return verdicts;
           }}};
}

/// A fixed plot with azimuth and distance of each tree.
std::string mapped() {
  const TempDir folder;
  write_bytes(folder / "woods.gpkg", demo().empty);
  {
    SetClock clock(1'777'900'020'000);
    auto session = TractSession::open(folder / "woods.gpkg", OpenMode::read_write,
                                      {clock, std::mt19937_64{8}, "tablet"});
    if (!session) throw std::runtime_error(to_text(session.error()));
    TestCruise cruise(FixedDesign{0.1, {}, {}, UnitSystem::us});
    const PlotId plot = cruise.plot(cruise.stand("Cove", 10.0));
    for (int i = 0; i < 6; ++i) {
      Tree& tree = cruise.tree(plot, i % 2 == 0 ? 802 : 316, 8.0 + i);
      tree.azimuth = Degrees{60.0 * i};
      tree.distance = tape_ft(10.0 + i);
    }
    Action action{"map a plot", {}};
    for (const auto& r : cruise.data.stands) action.changes.emplace_back(r);
    for (const auto& r : cruise.data.cruises) action.changes.emplace_back(r);
    for (const auto& r : cruise.data.plots) action.changes.emplace_back(r);
    for (const auto& r : cruise.data.trees) action.changes.emplace_back(r);
    const auto applied = session->store().apply(action);
    if (!applied) throw std::runtime_error(to_text(applied.error()));
  }
  return bytes_of(folder / "woods.gpkg");
}

std::vector<Call> calls_that_write() {
  const Files empty{{"woods.gpkg", demo().empty}};
  const Files cruised{{"woods.gpkg", demo().cruised}};
  const Files marked{{"woods.gpkg", demo().marked}};
  std::vector<Call> calls = {
      {"import", empty, true, [](Place& p) { return import(*p.session, demo_files()); }},
      {"import_with_volumes", empty, true,
       [](Place& p) {
         CruiseFiles files = demo_files();
         files.local_volume = local_volume();
         return import(*p.session, files);
       }},
      {"mark", cruised, true, [](Place& p) -> Result<std::string> {
         const auto plans = p.session->recommend();
         if (!plans) return plans.error();
         const auto written = p.session->store_marks(*plans);
         if (!written) return written.error();
         return std::to_string(*written);
       }}};
  calls.push_back(
      {"recommend_plots", {{"woods.gpkg", mapped()}}, true, [](Place& p) -> Result<std::string> {
         const auto plans = p.session->recommend_plots();
         if (!plans) return plans.error();
         return std::to_string(plans->front().decided.trees.size()) + " trees";
       }});
  calls.push_back({"layers", marked, true, [](Place& p) -> Result<std::string> {
                     const auto packet = p.session->packet(PacketReader::logger, options());
                     if (!packet) return packet.error();
                     const auto bytes = list_geopackage(*packet, p.folder.string());
                     if (!bytes) return bytes.error();
                     return sha256_hex(*bytes);
                   }});
  for (const PacketReader reader : {PacketReader::logger, PacketReader::owner}) {
    calls.push_back({"packet_of_" + std::string(word_of(reader)), marked, true,
                     [reader](Place& p) -> Result<std::string> {
                       const auto packet = p.session->packet(reader, options());
                       if (!packet) return packet.error();
                       return packet->list_sha256;
                     }});
  }
  return calls;
}

}  // namespace

std::vector<Call> calls_of_session() {
  std::vector<Call> all = calls_of_figures();
  for (Call& call : calls_that_write()) all.push_back(std::move(call));
  for (Call& call : all) {
    call.of_each = call.name == "knowledge";
    call.takes_back = call.name == "import_with_volumes";
    call.fresh_ids = call.name.starts_with("import") || call.name == "mark";
  }
  return all;
}

}  // namespace oaklight::test
