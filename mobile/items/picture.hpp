#pragma once

#include <QtQml/qqmlregistration.h>
#include <QMetaType>
#include <QString>
#include <functional>
#include <memory>

#include "core/paper/picture.hpp"

/// A drawing that is laid out when the room for it is known, with what it shows in words for those
/// who do not see it. Cheap to copy.
class Picture {
  Q_GADGET
  QML_VALUE_TYPE(picture)
  Q_PROPERTY(bool present READ present)

 public:
  using Draw = std::function<oaklight::Drawing(const oaklight::PictureFrame&)>;

  Picture() = default;
  Picture(Draw draw, QString words)
      : draw_(std::make_shared<const Draw>(std::move(draw))), words_(std::move(words)) {}

  [[nodiscard]] bool isEmpty() const { return draw_ == nullptr; }
  [[nodiscard]] bool present() const { return draw_ != nullptr; }
  [[nodiscard]] const QString& words() const { return words_; }
  [[nodiscard]] oaklight::Drawing draw(const oaklight::PictureFrame& frame) const {
    return draw_ ? (*draw_)(frame) : oaklight::Drawing();
  }
  friend bool operator==(const Picture& a, const Picture& b) { return a.draw_ == b.draw_; }

 private:
  std::shared_ptr<const Draw> draw_;
  QString words_;
};
