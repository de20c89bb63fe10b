#include "core/session/tract_session.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <map>

#include "core/handoff/tree_cautions.hpp"
#include "core/measure/plot_geometry.hpp"
#include "core/release/marks.hpp"
#include "core/release/release_graph.hpp"
#include "core/release/stand_facts.hpp"

namespace oaklight {
namespace {

template <class Record>
void put_all(const std::vector<Record>& records, Action& action) {
  action.changes.insert(action.changes.end(), records.begin(), records.end());
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
  return report;
}

/// "import plots.csv, trees.csv", as undo will show it.
std::string import_label(const CruiseFiles& files) {
  std::string label = "import";
  for (const auto* file : {&files.tract, &files.stands, &files.plots, &files.trees,
                           &files.regeneration, &files.crop_trees, &files.map}) {
    if (*file) label += (label == "import" ? " " : ", ") + (*file)->name;
  }
  return label;
}

PacketTables packet_tables(const TractKnowledge& knowledge) {
  return {knowledge.species(), knowledge.cautions, knowledge.seasons};
}

/// Says whose list each tree goes on, once, for work on any day: what a beginner may touch must not
/// change with the day on which a packet is printed.
Status add_destinations(TractData data, const TractKnowledge& knowledge,
                        std::vector<StandPlan>& plans) {
  data.marks.clear();
  for (const StandPlan& plan : plans) {
    data.marks.insert(data.marks.end(), plan.marks.begin(), plan.marks.end());
  }
  const auto marks = with_destinations(data, packet_tables(knowledge), {});
  if (!marks) return marks.error();
  auto mark = marks->begin();
  for (StandPlan& plan : plans) {
    for (Mark& own : plan.marks) own.destination = (mark++)->destination;
  }
  return Done{};
}

/// The plot's design where it is a fixed plot; nullptr for a point.
const FixedDesign* fixed_design_of(const TractData& data, const Plot& plot) {
  const auto cruise =
      std::ranges::find_if(data.cruises, [&](const Cruise& c) { return c.id == plot.cruise; });
  return cruise == data.cruises.end() ? nullptr : std::get_if<FixedDesign>(&cruise->design);
}

bool says_the_same(const Mark& a, const Mark& b) {
  return a.verdict == b.verdict && a.method == b.method && a.product == b.product &&
         a.destination == b.destination && a.reason == b.reason && a.rules == b.rules &&
         a.rule_version == b.rule_version;
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
  const auto existing = store_.load();
  if (!existing) return existing.error();
  const CruiseImport read =
      read_cruise(files, knowledge_.form, knowledge_.species(), *existing, store_.ids());
  if (!read.faults.empty()) {
    ImportReport refused;
    refused.faults = read.faults;
    return refused;
  }
  const TractData& data = read.data;
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
  const Status written = store_.apply(action);
  if (!written) return written.error();
  return counts_of(data);
}

Result<CruiseEstimate> TractSession::estimate(const EstimateOptions& options) const {
  const auto data = store_.load();
  if (!data) return data.error();
  return cruise_estimate(*data, knowledge_.species(), options);
}

Result<std::vector<StandFigures>> TractSession::stand_figures(
    const EstimateOptions& options) const {
  const auto data = store_.load();
  if (!data) return data.error();
  const auto cruised = cruised_stands(*data);
  if (!cruised) return cruised.error();
  std::vector<StandFigures> figures;
  for (const CruisedStand& stand : *cruised) {
    if (!stand.sample) continue;
    const std::array<const StandSample*, 1> one = {&*stand.sample};
    const auto stocking = stand_stocking(one, knowledge_.species(), options);
    if (!stocking) return stocking.error();
    const auto made_of = composition(one, knowledge_.species());
    figures.push_back(
        {stand.stand->id, *stocking, made_of ? std::optional(*made_of) : std::nullopt});
  }
  return figures;
}

Result<std::vector<StandPlan>> TractSession::recommend() {
  const auto loaded = store_.load();
  if (!loaded) return loaded.error();
  const TractData& data = *loaded;
  std::vector<StandPlan> plans;
  for (const Stand& stand : data.stands) {
    const bool walked = std::ranges::any_of(
        data.walk_trees, [&](const WalkTree& tree) { return tree.stand == stand.id; });
    if (!walked) continue;
    const auto input = input_from_cards(data, stand.id, knowledge_.release);
    if (!input) return input.error();
    ReleasePlan plan = oaklight::recommend(*input);
    std::vector<Mark> marks = to_marks(plan, *input, store_.ids());
    plans.push_back({stand.id, std::move(plan), std::move(marks)});
  }
  if (plans.empty()) {
    return Error{ErrorCode::no_data, "No trees of a marking walk are recorded.", "crop_trees",
                 "Record crop tree cards first: import crop_trees.csv."};
  }
  const Status destined = add_destinations(data, knowledge_, plans);
  if (!destined) return destined.error();
  return plans;
}

Result<std::vector<MappedPlotPlan>> TractSession::recommend_plots() const {
  const auto data = store_.load();
  if (!data) return data.error();
  std::vector<MappedPlotPlan> plans;
  for (const Plot& plot : data->plots) {
    const FixedDesign* design = fixed_design_of(*data, plot);
    if (design == nullptr || plot.status != PlotStatus::measured) continue;
    std::vector<Tree> trees;
    std::ranges::copy_if(data->trees, std::back_inserter(trees),
                         [&](const Tree& tree) { return tree.plot == plot.id; });
    const auto mapped = map_of_plot(trees);
    if (!mapped) continue;  // not a stem map: some tree has no azimuth or distance
    auto facts = stand_facts(*data, plot.stand, knowledge_.release);
    if (!facts) return facts.error();
    facts->covered = design->acres();
    const CircleBounds bounds{plot_radius(design->acres())};
    const ReleaseInput input{knowledge_.release,
                             graph_from_map(*mapped, bounds, knowledge_.release.settings.contact),
                             *std::move(facts),
                             {},
                             {},
                             {}};
    plans.push_back({plot.id, oaklight::recommend(input)});
  }
  if (plans.empty()) {
    return Error{ErrorCode::no_data,
                 "No fixed plot has azimuth and distance for each of its trees.",
                 "trees/azimuth_deg", "Record both for every tree of a plot to map its stems."};
  }
  return plans;
}

Result<int> TractSession::store_marks(const std::vector<StandPlan>& plans) {
  const auto data = store_.load();
  if (!data) return data.error();
  std::map<WalkTreeId, Mark> known;
  for (const Mark& mark : data->marks) known.insert_or_assign(mark.tree, mark);
  Action action{"recommend", {}};
  for (const StandPlan& plan : plans) {
    for (Mark mark : plan.marks) {
      const auto before = known.find(mark.tree);
      if (before != known.end()) {
        if (before->second.by_hand || says_the_same(before->second, mark)) continue;
        mark.id = before->second.id;
      }
      action.changes.emplace_back(std::move(mark));
    }
  }
  const Status written = store_.apply(action);
  if (!written) return written.error();
  return static_cast<int>(action.changes.size());
}

Result<Packet> TractSession::packet(Reader reader, PacketOptions options) const {
  const auto data = store_.load();
  if (!data) return data.error();
  options.table_versions = knowledge_.table_versions;
  return make_packet(*data, packet_tables(knowledge_), reader, options);
}

}  // namespace oaklight
