#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/handoff/packet_inputs.hpp"
#include "core/measure/stump_dbh.hpp"
#include "core/release/settings.hpp"
#include "core/sample/audit.hpp"

namespace oaklight {

/// How a tree of the list was found after the cut.
enum class ListState {
  done,      ///< as the list says
  standing,  ///< nothing was done to it
  hung,      ///< cut and not down
  unclear,   ///< the findings contradict each other or the list
  not_seen,  ///< nobody looked yet
};
template <>
inline constexpr auto kWords<ListState> =
    std::to_array<Word<ListState>>({{ListState::done, "done"},
                                    {ListState::standing, "standing"},
                                    {ListState::hung, "hung"},
                                    {ListState::unclear, "unclear"},
                                    {ListState::not_seen, "not_seen"}});

/// A tree that was to be felled or killed standing.
struct ListedTree {
  WalkTreeId tree;
  std::string tag, stand, species;
  Dbh dbh;
  Verdict verdict = Verdict::take;
  std::optional<Reader> destination;
  ListState state = ListState::not_seen;
  int findings = 0;               ///< how often somebody noted it
  std::vector<Caution> cautions;  ///< stops first; asked where it may still stand
  std::optional<Position> position;
  std::string note;
};

/// A figure from an estimate, with its ends.
template <class Q>
struct Between {
  Q low{}, likely{}, high{};
};

/// A tree that was cut and was not to be.
struct UnmarkedTree {
  std::string tag;  ///< "" when it wore none
  std::string stand, species;
  bool leave_tree = false;  ///< the list says that it stays
  bool crop = false;
  bool hung = false;
  std::optional<Between<Inches>> dbh;            ///< nothing: no diameter was read
  bool measured = false;                         ///< dbh is the tape's, from the marking walk
  bool height_assumed = false;                   ///< of the stump, for the estimate
  bool beyond_data = false;                      ///< of the estimate
  std::optional<int> half_logs;                  ///< measured, or of trees like it
  std::optional<Between<BoardFeet>> board_feet;  ///< nothing: no saw log, or no log heights known
  std::optional<Between<Cords>> cords;           ///< the whole tree as firewood; nothing: outside
                                                 ///< the table
  bool local_board_feet = false;                 ///< by the tract's own volume table
  bool local_cords = false;                      ///< likewise
  std::optional<Position> position;
  std::string seen_on, note;
};

/// A tree to be left that was wounded.
struct HurtTree {
  std::string tag, stand, species;
  bool crop = false;
  std::optional<Wound> wound;  ///< nothing: not recorded
  std::optional<WoundPlace> place;
  std::optional<Position> position;
  std::string seen_on, note;
  /// Large by R7.44, or broken: it counts against the limit.
  [[nodiscard]] bool badly() const { return wound == Wound::large || wound == Wound::broken; }
};

/// Damage among the trees of the walk that were to be left, against what was agreed.
struct DamageFigure {
  int left = 0;   ///< trees that were to be left
  int cut = 0;    ///< of them, felled all the same
  int badly = 0;  ///< of them, badly hurt
  int other = 0;  ///< of them, hurt less or wound not recorded
  Percent limit;
  std::string rule;  ///< id, e.g. "R7.42"
  /// Cut or badly hurt, of those to be left; nothing when there are none.
  [[nodiscard]] std::optional<Percent> share() const {
    if (left == 0) return std::nullopt;
    return Percent{100.0 * (cut + badly) / left};
  }
  [[nodiscard]] bool over() const { return share() && *share() > limit; }
};

/// A tag that somebody noted more than once.
struct TagTwice {
  std::string tag;
  std::vector<Finding> findings;  ///< in the order in which they were noted
};

/// What was cut without a mark, together.
struct UnmarkedTotals {
  int trees = 0;
  Between<BoardFeet> board_feet;
  int with_board_feet = 0;
  int local_board_feet = 0;  ///< of them, by the tract's own volume table
  Between<Cords> cords;      ///< all of it as firewood: not to be added to the board feet
  int with_cords = 0;
  int local_cords = 0;  ///< likewise
  int without_dbh = 0;
};

/// The list against what was found. Everything a page or a screen says of it.
struct StumpCheck {
  Tract tract;
  std::string made_on;   ///< ISO 8601 day
  std::string log_rule;  ///< of the board feet
  std::string rule_version;
  std::vector<std::string> before_you_go;  ///< plain sentences, most important first
  std::vector<Caution> cautions;           ///< of walking a fresh cut
  std::vector<ListedTree> listed;          ///< hung, standing, unclear, not seen, done; then by tag
  std::vector<UnmarkedTree> unmarked;      ///< crop trees first, then other leave trees
  std::vector<HurtTree> hurt;              ///< badly hurt first
  std::vector<TagTwice> twice;
  UnmarkedTotals unmarked_totals;
  /// Which of them are by the tract's own table, "By the local table (source) [local_volume]: board
  /// feet of 2 trees, cords of 3. All others by the book."; "" where none are.
  std::string volumes_by;
  DamageFigure crop_damage;  ///< among crop trees
  DamageFigure left_damage;  ///< among all trees of the walk to be left
  int hurt_without_tag = 0;  ///< trees that no share can count: nobody knows of how many

  [[nodiscard]] int of(ListState state) const;
  [[nodiscard]] int looked_at() const;
  /// Done, of those looked at; nothing when nobody looked.
  [[nodiscard]] std::optional<Percent> share_done() const;
};

/// Holds the marked list against the findings.
///
/// options  limits, log rule and day, as for a packet
/// errors   nothing_marked when no tree is to be felled or killed; unknown_species;
///          unknown_reference; as cautions_of_walk
Result<StumpCheck> make_stump_check(const TractData& data, const PacketTables& tables,
                                    const DamageSettings& limits, const PacketOptions& options);

/// An audit of the list by sample.
struct StumpAudit {
  AuditPlan plan;
  Percent bound;
  Confidence confidence;
  int list = 0;
  std::uint64_t seed = 0;
  std::vector<std::string> tags;      ///< to look at, in walking order
  std::vector<std::string> not_seen;  ///< of them, nobody looked yet
  int wrong = 0;                      ///< of them, standing, hung or unclear
  /// Once all were looked at: the greatest wrong share of the whole list, with the confidence.
  std::optional<Percent> greatest_share;
  [[nodiscard]] bool holds() const { return greatest_share && *greatest_share <= bound; }
};

/// Draws the sample from the listed trees by their tags, whatever the order of the check, and tells
/// what the findings so far say of it.
///
/// look_at  sample size; nothing: as audit_plan asks
/// errors   of audit_plan; out_of_range when look_at is not in 1 .. list
Result<StumpAudit> audit_stumps(const StumpCheck& check, int allowed, Percent bound,
                                Confidence confidence, std::uint64_t seed,
                                std::optional<int> look_at = {});

/// The day as a number, 20270220: a seed that nobody chose, and that the report keeps.
[[nodiscard]] std::uint64_t audit_seed(Day day);

/// The check as RFC 4180 text: a row for each listed, unmarked and hurt tree.
[[nodiscard]] std::string stump_check_csv(const StumpCheck& check);

}  // namespace oaklight
