// The works that are done on a disk that fails.
#include <map>
#include <nlohmann/json.hpp>
#include <sstream>
#include <stdexcept>

#include "core/base/embedded.hpp"
#include "core/base/sha256.hpp"
#include "core/session/files.hpp"
#include "core/session/packet_files.hpp"
#include "core/store/forms_in_file.hpp"
#include "core/store/migrate.hpp"
#include "core/store/new_file.hpp"
#include "core/store/records.hpp"
#include "tests/crash/tally_file.hpp"
#include "tests/crash/work.hpp"
#include "tests/handoff/odd_tract.hpp"
#include "tests/support/demo_files.hpp"
#include "tests/support/readings.hpp"

namespace oaklight::test {
namespace {

namespace fs = std::filesystem;
using Step = StoreWork::Step;

/// The bytes of a tract file with one plot to tally on.
std::string tally_base() {
  const TempDir folder;
  make_tally_file(folder / "woods.gpkg");
  return bytes_of(folder / "woods.gpkg");
}

Tree tree_of(const TractSession& session, std::uint32_t number) {
  const TreeFacts facts{SpeciesCode{833}, dbh_in(12.3), {}, {}, {}, {}, {}, {}, {}, {}};
  return {nth_id<TreeId>(number), session.data()->plots.front().id, facts, 1, 1, {}, {}, ""};
}

Step tally(std::uint32_t number) {
  return [number](TractSession& session, const fs::path&) {
    const auto data = session.data();
    if (!data) return Status(data.error());
    return session.store().apply({"tally red oak 12.3 in", {tree_of(session, number)}});
  };
}

template <class Replayed>
Status status_of(const Result<Replayed>& replayed) {
  return replayed ? Status(Done{}) : Status(replayed.error());
}

Status undo(TractSession& session, const fs::path&) { return status_of(session.store().undo()); }
Status redo(TractSession& session, const fs::path&) { return status_of(session.store().redo()); }

Status correct(TractSession& session, const fs::path&) {
  const auto data = session.data();
  if (!data) return data.error();
  Tree tree = data->trees.front();
  tree.facts.dbh = dbh_in(14.1);
  return session.store().apply({"correct a tree", {tree}});
}

Status take_out(TractSession& session, const fs::path&) {
  const auto data = session.data();
  if (!data) return data.error();
  return session.store().apply({"take out a tree", {Remove{data->trees.back().id}}});
}

Status change_form(TractSession& session, const fs::path&) {
  const auto text = session.store().form_text("tally.form.json");
  if (!text) return text.error();
  return session.store().set_form_text("tally.form.json", *text + "\n");
}

/// Those lines of a file of the demo tract that begin so, below its heads.
NamedText demo_lines(const std::string& name, const std::vector<std::string>& begins) {
  std::istringstream lines(demo_file(name).text);
  std::string line, text;
  while (std::getline(lines, line)) {
    const auto begins_line = [&](const std::string& begin) { return line.starts_with(begin); };
    if (text.empty() || std::ranges::any_of(begins, begins_line)) text += line + "\n";
  }
  return {name, text};
}

Status import(TractSession& session, const fs::path&) {
  const std::vector<std::string> plots = {"Upland,U01,", "Upland,U02,", "Upland,U03,"};
  CruiseFiles files;
  files.tract = demo_lines("tract.csv", {"Whetrock"});
  files.stands = demo_lines("stands.csv", {"Upland,"});
  files.plots = demo_lines(
      "plots.csv", {"2026 points,Upland,U01", "2026 points,Upland,U02", "2026 points,Upland,U03"});
  files.trees = demo_lines("trees.csv", plots);
  files.regeneration = demo_lines("regeneration.csv", plots);
  files.crop_trees = demo_lines("crop_trees.csv", {"Upland,101,"});
  const auto report = session.import_files(files);
  if (!report) return report.error();
  if (!report->faults.empty()) return report->faults.front();
  return Done{};
}

Status copy(TractSession& session, const fs::path& folder) {
  return session.store().copy_to(folder / "copy.gpkg");
}

template <class Done>
void must(const Done& done) {
  if (!done) throw std::runtime_error(to_text(done.error()));
}

/// Adds a record as it stood in a file before there was a history of it.
template <class R>
void add_old(store::SqliteHandle& db, const Uuid& id, const R& record) {
  const auto table = store::RecordTable::read(db, store::Fields<R>::kTable);
  must(table);
  auto row = store::row_of(*table, store::Row(table->columns().size()), record);
  must(row);
  table->at(*row, "uid") = to_text(id);
  table->at(*row, "changed_at") = std::string("2022-02-22T19:22:22.000Z");
  must(table->insert(db, *row));
}

/// A file as a program that knew only the first steps made it.
void make_old(const fs::path& path, std::size_t known) {
  const auto steps = store::read_steps(embedded_schema()).value();
  auto db = store::SqliteHandle::open(path, store::Use::make);
  must(db);
  must(db->transaction([&]() -> Status {
    must(store::make_tables(*db, std::span(steps.data(), known), "2022-02-22T19:22:22.000Z"));
    std::uint32_t number = 1000;
    const Tract tract{"Cold Hollow", "WV", "", "", "", "", "", {}, false};
    add_old(*db, nth_id<StandId>(++number).value, tract);
    for (const EmbeddedFile& file : embedded_forms()) {
      const auto id = nth_id<Id<store::FormFileTag>>(++number);
      add_old(*db, id.value, store::built_in_form(file, id));
    }
    return Done{};
  }));
}

Status first_stand(TractSession& session, const fs::path&) {
  Stand stand;
  stand.id = nth_id<StandId>(77);
  stand.name = "North";
  return session.store().apply({"add a stand", {stand}});
}

/// Such a file that was closed, and one that was not when its program died: a stand of it lies in
/// the log alone.
std::unique_ptr<Work> upgrade_work(bool from_log) {
  const TempDir folder;
  const fs::path path = folder / "woods.gpkg";
  make_old(path, 2);
  std::vector<Step> steps{first_stand, undo};
  if (!from_log) return std::make_unique<StoreWork>(bytes_of(path), std::move(steps));
  auto db = store::SqliteHandle::open(path, store::Use::write);
  must(db);
  Stand stand;
  stand.id = nth_id<StandId>(76);
  stand.name = "South";
  must(db->transaction([&]() -> Status {
    add_old(*db, stand.id.value, stand);
    return Done{};
  }));
  return std::make_unique<StoreWork>(bytes_of(path), std::move(steps),
                                     bytes_of(path.string() + "-wal"));
}

/// Hands a packet over where an older one lies.
class PacketWork final : public Work {
 public:
  PacketWork() {
    for (const int trees : {12, 20}) {
      packets_.push_back(packet_of_all(many_trees({.trees = trees}), PacketReader::logger).value());
    }
    const TempDir folder;
    const auto written = write_packet_files(folder.path(), packets_[0], "old pages");
    if (!written) throw std::runtime_error(to_text(written.error()));
    for (const PacketFile& file : *written)
      old_[file.path.filename().string()] = bytes_of(file.path);
  }

  void lay_out(const fs::path& folder) override {
    fs::create_directory(folder / "again");
    for (const auto& [name, bytes] : old_) write_bytes(folder / "again" / name, bytes);
  }
  Status start(const fs::path&) override { return Done{}; }
  [[nodiscard]] std::size_t steps() const override { return 2; }
  Status step(const fs::path& folder, std::size_t number) override {
    const fs::path place = number == 0 ? folder / "packets" / "new" : folder / "again";
    return status_of(write_packet_files(place, packets_[1], "new pages"));
  }
  bool is_done(std::size_t) override { return false; }
  void stop() override {}

  /// Where a manifest lies the packet is whole, and one that was written is there.
  std::string judge(const fs::path& folder, bool, std::size_t done) override {
    const std::string fresh = whole(folder / "packets" / "new", done > 0);
    return fresh.empty() ? whole(folder / "again", done > 1) : fresh;
  }

 private:
  [[nodiscard]] std::string whole(const fs::path& folder, bool must_be_new) const {
    const std::string text = bytes_of(folder / "logger.manifest.json");
    if (text.empty() && !fs::exists(folder / "logger.manifest.json"))
      return must_be_new ? folder.string() + " holds no manifest" : "";
    const auto manifest = nlohmann::json::parse(text, nullptr, false);
    if (manifest.is_discarded()) return "half a manifest";
    for (const auto& file : manifest["files"]) {
      const std::string name = file["name"], sum = file["sha256"];
      if (sha256_hex(bytes_of(folder / name)) != sum) return name + " is of another packet";
    }
    const std::string list = manifest["list_sha256"];
    if (must_be_new && list != packets_[1].list_sha256)
      return "the packet that was written is not there";
    return "";
  }

  std::vector<Packet> packets_;
  std::map<std::string, std::string> old_;
};

std::unique_ptr<Work> import_work() {
  auto work = std::make_unique<StoreWork>(
      [] {
        const TempDir folder;
        SystemClock clock;
        (void)TractStore::create(folder / "woods.gpkg", {clock, system_random(), "parent"}).value();
        return bytes_of(folder / "woods.gpkg");
      }(),
      std::vector<Step>{import});
  work->never_same_again();
  return work;
}

std::unique_ptr<Work> copy_work() {
  auto work =
      std::make_unique<StoreWork>(tally_base(), std::vector<Step>{tally(1), copy, tally(2)});
  work->promise_copy(1, "copy.gpkg");
  return work;
}

Status join(TractSession& session, const fs::path& folder) {
  return status_of(session.store().join({folder / "other.gpkg"}));
}

/// A file of both, made while the one is open.
Status join_anew(TractSession& session, const fs::path& folder) {
  SystemClock clock;
  return status_of(TractStore::join_to_new(folder / "both.gpkg",
                                           {session.store().path(), folder / "other.gpkg"},
                                           {clock, system_random(), "office"}));
}

/// A file that started from that one, with trees of its own and another word on the stand.
std::string other_tablet(const std::string& base) {
  const TempDir folder;
  write_bytes(folder / "other.gpkg", base);
  {
    SystemClock clock;
    auto session = TractSession::open(folder / "other.gpkg", OpenMode::read_write,
                                      {clock, system_random(), "other tablet"});
    must(session);
    for (std::uint32_t number = 901; number < 905; ++number)
      must(tally(number)(*session, folder.path()));
    Stand stand = session->data()->stands.front();
    stand.name = "theirs";
    must(session->store().apply({"rename", {stand}}));
    must(change_form(*session, folder.path()));
  }
  return bytes_of(folder / "other.gpkg");
}

Status rename_stand(TractSession& session, const fs::path&) {
  const auto data = session.data();
  if (!data) return data.error();
  Stand stand = data->stands.front();
  stand.name = "ours";
  return session.store().apply({"rename", {stand}});
}

Status decide(TractSession& session, const fs::path&) {
  const auto open = session.store().questions();
  if (!open) return open.error();
  if (open->size() != 1) throw std::runtime_error("both renamed the stand");
  return status_of(session.store().decide(open->front(), 1));
}

std::unique_ptr<Work> join_work() {
  const std::string base = tally_base();
  auto work = std::make_unique<StoreWork>(
      base, std::vector<Step>{tally(1), rename_stand, join, join_anew, decide, undo, tally(2)}, "",
      std::map<std::string, std::string>{{"other.gpkg", other_tablet(base)}});
  work->promise_copy(3, "both.gpkg");
  return work;
}

using Maker = std::function<std::unique_ptr<Work>()>;
const std::vector<std::pair<std::string, Maker>> kWorks = {
    {"tally",
     [] {
       return std::make_unique<StoreWork>(
           tally_base(),
           std::vector<Step>{tally(1), tally(2), tally(3), tally(4), tally(5), tally(6)});
     }},
    {"undo",
     [] {
       return std::make_unique<StoreWork>(
           tally_base(), std::vector<Step>{tally(1), tally(2), undo, redo, correct, take_out, undo,
                                           undo, undo, change_form, undo, redo});
     }},
    {"import", import_work},
    {"upgrade", [] { return upgrade_work(false); }},
    {"upgrade_log", [] { return upgrade_work(true); }},
    {"create", [] { return std::make_unique<StoreWork>("", std::vector<Step>{first_stand}); }},
    {"copy", copy_work},
    {"join", join_work},
    {"packet", [] { return std::make_unique<PacketWork>(); }},
};

}  // namespace

const std::vector<std::string>& work_names() {
  static const std::vector<std::string> names = [] {
    std::vector<std::string> all;
    for (const auto& [name, maker] : kWorks) all.push_back(name);
    return all;
  }();
  return names;
}

std::unique_ptr<Work> make_work(const std::string& name) {
  for (const auto& [known, maker] : kWorks) {
    if (known == name) return maker();
  }
  throw std::runtime_error("no work of the name " + name);
}

}  // namespace oaklight::test
