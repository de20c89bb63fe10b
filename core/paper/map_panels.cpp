#include "core/paper/map_panels.hpp"

#include <algorithm>

namespace oaklight {
namespace {

constexpr double kGap = 10.0;

/// The boxes of up to four maps on one page: two rows, a row shared by two where it must be.
std::vector<QRectF> boxes_for(std::size_t count, const QRectF& page) {
  if (count == 1) return {page};
  const QSizeF half(page.width(), (page.height() - kGap) / 2.0);
  const QSizeF quarter((page.width() - kGap) / 2.0, half.height());
  const double right = page.left() + quarter.width() + kGap;
  const double below = page.top() + half.height() + kGap;
  if (count == 2) {
    return {QRectF(page.topLeft(), half), QRectF(QPointF(page.left(), below), half)};
  }
  std::vector<QRectF> boxes = {QRectF(page.topLeft(), quarter),
                               QRectF(QPointF(right, page.top()), quarter)};
  boxes.emplace_back(QPointF(page.left(), below), count == 3 ? half : quarter);
  if (count == 4) boxes.emplace_back(QPointF(right, below), quarter);
  return boxes;
}

}  // namespace

QSizeF smallest_panel(std::size_t a_page, const QRectF& page) {
  return boxes_for(a_page, page).front().size();
}

std::vector<std::vector<MapPanel>> lay_out_panels(std::size_t blocks, std::size_t a_page,
                                                  const QRectF& page) {
  std::vector<std::vector<MapPanel>> pages;
  for (std::size_t first = 0; first < blocks; first += a_page) {
    const std::size_t count = std::min(a_page, blocks - first);
    const std::vector<QRectF> boxes = boxes_for(count, page);
    std::vector<MapPanel>& panels = pages.emplace_back();
    for (std::size_t i = 0; i < count; ++i) panels.push_back({first + i, boxes[i]});
  }
  return pages;
}

}  // namespace oaklight
