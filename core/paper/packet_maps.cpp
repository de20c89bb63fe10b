#include <algorithm>
#include <array>
#include <numeric>

#include "core/paper/map.hpp"
#include "core/paper/map_panels.hpp"
#include "core/paper/packet_pages.hpp"
#include "core/paper/reader_words.hpp"

namespace oaklight {
namespace {

// What can be read at arm's length: so many tags on a quarter of a page, so many on a whole one, at
// this scale or larger. Common practice; looked at on paper.
constexpr std::size_t kMostTreesAPanel = 10;
constexpr std::size_t kMostTreesAPage = 36;
constexpr double kSmallestScale = 80.0;  // ft in an inch
constexpr double kHeading = 30.0;
constexpr double kMostWords = 120.0;  // room under the overview for trees without a position

QString tags_of(const std::vector<MapTree>& trees) {
  QStringList tags;
  for (const MapTree& tree : trees) tags.append(tree.tag);
  return tags.join(QStringLiteral(", "));
}

/// "No position: Cut (2): 12, 15" under the map, by what the trees are to the reader.
std::vector<Paragraph> nowhere_words(const MapScene& scene) {
  std::vector<Paragraph> words;
  for (const TreeMark mark : kTreeMarks) {
    std::vector<MapTree> same;
    std::copy_if(scene.nowhere.begin(), scene.nowhere.end(), std::back_inserter(same),
                 [mark](const MapTree& tree) { return tree.mark == mark; });
    if (same.empty()) continue;
    words.push_back({QStringLiteral("No position: %1 (%2): ")
                             .arg(words_of(mark, scene.reader))
                             .arg(same.size()) +
                         tags_of(same),
                     kSmallText, std::nullopt, 3.0});
  }
  return words;
}

/// Writes the maps of one packet.
class MapWriter {
 public:
  MapWriter(PageFlow& flow, const MapScene& scene) : flow_(flow), scene_(scene) {}

  MapLetters write(const QRectF& ground) {
    const auto words = nowhere_words(scene_);
    const double room = std::min(TextBlock(words, flow_.width()).height() + 8.0, kMostWords);
    const MapKey key(scene_, all_trees());
    const QRectF body =
        flow_.grid().body.adjusted(0.0, kHeading + kMapCaption, 0.0, -key.height() - room);
    const QSizeF readable = largest_ground(body.size(), kSmallestScale);
    const bool one_map = scene_.trees.size() <= kMostTreesAPage &&
                         ground.width() <= readable.width() && ground.height() <= readable.height();
    const auto blocks = one_map ? std::vector<MapBlock>{} : choose_blocks(body, ground);
    write_tract(body, ground, blocks);
    flow_.gap(4.0);
    flow_.text(words);
    return write_details(blocks);
  }

 private:
  /// Four maps to a page; one where the small ones lie so close that the map of the tract, in that
  /// frame, has no room for their letters.
  std::vector<MapBlock> choose_blocks(const QRectF& frame, const QRectF& ground) {
    auto small = blocks_for(kMostPanelsAPage, kMostTreesAPanel);
    Drawing sketch;
    const MapView view = fitting_view(frame, ground);
    if (draw_map(sketch, scene_, view, {{}, small}).letters_clear) return small;
    panels_a_page_ = 1;
    return blocks_for(1, kMostTreesAPage);
  }

  [[nodiscard]] std::vector<MapBlock> blocks_for(std::size_t a_page, std::size_t most) const {
    const QSizeF frame = smallest_panel(a_page, panel_area()) - QSizeF(0.0, kMapCaption + kMapWay);
    return make_blocks(scene_, most, largest_ground(frame, kSmallestScale));
  }

  [[nodiscard]] std::vector<std::size_t> all_trees() const {
    std::vector<std::size_t> all(scene_.trees.size());
    std::iota(all.begin(), all.end(), std::size_t{0});
    return all;
  }

  void write_heading(const QString& title, const QString& note) {
    flow_.heading(title);
    const QRectF& body = flow_.grid().body;
    flow_.page().text_ending(QPointF(body.right(), body.top() + ascent_of(kHeadingText)), note,
                             kBodyText);
  }

  /// The map of the whole tract: with tags when that is the only map, else with lettered boxes.
  void write_tract(QRectF frame, const QRectF& ground, const std::vector<MapBlock>& blocks) {
    write_heading(
        QStringLiteral("Map of the tract"),
        blocks.empty() ? QString() : QStringLiteral("The lettered boxes are the maps that follow"));
    MapView view = fitting_view(frame, ground);
    const double least = frame.height() * 0.6;
    frame.setHeight(std::clamp(smallest_frame(ground.size(), view.feet_per_inch).height(), least,
                               frame.height()));
    view.frame = frame;
    MapContent content;
    content.blocks = blocks;
    if (blocks.empty()) content.tagged = all_trees();
    draw_map_caption(flow_.page(), {}, view);
    const MapOutcome outcome = draw_map(flow_.page(), scene_, view, content);
    const std::array views = {view};
    close_page(MapKey(scene_, all_trees(), views), frame.bottom(), outcome.untagged);
  }

  /// The key under the maps, and below it the tags that found no room.
  void close_page(const MapKey& key, double bottom, const std::vector<std::size_t>& untagged) {
    const QRectF& body = flow_.grid().body;
    key.draw(flow_.page(), QRectF(body.left(), bottom, body.width(), key.height()));
    flow_.go_to(bottom + key.height());
    if (untagged.empty()) return;
    std::vector<MapTree> trees;
    for (const std::size_t i : untagged) trees.push_back(scene_.trees[i]);
    flow_.text(
        {{QStringLiteral("On the map without a number, too close to others: ") + tags_of(trees),
          kSmallText}});
  }

  /// Detail maps share one key height, that of all trees, so that pages look alike.
  [[nodiscard]] QRectF panel_area() const {
    return flow_.grid().body.adjusted(0.0, kHeading, 0.0, -MapKey(scene_, all_trees()).height());
  }

  MapLetters write_details(const std::vector<MapBlock>& blocks) {
    MapLetters letters;
    for (const auto& panels : lay_out_panels(blocks.size(), panels_a_page_, panel_area())) {
      write_detail_page(blocks, panels);
    }
    for (const MapBlock& block : blocks) {
      for (const std::size_t i : block.trees) letters[scene_.trees[i].tag] = block.letter;
    }
    return letters;
  }

  void write_detail_page(const std::vector<MapBlock>& blocks, const std::vector<MapPanel>& panels) {
    const QString first = blocks[panels.front().block].letter;
    const QString last = blocks[panels.back().block].letter;
    const QString name = first == last ? QStringLiteral("Map ") + first
                                       : QStringLiteral("Maps %1 to %2").arg(first, last);
    flow_.new_page(name.toUpper());
    write_heading(name, QStringLiteral("Small marks without a number are on another map"));
    std::vector<std::size_t> shown;
    std::vector<std::size_t> untagged;
    std::vector<MapView> views;
    for (const MapPanel& panel : panels) {
      const MapBlock& block = blocks[panel.block];
      const QRectF frame = panel.box.adjusted(0.0, kMapCaption, 0.0, -kMapWay);
      views.push_back(fitting_view(frame, block.ground));
      draw_map_caption(flow_.page(), block.letter, views.back());
      const MapOutcome outcome = draw_map(flow_.page(), scene_, views.back(), {block.trees});
      draw_map_way(flow_.page(), scene_, views.back());
      shown.insert(shown.end(), block.trees.begin(), block.trees.end());
      untagged.insert(untagged.end(), outcome.untagged.begin(), outcome.untagged.end());
    }
    close_page(MapKey(scene_, shown, views), panels.back().box.bottom(), untagged);
  }

  PageFlow& flow_;
  const MapScene& scene_;
  std::size_t panels_a_page_ = kMostPanelsAPage;
};

}  // namespace

MapLetters write_maps(PageFlow& flow, const Packet& packet) {
  const MapScene scene = make_scene(packet);
  flow.new_page(QStringLiteral("MAP"));
  const auto ground = ground_of(scene);
  if (ground) return MapWriter(flow, scene).write(*ground);
  flow.heading(QStringLiteral("Map"));
  flow.text({{QStringLiteral("There is no map: nothing in this packet has a recorded position. "
                             "Find the trees by their tags."),
              kBodyText}});
  flow.gap(4.0);
  flow.text(nowhere_words(scene));
  return {};
}

}  // namespace oaklight
