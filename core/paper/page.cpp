#include "core/paper/page.hpp"

namespace oaklight {
namespace {

constexpr double kSideMargin = 0.6 * kPointsPerInch;
constexpr double kTopMargin = 0.45 * kPointsPerInch;
constexpr double kBottomMargin = 0.45 * kPointsPerInch;
constexpr double kHeadHeight = 26.0;
constexpr double kFootHeight = 30.0;
constexpr double kGap = 10.0;

}  // namespace

QSizeF page_size(PaperSize paper) {
  if (paper == PaperSize::letter) return {8.5 * kPointsPerInch, 11.0 * kPointsPerInch};
  return {210.0 * kPointsPerMillimetre, 297.0 * kPointsPerMillimetre};
}

PageGrid page_grid(PaperSize paper) {
  const QSizeF size = page_size(paper);
  const double width = size.width() - 2.0 * kSideMargin;
  const QRectF head(kSideMargin, kTopMargin, width, kHeadHeight);
  const QRectF foot(kSideMargin, size.height() - kBottomMargin - kFootHeight, width, kFootHeight);
  const QRectF body(QPointF(kSideMargin, head.bottom() + kGap),
                    QPointF(kSideMargin + width, foot.top() - kGap));
  return {size, head, body, foot};
}

}  // namespace oaklight
