#include "mobile/items/tally_layout.hpp"

#include <algorithm>
#include <cmath>

namespace {

// With fewer in sight the search and the keypad would be needed too often.
constexpr int kFewestSpecies = 8;
constexpr int kFewestClasses = 10;
constexpr double kSpeciesShare = 0.45;
constexpr double kHair = 0.01;  // of a cell for the whole row of them: under 0.1 mm for each

int whole(double length, double of) {
  return std::max(1, static_cast<int>(std::floor(length / of)));
}

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
  // A hair is forgiven: shares of a length are seldom whole pixels.
  const double hair = std::max(0.5, touch_ * kHair);
  return {rect, whole(rect.width() + hair, touch_), whole(rect.height() + hair, touch_)};
}

void TallyLayout::arrange() {
  const bool beside = width_ > height_;
  const double length = (beside ? width_ : height_) - gap_;
  const int cells = whole(length, touch_);
  const double share = length * std::max(1.0, std::round(cells * kSpeciesShare)) / cells;
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
