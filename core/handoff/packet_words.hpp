#pragma once

#include <span>

#include "core/handoff/packet.hpp"
#include "core/release/season.hpp"

namespace oaklight {

/// What to tell 911, in the order in which it is asked for. A fact that nobody recorded says so.
[[nodiscard]] std::vector<PacketFact> emergency_facts(const Tract& tract);

/// A danger that somebody recorded of trees on the list.
struct ListedDanger {
  std::string seen;  ///< what a person sees, as the table of cautions has it
  Severity severity = Severity::extra_care;
  std::vector<std::string> tags;
};

/// What the sentences before the lists depend on.
struct StartFacts {
  PacketReader reader = PacketReader::logger;
  bool demo = false;
  std::string held_by;  ///< seasons that hold cutting back on the day of the work; "" none
  int trained = 0;      ///< trees on the list that is not to be cut from
  int unplaced = 0;     ///< listed trees without a position
  bool lines = false;   ///< neighbour lines are on the map
  bool lines_confirmed = false;
  std::vector<ListedDanger> on_list = {};  ///< in the order of the table
  std::string cautions_read_on;            ///< month of the oldest reading, "2026-11"
};

/// Plain sentences to read before the first cut, most important first.
[[nodiscard]] std::vector<std::string> before_you_start(const StartFacts& facts);

/// The windows that a packet prints: those that hold cutting back, then those to be told.
[[nodiscard]] std::vector<SeasonNote> season_notes(std::span<const SeasonWindow> of_state);

/// The seasons that hold cutting back on a day, in words; "" when none does.
[[nodiscard]] std::string seasons_held(std::span<const SeasonWindow> of_state, Day day);

/// What holds on the day of the work, or, where none was given, on the day of printing; and when
/// that changes.
[[nodiscard]] std::string season_advice(std::span<const SeasonWindow> of_state, bool state_known,
                                        std::optional<Day> work_day, Day today);

}  // namespace oaklight
