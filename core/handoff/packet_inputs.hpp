#pragma once

#include <optional>
#include <span>
#include <string>

#include "core/base/day.hpp"
#include "core/measure/log_rule.hpp"
#include "core/model/local.hpp"
#include "core/release/cautions.hpp"
#include "core/release/plan.hpp"
#include "core/release/season.hpp"

namespace oaklight {

/// The data files behind a packet.
struct PacketTables {
  const SpeciesTable& species;
  const CautionTable& cautions;
  std::span<const SeasonWindow> seasons;
  /// How trees may be dealt with is judged by its rules; nullptr: no ways are printed, and the
  /// owner's packet has no figures of before and after.
  const ReleaseKnowledge* release = nullptr;
  LocalNumbersPtr local = {};  ///< curves and volume table of the place
};

struct PacketOptions {
  Day today;                    ///< printed as the day on which the packet was made
  std::optional<Day> work_day;  ///< planned; nothing: not known, and bats may roost when it comes
  LogRule log_rule = LogRule::international;
  std::string table_versions = {};  ///< of the caution and season tables, as printed
  CautionLimits limits = {};
};

}  // namespace oaklight
