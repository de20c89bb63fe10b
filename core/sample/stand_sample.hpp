#pragma once

#include <algorithm>
#include <cstdint>
#include <deque>
#include <iterator>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "core/model/mark.hpp"

namespace oaklight {

/// One tally record and what it stands for on an average acre of ground around its plot.
struct TalliedTree {
  const Tree* tree = nullptr;
  int plot = 0;          ///< index into StandSample::plots
  TreesPerAcre trees;    ///< its factor, times like stems, times edge count
  SquareFeetPerAcre ba;  ///< of those trees; at a point exactly the basal area factor a stem
  bool on_small_plot = false;
  bool measured = true;  ///< on a plot where all is measured, not at a count point
};

/// Live trees of one species that were counted at a point, and whose sizes nobody took.
struct CountedStems {
  SpeciesCode species;
  int plot = 0;
  int stems = 0;
  SquareFeetPerAcre ba;  ///< the basal area factor a stem
};

/// One regeneration count and its plot.
struct CountedRegen {
  const Regen* regen = nullptr;
  int plot = 0;
};

/// Trees as few bytes each, for estimates of more trees than memory should hold: what an estimate
/// needs of them and no more (no conditions, no note, no id).
class PackedTrees {
 public:
  /// thin    of the design for the thinner trees
  /// assumes trees come plot by plot; species and heights are any, stems and edge count were judged
  void add(const Tree& tree, int plot, bool thin);

  [[nodiscard]] std::size_t size() const { return trees_.size(); }
  [[nodiscard]] int plot_of(std::size_t run) const { return runs_[run].plot; }
  /// The run of trees on one plot in which the tree at this place is; searched from a run before
  /// it.
  [[nodiscard]] std::size_t run_of(std::size_t place, std::size_t from) const {
    while (from + 1 < runs_.size() && runs_[from + 1].first <= place) ++from;
    return from;
  }
  /// Puts the tree at this place into one made by blank(); true when it is of the thinner trees.
  bool unpack(std::size_t place, Tree& tree) const;
  static Tree blank();

 private:
  struct Packed {
    Dbh dbh;
    std::uint16_t species = 0, stems = 0;
    std::int16_t half_logs = -1;  ///< -1: not recorded
    std::uint8_t edge_count = 1;
    bool dead : 1 = false, thin : 1 = false, tall : 1 = false;
    std::uint8_t crown : 4 = 0;  ///< 0: not recorded
  };
  struct Run {
    int plot = 0;
    std::uint32_t first = 0;
  };
  std::uint16_t place_of(SpeciesCode code);

  std::vector<Packed> trees_;
  std::vector<Run> runs_;
  std::vector<SpeciesCode> species_;
  std::vector<std::pair<std::uint32_t, TapedLength>> heights_;  ///< of those that are tall
};

/// The plots of one stand that are in the sample, with all that was tallied on them. Points into
/// the TractData it was made from, which must outlive it.
struct StandSample {
  const Stand* stand = nullptr;
  Design design;
  /// Of the thinner trees, where two designs share the plots: one for trees of thick_from and more
  /// and this one for the rest, at the same places.
  std::optional<Design> thin_design;
  std::optional<Dbh> thick_from;
  std::optional<Dbh> min_dbh;       ///< smallest tree tallied
  std::optional<Acres> regen_plot;  ///< nothing: seedlings were not counted
  std::vector<const Plot*> plots;   ///< measured and empty ones, in order of id
  int planned = 0;                  ///< plots not visited yet
  int skipped = 0;                  ///< plots given up, with a reason
  int below_min = 0;                ///< records under min_dbh: left out, as not all were looked for
  std::vector<TalliedTree> trees;   ///< by plot, then by id; empty where they are packed
  PackedTrees packed;               ///< the same, of a tract that was streamed
  /// Of such a tract, where two designs share the plots: their trees come apart and are sorted.
  std::shared_ptr<std::deque<Tree>> own;
  std::vector<CountedRegen> regens;   ///< by plot, then by id
  std::vector<bool> measured;         ///< by plot: false at a count point of double sampling
  std::vector<CountedStems> counted;  ///< at count points, by plot
  int measure_points = 0;             ///< of the plots, as many as measured says

  [[nodiscard]] int measure_plots() const { return measure_points; }
  /// Some plots are count points.
  [[nodiscard]] bool double_sampled() const {
    return measure_plots() < static_cast<int>(plots.size());
  }
  /// Each live tree of the sample has its size.
  [[nodiscard]] bool all_sized() const { return counted.empty(); }
};

/// The trees of a sample one by one, by plot and then by id, wherever it holds them. A tree lives
/// until the next one is asked for.
class Tallies {
 public:
  /// All of them, or those at these places, in rising order. Both must outlive it.
  explicit Tallies(const StandSample& sample) : sample_(sample), all_(true) {}
  Tallies(const StandSample& sample, std::span<const std::uint32_t> places)
      : sample_(sample), all_(false), places_(places) {}

  [[nodiscard]] std::size_t size() const { return all_ ? trees_of(sample_) : places_.size(); }

  class Iterator {
   public:
    explicit Iterator(const Tallies& of) : of_(of), tree_(PackedTrees::blank()) { look(); }
    TalliedTree operator*() const { return packed() ? stood_for() : from_list(); }
    /// Of the tree alone, not what it stands for.
    [[nodiscard]] const TreeFacts& facts() const {
      return packed() ? tree_.facts : from_list().tree->facts;
    }
    [[nodiscard]] std::uint32_t place() const {
      return of_.all_ ? static_cast<std::uint32_t>(at_) : of_.places_[at_];
    }
    Iterator& operator++() {
      ++at_;
      look();
      return *this;
    }
    friend bool operator==(const Iterator& i, std::default_sentinel_t) {
      return i.at_ == i.of_.size();
    }

   private:
    [[nodiscard]] bool packed() const { return of_.sample_.packed.size() > 0; }
    [[nodiscard]] const TalliedTree& from_list() const { return of_.sample_.trees[place()]; }
    void look();
    /// What the tree stands for is worked out when it is asked for: who sorts trees doesn't ask.
    [[nodiscard]] TalliedTree stood_for() const;

    const Tallies& of_;
    std::size_t at_ = 0;
    std::size_t run_ = 0;
    Tree tree_;
    bool thin_ = false;
  };
  [[nodiscard]] Iterator begin() const { return Iterator(*this); }
  [[nodiscard]] static std::default_sentinel_t end() { return {}; }

 private:
  static std::size_t trees_of(const StandSample& sample) {
    return std::max(sample.trees.size(), sample.packed.size());
  }
  const StandSample& sample_;
  bool all_;
  std::span<const std::uint32_t> places_;
};

/// Whether a plot was worked, with or without trees.
[[nodiscard]] bool in_sample(const Plot& plot);

/// Whether what two cruises found on their plots can be computed as one.
[[nodiscard]] bool same_design(const Cruise& a, const Cruise& b);

/// A stand in which a cruise has plots.
struct CruisedStand {
  const Stand* stand = nullptr;
  Result<StandSample> sample;
};

/// The samples of all stands with plots, in the order of data.stands; the others are not cruised.
/// Same answer for any order of records in data.
///
/// errors   of the whole: unknown_reference for a plot without its stand or cruise, or a record
///          without its plot; duplicate for two plots of one id.
///          of a stand: no_data when no plot was visited; mixed_designs when its plots differ in
///          design, smallest tree or regeneration plot, unless two designs with different smallest
///          trees were worked at the same places (plots of the same labels, no later visit): then a
///          tree counts in the design of the thicker trees from its smallest tree up, and below
///          that in the other one; out_of_range or missing_value for a design
///          that can't be computed with; duplicate for two plots of one label (two visits?);
///          contradiction for records on a plot that is planned, skipped or (trees only) empty, for
///          seedlings at a count point, for trees counted without a size elsewhere than at a count
///          point of point sampling, for stems or an edge count that no tally gives, or a count
///          below 0; missing_value for seedlings without the size of their plot
/// assumes  plots were laid out level (distances corrected for slope in the field); a measured plot
///          without a tree counts like an empty one
Result<std::vector<CruisedStand>> cruised_stands(const TractData& data);

/// The same from trees that come one by one and are not kept: their samples are packed.
class SampleStream {
 public:
  /// data has all but the trees; what its lists hold must outlive the samples. Errors: as
  /// cruised_stands.
  Status begin(const TractData& data);
  /// Trees come plot by plot in order of the plots' ids, and by id within. Errors: as above.
  Status take(const Tree& tree);
  /// data as before; it may have been moved.
  Result<std::vector<CruisedStand>> finish(const TractData& data);

  SampleStream();
  ~SampleStream();
  SampleStream(const SampleStream&) = delete;
  SampleStream& operator=(const SampleStream&) = delete;

 private:
  class Impl;
  std::unique_ptr<Impl> impl_;
};

/// The sample of one stand. Errors: as cruised_stands; no_data also when it has no plots.
Result<StandSample> stand_sample(const TractData& data, StandId stand);

/// The row of a tree's or a seedling's species. Errors: unknown_species.
Result<const Species*> known_species(const SpeciesTable& table, SpeciesCode code,
                                     const StandSample& sample);

/// Fixed plots that would tile the stand: its acres over those of the plot, the small one for a
/// group with trees from it. Nothing for points, which have no such number.
[[nodiscard]] std::optional<double> plots_to_tile(const StandSample& sample, bool small_plot);
[[nodiscard]] std::optional<double> plots_to_tile(Acres stand, const Design& design,
                                                  bool small_plot);

}  // namespace oaklight
