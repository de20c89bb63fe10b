#pragma once

#include <optional>

#include "core/measure/log_rule.hpp"
#include "core/model/local.hpp"
#include "core/model/tree.hpp"

namespace oaklight {

/// As lists print them, so that totals are sums of what is printed.
[[nodiscard]] BoardFeet printed(BoardFeet volume);  ///< whole
[[nodiscard]] Cords printed(Cords volume);          ///< to the hundredth

/// Volumes of one tree, as printed.
struct ListVolumes {
  std::optional<BoardFeet> board_feet;
  std::optional<Cords> cords;  ///< the whole tree as firewood
};

/// By the book (tree_volume.hpp, cords.hpp): no board feet of a tree whose logs nobody counted, and
/// nothing outside its tables.
[[nodiscard]] ListVolumes book_volumes(Dbh dbh, std::optional<int> half_logs, LogRule rule);

/// By the tract's own table, which goes before the book where it reaches. A tree on which no log
/// was seen (half_logs 0) has no board feet, whatever its size. local nullptr: nothing.
[[nodiscard]] ListVolumes local_volumes(const LocalNumbers* local, SpeciesCode species, Dbh dbh,
                                        std::optional<int> half_logs, LogRule rule);

}  // namespace oaklight
