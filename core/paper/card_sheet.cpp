#include <QPainterPath>
#include <algorithm>
#include <numbers>

#include "core/model/place.hpp"
#include "core/paper/tally_sheet.hpp"

namespace oaklight {
namespace {

constexpr Stroke kLine{0.8, Ink::black};
constexpr Stroke kHeavy{1.6, Ink::black};
constexpr double kCrown = 92.0;
constexpr double kSideColumn = 52.0;
constexpr double kNeighbourRow = 24.0;
constexpr int kRowsASide = 2;

/// Where a line across the crown from this side would start, y down.
QPointF towards(Side side) {
  switch (side) {
    case Side::north:
      return {0.0, -1.0};
    case Side::east:
      return {1.0, 0.0};
    case Side::south:
      return {0.0, 1.0};
    case Side::west:
      return {-1.0, 0.0};
  }
  return {};
}

QString letter_of(Side side) { return printable(std::string(word_of(side))); }

/// The crown from above with its four sides, to draw the neighbours' crowns around.
void draw_crown(Drawing& drawing, QPointF centre) {
  const double radius = kCrown / 2.0;
  QPainterPath crown;
  crown.addEllipse(centre, radius, radius);
  drawing.outline(crown, kHeavy);
  const double reach = radius * std::numbers::sqrt2 / 2.0;
  drawing.line(centre + QPointF(-reach, -reach), centre + QPointF(reach, reach),
               {0.6, Ink::black, {3.0, 3.0}});
  drawing.line(centre + QPointF(-reach, reach), centre + QPointF(reach, -reach),
               {0.6, Ink::black, {3.0, 3.0}});
  for (const Side side : kSides) {
    const QPointF at = centre + towards(side) * (radius - 13.0);
    drawing.text_centred(at + QPointF(0.0, 5.0), letter_of(side), kTagText);
  }
  drawing.dot(centre, 2.6, Ink::black);
}

/// How to look, beside the crown: the words of `seen` with what they mean.
void draw_how(SheetFrame& frame, const Form& form, const Field* seen, const QRectF& strip) {
  const double x = strip.left() + kCrown + 40.0;
  const double width = strip.right() - x;
  double baseline = strip.top() + ascent_of(kSmallStrongText);
  const auto line = [&](const QString& words, const TextStyle& style) {
    for (const QString& part : wrapped(words, style, width)) {
      frame.drawing().text({x, baseline}, part, style);
      baseline += leading_of(kSmallText);
    }
  };
  line(QStringLiteral("Stand at the stem, face north, look up. Draw the crowns that you see around "
                      "this one. A side where nothing stands is \"open\": tick it below."),
       kSmallStrongText);
  const ChoiceList* list = seen == nullptr ? nullptr : form.find_choices(seen->choices);
  if (list == nullptr) return;
  for (const Choice& choice : list->choices) {
    const QString help = choice.help.empty() ? printable(choice.label) : printable(choice.help);
    line(printable(choice.word) + QStringLiteral(": ") + help, kSmallText);
  }
}

/// The box of one side: its letter, and the tick for "nothing stands here".
void draw_side(SheetFrame& frame, Side side, const QRectF& box) {
  Drawing& drawing = frame.drawing();
  drawing.outline_rect(box, kHeavy);
  drawing.text_centred({box.center().x(), box.top() + 20.0}, letter_of(side), kHeadingText);
  constexpr double kTick = 12.0;
  drawing.outline_rect({box.left() + 5.0, box.bottom() - 19.0, kTick, kTick}, kLine);
  drawing.text({box.left() + 9.0 + kTick, box.bottom() - 9.0}, QStringLiteral("open"), kSmallText);
}

void draw_neighbours(SheetFrame& frame, const SheetSet& set) {
  std::vector<const Field*> fields = printed_fields(set.form, SheetPart::neighbours);
  const Field* side_field = nullptr;
  std::erase_if(fields, [&](const Field* field) {
    if (field->name == "side") side_field = field;
    return field->name == "side" || field->name == "role";
  });
  std::vector<SheetColumn> columns = sheet_columns(fields, set.system, frame.width() - kSideColumn);
  const QString side = side_field == nullptr ? QString() : sheet_column(*side_field, set.system);
  columns.insert(columns.begin(), {QStringLiteral("Side"), side, kSideColumn});
  draw_sheet_head(frame, columns, frame.left());
  columns.erase(columns.begin());
  for (const Side s : kSides) {
    const double top = frame.top();
    for (int i = 0; i < kRowsASide; ++i) {
      draw_sheet_row(frame, columns, frame.left() + kSideColumn, kNeighbourRow);
    }
    draw_side(frame, s, {frame.left(), top, kSideColumn, kRowsASide * kNeighbourRow});
  }
}

}  // namespace

SheetPage card_sheet(const SheetSet& set, const SheetDress& dress) {
  SheetFrame frame(dress, false, QStringLiteral("Crop tree card"),
                   QStringLiteral("crop_trees.csv, one row for each tree and each open side"));
  std::vector<SheetFrame::Cell> cells;
  for (const Field* field : printed_fields(set.form, SheetPart::crop_tree)) {
    cells.push_back({field, field->name == "role" ? QStringLiteral("crop") : QString()});
  }
  frame.cells(set.form, cells, 4);
  frame.gap(7.0);
  const auto neighbours = printed_fields(set.form, SheetPart::neighbours);
  const auto named = [&](std::string_view name) {
    const auto found = std::ranges::find(neighbours, name, &Field::name);
    return found == neighbours.end() ? nullptr : *found;
  };
  const QRectF strip = frame.take(kCrown + 6.0);
  draw_crown(frame.drawing(), {strip.left() + kCrown / 2.0 + 14.0, strip.top() + kCrown / 2.0});
  draw_how(frame, set.form, named("seen"), strip);
  frame.subhead(
      QStringLiteral("Neighbours (role = neighbour; a ticked side is a row with role = "
                     "open)"));
  draw_neighbours(frame, set);
  frame.gap(3.0);
  for (const char* name : {"crown_class", "status"}) {
    if (const Field* field = named(name)) frame.words_of(set.form, *field);
  }
  frame.note(
      QStringLiteral("The words for what was seen stand on the sheet of lines. More than two "
                     "on a side: go on with a second card of the same name."));
  return frame.finish();
}

std::vector<SheetPage> tally_sheets(const SheetSet& set, PaperSize paper) {
  const QString form = QStringLiteral("form ") + printable(set.form.name) +
                       QStringLiteral(", version ") + printable(set.form.version);
  const SheetDress dress{paper, set.system, printable(set.tract), set.demo, form};
  auto plots = set.plots;
  if (plots.empty()) plots.emplace_back();
  std::vector<SheetPage> pages;
  for (const auto& [stand, plot] : plots) {
    pages.push_back(plot_sheet(set, dress, stand, plot));
    pages.push_back(line_sheet(set, dress, stand, plot));
    if (set.seedlings) pages.push_back(seedling_sheet(set, dress, stand, plot));
  }
  pages.push_back(card_sheet(set, dress));
  number_sheets(pages, dress);
  return pages;
}

}  // namespace oaklight
