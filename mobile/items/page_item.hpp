#pragma once

#include "mobile/items/picture_item.hpp"

/// A sheet of paper as it will be printed, as wide as its place; its height follows.
class PageItem : public PictureItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(int paper READ paper WRITE setPaper NOTIFY paperChanged)  ///< 0 Letter, 1 A4

 public:
  explicit PageItem(QQuickItem* parent = nullptr) : PictureItem(parent) {}

  [[nodiscard]] int paper() const { return paper_; }
  void setPaper(int paper);

 signals:
  void paperChanged();

 protected:
  void geometryChange(const QRectF& now, const QRectF& before) override;

 private:
  void fit();

  int paper_ = 0;
};
