#include <algorithm>

#include "core/base/number_text.hpp"
#include "core/paper/packet_pages.hpp"
#include "core/paper/reader_words.hpp"
#include "core/paper/table.hpp"

namespace oaklight {
namespace {

constexpr double kMarkColumn = 24.0;
constexpr double kTagColumn = 54.0;
constexpr double kDbhColumn = 56.0;
constexpr double kMapColumn = 30.0;

const TextStyle kSpeciesText{12.0, true, Ink::black};

QString from(const std::string& text) { return QString::fromStdString(text); }

QString dbh_words(const Dbh& dbh) {
  return from(number_text(dbh.tenths() / 10.0, 1)) +
         (dbh.system() == UnitSystem::us ? QStringLiteral(" in") : QStringLiteral(" cm"));
}

QString method_words(const PacketTree& tree) {
  switch (tree.method) {
    case Method::fell:
      return QStringLiteral("Fell");
    case Method::machine_fell:
      return QStringLiteral("Fell by machine");
    case Method::girdle:
      return QStringLiteral("Girdle, leave standing");
    case Method::none:
      break;
  }
  switch (tree.verdict) {
    case Verdict::take:
      return QStringLiteral("Cut");
    case Verdict::keep:
      return QStringLiteral("Leave");
    case Verdict::kill_standing:
      return QStringLiteral("Kill standing");
    case Verdict::look_again:
      return QStringLiteral("Look again first");
  }
  return {};
}

QString volume_words(const PacketTree& tree) {
  if (tree.product == Product::sawlog) {
    if (tree.board_feet)
      return from(grouped_text(tree.board_feet->value, 0)) + QStringLiteral(" bd ft");
    return QStringLiteral("no volume");
  }
  if (tree.cords) return from(number_text(tree.cords->value, 2)) + QStringLiteral(" cord");
  return QStringLiteral("no volume");
}

TableCell tag_cell(const PacketTree& tree) { return {{{printable(tree.tag), kTagText}}}; }
TableCell dbh_cell(const PacketTree& tree) { return {{{dbh_words(tree.dbh), kFigureText}}}; }

TableCell species_cell(const PacketTree& tree) {
  return {{{species_words(tree.species), kSpeciesText}}};
}

/// Small text below several cells of a row.
Table::Note note_below(const QString& text, std::size_t from, std::size_t to) {
  return {from, to, {text, kSmallText.in(Ink::soft)}};
}

TableCell caution_cell(const PacketTree& tree) {
  TableCell cell;
  for (const Caution& caution : tree.cautions) {
    cell.paragraphs.push_back({printable(caution.text), kSmallText, caution.severity, 3.0});
  }
  // An empty cell would read as "safe".
  if (cell.paragraphs.empty()) {
    cell.paragraphs.push_back({QStringLiteral("None recorded. Look yourself."), kSmallText});
  }
  return cell;
}

/// Why a tree stays, and what is dangerous about standing near it.
TableCell why_cell(const PacketTree& tree) {
  TableCell cell{{{printable(tree.reason), kSmallText}}};
  for (const Caution& caution : tree.cautions) {
    cell.paragraphs.push_back({printable(caution.text), kSmallText, caution.severity, 3.0});
  }
  return cell;
}

/// "sawlog, 120 bd ft"; "" where no product is named.
QString product_words(const PacketTree& tree) {
  if (tree.product == Product::none) return {};
  const auto product = word_of(tree.product);
  return QString::fromLatin1(product.data(), static_cast<qsizetype>(product.size())) +
         QStringLiteral(", ") + volume_words(tree);
}

/// Whose list a tree is on, for the owner.
QString whose_words(const PacketTree& tree) {
  if (tree.verdict == Verdict::kill_standing || tree.method == Method::girdle) {
    return QStringLiteral("standing list");
  }
  if (!tree.destination) return QStringLiteral("on nobody's list");
  return *tree.destination == Reader::logger ? QStringLiteral("logger's list")
                                             : QStringLiteral("firewood list");
}

/// "by hand or by machine": the ways left for felling, where there is more than the one named.
QString other_ways(const PacketTree& tree) {
  if (!tree.work) return {};
  const auto allowed = [&](Way way) { return std::ranges::count(tree.work->ways, way) > 0; };
  if (tree.method == Method::fell && allowed(Way::machine_fell)) {
    return QStringLiteral("or by machine");
  }
  return {};
}

TableCell do_cell(const Packet& packet, const PacketTree& tree) {
  TableCell cell{{{method_words(tree), kStrongText}, {product_words(tree), kSmallText}}};
  QStringList more;
  if (packet.reader == PacketReader::owner) more.append(whose_words(tree));
  const QString ways = other_ways(tree);
  if (!ways.isEmpty()) more.append(ways);
  if (!more.isEmpty()) cell.paragraphs.push_back({more.join(QStringLiteral("; ")), kSmallText});
  if (packet.reader == PacketReader::standing && tree.work) {
    cell.paragraphs.push_back(
        {tree.work->herbicide ? QStringLiteral("Herbicide: label") : QStringLiteral("NO HERBICIDE"),
         kSmallStrongText,
         {},
         3.0});
  }
  if (tree.work && tree.work->held) {
    cell.paragraphs.push_back({QStringLiteral("NOT NOW: season"), kSmallStrongText, {}, 3.0});
  }
  return cell;
}

/// Small text under a row: why the tree goes; for a tree killed standing also why herbicide may be
/// used on it or not.
QString below_words(const Packet& packet, const PacketTree& tree) {
  QString words = printable(tree.reason);
  if (packet.reader != PacketReader::standing || !tree.work) return words;
  const QString herbicide = printable(tree.work->herbicide_words);
  if (!words.isEmpty() && !herbicide.isEmpty()) words += QChar(u' ');
  return words + herbicide;
}

/// "Fell: sawlog, 120 bd ft. ", for a note.
QString work_words(const Packet& packet, const PacketTree& tree) {
  const QString product = product_words(tree);
  QString words =
      method_words(tree) + (product.isEmpty() ? QString() : QStringLiteral(": ") + product);
  if (packet.reader == PacketReader::owner) words += QStringLiteral(", ") + whose_words(tree);
  return words + QStringLiteral(". ");
}

TableCell mark_cell(TreeMark mark) {
  TableCell cell;
  cell.mark = mark;
  return cell;
}

/// Adds the column that says on which map the tree is, where there are several.
void add_map_column(std::vector<TableColumn>& columns, const MapLetters& letters) {
  if (!letters.empty()) columns.push_back({QStringLiteral("Map"), kMapColumn});
}
void add_map_cell(std::vector<TableCell>& cells, const PacketTree& tree,
                  const MapLetters& letters) {
  if (letters.empty()) return;
  const auto found = letters.find(printable(tree.tag));
  cells.push_back(
      {{{found == letters.end() ? QStringLiteral("\u2013") : found->second, kFigureText}}});
}

/// Calls add_row for each tree, with a band where the stand changes.
template <class AddRow>
void write_rows(Table& table, const std::vector<PacketTree>& trees, const AddRow& add_row) {
  const std::string* stand = nullptr;
  for (const PacketTree& tree : trees) {
    if (!stand || *stand != tree.stand) {
      table.group(QStringLiteral("Stand: ") + printable(tree.stand));
    }
    stand = &tree.stand;
    add_row(tree);
  }
}

void write_leave_rows(PageFlow& flow, const std::vector<PacketTree>& trees, TreeMark listed_as,
                      const MapLetters& letters) {
  std::vector<TableColumn> columns = {{QString(), kMarkColumn},
                                      {QStringLiteral("Tag"), kTagColumn},
                                      {QStringLiteral("Species"), 118.0},
                                      {QStringLiteral("DBH"), kDbhColumn},
                                      {QStringLiteral("Why"), 0.0}};
  add_map_column(columns, letters);
  Table table(flow, std::move(columns), 27.0);
  write_rows(table, trees, [&](const PacketTree& tree) {
    const bool crop = listed_as == TreeMark::keep && tree.crop;
    std::vector<TableCell> cells = {mark_cell(crop ? TreeMark::crop : listed_as), tag_cell(tree),
                                    species_cell(tree), dbh_cell(tree), why_cell(tree)};
    add_map_cell(cells, tree, letters);
    table.row(cells);
  });
}

}  // namespace

void write_cut_list(PageFlow& flow, const Packet& packet, const MapLetters& letters) {
  const ReaderWords& words = words_for(packet.reader);
  flow.new_page(QString::fromUtf8(words.work_section));
  flow.heading(QString::fromUtf8(words.work_heading).arg(packet.cut.size()));
  if (packet.cut.empty()) {
    flow.text({{QStringLiteral("No tree is marked for this list."), kBodyText}});
    return;
  }
  flow.text({{QString::fromUtf8(words.work_intro), kBodyText}});
  flow.gap(4.0);
  std::vector<TableColumn> columns = {{QString(), kMarkColumn},
                                      {QStringLiteral("Tag"), kTagColumn},
                                      {QStringLiteral("Species"), 0.0},
                                      {QStringLiteral("DBH"), kDbhColumn},
                                      {QStringLiteral("What to do"), 112.0},
                                      {QStringLiteral("Cautions"), 164.0}};
  add_map_column(columns, letters);
  Table table(flow, std::move(columns), 36.0);
  write_rows(table, packet.cut, [&](const PacketTree& tree) {
    TableCell tick;
    tick.tick = true;
    std::vector<TableCell> cells = {tick,           tag_cell(tree),        species_cell(tree),
                                    dbh_cell(tree), do_cell(packet, tree), caution_cell(tree)};
    add_map_cell(cells, tree, letters);
    table.row(cells, note_below(below_words(packet, tree), 2, 4));
  });
}

void write_trained_list(PageFlow& flow, const Packet& packet, const MapLetters& letters) {
  if (packet.trained.empty()) return;
  const ReaderWords& words = words_for(packet.reader);
  const bool clears = packet.reader != PacketReader::firewood;
  flow.new_page(QString::fromUtf8(words.trained_section));
  flow.heading(QString::fromUtf8(words.trained_heading).arg(packet.trained.size()));
  flow.text({{QString::fromUtf8(words.trained_intro), kStrongText}});
  flow.gap(4.0);
  std::vector<TableColumn> columns = {{QString(), kMarkColumn},
                                      {QStringLiteral("Tag"), kTagColumn},
                                      {QStringLiteral("Species"), 0.0},
                                      {QStringLiteral("DBH"), kDbhColumn},
                                      {QStringLiteral("What is dangerous"), 184.0}};
  if (clears) columns.push_back({QStringLiteral("Cleared by"), 76.0});
  add_map_column(columns, letters);
  Table table(flow, std::move(columns), 36.0);
  write_rows(table, packet.trained, [&](const PacketTree& tree) {
    std::vector<TableCell> cells = {mark_cell(TreeMark::trained), tag_cell(tree),
                                    species_cell(tree), dbh_cell(tree), caution_cell(tree)};
    if (clears) {
      TableCell cleared;
      cleared.blank = true;
      cells.push_back(cleared);
    }
    add_map_cell(cells, tree, letters);
    table.row(cells, note_below(clears ? work_words(packet, tree) + below_words(packet, tree)
                                       : printable(tree.reason),
                                2, 3));
  });
}

void write_keep_list(PageFlow& flow, const Packet& packet, const MapLetters& letters) {
  flow.new_page(QStringLiteral("DO NOT CUT"));
  flow.heading(QStringLiteral("DO NOT CUT: %1").arg(packet.keep.size()));
  flow.text(
      {{QStringLiteral("These trees stay. Do not fell them, skin their bark, drop a tree into "
                       "their crowns or drive over their roots. A tree whose tag is on no "
                       "page of this packet stays too."),
        kStrongText}});
  flow.gap(4.0);
  if (!packet.keep.empty()) write_leave_rows(flow, packet.keep, TreeMark::keep, letters);
  if (packet.others.empty()) return;
  flow.subhead(QString::fromUtf8(words_for(packet.reader).others_heading).arg(packet.others.size()),
               90.0);
  write_leave_rows(flow, packet.others, TreeMark::other, letters);
}

}  // namespace oaklight
