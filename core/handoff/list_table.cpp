#include "core/handoff/list_table.hpp"

#include <algorithm>
#include <cassert>

#include "core/base/number_text.hpp"
#include "core/base/utf8.hpp"

namespace oaklight {
namespace {

constexpr std::string_view kReplacement = "\xEF\xBF\xBD";

const std::vector<ListColumn> kColumns = {{"list", ColumnKind::text, 20.0, false},
                                          {"number", ColumnKind::whole, 8.0, false},
                                          {"tag", ColumnKind::text, 10.0, true},
                                          {"cautions", ColumnKind::text, 60.0, true},
                                          {"species", ColumnKind::text, 20.0, true},
                                          {"dbh_in", ColumnKind::decimal, 8.0, false},
                                          {"stand", ColumnKind::text, 16.0, true},
                                          {"method", ColumnKind::text, 14.0, false},
                                          {"product", ColumnKind::text, 11.0, false},
                                          {"volume_bf", ColumnKind::whole, 10.0, false},
                                          {"log_rule", ColumnKind::text, 22.0, false},
                                          {"volume_cords", ColumnKind::decimal, 13.0, false},
                                          {"crop_tree", ColumnKind::text, 10.0, false},
                                          {"latitude_deg", ColumnKind::decimal, 13.0, false},
                                          {"longitude_deg", ColumnKind::decimal, 13.0, false},
                                          {"reason", ColumnKind::text, 60.0, true},
                                          {"goes_to", ColumnKind::text, 11.0, false},
                                          {"ways_allowed", ColumnKind::text, 24.0, false},
                                          {"how", ColumnKind::text, 60.0, true},
                                          {"herbicide", ColumnKind::text, 11.0, false},
                                          {"herbicide_why", ColumnKind::text, 60.0, true},
                                          {"season_holds", ColumnKind::text, 12.0, false},
                                          {"season", ColumnKind::text, 60.0, true}};

ListCell typed(std::string_view text) {
  if (text.empty()) return std::monostate{};
  return clean_text(text);
}
ListCell word(std::string_view text) { return std::string(text); }

template <class Q>
ListCell figure(const std::optional<Q>& value, int decimals) {
  if (!value) return std::monostate{};
  return ListNumber{value->value, decimals};
}

/// "stop DEAD_ASH: ... | extra_care SLOPE_15: ...", all of them, stops first.
ListCell cautions_cell(const PacketTree& tree) {
  std::string text;
  for (const Caution& caution : tree.cautions) {
    if (!text.empty()) text += " | ";
    text += std::string(word_of(caution.severity)) + " " + caution.code + ": " + caution.text;
  }
  return typed(text);
}

ListCell ways_cell(const WorkNotes& notes) {
  std::string text;
  for (const Way way : notes.ways) text += (text.empty() ? "" : "|") + std::string(word_of(way));
  return word(text);
}

/// Whose the tree is, told only to the owner; others see their own.
ListCell goes_to(const Packet& packet, const PacketTree& tree, bool works) {
  if (packet.reader != PacketReader::owner || !works) return std::monostate{};
  if (tree.verdict == Verdict::kill_standing || tree.method == Method::girdle) {
    return word(word_of(PacketReader::standing));
  }
  if (!tree.destination) return std::monostate{};
  return word(word_of(*tree.destination));
}

void add_work(std::vector<ListCell>& cells, const Packet& packet, const PacketTree& tree,
              bool works) {
  // What is to be done stands only beside trees that this reader may come to deal with, so that
  // nobody filters the others out as work of his.
  if (!works) {
    cells.resize(cells.size() + 5);
    return;
  }
  cells.push_back(word(word_of(tree.method)));
  cells.push_back(word(word_of(tree.product)));
  cells.push_back(figure(tree.board_feet, 0));
  cells.push_back(tree.board_feet ? word(packet.log_rule) : ListCell{});
  cells.push_back(figure(tree.cords, 2));
}

void add_notes(std::vector<ListCell>& cells, const PacketTree& tree, bool works) {
  if (!works || !tree.work) {
    cells.resize(cells.size() + 6);
    return;
  }
  const WorkNotes& notes = *tree.work;
  cells.push_back(ways_cell(notes));
  cells.push_back(typed(notes.how));
  cells.push_back(word(notes.herbicide ? "by_label" : "no"));
  cells.push_back(typed(notes.herbicide_words));
  cells.push_back(notes.when.empty() ? ListCell{} : word(notes.held ? "yes" : "no"));
  cells.push_back(typed(notes.when));
}

std::vector<ListCell> row_of(const Packet& packet, const PacketList& list, std::size_t i) {
  const PacketTree& tree = (*list.trees)[i];
  std::vector<ListCell> cells = {word(list.name),     ListNumber{static_cast<double>(i + 1), 0},
                                 typed(tree.tag),     cautions_cell(tree),
                                 typed(tree.species), ListNumber{tree.dbh.inches().value, 1},
                                 typed(tree.stand)};
  add_work(cells, packet, tree, list.works);
  cells.push_back(word(tree.crop ? "yes" : "no"));
  cells.push_back(tree.position ? ListCell{ListNumber{tree.position->latitude.value, 6}}
                                : ListCell{});
  cells.push_back(tree.position ? ListCell{ListNumber{tree.position->longitude.value, 6}}
                                : ListCell{});
  cells.push_back(typed(tree.reason));
  cells.push_back(goes_to(packet, tree, list.works));
  add_notes(cells, tree, list.works);
  return cells;
}

/// How many bytes the character at the start of the text has; 0: it is no character.
std::size_t character_length(std::string_view text) {
  for (std::size_t n = 1; n <= std::min<std::size_t>(4, text.size()); ++n) {
    if (is_utf8(text.substr(0, n))) return n;
  }
  return 0;
}

bool xml_may_hold(std::string_view character) {
  const auto first = static_cast<unsigned char>(character.front());
  if (character.size() == 1) {
    return first >= 0x20 || first == '\t' || first == '\n' || first == '\r';
  }
  return character != "\xEF\xBF\xBE" && character != "\xEF\xBF\xBF";  // U+FFFE, U+FFFF
}

}  // namespace

std::size_t ListTable::column(std::string_view name) const {
  const auto at = std::find_if(columns.begin(), columns.end(),
                               [&](const ListColumn& c) { return c.name == name; });
  assert(at != columns.end());
  return static_cast<std::size_t>(at - columns.begin());
}

ListTable list_table(const Packet& packet) {
  ListTable table{kColumns, {}, {}};
  for (const PacketList& list : lists_of(packet)) {
    for (std::size_t i = 0; i < list.trees->size(); ++i) {
      table.rows.push_back(row_of(packet, list, i));
      table.places.push_back((*list.trees)[i].position);
    }
  }
  return table;
}

std::string text_of(const ListCell& cell) {
  if (const auto* text = std::get_if<std::string>(&cell)) return *text;
  if (const auto* number = std::get_if<ListNumber>(&cell)) {
    return number_text(number->value, number->decimals);
  }
  return "";
}

double printed_value(const ListNumber& number) {
  const auto printed = number_from_text(number_text(number.value, number.decimals));
  return printed ? *printed : 0.0;
}

std::string clean_text(std::string_view text) {
  std::string clean;
  clean.reserve(text.size());
  while (!text.empty()) {
    const std::size_t n = character_length(text);
    const std::string_view character = text.substr(0, std::max<std::size_t>(n, 1));
    clean += n > 0 && xml_may_hold(character) ? character : kReplacement;
    text.remove_prefix(character.size());
  }
  return clean;
}

}  // namespace oaklight
