#include "mobile/items/tally_layout.hpp"

#include <algorithm>
#include <cmath>

namespace {

// A cruise names about a dozen species, and its classes reach from saplings to veterans.
constexpr int kFewestSpecies = 12;
constexpr int kFewestClasses = 12;
constexpr double kSpeciesShare = 0.45;

int whole(double length, double of) { return std::max(1, static_cast<int>(std::floor(length / of))); }

}  // namespace

void TallyLayout::setWidth(double width) {
  width_ = width;
  arrange();
}
void TallyLayout::setHeight(double height) {
  height_ = height;
  arrange();
}
void TallyLayout::setTouch(double touch) {
  touch_ = std::max(1.0, touch);
  arrange();
}
void TallyLayout::setGap(double gap) {
  gap_ = gap;
  arrange();
}
void TallyLayout::setMirrored(bool mirrored) {
  mirrored_ = mirrored;
  arrange();
}

TallyLayout::Field TallyLayout::fieldIn(const QRectF& rect) const {
  return {rect, whole(rect.width(), touch_), whole(rect.height(), touch_)};
}

void TallyLayout::arrange() {
  const bool beside = width_ > height_;
  const double length = (beside ? width_ : height_) - gap_;
  // Whole cells for the species, the rest for the classes.
  const double share = std::round(length * kSpeciesShare / touch_) * touch_;
  if (beside) {
    species_ = fieldIn({mirrored_ ? width_ - share : 0.0, 0.0, share, height_});
    classes_ = fieldIn({mirrored_ ? 0.0 : share + gap_, 0.0, length - share, height_});
  } else {
    species_ = fieldIn({0.0, 0.0, width_, share});
    classes_ = fieldIn({0.0, share + gap_, width_, length - share});
  }
  over_ = false;
  over_ = speciesRoom() < kFewestSpecies || classRoom() < kFewestClasses;
  if (over_) {
    species_ = fieldIn({0.0, 0.0, width_, height_});
    classes_ = species_;
  }
  emit changed();
}
