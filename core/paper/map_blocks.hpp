#pragma once

#include <QRectF>
#include <QSizeF>
#include <QString>
#include <vector>

#include "core/paper/map_scene.hpp"

namespace oaklight {

/// A block of trees that one detail map shows.
struct MapBlock {
  QString letter;                  ///< "A" .. "Z", "AA" ..
  std::vector<std::size_t> trees;  ///< indices into MapScene::trees, rising
  QRectF ground;                   ///< feet; just holds its trees
};

/// Parts the trees into blocks that can be read: at most `most` trees, no larger than `largest`.
/// Cuts run through wide gaps, so that trees around one crop tree stay together where they can, and
/// otherwise so that few blocks are made. Blocks run north before south and west before east. Trees
/// at one and the same place are never parted by place, only by number.
std::vector<MapBlock> make_blocks(const MapScene& scene, std::size_t most, QSizeF largest);

/// "A", "B" .. "Z", "AA", "AB" ..: 0 is "A".
QString block_letter(std::size_t index);

}  // namespace oaklight
