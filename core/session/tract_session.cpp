#include "core/session/tract_session.hpp"

#include <iterator>
#include <utility>

#include "core/store/tree_stream.hpp"

namespace oaklight {
namespace {

template <class Record>
void put_all(std::vector<Record>& records, Action& action) {
  action.changes.insert(action.changes.end(), std::make_move_iterator(records.begin()),
                        std::make_move_iterator(records.end()));
  records = {};
}

ImportReport counts_of(const TractData& data) {
  ImportReport report;
  report.stands = static_cast<int>(data.stands.size());
  report.plots = static_cast<int>(data.plots.size());
  report.trees = static_cast<int>(data.trees.size());
  report.regens = static_cast<int>(data.regens.size());
  for (const WalkTree& tree : data.walk_trees)
    ++(tree.crop ? report.crop_trees : report.neighbours);
  report.lines = static_cast<int>(data.lines.size());
  report.acorn_counts = static_cast<int>(data.acorn_counts.size());
  report.acorn_years = static_cast<int>(data.acorn_years.size());
  report.stumps = static_cast<int>(data.stumps.size());
  return report;
}

/// "import plots.csv, trees.csv", as undo will show it: in which folder of whose machine they lay
/// is nobody's business who gets the file. A volume table is not undone with them, see below.
std::string import_label(const CruiseFiles& files) {
  std::string label = "import";
  for (const KnownFile& known : kKnownFiles) {
    const auto& file = files.*known.slot;
    if (!file || known.slot == &CruiseFiles::local_volume) continue;
    label += (label == "import" ? " " : ", ") + file->name.substr(file->name.rfind('/') + 1);
  }
  return label;
}

}  // namespace

Result<TractSession> TractSession::create(const std::filesystem::path& path, StoreContext context) {
  auto store = TractStore::create(path, std::move(context));
  if (!store) return store.error();
  auto knowledge = read_knowledge(*store);
  if (!knowledge) return knowledge.error();
  return TractSession(*std::move(store), *std::move(knowledge));
}

Result<TractSession> TractSession::open(const std::filesystem::path& path, OpenMode mode,
                                        StoreContext context) {
  auto store = TractStore::open(path, mode, std::move(context));
  if (!store) return store.error();
  auto knowledge = read_knowledge(*store);
  if (!knowledge) return knowledge.error();
  return TractSession(*std::move(store), *std::move(knowledge));
}

Result<ImportReport> TractSession::import_files(const CruiseFiles& files) {
  // Of the trees in the tract only those with a tag bear on what comes in.
  std::vector<Tree> tagged;
  const TreeStream trees{.begin = [&](const TractData&) -> Status {
                           tagged.clear();
                           return Done{};
                         },
                         .take = [&](const Tree& tree) -> Status {
                           if (!tree.tag.empty()) tagged.push_back(tree);
                           return Done{};
                         }};
  auto existing = store_.load(trees);
  if (!existing) return existing.error();
  existing->trees = std::move(tagged);
  CruiseImport read =
      read_cruise(files, knowledge_.form, knowledge_.species(), *existing, store_.ids());
  if (!read.faults.empty()) {
    ImportReport refused;
    refused.faults = read.faults;
    return refused;
  }
  TractData& data = read.data;
  ImportReport report = counts_of(data);
  Action action{import_label(files), {}};
  if (files.tract) action.changes.emplace_back(data.tract);
  put_all(data.stands, action);
  put_all(data.cruises, action);
  put_all(data.plots, action);
  put_all(data.trees, action);
  put_all(data.regens, action);
  put_all(data.walk_trees, action);
  put_all(data.contacts, action);
  put_all(data.lines, action);
  put_all(data.acorn_counts, action);
  put_all(data.acorn_years, action);
  put_all(data.stumps, action);
  // Checked with the rest above.
  const Status written = files.local_volume ? apply_with_volumes(action, files.local_volume->text)
                                            : store_.apply(action);
  if (!written) return written.error();
  if (files.local_volume) report.volume_lines = static_cast<int>(knowledge_.volumes.rows.size());
  return report;
}

// A table of the tract is no record, so the store writes it as an action of its own. It goes first,
// as it can be taken back alone and written again: records that lie in the file are refused the
// second time.
Status TractSession::apply_with_volumes(const Action& action, const std::string& volumes) {
  constexpr std::string_view kForm = "local_volume.csv";
  const auto before = store_.form_text(kForm);
  if (!before) return before.error();
  if (const Status set = store_.set_form_text(kForm, volumes); !set) return set;
  auto knowledge = read_knowledge(store_);
  Status done = knowledge ? Status(Done{}) : Status(knowledge.error());
  if (done && !action.changes.empty()) done = store_.apply(action);
  if (done) {
    knowledge_ = *std::move(knowledge);
  } else if (*before != volumes) {
    (void)store_.undo();
  }
  return done;
}

Result<std::vector<StandPlan>> TractSession::recommend() {
  const auto data = store_.load();
  if (!data) return data.error();
  return plan_stands(*data, knowledge_, store_.ids());
}

Result<std::vector<MappedPlotPlan>> TractSession::recommend_plots() const {
  const auto data = store_.load();
  if (!data) return data.error();
  return plan_mapped_plots(*data, knowledge_);
}

Result<int> TractSession::store_marks(const std::vector<StandPlan>& plans) {
  const auto data = store_.load();
  if (!data) return data.error();
  const Action action = marks_action(*data, plans);
  const Status written = store_.apply(action);
  if (!written) return written.error();
  return static_cast<int>(action.changes.size());
}

Result<Packet> TractSession::packet(PacketReader reader, PacketOptions options) const {
  const auto data = store_.load();
  if (!data) return data.error();
  return packet_for(*data, knowledge_, reader, std::move(options));
}

}  // namespace oaklight
