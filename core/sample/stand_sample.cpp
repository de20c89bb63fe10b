#include "core/sample/stand_sample.hpp"

#include <algorithm>
#include <map>
#include <utility>

#include "core/measure/basal_area.hpp"
#include "core/measure/plot_geometry.hpp"
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
};

/// One stand while its sample is put together. The first fault found is the one told.
struct Draft {
  StandSample sample;
  std::optional<Error> fault;
  const Cruise* cruise = nullptr;  ///< of its first plot

  void blame(Error error) {
    if (!fault) fault = std::move(error);
  }
};

std::string plot_path(const Draft& draft, const Plot& plot) {
  return "stand/" + draft.sample.stand->name + "/plot/" + plot.label;
}

std::optional<Acres> regen_plot(const Cruise& cruise) {
  if (!cruise.regen_area) return std::nullopt;
  const UnitSystem system = std::visit([](const auto& d) { return d.system; }, cruise.design);
  return system == UnitSystem::us
             ? Acres{*cruise.regen_area}
             : to_acres(SquareMetres{*cruise.regen_area * kSquareMetresPerHectare});
}

bool same_design(const Cruise& a, const Cruise& b) {
  return a.design == b.design && a.min_dbh == b.min_dbh && a.regen_area == b.regen_area;
}

bool in_sample(const Plot& plot) {
  return plot.status == PlotStatus::measured || plot.status == PlotStatus::empty;
}

/// Takes over the design of the stand's first plot, and holds the others against it.
void take_design(Draft& draft, const Plot& plot, const Cruise& cruise) {
  StandSample& s = draft.sample;
  if (draft.cruise == nullptr) {
    draft.cruise = &cruise;
    s.design = cruise.design;
    s.min_dbh = cruise.min_dbh;
    s.regen_plot = regen_plot(cruise);
    if (const auto checked = check_design(s.design); !checked) draft.blame(checked.error());
    if (s.regen_plot && !(s.regen_plot->value > 0.0)) {
      draft.blame({ErrorCode::out_of_range, "The regeneration plot has no area.", "regen_plot",
                   "Give its size, e.g. 0.001 acre, or leave it out."});
    }
  } else if (!same_design(*draft.cruise, cruise)) {
    draft.blame({ErrorCode::mixed_designs,
                 "The plots of stand " + s.stand->name + " were laid out by different designs.",
                 plot_path(draft, plot),
                 "Estimate one design at a time: give each its own stand, or leave one out."});
  }
}

/// Two plots of one label in one stand are one plot seen twice, by mistake or in cruises without a
/// day: as two they would claim an error that is too small.
void refuse_same_labels(Draft& draft) {
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

class Builder {
 public:
  explicit Builder(const TractData& data) : data_(data), drafts_(data.stands.size()) {
    for (std::size_t i = 0; i < drafts_.size(); ++i) drafts_[i].sample.stand = &data.stands[i];
  }

  Status place_plots();
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
  void add_tree(Draft& draft, const PlotPlace& place, const Tree& tree);
  void add_regen(Draft& draft, const PlotPlace& place, const Regen& regen);

  const TractData& data_;
  std::vector<Draft> drafts_;
  std::map<PlotId, PlotPlace> places_;  // in order of id: so are the plots of each stand
};

Status Builder::place_plots() {
  std::map<StandId, std::size_t> stands;
  for (std::size_t i = 0; i < data_.stands.size(); ++i) stands.emplace(data_.stands[i].id, i);
  std::map<CruiseId, const Cruise*> cruises;
  for (const Cruise& c : data_.cruises) cruises.emplace(c.id, &c);
  for (const Plot& plot : data_.plots) {
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
  const VisitsLeftOut left_out = visits_left_out(data_);
  for (auto& [id, place] : places_) {
    Draft& draft = drafts_[place.stand];
    place.earlier = left_out.contains({place.plot->stand, place.plot->cruise});
    if (place.earlier) continue;
    take_design(draft, *place.plot, *cruises.at(place.plot->cruise));
    draft.sample.planned += place.plot->status == PlotStatus::planned ? 1 : 0;
    draft.sample.skipped += place.plot->status == PlotStatus::skipped ? 1 : 0;
    if (!in_sample(*place.plot)) continue;
    place.index = static_cast<int>(draft.sample.plots.size());
    draft.sample.plots.push_back(place.plot);
  }
  for (Draft& draft : drafts_) refuse_same_labels(draft);
  return Done{};
}

void Builder::add_tree(Draft& draft, const PlotPlace& place, const Tree& tree) {
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
  if (draft.sample.min_dbh &&
      tree.facts.dbh.hundredth_mm() < draft.sample.min_dbh->hundredth_mm()) {
    ++draft.sample.below_min;
    return;
  }
  if (draft.fault) return;  // the design may not be fit to compute with
  TalliedTree t{.tree = &tree, .plot = *place.index};
  t.trees = trees_stood_for(draft.sample.design, tree);
  if (const auto* point = std::get_if<PointDesign>(&draft.sample.design)) {
    t.ba = point->baf() * (static_cast<double>(tree.stems) * tree.edge_count);
  } else {
    const auto& fixed = std::get<FixedDesign>(draft.sample.design);
    t.ba = SquareFeetPerAcre{t.trees.value * basal_area(tree.facts.dbh.inches()).value};
    t.on_small_plot =
        fixed.small_below && tree.facts.dbh.hundredth_mm() < fixed.small_below->hundredth_mm();
  }
  draft.sample.trees.push_back(t);
}

Status Builder::add_trees() {
  for (const Tree& tree : data_.trees) {
    const PlotPlace* place = find(tree.plot);
    if (place == nullptr) return unknown("A tree belongs to no plot here.", "tree/" + tree.tag);
    add_tree(drafts_[place->stand], *place, tree);
  }
  return Done{};
}

void Builder::add_regen(Draft& draft, const PlotPlace& place, const Regen& regen) {
  if (place.earlier) return;
  const std::string path = plot_path(draft, *place.plot);
  if (!place.index) {
    draft.blame({ErrorCode::contradiction,
                 "Plot " + place.plot->label + " was not visited but has seedlings.", path,
                 "Call it measured, or empty when it holds no tree."});
  } else if (!draft.sample.regen_plot) {
    draft.blame({ErrorCode::missing_value, "Seedlings were counted, but not on how much ground.",
                 path, "Give the cruise the size of its regeneration plot."});
  } else if (regen.count < 0) {
    draft.blame({ErrorCode::contradiction, "A seedling count is below 0.", path, "Count again."});
  } else {
    draft.sample.regens.push_back({&regen, *place.index});
  }
}

Status Builder::add_regens() {
  for (const Regen& regen : data_.regens) {
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
  for (Draft& draft : drafts_) {
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

Result<std::vector<CruisedStand>> cruised_stands(const TractData& data) {
  Builder builder(data);
  if (const auto done = builder.place_plots(); !done) return done.error();
  if (const auto done = builder.add_trees(); !done) return done.error();
  if (const auto done = builder.add_regens(); !done) return done.error();
  return builder.finish();
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

std::optional<double> plots_to_tile(const StandSample& sample, bool small_plot) {
  const auto* fixed = std::get_if<FixedDesign>(&sample.design);
  if (fixed == nullptr) return std::nullopt;
  const Acres plot = small_plot && fixed->small_area ? *fixed->small_acres() : fixed->acres();
  return sample.stand->acres / plot;
}

}  // namespace oaklight
