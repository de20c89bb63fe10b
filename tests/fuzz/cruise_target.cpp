// The files of a crew through the whole import into a tract file, and what is then made of it.
#include <filesystem>

#include "core/handoff/list_geojson.hpp"
#include "core/handoff/list_gpx.hpp"
#include "core/handoff/manifest.hpp"
#include "core/session/decide.hpp"
#include "core/session/list_layers.hpp"
#include "core/session/tract_session.hpp"
#include "tests/forms/cruise_files.hpp"
#include "tests/fuzz/law.hpp"
#include "tests/fuzz/targets.hpp"
#include "tests/support/difference.hpp"
#include "tests/support/set_clock.hpp"
#include "tests/support/temp_dir.hpp"

namespace oaklight::test {
namespace {

constexpr std::int64_t kMay2026 = 1'777'900'020'000;

/// An empty tract file, made once and copied for each input.
class Room {
 public:
  Room() {
    const auto made = TractSession::create(folder_ / "empty.gpkg", context());
    require(made.has_value(), "an empty tract file is made");
  }
  TractSession fresh() {
    for (const char* old : {"woods.gpkg", "woods.gpkg-wal", "woods.gpkg-shm"}) {
      std::filesystem::remove(folder_ / old);
    }
    std::filesystem::copy_file(folder_ / "empty.gpkg", folder_ / "woods.gpkg");
    return open();
  }
  TractSession open() {
    auto opened = TractSession::open(folder_ / "woods.gpkg", OpenMode::read_write, context());
    if (!opened) throw Broken("a tract file opens again: " + to_text(opened.error()));
    return *std::move(opened);
  }
  [[nodiscard]] std::string folder() const { return folder_.path().string(); }

 private:
  StoreContext context() { return {clock_, same_bits(), "fuzz"}; }

  TempDir folder_;
  SetClock clock_{kMay2026};
};

Room& room() {
  static Room one;
  return one;
}

/// What was accepted can be worked with: figures, marks and packets come, or a reason.
void work_with(TractSession& session) {
  const EstimateOptions options;
  const auto data = session.data();
  require(data.has_value(), "what was accepted is read again");
  if (const auto estimate = estimate_tract(*data, session.knowledge(), options); !estimate)
    require_told(estimate.error());
  if (const auto figures = stand_figures(*data, session.knowledge(), options); !figures)
    require_told(figures.error());
  const auto plans = session.recommend();
  if (!plans) return require_told(plans.error());
  const auto stored = session.store_marks(*plans);
  require(stored.has_value(), "marks of a recommendation are stored");
  for (const auto& reader : kWords<PacketReader>) {
    PacketOptions wanted{
        .today = Day{std::chrono::year{2026}, std::chrono::May, std::chrono::day{4}},
        .work_day = {}};
    const auto packet = session.packet(reader.value, wanted);
    if (!packet) {
      require_told(packet.error());
      continue;
    }
    require(!list_geojson(*packet).empty() && !list_gpx(*packet).empty(), "lists are written");
    require(manifest_json(*packet).find(packet->list_sha256) != std::string::npos,
            "the manifest names the list");
    const auto layers = list_geopackage(*packet, room().folder());
    if (!layers) require_told(layers.error());
  }
}

/// The files into the tract, twice, and what is then made of it.
void import_and_work(TractSession& session, const CruiseFiles& files) {
  const auto before = session.data();
  const auto report = session.import_files(files);
  if (!report) throw Broken("what the import accepts is stored: " + to_text(report.error()));
  require(report->faults.empty(), "an import is judged alike twice");
  const auto after = session.data();
  require(before.has_value() && after.has_value(), "an imported tract is read back");
  const auto again = session.import_files(files);
  if (!again) throw Broken("a second import is told as faults: " + to_text(again.error()));
  require_told(again->faults);
  if (!again->faults.empty()) {
    require(difference(*after, *session.data()).empty(), "a refused import changes nothing");
  }
  work_with(session);
}

}  // namespace

void fuzz_cruise(std::string_view bytes) {
  CruiseFiles files;
  for (NamedText& file : files_of(bytes)) {
    for (const KnownFile& known : kKnownFiles) {
      if (file.name == known.name) files.*known.slot = std::move(file);
    }
  }
  const CruiseImport judged = import_files(files);
  require_told(judged.faults);
  if (!judged.faults.empty()) return;  // nothing is written where nothing is handed on

  {
    TractSession session = room().fresh();
    import_and_work(session, files);
  }
  require(room().open().data().has_value(), "the file opens again");
}

}  // namespace oaklight::test
