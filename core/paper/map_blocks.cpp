#include "core/paper/map_blocks.hpp"

#include <algorithm>
#include <numeric>

namespace oaklight {
namespace {

using Indices = std::vector<std::size_t>;

class Splitter {
 public:
  Splitter(const std::vector<MapTree>& trees, std::size_t most, QSizeF largest)
      : trees_(trees), most_(most), largest_(largest) {}

  void split(Indices group) {
    const QRectF ground = ground_of_group(group);
    const bool fits = ground.width() <= largest_.width() && ground.height() <= largest_.height();
    if ((group.size() <= most_ && fits) || group.size() == 1) {
      std::sort(group.begin(), group.end());
      blocks_.push_back({block_letter(blocks_.size()), std::move(group), ground});
      return;
    }
    const bool across = ground.width() > ground.height();
    const auto key = [this, across](std::size_t i) {
      return across ? trees_[i].place.x() : -trees_[i].place.y();  // west first, north first
    };
    std::sort(group.begin(), group.end(), [&key](std::size_t a, std::size_t b) {
      return key(a) != key(b) ? key(a) < key(b) : a < b;
    });
    const auto cut = group.begin() + static_cast<std::ptrdiff_t>(widest_gap(group, key));
    Indices first(group.begin(), cut);
    Indices second(cut, group.end());
    split(std::move(first));
    split(std::move(second));
  }

  std::vector<MapBlock> take() { return std::move(blocks_); }

 private:
  [[nodiscard]] QRectF ground_of_group(const Indices& group) const {
    QPolygonF points;
    for (const std::size_t i : group) points.append(trees_[i].place);
    return points.boundingRect();
  }

  /// Where to cut: before the tree after the widest gap in the middle half, or in the middle.
  template <class Key>
  static std::size_t widest_gap(const Indices& group, const Key& key) {
    const std::size_t n = group.size();
    std::size_t best = n / 2;
    double widest = key(group[best]) - key(group[best - 1]);
    for (std::size_t i = std::max<std::size_t>(1, n / 4); i <= n - std::max<std::size_t>(1, n / 4);
         ++i) {
      const double gap = key(group[i]) - key(group[i - 1]);
      if (gap > widest) {
        widest = gap;
        best = i;
      }
    }
    return best;
  }

  const std::vector<MapTree>& trees_;
  std::size_t most_;
  QSizeF largest_;
  std::vector<MapBlock> blocks_;
};

}  // namespace

std::vector<MapBlock> make_blocks(const MapScene& scene, std::size_t most, QSizeF largest) {
  if (scene.trees.empty()) return {};
  Indices all(scene.trees.size());
  std::iota(all.begin(), all.end(), std::size_t{0});
  Splitter splitter(scene.trees, most, largest);
  splitter.split(std::move(all));
  return splitter.take();
}

QString block_letter(std::size_t index) {
  QString letters;
  for (std::size_t left = index + 1; left > 0; left = (left - 1) / 26) {
    letters.prepend(QChar(u'A' + static_cast<char16_t>((left - 1) % 26)));
  }
  return letters;
}

}  // namespace oaklight
