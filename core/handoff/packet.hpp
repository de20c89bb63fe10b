#pragma once

#include <array>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/release/cautions.hpp"
#include "core/release/work.hpp"

namespace oaklight {

struct OwnerPart;

/// Whom a packet is for. The first two are the destinations of marks; whoever kills trees standing
/// is told by the verdict, and the owner gets everything.
enum class PacketReader { logger, firewood, standing, owner };
template <>
inline constexpr auto kWords<PacketReader> =
    std::to_array<Word<PacketReader>>({{PacketReader::logger, "logger"},
                                       {PacketReader::firewood, "firewood"},
                                       {PacketReader::standing, "standing"},
                                       {PacketReader::owner, "owner"}});

/// How and when a tree that goes is dealt with, by the rules.
struct WorkNotes {
  std::vector<Way> ways;        ///< that the rules allow, the advised one first
  std::string how;              ///< the same in words
  bool herbicide = false;       ///< the rules do not forbid it; the label and the licence decide
  std::string herbicide_words;  ///< why, or why not; never a dose
  bool held = false;            ///< a season window holds the work on the day asked about
  std::string when;
};

/// One tree as a packet shows it.
struct PacketTree {
  std::string tag;
  std::string stand;
  std::string species;  ///< common name
  Dbh dbh;
  Verdict verdict = Verdict::keep;
  Method method = Method::none;
  Product product = Product::none;
  std::optional<BoardFeet>
      board_feet;                 ///< by the packet's log rule; nothing: no log heights recorded
  std::optional<Cords> cords;     ///< nothing: outside the table
  std::string reason;             ///< of the decision; in `others`: why it is not this reader's
  std::vector<Caution> cautions;  ///< every stop first, then at most three
  std::optional<Position> position;
  bool crop = false;
  std::optional<Reader> destination = {};  ///< of a tree that is felled: whose list it goes on
  std::optional<WorkNotes> work = {};      ///< of a tree that goes; nothing: not judged
};

/// What one product amounts to over the trees listed: sawlogs in board feet, the rest in cords.
struct ProductTotal {
  Product product = Product::none;
  int trees = 0;
  std::optional<BoardFeet> board_feet;  ///< nothing: no tree of it has a volume, or not a sawlog
  std::optional<Cords> cords;
  int without_volume = 0;  ///< trees whose volume is not in the sums
};

/// What one product amounts to in one group of trees: a species, or a stand.
struct GroupTotal {
  std::string name;
  ProductTotal total;
};

/// A fact under a heading, e.g. {"Meet the ambulance at", "the gate on the county road"}. A fact
/// that nobody recorded says so in its text.
struct PacketFact {
  std::string label;
  std::string text;
};

/// A span of the year in which cutting is to be avoided or checked.
struct SeasonNote {
  std::string issue;    ///< "oak wilt", "bats", ...
  std::string from_to;  ///< "Apr 1 - Jul 31"
  std::string text;
  std::string evidence;
};

/// Everything that one packet says, as values; paper draws it, the CSV writes its list.
/// Order inside is the order on paper: cautions before any tree.
struct Packet {
  PacketReader reader = PacketReader::logger;
  Tract tract;
  std::string made_on;        ///< ISO 8601 day
  std::string rule_versions;  ///< of the rule and caution files behind it
  std::string log_rule;       ///< name of the board foot rule used
  /// By which volumes the trees of this reader were reckoned, "Volumes of 33 trees by the local
  /// table [local_volume] and of 19 by the book."; "" where no local table is in force.
  std::string volumes_by;
  std::vector<PacketFact> emergency;          ///< what to tell 911, ready to read out
  std::vector<std::string> before_you_start;  ///< plain sentences, most important first
  std::vector<Caution> job_cautions;          ///< that hold for the whole job, stops first
  std::vector<std::string> look_for;  ///< hazards that no record can show: look for them yourself
  std::vector<SeasonNote> seasons;    ///< those that hold cutting back come first
  std::string season_advice;          ///< one sentence: what holds now and the next clear day
  std::vector<PacketTree> cut;        ///< trees this reader deals with: fells, or kills standing;
                                      ///< owner: all that go
  std::vector<PacketTree> trained;    ///< of the same work, and too risky to do from a list.
                                      ///< Firewood cutter: leave these alone. All others: a named,
                                      ///< trained person clears each one first
  std::vector<PacketTree> keep;       ///< must not be cut: crop trees first, then other keeps
  std::vector<PacketTree> others;     ///< tagged trees of other work (killed standing, another
                                      ///< reader's, to be looked at again): not this reader's;
                                      ///< owner: trees on which nothing is decided
  std::vector<ProductTotal> totals;   ///< over cut
  std::vector<ProductTotal> totals_if_cleared;  ///< over trained, if each is cleared; a firewood
                                                ///< cutter has none
  std::vector<GroupTotal> by_species;           ///< over cut; sums to totals
  std::vector<GroupTotal> by_stand;             ///< the same; wood is piled stand by stand
  std::vector<Stand> stands;  ///< outlines for the map; only stands with listed trees
  std::vector<MapLine> lines;
  std::string list_csv;                         ///< the list as RFC 4180 text
  std::string list_sha256;                      ///< of list_csv, printed on each page
  std::shared_ptr<const OwnerPart> owner = {};  ///< before and after; only for the owner
};

/// One of the four lists of a packet.
struct PacketList {
  std::string_view name;  ///< in files: "cut", "trained_feller_only", "keep", "not_yours" ...
  const std::vector<PacketTree>* trees = nullptr;
  bool works = false;  ///< this reader may come to deal with its trees
};

/// The lists in the order of paper and files: cut, trained, keep, others. Valid while the packet
/// lives.
[[nodiscard]] std::array<PacketList, 4> lists_of(const Packet& packet);

/// The destination of marks that are for this reader; nothing: not told by destination.
[[nodiscard]] std::optional<Reader> destination_of(PacketReader reader);

}  // namespace oaklight
