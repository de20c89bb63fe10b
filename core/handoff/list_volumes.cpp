#include "core/handoff/list_volumes.hpp"

#include <cmath>

#include "core/measure/cords.hpp"
#include "core/measure/local_curves.hpp"
#include "core/measure/tree_volume.hpp"

namespace oaklight {

BoardFeet printed(BoardFeet volume) { return BoardFeet{std::round(volume.value)}; }
Cords printed(Cords volume) { return Cords{std::round(volume.value * 100.0) / 100.0}; }

ListVolumes book_volumes(Dbh dbh, std::optional<int> half_logs, LogRule rule) {
  ListVolumes volumes;
  if (half_logs) {
    if (const auto board_feet = tree_board_feet(rule, dbh, *half_logs)) {
      volumes.board_feet = printed(*board_feet);
    }
  }
  if (const auto cords = firewood_cords(dbh)) volumes.cords = printed(*cords);
  return volumes;
}

ListVolumes local_volumes(const LocalNumbers* local, SpeciesCode species, Dbh dbh,
                          std::optional<int> half_logs, LogRule rule) {
  ListVolumes volumes;
  if (local == nullptr) return volumes;
  const LocalVolume own = local_volume(local->volumes, species.fia, dbh.inches(), rule);
  if (own.board_feet && half_logs != 0) volumes.board_feet = printed(*own.board_feet);
  if (own.cords) volumes.cords = printed(*own.cords);
  return volumes;
}

}  // namespace oaklight
