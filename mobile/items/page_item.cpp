#include "mobile/items/page_item.hpp"

#include "core/paper/page.hpp"

void PageItem::setPaper(int paper) {
  if (paper_ == paper) return;
  paper_ = paper;
  fit();
  emit paperChanged();
}

void PageItem::geometryChange(const QRectF& now, const QRectF& before) {
  PictureItem::geometryChange(now, before);
  if (now.width() != before.width()) fit();
}

void PageItem::fit() {
  const QSizeF sheet =
      oaklight::page_size(paper_ == 1 ? oaklight::PaperSize::a4 : oaklight::PaperSize::letter);
  setImplicitHeight(width() * sheet.height() / sheet.width());
}
