#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/release/cautions.hpp"

namespace oaklight {

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
};

/// What one product amounts to over the trees listed: sawlogs in board feet, the rest in cords.
struct ProductTotal {
  Product product = Product::none;
  int trees = 0;
  std::optional<BoardFeet> board_feet;  ///< nothing: no tree of it has a volume, or not a sawlog
  std::optional<Cords> cords;
  int without_volume = 0;  ///< trees whose volume is not in the sums
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
  Reader reader = Reader::logger;
  Tract tract;
  std::string made_on;                        ///< ISO 8601 day
  std::string rule_versions;                  ///< of the rule and caution files behind it
  std::string log_rule;                       ///< name of the board foot rule used
  std::vector<PacketFact> emergency;          ///< what to tell 911, ready to read out
  std::vector<std::string> before_you_start;  ///< plain sentences, most important first
  std::vector<Caution> job_cautions;          ///< that hold for the whole job, stops first
  std::vector<std::string> look_for;  ///< hazards that no record can show: look for them yourself
  std::vector<SeasonNote> seasons;    ///< those that hold cutting back come first
  std::string season_advice;          ///< one sentence: what holds now and the next clear day
  std::vector<PacketTree> cut;        ///< trees this reader is to cut
  std::vector<PacketTree> trained;    ///< marked for this reader, and too risky to cut from a list.
                                      ///< Logger: a named, trained person clears each one first.
                                      ///< Firewood cutter: leave these alone
  std::vector<PacketTree> keep;       ///< must not be cut: crop trees first, then other keeps
  std::vector<PacketTree> others;     ///< tagged trees of other work (killed standing, another
                                   ///< reader's, to be looked at again): not this reader's to cut
  std::vector<ProductTotal> totals;             ///< over cut
  std::vector<ProductTotal> totals_if_cleared;  ///< logger: over trained, if each is cleared
  std::vector<Stand> stands;  ///< outlines for the map; only stands with listed trees
  std::vector<MapLine> lines;
  std::string list_csv;     ///< the list as RFC 4180 text
  std::string list_sha256;  ///< of list_csv, printed on each page
};

}  // namespace oaklight
