#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.hpp"
#include "core/model/mark.hpp"

namespace oaklight {

/// How hard a caution binds: a stop takes the tree off the list of trees to cut by hand.
enum class Severity { note, extra_care, stop };
template <>
inline constexpr auto kWords<Severity> = std::to_array<Word<Severity>>(
    {{Severity::note, "note"}, {Severity::extra_care, "extra_care"}, {Severity::stop, "stop"}});

/// One caution that applies to a tree or to the whole job; a row of forms/hazard_cautions.csv.
struct Caution {
  std::string code;  ///< stable, e.g. "DEAD_ASH"
  Severity severity = Severity::note;
  std::string text;      ///< one or two plain sentences for the person with the saw
  std::string evidence;  ///< "retrieved", "from memory" or "common practice"
};

/// A caution with what stands behind it.
struct CautionEntry {
  Caution caution;
  std::string observation;   ///< what a person sees
  std::string applies_when;  ///< the rule in words; the program's own rule is in caution_rules.cpp
  std::string source;
  std::string read_on;  ///< month in which the source was read, "2026-11"
};

/// The rows of forms/hazard_cautions.csv or of a tract's own copy of it: texts and severities may
/// be edited, the set of codes is the program's.
class CautionTable {
 public:
  /// errors   bad_csv, not_a_choice, missing_value, duplicate; also missing_value when a code that
  ///          the program may need has no row, and not_a_choice for a code that it has no rule for.
  ///          `where` is "hazard_cautions.csv:line:column"
  static Result<CautionTable> read(std::string_view csv);

  /// In table order, in which cautions of one severity are printed.
  [[nodiscard]] const std::vector<CautionEntry>& entries() const { return entries_; }
  /// The entry of a code of caution_rules(); every table has it.
  [[nodiscard]] const CautionEntry& entry(std::string_view code) const;
  /// The month of the oldest reading in the table.
  [[nodiscard]] std::string oldest_reading() const;

 private:
  std::vector<CautionEntry> entries_;
};

/// How the program comes to know whether a caution applies.
enum class CautionUse {
  tree,    ///< judged for each tree from its record
  job,     ///< judged once for the whole job
  day,     ///< always printed: for the start of each day
  look,    ///< needs a fact that nobody records yet: the reader is told to look for it
  unused,  ///< belongs to work that the program does not plan
};

/// A code of the program.
struct CautionRule {
  std::string_view code;
  CautionUse use;
  std::string_view reason;  ///< look and unused: why no record can show it
};

/// Every code, each once.
[[nodiscard]] std::span<const CautionRule> caution_rules();

/// Cut-offs of the cautions. The user's to change: a tract's own are read from its rule file
/// (ReleaseSettings); these are the ones that come with the program (common practice).
struct CautionLimits {
  double lengths = 2.0;      ///< tree lengths of every safe distance (federal logging rule)
  Feet default_height{100};  ///< of a tree whose height was not measured
  Feet stream_buffer{50};    ///< common zone of eastern states (review of 2004, retrieved)
  Feet line{200};            ///< Maine's advice on marking lines (retrieved)
  Inches large{18};
  Inches very_large{24};
  Percent sloped{15};
  Percent steep{35};
  Percent ash_sick{10};         ///< dieback
  Percent ash_dead{50};         ///< dieback; live_crown is a share of height and says nothing here
  Percent snag_live_crown{10};  ///< agency guideline for Indiana bat summer habitat (retrieved)
};

/// Another tree that is a danger to whoever works near it.
struct NearTree {
  Feet distance;               ///< 0 when it stands on the same card and nobody taped it
  std::optional<Feet> height;  ///< nothing: not measured
  std::string name = {};       ///< to find it by: "248", "a tallied tree of plot 12"
};

/// What is around a tree. Nothing is "not known", which never counts as clear: NO_PLACE and
/// NO_SLOPE say so.
struct Surroundings {
  bool unplaced = false;  ///< lines are mapped, and nobody recorded where the tree stands
  std::optional<Percent> slope;
  std::optional<Feet> stream;            ///< nearest mapped stream
  std::optional<Feet> unconfirmed_line;  ///< nearest neighbour line that nobody confirmed
  std::optional<Feet> way;               ///< nearest mapped road or trail
  std::optional<Feet> power_line;
  std::vector<NearTree> dead_ashes;
  std::vector<NearTree> hung_trees;
  bool loose_limb_beside = false;  ///< on a tree whose crown touches this one
};

/// What is to be done to a tree.
struct TreePlan {
  Method method = Method::none;
  bool bats_may_roost = true;  ///< the work falls into a bat window, or its day is not known
};

/// One tree, as its cautions are judged.
struct TreeCase {
  const TreeFacts& facts;
  const Species& species;  ///< of the facts
  const Surroundings& around;
  const TreePlan& plan;
  CautionLimits limits = {};
};

/// Dead, or over half of the crown dead.
[[nodiscard]] bool is_dead_ash(const TreeFacts& facts, const Species& species,
                               const CautionLimits& limits = {});

/// Two lengths of a tree (limits.lengths), rounded up to whole feet; of the default height when it
/// was not measured.
[[nodiscard]] Feet two_lengths(std::optional<Feet> height, const CautionLimits& limits = {});

/// Every caution that applies to the tree: stops first, then extra care, then notes, each in table
/// order; of the stops, wires, roads and buildings come first. Two or more of extra care without a
/// stop add the stop MULTI in front (common practice).
[[nodiscard]] std::vector<Caution> every_caution_for(const TreeCase& tree,
                                                     const CautionTable& table);

/// The same, cut short: every stop, and at most three of the others, since a longer list teaches
/// people to skip it (common practice).
[[nodiscard]] std::vector<Caution> cautions_for(const TreeCase& tree, const CautionTable& table);

/// What the cautions of the whole job are judged by.
struct JobFacts {
  std::string state;             ///< two letters; "" unknown
  bool oak_wilt_season = false;  ///< the work falls into an oak wilt window of the state
  bool keep_trees = false;       ///< trees to keep are listed
  bool firewood = false;         ///< firewood is listed
  bool ash = false;              ///< ash is listed
  bool invasive_plants = false;  ///< recorded anywhere in the tract
};

/// The cautions of the job and of each day's start: stops first, then in table order.
[[nodiscard]] std::vector<Caution> job_cautions(const JobFacts& job, const CautionTable& table);

/// Hazards that no record can show, as a person would see them ("Bent sapling or limb under load").
[[nodiscard]] std::vector<std::string> hazards_to_look_for(const CautionTable& table);

}  // namespace oaklight
