#pragma once

#include <string>
#include <vector>

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

}  // namespace oaklight
