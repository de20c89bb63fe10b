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
    const auto cut = group.begin() + static_cast<std::ptrdiff_t>(cut_of(group, key));
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

  [[nodiscard]] std::size_t blocks_needed(std::size_t trees) const {
    return (trees + most_ - 1) / most_;
  }

  /// Where to cut, as the place of the first tree behind the cut: through a gap that parts the
  /// group by itself, else through the widest gap that leaves no more blocks than there must be.
  template <class Key>
  [[nodiscard]] std::size_t cut_of(const Indices& group, const Key& key) const {
    constexpr double kNaturalGap = 0.2;  // of the length of the group
    const std::size_t n = group.size();
    const auto gap_before = [&](std::size_t i) { return key(group[i]) - key(group[i - 1]); };
    std::size_t widest = 1;
    std::size_t tidy = n / 2;
    for (std::size_t i = 1; i < n; ++i) {
      if (gap_before(i) > gap_before(widest)) widest = i;
    }
    if (gap_before(widest) > kNaturalGap * (key(group.back()) - key(group.front()))) return widest;
    const std::size_t margin = std::max<std::size_t>(1, n / 4);
    std::size_t fewest = blocks_needed(tidy) + blocks_needed(n - tidy);
    for (std::size_t i = margin; i <= n - margin; ++i) {
      const std::size_t blocks = blocks_needed(i) + blocks_needed(n - i);
      if (blocks > fewest || (blocks == fewest && gap_before(i) <= gap_before(tidy))) continue;
      fewest = blocks;
      tidy = i;
    }
    return tidy;
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
