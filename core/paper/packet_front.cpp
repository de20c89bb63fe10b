#include <algorithm>

#include "core/paper/packet_pages.hpp"
#include "core/paper/reader_words.hpp"
#include "core/paper/table.hpp"

namespace oaklight {
namespace {

constexpr double kCountsWidth = 190.0;
const TextStyle kFactText{12.0, false, Ink::black};
const TextStyle kNumberText{13.0, true, Ink::black};

/// County and state, and who answers for the work.
QString place_words(const Tract& tract) {
  QString words = printable(tract.county);
  if (!words.isEmpty()) words += QStringLiteral(" County");
  const QString state = printable(tract.state);
  if (!state.isEmpty()) words += (words.isEmpty() ? QString() : QStringLiteral(", ")) + state;
  return words;
}

struct Count {
  TreeMark mark;
  std::size_t trees;
  QString words;
};

/// The four figures that must be right in a reader's head: what is his, what is not.
void draw_counts(Drawing& page, QPointF corner, const Packet& packet) {
  const ReaderWords& words = words_for(packet.reader);
  const std::vector<Count> counts = {
      {TreeMark::cut, packet.cut.size(), QString::fromUtf8(words.work_count)},
      {TreeMark::trained, packet.trained.size(), QString::fromUtf8(words.trained_count)},
      {TreeMark::crop, packet.keep.size(), QStringLiteral("do not cut")},
      {TreeMark::other, packet.others.size(), QString::fromUtf8(words.others_count)}};
  double y = corner.y();
  for (const Count& count : counts) {
    draw_mark(page, count.mark, QPointF(corner.x() + 8.0, y + 10.0), 5.5);
    const QString figure = QString::number(count.trees);
    page.text_ending(QPointF(corner.x() + 62.0, y + 16.0), figure, kHeadingText);
    page.text(QPointF(corner.x() + 68.0, y + 16.0), count.words, kBodyText);
    y += 22.0;
  }
}

void write_title(PageFlow& flow, const Packet& packet) {
  std::vector<Paragraph> lines;
  const QString name = printable(packet.tract.name);
  const double width = flow.width() - kCountsWidth - 12.0;
  // Two lines of a long name are enough to know the tract; the foot and the file name it too.
  auto name_lines = wrapped(name, kTitleText, width);
  if (name_lines.size() > 2)
    name_lines = {name_lines[0], fitted(name_lines[1] + name_lines[2], kTitleText, width)};
  for (const QString& line : name_lines) lines.push_back({line, kTitleText});
  lines.push_back(
      {QStringLiteral("Marked trees: list for ") + QString::fromUtf8(words_for(packet.reader).whom),
       kSubheadText,
       {},
       2.0});
  const QString place = place_words(packet.tract);
  if (!place.isEmpty()) lines.push_back({place, kBodyText, {}, 2.0});
  const QString contact = printable(packet.tract.contact);
  if (!contact.isEmpty())
    lines.push_back({QStringLiteral("Who answers for the work: ") + contact, kBodyText});
  lines.push_back({QStringLiteral("Made ") + printable(packet.made_on), kBodyText});
  TextBlock block(lines, width);
  block.cut_to(240.0);
  const QRectF strip = flow.take(std::max(block.height(), 100.0) + 8.0);
  block.draw(flow.page(), strip.topLeft());
  draw_counts(flow.page(), QPointF(strip.right() - kCountsWidth, strip.top() + 4.0), packet);
}

void write_band(PageFlow& flow, const QString& words) {
  const QRectF band = flow.take(29.0).adjusted(0.0, 0.0, 0.0, -5.0);
  flow.page().fill_rect(band, Ink::dark_ground);
  flow.page().text(QPointF(band.left() + 8.0, band.bottom() - 7.0), words,
                   kSubheadText.in(Ink::on_ground));
}

/// Plain sentences, numbered.
void write_sentences(PageFlow& flow, const std::vector<std::string>& sentences) {
  constexpr double kIndent = 24.0;
  int number = 0;
  for (const std::string& sentence : sentences) {
    const QString text = printable(sentence);
    if (text.isEmpty()) continue;
    ++number;
    if (flow.room() < 2.0 * leading_of(kBodyText)) flow.new_page();
    const QRectF here = flow.take(0.0);
    const QPointF baseline = here.topLeft() + QPointF(16.0, ascent_of(kBodyText));
    flow.page().text_ending(baseline, QString::number(number), kNumberText);
    flow.text({{text, kBodyText}}, kIndent);
    flow.gap(2.0);
  }
}

/// Short lines with an empty box before each, two beside each other.
void write_checks(PageFlow& flow, const std::vector<std::string>& lines) {
  constexpr double kIndent = 22.0;
  constexpr double kBox = 9.0;
  constexpr double kGap = 3.0;
  const double column = flow.width() / 2.0;
  for (std::size_t i = 0; i < lines.size(); i += 2) {
    std::vector<TextBlock> pair;
    double height = 0.0;
    for (std::size_t j = i; j < std::min(i + 2, lines.size()); ++j) {
      pair.emplace_back(std::vector<Paragraph>{{printable(lines[j]), kBodyText}},
                        column - kIndent - 8.0);
      pair.back().cut_to(flow.grid().body.height() / 2.0);
      height = std::max(height, pair.back().height());
    }
    const QRectF strip = flow.take(height + kGap);
    for (std::size_t j = 0; j < pair.size(); ++j) {
      const double left = strip.left() + static_cast<double>(j) * column;
      flow.page().outline_rect(QRectF(left + 5.0, strip.top() + 1.0, kBox, kBox),
                               {0.9, Ink::black});
      pair[j].draw(flow.page(), QPointF(left + kIndent, strip.top()));
    }
  }
}

void write_cautions(PageFlow& flow, const std::vector<Caution>& cautions) {
  constexpr double kIndent = 78.0;
  for (const Caution& caution : cautions) {
    const QString text = printable(caution.text);
    if (flow.room() < 2.0 * leading_of(kBodyText)) flow.new_page();
    const QRectF here = flow.take(0.0);
    draw_badge(flow.page(), here.topLeft() + QPointF(0.0, ascent_of(kBodyText)), caution.severity);
    flow.text({{text, kBodyText}}, kIndent);
    flow.gap(3.0);
  }
}

void write_seasons(PageFlow& flow, const Packet& packet) {
  if (packet.seasons.empty() && packet.season_advice.empty()) return;
  flow.subhead(QStringLiteral("Seasons: when not to cut"));
  const QString advice = printable(packet.season_advice);
  if (!advice.isEmpty()) flow.text({{advice, kStrongText}});
  if (packet.seasons.empty()) return;
  flow.gap(2.0);
  Table table(flow,
              {{QStringLiteral("Because of"), 100.0},
               {QStringLiteral("Avoid or check"), 112.0},
               {QStringLiteral("What to know"), 0.0}},
              24.0);
  for (const SeasonNote& season : packet.seasons) {
    table.row({{{{printable(season.issue), kStrongText}}},
               {{{printable(season.from_to), kStrongText}}},
               {{{printable(season.text), kSmallText}}}});
  }
}

/// The emergency card as text: facts, each under its label, ready to be read to a dispatcher.
class EmergencyCard {
 public:
  EmergencyCard(const Packet& packet, double width) {
    for (const PacketFact& fact : packet.emergency) {
      Row row{TextBlock({{printable(fact.label), kSmallStrongText}}, kFactLeft - 2.0 * kInset),
              TextBlock({{printable(fact.text), kFactText}}, width - kFactLeft - kInset)};
      row.label.cut_to(kLongestFact);
      row.text.cut_to(kLongestFact);
      height_ += row.height() + kRowGap;
      rows_.push_back(std::move(row));
    }
    height_ += kBandHeight + 2.0 * kInset;
  }
  [[nodiscard]] double height() const { return height_; }

  void draw(Drawing& page, QPointF corner, double width) const {
    const QRectF box(corner, QSizeF(width, height_));
    const QRectF band(corner, QSizeF(width, kBandHeight));
    page.fill_rect(band, Ink::stop_ground);
    page.text(QPointF(band.left() + kInset, band.bottom() - 7.0),
              QStringLiteral("IF SOMEONE IS HURT: CALL 911 AND READ THIS OUT"),
              kSubheadText.in(Ink::on_ground));
    double y = band.bottom() + kInset;
    for (const Row& row : rows_) {
      row.label.draw(page, QPointF(corner.x() + kInset, y + kLabelDrop));
      row.text.draw(page, QPointF(corner.x() + kFactLeft, y));
      y += row.height() + kRowGap;
    }
    page.outline_rect(box, {1.6, Ink::stop});
  }

 private:
  static constexpr double kBandHeight = 24.0;
  static constexpr double kInset = 8.0;
  static constexpr double kFactLeft = 190.0;
  static constexpr double kRowGap = 2.0;
  static constexpr double kLabelDrop = 1.6;     // the smaller label on the baseline of its fact
  static constexpr double kLongestFact = 62.0;  // four lines: the card must leave room for cautions
  struct Row {
    TextBlock label;
    TextBlock text;
    [[nodiscard]] double height() const {
      return std::max(label.height() + kLabelDrop, text.height());
    }
  };
  std::vector<Row> rows_;
  double height_ = 0.0;
};

}  // namespace

void write_front(PageFlow& flow, const Packet& packet) {
  constexpr double kGap = 8.0;
  constexpr double kCheckHeight = 28.0;
  flow.new_page(QStringLiteral("READ THIS FIRST"));
  const EmergencyCard card(packet, flow.width());
  const QRectF pinned = flow.reserve_bottom(kGap + card.height() + kCheckHeight);
  write_title(flow, packet);
  write_band(flow, QStringLiteral("BEFORE YOU START"));
  write_sentences(flow, packet.before_you_start);
  if (!packet.job_cautions.empty()) {
    flow.subhead(QStringLiteral("Cautions for this job"));
    write_cautions(flow, packet.job_cautions);
  }
  if (!packet.look_for.empty()) {
    flow.subhead(QStringLiteral("Look for these yourself: no record shows them"));
    write_checks(flow, packet.look_for);
  }
  Drawing& first = flow.page(0);
  card.draw(first, pinned.topLeft() + QPointF(0.0, kGap), pinned.width());
  const QPointF check = pinned.bottomLeft() - QPointF(0.0, 14.0);
  first.text(check, QStringLiteral("SHA-256 of the list file that belongs to these pages:"),
             kSmallText);
  first.text(check + QPointF(0.0, 13.0),
             fitted(printable(packet.list_sha256), kSmallText, flow.width()), kSmallText);
  write_seasons(flow, packet);
}

}  // namespace oaklight
