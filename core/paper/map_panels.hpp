#pragma once

#include <QRectF>
#include <vector>

namespace oaklight {

/// A detail map's place on a page of maps, its caption included.
struct MapPanel {
  std::size_t block = 0;
  QRectF box;
};

inline constexpr std::size_t kMostPanelsAPage = 4;

/// Lays that many detail maps out over pages, in order and so many to a page (1 to 4). What the
/// last page has left over goes to the maps on it.
std::vector<std::vector<MapPanel>> lay_out_panels(std::size_t blocks, std::size_t a_page,
                                                  const QRectF& page);

/// The size that a map gets on a page that holds so many.
QSizeF smallest_panel(std::size_t a_page, const QRectF& page);

}  // namespace oaklight
