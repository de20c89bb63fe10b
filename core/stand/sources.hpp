#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "core/measure/log_rule.hpp"
#include "core/model/words.hpp"

namespace oaklight {

/// How well we know that a source says what we say it does.
enum class SourceStatus {
  retrieved,    ///< read in the source, or checked against values that it prints
  derived,      ///< follows from definitions or geometry
  from_memory,  ///< recalled, not read: check it before quoting it
  common_practice,
};
template <>
inline constexpr auto kWords<SourceStatus> =
    std::to_array<Word<SourceStatus>>({{SourceStatus::retrieved, "retrieved"},
                                       {SourceStatus::derived, "derived"},
                                       {SourceStatus::from_memory, "from memory"},
                                       {SourceStatus::common_practice, "common practice"}});

/// One work that a figure leans on.
struct Citation {
  std::string_view work;    ///< in the very words of the header that names it
  std::string_view header;  ///< of the code that computes by it, "core/measure/stocking.hpp"
  SourceStatus status = SourceStatus::from_memory;
  std::string_view doubt;  ///< what is known of how far it can be trusted; "" nothing more
};

/// How one figure of a stand is made, for those who want to check it.
struct SourceNote {
  std::string_view key;  ///< stable: "stocking"
  std::string_view name;
  std::string_view how;    ///< the formula in words
  std::string_view range;  ///< where it holds, and where it does not; "" said nowhere
  std::vector<Citation> citations;
};

/// All notes, in the order in which the figures are shown. The one place for them: screens, the
/// command line and reports print these.
std::span<const SourceNote> source_notes();

/// nullptr when no figure has this key.
[[nodiscard]] const SourceNote* source_note(std::string_view key);

/// The key of a log rule's note.
[[nodiscard]] std::string_view source_key(LogRule rule);

}  // namespace oaklight
