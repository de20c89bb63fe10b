#include "core/paper/crown_chart.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "core/paper/crown_edge.hpp"
#include "core/paper/crown_marks.hpp"
#include "core/paper/crown_sizes.hpp"
#include "core/paper/crown_spots.hpp"
#include "core/paper/label_placement.hpp"

namespace oaklight {
namespace {

constexpr double kThick = kOpenEdge;
const CrownShape kKeyCrown = CrownShape::circle(Feet{1.0});
constexpr double kSideLetter = 16.0;  // room for N, E, S, W around the crowns

QRectF around(QPointF p, double by) { return {p.x() - by, p.y() - by, 2.0 * by, 2.0 * by}; }

QString name_of(const CrownNeighbour& n) {
  return printable(n.tag) + QStringLiteral(" ") + printable(n.species);
}

/// Draws one card.
class CrownPainter {
 public:
  CrownPainter(const CrownCard& card, const PictureFrame& frame)
      : card_(card),
        frame_(frame),
        sheet_(frame, PictureSheet::Place::beside),
        spots_(spots_of(card)),
        edge_(card) {}

  Drawing draw() {
    write_head();
    sheet_.key(entries());
    write_foot();
    lay_out();
    drawing().fill(outline_of(middle_, card_.crown.shape, scale_), Ink::tint);
    draw_sides();
    for (std::size_t i = 0; i < spots_.size(); ++i) draw_neighbour(i);
    draw_edge();
    draw_stems();
    write_labels();
    return sheet_.finish();
  }

 private:
  Drawing& drawing() { return sheet_.drawing(); }

  [[nodiscard]] bool any_goes() const {
    return std::any_of(card_.neighbours.begin(), card_.neighbours.end(),
                       [](const CrownNeighbour& n) { return n.goes; });
  }

  void write_head() {
    QString figure =
        QStringLiteral("Light %1\u00A0%").arg(figure_words(edge_.share_open(false), 0));
    if (any_goes())
      figure +=
          QStringLiteral(" \u2192\u00A0%1\u00A0%").arg(figure_words(edge_.share_open(true), 0));
    QString words =
        QStringLiteral("Crop tree %1, %2").arg(printable(card_.tag), printable(card_.species));
    if (card_.dbh) {
      words +=
          frame_.units == UnitSystem::us
              ? QStringLiteral(" %1 in").arg(figure_words(card_.dbh->value, 1))
              : QStringLiteral(" %1 cm").arg(figure_words(to_centimetres(*card_.dbh).value, 1));
    }
    words += QStringLiteral(". ");
    if (!card_.map) {
      words += QStringLiteral("%1 of 4 sides free now").arg(card_.now.open.count());
      if (any_goes()) words += QStringLiteral(", %1 after").arg(card_.after.open.count());
      if (const int shared = card_.after.shared.count(); shared > 0) {
        words += QStringLiteral(", %1 shared by a pair").arg(shared);
      }
      if (const int unknown = card_.now.unknown.count(); unknown > 0) {
        words += QStringLiteral("; %1 to be looked at").arg(unknown);
      }
      words += QStringLiteral(".");
    } else {
      words += QStringLiteral("Share of its crown's edge that no neighbor crowds.");
    }
    sheet_.head(figure, words);
  }

  [[nodiscard]] std::vector<KeyEntry> entries() const {
    std::vector<KeyEntry> out;
    const auto add_edge = [&](EdgeState state, const char* words) {
      if (!edge_.has(state)) return;
      out.push_back({[state](Drawing& drawing, const QRectF& box) {
                       const double y = box.center().y();
                       drawing.line(QPointF(box.left(), y), QPointF(box.right(), y), pen_of(state));
                     },
                     QString::fromLatin1(words)});
    };
    add_edge(EdgeState::open, "open now");
    add_edge(EdgeState::opens, "opens after");
    add_edge(EdgeState::shared, "shared by a pair");
    add_edge(EdgeState::closed, "closed");
    add_edge(EdgeState::unknown, "look again");
    for (const bool goes : {true, false}) {
      const auto one = [goes](const CrownNeighbour& n) { return n.goes == goes; };
      if (std::none_of(card_.neighbours.begin(), card_.neighbours.end(), one)) continue;
      out.push_back({[goes](Drawing& drawing, const QRectF& box) {
                       draw_crown(drawing, box.center(), kKeyCrown, box.height() / 2.0, goes);
                     },
                     goes ? QStringLiteral("goes") : QStringLiteral("stays")});
    }
    if (std::any_of(card_.neighbours.begin(), card_.neighbours.end(),
                    [](const CrownNeighbour& n) { return n.crop; })) {
      out.push_back({[](Drawing& drawing, const QRectF& box) {
                       draw_crown(drawing, box.center(), kKeyCrown, box.height() / 2.0, false);
                       drawing.outline(
                           outline_of(box.center(), kKeyCrown, box.height() / 2.0 - 3.0),
                           {1.0, Ink::leave});
                     },
                     QStringLiteral("crop tree")});
    }
    return out;
  }

  void write_foot() {
    QString words = size_words(card_);
    const auto hollow = [](const auto& spot) { return spot && !spot->measured; };
    if (std::any_of(spots_.begin(), spots_.end(), hollow)) {
      words += QStringLiteral(" Hollow stem: not taped, drawn in the middle of its side.");
    }
    sheet_.foot(words);
    QStringList lost;
    for (std::size_t i = 0; i < spots_.size(); ++i) {
      if (!spots_[i]) lost.append(name_of(card_.neighbours[i]));
    }
    if (!lost.isEmpty()) {
      sheet_.foot(QStringLiteral("Side not recorded: ") + lost.join(QStringLiteral(", ")),
                  kSmallText);
    }
    if (card_.neighbours.empty()) {
      sheet_.foot(QStringLiteral("No neighbor is recorded. Look up and tap the four sides."),
                  kBodyText);
    }
  }

  /// One scale for all crowns, so that each lies inside.
  void lay_out() {
    const double own = card_.crown.shape.widest().value;
    QSizeF reach(own, own);
    for (std::size_t i = 0; i < spots_.size(); ++i) {
      if (!spots_[i]) continue;
      const QPointF off = spots_[i]->off;
      const double crown = card_.neighbours[i].crown.shape.widest().value;
      reach = reach.expandedTo(QSizeF(std::abs(off.x()) + crown, std::abs(off.y()) + crown));
    }
    reach = reach.expandedTo(QSizeF(1.0, 1.0));
    const QRectF& room = sheet_.picture();
    middle_ = room.center();
    half_ = QSizeF(std::max(room.width() / 2.0 - kSideLetter - kThick, 1.0),
                   std::max(room.height() / 2.0 - kSideLetter - kThick, 1.0));
    scale_ = std::min(half_.width() / reach.width(), half_.height() / reach.height());
    half_ = reach * scale_;
  }

  [[nodiscard]] QPointF at(QPointF off) const {
    return middle_ + QPointF(off.x(), -off.y()) * scale_;
  }

  [[nodiscard]] double reach_at(const DrawnCrown& crown, double bearing) const {
    return crown.shape.reach(Degrees{bearing}).value * scale_;
  }
  /// The circle around the stem that a crown certainly fills.
  [[nodiscard]] double room_in(const DrawnCrown& crown) const {
    double least = crown.shape.widest().value;
    for (const double bearing : {0.0, 90.0, 180.0, 270.0}) {
      least = std::min(least, crown.shape.reach(Degrees{bearing}).value);
    }
    return least * scale_;
  }

  /// Hairlines that part the four sides, and their letters.
  void draw_sides() {
    const double out = std::max(half_.width(), half_.height()) * std::numbers::sqrt2;
    double bearing = 0.0;
    for (const auto& side : kWords<Side>) {
      const QPointF corner = on_paper(towards(bearing + 45.0));
      QPainterPath line(middle_ + corner * (reach_at(card_.crown, bearing + 45.0) + kThick));
      line.lineTo(middle_ + corner * out);
      drawing().outline(line, {0.6, Ink::rule, {2.0, 3.0}}, sheet_.picture());
      const QPointF way = on_paper(towards(bearing));
      constexpr double kOff = kThick + kSideLetter / 2.0;
      const QPointF letter =
          middle_ + QPointF(way.x() * (half_.width() + kOff), way.y() * (half_.height() + kOff));
      drawing().text_centred(
          letter + QPointF(0.0, 4.5),
          QString::fromUtf8(side.word.data(), static_cast<qsizetype>(side.word.size())),
          kSubheadText);
      keep_clear(around(letter, 8.0));
      bearing += 90.0;
    }
  }

  static QPointF on_paper(QPointF way) { return {way.x(), -way.y()}; }

  void draw_neighbour(std::size_t i) {
    if (!spots_[i]) return;
    const CrownNeighbour& n = card_.neighbours[i];
    const QPointF stem = at(spots_[i]->off);
    draw_crown(drawing(), stem, n.crown.shape, scale_, n.goes);
    if (n.crop) {
      constexpr double kRing = 0.85;  // a second line inside says that it is a crop tree
      drawing().outline(outline_of(stem, n.crown.shape, kRing * scale_), {1.0, Ink::leave});
    }
  }

  void draw_stems() {
    draw_stem(middle_, true);
    for (const auto& spot : spots_) {
      if (spot) draw_stem(at(spot->off), spot->measured);
    }
  }

  void draw_stem(QPointF stem, bool measured) {
    drawing().dot(stem, 3.4, Ink::black);
    if (!measured) drawing().dot(stem, 1.9, Ink::white);
    keep_clear(around(stem, 4.0));
  }

  void draw_edge() {
    for (const EdgePart& part : edge_.parts()) {
      const QPainterPath arc =
          outline_between(middle_, card_.crown.shape, scale_, part.from, part.to);
      if (part.state == EdgeState::open || part.state == EdgeState::opens) {
        drawing().outline(arc, {kThick + 2.4, Ink::white});
      }
      drawing().outline(arc, pen_of(part.state));
    }
    constexpr double kEvery = 5.0;  // labels keep off the edge
    for (double bearing = 0.0; bearing < 360.0; bearing += kEvery) {
      const QPointF edge = on_paper(towards(bearing)) * reach_at(card_.crown, bearing);
      taken_.push_back(around(middle_ + edge, kThick / 2.0));
    }
  }

  struct Label {
    QString tag, species;
    QPointF at;
    double radius = 0.0;
    bool hatched = false;
  };

  [[nodiscard]] static QSizeF size_of(const Label& label) {
    return {
        std::max(text_width(label.tag, kStrongText), text_width(label.species, kSmallText)) + 4.0,
        label.species.isEmpty() ? 14.0 : 26.0};
  }

  void write_labels() {
    take_crowns();
    std::vector<Label> homeless;
    const auto write = [&](const Label& label) {
      if (const auto box = inside_of(label)) {
        write_centred(label, *box);
      } else if (const auto beside = beside_of(label)) {
        write_label(label, *beside);
      } else {
        homeless.push_back(label);
      }
    };
    write({cut(card_.tag, kStrongText), cut(card_.species, kSmallText), middle_,
           room_in(card_.crown) - kThick / 2.0});
    for (std::size_t i = 0; i < spots_.size(); ++i) {
      if (!spots_[i]) continue;
      const CrownNeighbour& n = card_.neighbours[i];
      write({cut(n.tag, kStrongText), cut(n.species, kSmallText), at(spots_[i]->off),
             room_in(n.crown), n.goes});
    }
    write_far(homeless);
  }

  /// Labels that find no room at their crown stand away from it, with a line to the stem; where all
  /// is full, the tag alone and over the edges of crowns, for no neighbour may be left without its
  /// tag.
  void write_far(std::vector<Label> labels) {
    std::vector<LabelWish> wishes;
    for (const Label& label : labels) wishes.push_back({label.at, size_of(label), 5.0});
    auto places = place_labels(wishes, sheet_.picture(), taken_);
    for (std::size_t i = 0; i < labels.size(); ++i) {
      if (places[i]) keep_clear(places[i]->box);
    }
    for (std::size_t i = 0; i < labels.size(); ++i) {
      if (!places[i]) {
        labels[i].species.clear();
        const LabelWish wish{labels[i].at, size_of(labels[i]), 5.0};
        places[i] = place_labels({&wish, 1}, sheet_.picture(), words_).front();
      }
      if (!places[i]) continue;
      if (const auto& leader = places[i]->leader) {
        drawing().line(leader->p1(), leader->p2(), {0.7, Ink::black});
      }
      write_label(labels[i], places[i]->box);
    }
  }

  /// Words and stems, which nothing may cover.
  void keep_clear(const QRectF& box) {
    taken_.push_back(box);
    words_.push_back(box);
  }

  static QString cut(const std::string& words, const TextStyle& style) {
    constexpr double kLongest = 112.0;
    return fitted(printable(words), style, kLongest);
  }

  /// Labels keep off the edges of crowns: they stand inside of one or outside of all.
  void take_crowns() {
    constexpr double kEvery = 12.0;  // degrees
    for (std::size_t i = 0; i < spots_.size(); ++i) {
      if (!spots_[i]) continue;
      for (double bearing = 0.0; bearing < 360.0; bearing += kEvery) {
        const QPointF p = at(spots_[i]->off) +
                          on_paper(towards(bearing)) * reach_at(card_.neighbours[i].crown, bearing);
        taken_.push_back(around(p, 1.5));
      }
    }
  }

  [[nodiscard]] bool free(const QRectF& box) const {
    return sheet_.picture().contains(box) &&
           std::none_of(taken_.begin(), taken_.end(),
                        [&box](const QRectF& t) { return t.intersects(box); });
  }

  /// Room inside its own crown, under or over the stem.
  [[nodiscard]] std::optional<QRectF> inside_of(const Label& label) const {
    const QSizeF size = size_of(label);
    for (const double top : {5.0, -5.0 - size.height()}) {
      const QRectF box(label.at + QPointF(-size.width() / 2.0, top), size);
      const double far = std::max(std::abs(top), std::abs(top + size.height()));
      if (std::hypot(size.width() / 2.0, far) < label.radius - 2.0 && free(box)) return box;
    }
    return std::nullopt;
  }

  /// Room right at the edge of its crown, outward of the crop tree first.
  [[nodiscard]] std::optional<QRectF> beside_of(const Label& label) const {
    constexpr double kOff = 3.0;
    constexpr double kTurn = 15.0;  // degrees
    const QSizeF size = size_of(label);
    const QPointF out = label.at - middle_;
    const double outward = std::atan2(out.x(), -out.y()) * 180.0 / std::numbers::pi;
    for (int i = 0; i <= 24; ++i) {
      const double turn = kTurn * ((i + 1) / 2) * (i % 2 == 0 ? -1.0 : 1.0);
      const QPointF way = on_paper(towards(outward + turn));
      const double reach = label.radius + kOff + std::abs(way.x()) * size.width() / 2.0 +
                           std::abs(way.y()) * size.height() / 2.0;
      const QPointF centre = label.at + way * reach;
      const QRectF box(centre - QPointF(size.width() / 2.0, size.height() / 2.0), size);
      if (free(box)) return box;
    }
    return std::nullopt;
  }

  void write_centred(const Label& label, const QRectF& box) {
    if (label.hatched) drawing().fill_rect(box, Ink::white);
    const double x = box.center().x();
    drawing().text_centred(QPointF(x, box.top() + 11.0), label.tag, kStrongText);
    drawing().text_centred(QPointF(x, box.top() + 22.5), label.species, kSmallText);
    keep_clear(box);
  }

  void write_label(const Label& label, const QRectF& box) {
    drawing().fill_rect(box, Ink::white);
    drawing().text(QPointF(box.left() + 2.0, box.top() + 11.0), label.tag, kStrongText);
    drawing().text(QPointF(box.left() + 2.0, box.top() + 22.5), label.species, kSmallText);
    keep_clear(box);
  }

  const CrownCard& card_;
  const PictureFrame& frame_;
  PictureSheet sheet_;
  std::vector<std::optional<CrownSpot>> spots_;
  EdgeRing edge_;
  QPointF middle_;
  QSizeF half_;         // from the middle to the outermost crowns
  double scale_ = 1.0;  // pt a foot
  std::vector<QRectF> taken_, words_;
};

}  // namespace

Drawing draw_crowns(const CrownCard& card, const PictureFrame& frame) {
  return CrownPainter(card, frame).draw();
}

}  // namespace oaklight
