#include "core/sample/stand_sample.hpp"

#include <algorithm>
#include <map>
#include <utility>

#include "core/measure/basal_area.hpp"
#include "core/measure/plot_geometry.hpp"
#include "core/model/plot_task.hpp"
#include "core/sample/stand_draft.hpp"
#include "core/sample/visits.hpp"

namespace oaklight {
namespace {

constexpr int kMostStems = 10'000;  // on one record: far above any plot, far below overflow
constexpr int kMostEdgeCount = 4;

/// Where a record's plot went: which stand, and which place among its plots (none: not in the
/// sample).
struct PlotPlace {
  const Plot* plot = nullptr;
  std::size_t stand = 0;
  std::optional<int> index;
  bool earlier = false;  ///< of a visit that a newer one replaces
  bool thin = false;     ///< of the design for the thinner trees
};

/// Two plots of one label in one stand are one plot seen twice, by mistake or in cruises without a
/// day: as two they would claim an error that is too small.
void refuse_same_labels(StandDraft& draft) {
  std::map<std::string_view, int> seen;
  for (const Plot* plot : draft.sample.plots) {
    if (plot->label.empty() || ++seen[plot->label] < 2) continue;
    draft.blame(
        {ErrorCode::duplicate,
         "Plot " + plot->label + " of stand " + draft.sample.stand->name + " is there twice.",
         plot_path(draft, *plot),
         "Give it another name; or, where it was visited twice, give both cruises their day."});
  }
}

/// What a tree stands for. thin: it is of the design for the thinner trees.
TalliedTree tallied(const StandSample& sample, const Tree& tree, int plot, bool thin) {
  const Design& design = thin ? *sample.thin_design : sample.design;
  TalliedTree t{.tree = &tree, .plot = plot};
  t.measured = thin || sample.measured[static_cast<std::size_t>(plot)];
  t.trees = trees_stood_for(design, tree);
  if (const auto* point = std::get_if<PointDesign>(&design)) {
    t.ba = point->baf() * (static_cast<double>(tree.stems) * tree.edge_count);
  } else {
    const auto& fixed = std::get<FixedDesign>(design);
    t.ba = SquareFeetPerAcre{t.trees.value * basal_area(tree.facts.dbh.inches()).value};
    t.on_small_plot = thin || (fixed.small_below &&
                               tree.facts.dbh.hundredth_mm() < fixed.small_below->hundredth_mm());
  }
  return t;
}

class Builder {
 public:
  explicit Builder(const TractData& data, bool streamed = false)
      : data_(&data), streamed_(streamed), drafts_(data.stands.size()) {
    for (std::size_t i = 0; i < drafts_.size(); ++i) drafts_[i].sample.stand = &data.stands[i];
  }

  Status place_plots();
  void is_now(const TractData& data) { data_ = &data; }
  Status add_tree(const Tree& tree);
  Status add_trees();
  Status add_regens();
  std::vector<CruisedStand> finish();

 private:
  static Error unknown(std::string what, std::string where) {
    return {ErrorCode::unknown_reference, std::move(what), std::move(where),
            "The data are not whole; read the file again."};
  }
  const PlotPlace* find(PlotId id) const {
    const auto it = places_.find(id);
    return it == places_.end() ? nullptr : &it->second;
  }
  void place_stand(StandDraft& draft, std::vector<PlotPlace*>& places,
                   const std::map<CruiseId, const Cruise*>& cruises);
  void add_plot(StandDraft& draft, PlotPlace& place);
  void add_counts(StandDraft& draft, const PlotPlace& place);
  void add_tree(StandDraft& draft, const PlotPlace& place, const Tree& tree);
  void add_regen(StandDraft& draft, const PlotPlace& place, const Regen& regen);

  const TractData* data_;
  bool streamed_;  ///< trees are not of data and must not be pointed at
  std::vector<StandDraft> drafts_;
  std::map<PlotId, PlotPlace> places_;  // in order of id: so are the plots of each stand
  const PlotPlace* last_ = nullptr;     // of the last tree: they mostly come plot by plot
};

Status Builder::place_plots() {
  std::map<StandId, std::size_t> stands;
  for (std::size_t i = 0; i < data_->stands.size(); ++i) stands.emplace(data_->stands[i].id, i);
  std::map<CruiseId, const Cruise*> cruises;
  for (const Cruise& c : data_->cruises) cruises.emplace(c.id, &c);
  for (const Plot& plot : data_->plots) {
    const auto stand = stands.find(plot.stand);
    if (stand == stands.end() || !cruises.contains(plot.cruise)) {
      return unknown("Plot " + plot.label + " belongs to no stand or no cruise here.",
                     "plot/" + plot.label);
    }
    if (!places_.emplace(plot.id, PlotPlace{&plot, stand->second, std::nullopt}).second) {
      return Error{ErrorCode::duplicate, "Two plots have one id.", "plot/" + plot.label,
                   "The data are not whole; read the file again."};
    }
  }
  const VisitsLeftOut left_out = visits_left_out(*data_);
  std::vector<std::vector<PlotPlace*>> by_stand(drafts_.size());
  for (auto& [id, place] : places_) {
    place.earlier = left_out.contains({place.plot->stand, place.plot->cruise});
    if (!place.earlier) by_stand[place.stand].push_back(&place);
  }
  for (std::size_t i = 0; i < drafts_.size(); ++i) {
    place_stand(drafts_[i], by_stand[i], cruises);
    refuse_same_labels(drafts_[i]);
  }
  return Done{};
}

/// The plots of one stand in order of id; those for thinner trees lie on the others.
void Builder::place_stand(StandDraft& draft, std::vector<PlotPlace*>& places,
                          const std::map<CruiseId, const Cruise*>& cruises) {
  Laid laid;
  for (const PlotPlace* place : places) {
    laid.emplace_back(place->plot, cruises.at(place->plot->cruise));
  }
  const auto pair = pair_of(laid);
  if (pair) take_pair(draft, *laid.front().first, *pair);
  std::map<std::string_view, int> index_of;
  for (std::size_t i = 0; i < places.size(); ++i) {
    PlotPlace& place = *places[i];
    place.thin = pair && same_design(*laid[i].second, *pair->thin);
    if (place.thin) continue;
    if (!pair) take_design(draft, *place.plot, *laid[i].second);
    add_plot(draft, place);
    if (place.index) index_of.emplace(place.plot->label, *place.index);
  }
  for (PlotPlace* place : places) {
    if (!place->thin || !in_sample(*place->plot)) continue;
    place->index = index_of.at(place->plot->label);
    if (taken_at(*place->plot).task == PlotTask::measure) continue;
    draft.blame({ErrorCode::contradiction,
                 "Plot " + place->plot->label + " of the thinner trees is a count point.",
                 plot_path(draft, *place->plot),
                 "Measure the thinner trees on each of its plots."});
  }
}

void Builder::add_plot(StandDraft& draft, PlotPlace& place) {
  StandSample& s = draft.sample;
  s.planned += place.plot->status == PlotStatus::planned ? 1 : 0;
  s.skipped += place.plot->status == PlotStatus::skipped ? 1 : 0;
  if (in_sample(*place.plot)) {
    place.index = static_cast<int>(s.plots.size());
    s.plots.push_back(place.plot);
    s.measured.push_back(taken_at(*place.plot).task == PlotTask::measure);
    s.measure_points += s.measured.back() ? 1 : 0;
  }
  add_counts(draft, place);
}

/// Trees counted without a size: each is the basal area factor, whatever its size.
void Builder::add_counts(StandDraft& draft, const PlotPlace& place) {
  const Plot& plot = *place.plot;
  const PlotTaken taken = taken_at(plot);
  if (taken.counted.empty()) return;
  const auto* point = std::get_if<PointDesign>(&draft.sample.design);
  if (point == nullptr || plot.status != PlotStatus::measured) {
    draft.blame({ErrorCode::contradiction,
                 "Plot " + plot.label +
                     " has trees without a size, and is no count point that was "
                     "worked.",
                 plot_path(draft, plot),
                 "Only a point whose task is count may go without sizes: its basal area factor "
                 "tells the basal area. Give the trees their DBH."});
    return;
  }
  for (const SpeciesCount& one : taken.counted) {
    if (one.stems < 1 || one.stems > kMostStems) {
      draft.blame({ErrorCode::contradiction, "A count stands for no tree, or for too many.",
                   plot_path(draft, plot), "Count 1 to 10,000 trees of a species."});
      return;
    }
    draft.sample.counted.push_back(
        {one.species, *place.index, one.stems, point->baf() * static_cast<double>(one.stems)});
  }
}

void Builder::add_tree(StandDraft& draft, const PlotPlace& place, const Tree& tree) {
  if (place.earlier) return;
  if (place.plot->status != PlotStatus::measured) {
    draft.blame({ErrorCode::contradiction,
                 "Plot " + place.plot->label + " is " + std::string(word_of(place.plot->status)) +
                     " but has trees.",
                 plot_path(draft, *place.plot), "Call it measured, or move its trees."});
    return;
  }
  if (tree.stems < 1 || tree.stems > kMostStems || tree.edge_count < 1 ||
      tree.edge_count > kMostEdgeCount) {
    draft.blame({ErrorCode::contradiction, "A tally record stands for no tree, or for too many.",
                 plot_path(draft, *place.plot),
                 "Give 1 to 10,000 like stems and an edge count of 1, 2 or 4."});
    return;
  }
  const Cruise& cruise = place.thin ? *draft.thin : *draft.cruise;
  const int dbh = tree.facts.dbh.hundredth_mm();
  // A thick tree on the plot for thin ones belongs to the other design, which counts it.
  if (place.thin && dbh >= least_of(*draft.cruise)) return;
  if (dbh < least_of(cruise)) {
    ++draft.sample.below_min;
    return;
  }
  if (draft.fault) return;  // the design may not be fit to compute with
  StandSample& s = draft.sample;
  if (streamed_ && draft.thin == nullptr) {
    s.packed.add(tree, *place.index, place.thin);
    return;
  }
  if (streamed_ && !s.own) s.own = std::make_shared<std::deque<Tree>>();
  const Tree& kept = streamed_ ? s.own->emplace_back(tree) : tree;
  s.trees.push_back(tallied(s, kept, *place.index, place.thin));
}

Status Builder::add_tree(const Tree& tree) {
  if (last_ == nullptr || last_->plot->id != tree.plot) last_ = find(tree.plot);
  if (last_ == nullptr) return unknown("A tree belongs to no plot here.", "tree/" + tree.tag);
  add_tree(drafts_[last_->stand], *last_, tree);
  return Done{};
}

Status Builder::add_trees() {
  for (const Tree& tree : data_->trees) {
    if (const auto added = add_tree(tree); !added) return added;
  }
  return Done{};
}

void Builder::add_regen(StandDraft& draft, const PlotPlace& place, const Regen& regen) {
  if (place.earlier) return;
  const std::string path = plot_path(draft, *place.plot);
  if (!place.index) {
    draft.blame({ErrorCode::contradiction,
                 "Plot " + place.plot->label + " was not visited but has seedlings.", path,
                 "Call it measured, or empty when it holds no tree."});
  } else if (!draft.sample.regen_plot) {
    draft.blame({ErrorCode::missing_value, "Seedlings were counted, but not on how much ground.",
                 path, "Give the cruise the size of its regeneration plot."});
  } else if (taken_at(*place.plot).task == PlotTask::count) {
    draft.blame({ErrorCode::contradiction,
                 "Plot " + place.plot->label + " is a count point, but has seedlings.", path,
                 "Seedlings are counted at measure points: make it one, or take them out."});
  } else if (regen.count < 0) {
    draft.blame({ErrorCode::contradiction, "A seedling count is below 0.", path, "Count again."});
  } else {
    draft.sample.regens.push_back({&regen, *place.index});
  }
}

Status Builder::add_regens() {
  for (const Regen& regen : data_->regens) {
    const PlotPlace* place = find(regen.plot);
    if (place == nullptr) return unknown("A seedling count belongs to no plot here.", "regen");
    add_regen(drafts_[place->stand], *place, regen);
  }
  return Done{};
}

/// Plot by plot and by id within, so that sums add up alike on every device. Mostly they come so.
template <class Record, class Key>
void put_in_order(std::vector<Record>& records, Key key) {
  const auto before = [key](const Record& a, const Record& b) { return key(a) < key(b); };
  if (!std::is_sorted(records.begin(), records.end(), before)) {
    std::stable_sort(records.begin(), records.end(), before);
  }
}

std::vector<CruisedStand> Builder::finish() {
  std::vector<CruisedStand> stands;
  for (StandDraft& draft : drafts_) {
    StandSample& s = draft.sample;
    if (draft.cruise == nullptr) continue;  // not cruised
    if (s.plots.empty()) {
      draft.blame({ErrorCode::no_data, "No plot of stand " + s.stand->name + " was visited yet.",
                   "stand/" + s.stand->name, "Visit its plots; two are the least for an error."});
    }
    if (draft.fault) {
      stands.push_back({s.stand, *draft.fault});
      continue;
    }
    put_in_order(s.trees, [](const TalliedTree& t) { return std::pair(t.plot, t.tree->id); });
    put_in_order(s.regens, [](const CountedRegen& r) { return std::pair(r.plot, r.regen->id); });
    stands.push_back({s.stand, std::move(s)});
  }
  return stands;
}

}  // namespace

bool in_sample(const Plot& plot) {
  return plot.status == PlotStatus::measured || plot.status == PlotStatus::empty;
}

bool same_design(const Cruise& a, const Cruise& b) {
  return a.design == b.design && a.min_dbh == b.min_dbh && a.regen_area == b.regen_area;
}

Result<std::vector<CruisedStand>> cruised_stands(const TractData& data) {
  Builder builder(data);
  if (const auto done = builder.place_plots(); !done) return done.error();
  if (const auto done = builder.add_trees(); !done) return done.error();
  if (const auto done = builder.add_regens(); !done) return done.error();
  return builder.finish();
}

void Tallies::Iterator::look() {
  if (!packed() || at_ >= of_.size()) return;
  const PackedTrees& trees = of_.sample_.packed;
  thin_ = trees.unpack(place(), tree_);
  run_ = trees.run_of(place(), run_);
}

TalliedTree Tallies::Iterator::stood_for() const {
  return tallied(of_.sample_, tree_, of_.sample_.packed.plot_of(run_), thin_);
}

class SampleStream::Impl {
 public:
  explicit Impl(const TractData& data) : builder(data, true) {}
  Builder builder;
};

SampleStream::SampleStream() = default;
SampleStream::~SampleStream() = default;

Status SampleStream::begin(const TractData& data) {
  impl_ = std::make_unique<Impl>(data);
  return impl_->builder.place_plots();
}

Status SampleStream::take(const Tree& tree) { return impl_->builder.add_tree(tree); }

Result<std::vector<CruisedStand>> SampleStream::finish(const TractData& data) {
  impl_->builder.is_now(data);
  if (const auto done = impl_->builder.add_regens(); !done) return done.error();
  return impl_->builder.finish();
}

Result<StandSample> stand_sample(const TractData& data, StandId stand) {
  auto stands = cruised_stands(data);
  if (!stands) return stands.error();
  for (CruisedStand& s : *stands) {
    if (s.stand->id == stand) return std::move(s.sample);
  }
  return Error{ErrorCode::no_data, "The stand has no plots.", "stand",
               "Lay out a cruise in it, or choose a stand that has one."};
}

Result<const Species*> known_species(const SpeciesTable& table, SpeciesCode code,
                                     const StandSample& sample) {
  if (const Species* species = table.find(code)) return species;
  return Error{ErrorCode::unknown_species,
               "Species " + std::to_string(code.fia) + " is not in the species table.",
               "stand/" + sample.stand->name,
               "Add it to the table, or mend the code of the tree that has it."};
}

std::optional<double> plots_to_tile(Acres stand, const Design& design, bool small_plot) {
  const auto* fixed = std::get_if<FixedDesign>(&design);
  if (fixed == nullptr) return std::nullopt;
  const Acres plot = small_plot && fixed->small_area ? *fixed->small_acres() : fixed->acres();
  return stand / plot;
}

std::optional<double> plots_to_tile(const StandSample& sample, bool small_plot) {
  const bool thin = small_plot && sample.thin_design;
  return plots_to_tile(sample.stand->acres, thin ? *sample.thin_design : sample.design, small_plot);
}

}  // namespace oaklight
