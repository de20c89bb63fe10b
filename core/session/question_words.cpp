#include "core/session/question_words.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <string_view>

#include "core/base/number_text.hpp"

namespace oaklight {
namespace {

using Cells = std::map<std::string, std::string, std::less<>>;

std::string record_word(std::string_view table) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 14> kWords = {
      {{"tract", "tract"},
       {"stand", "stand"},
       {"cruise", "cruise"},
       {"plot", "plot"},
       {"tree", "tree on plot"},
       {"regen", "seedling count on plot"},
       {"walk_tree", "tree with tag"},
       {"contact", "neighbour of tree"},
       {"mark", "mark of tree"},
       {"map_line", "map line"},
       {"stump", "finding after the cut, tree"},
       {"acorn_count", "acorn count of tree"},
       {"acorn_year", "acorn year"},
       {"form_file", "form"}}};
  for (const auto& [name, word] : kWords) {
    if (name == table) return std::string(word);
  }
  return std::string(table);
}

/// The name of a column without its unit, as people say it.
std::string field_word(std::string column) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 17> kWords = {
      {{"geom", "place"},
       {"dbh", "DBH"},
       {"min_dbh", "least DBH"},
       {"species_fia", "species"},
       {"area_ac", "acres"},
       {"walked_ac", "acres walked"},
       {"by_hand", "decided by hand"},
       {"crop", "crop tree"},
       {"n30", "acorns in 30 s"},
       {"per_tip", "acorns per tip"},
       {"demo", "invented data"},
       {"stand_uid", "stand"},
       {"cruise_uid", "cruise"},
       {"plot_uid", "plot"},
       {"walk_tree_uid", "tree"},
       {"crop_uid", "crop tree"},
       {"neighbour_uid", "neighbour"}}};
  for (const auto& [name, word] : kWords) {
    if (name == column) return std::string(word);
  }
  std::ranges::replace(column, '_', ' ');
  return column;
}

bool drop_end(std::string& text, std::string_view end) {
  if (!text.ends_with(end)) return false;
  text.resize(text.size() - end.size());
  return true;
}

/// The words of a list, "den_tree|hollow".
std::vector<std::string> words_in(std::string_view list) {
  std::vector<std::string> words;
  while (!list.empty()) {
    const auto end = std::min(list.find('|'), list.size());
    words.emplace_back(list.substr(0, end));
    list.remove_prefix(std::min(end + 1, list.size()));
  }
  return words;
}

/// A whole number of tenths or hundredths as the instrument showed it; "" where there is none.
std::string reading(const std::string& value, int decimals, const std::string& unit) {
  const auto whole = whole_from_text(value);
  if (!whole) return value;
  const double shown = static_cast<double>(*whole) / (decimals == 1 ? 10.0 : 100.0);
  return number_text(shown, decimals) + unit;
}

SaidField said(std::string column, const std::string& value, bool metric,
               const SpeciesTable& species) {
  if (column == "species_fia") {
    const auto code = whole_from_text(value);
    const Species* found = code ? species.find(SpeciesCode{static_cast<int>(*code)}) : nullptr;
    return {"species", found == nullptr ? value : found->common_name};
  }
  if (column == "azimuth_tenths") return {"azimuth", reading(value, 1, "\xC2\xB0")};
  if (drop_end(column, "_tenths"))
    return {field_word(column), reading(value, 1, metric ? " cm" : " in")};
  if (drop_end(column, "_hundredths"))
    return {field_word(column), reading(value, 2, metric ? " m" : " ft")};
  if (value.empty()) {
    for (const char* end : {"_pct", "_ft", "_years", "_m"}) {
      if (drop_end(column, end)) break;
    }
    return {field_word(column), ""};
  }
  const bool yes_no =
      column == "by_hand" || column == "crop" || column == "demo" || column == "confirmed";
  if (yes_no && (value == "0" || value == "1"))
    return {field_word(column), value == "1" ? "yes" : "no"};
  if (column == "crop") return {column, value};  // of an acorn year
  std::string unit;
  for (const auto& [end, word] : {std::pair{"_pct", " %"}, std::pair{"_ft", " ft"},
                                  std::pair{"_years", " years"}, std::pair{"_m", " m"}}) {
    if (unit.empty() && drop_end(column, end)) unit = word;
  }
  std::string text = value;
  const bool list =
      column == "conditions" || column == "sides" || column == "looked_sides" || column == "rules";
  if (list) {
    std::vector<std::string> chosen = words_in(text);
    text.clear();
    for (const std::string& word : chosen) text += (text.empty() ? "" : ", ") + word;
    std::ranges::replace(text, '_', ' ');
    return {field_word(column), text, std::move(chosen)};
  }
  if (column != "note" && column != "reason" && column != "text" && column != "name") {
    std::ranges::replace(text, '_', ' ');
    if (unit.empty()) return {field_word(column), text, {value}};
  }
  return {field_word(column), text + unit};
}

/// A form's text is told by where it begins to differ, not at its full length.
std::string shortened(const std::string& value) {
  constexpr std::size_t kMost = 120;
  if (value.size() <= kMost) return value;
  std::size_t end = kMost;
  while (end > 0 && (static_cast<unsigned char>(value[end]) & 0xC0U) == 0x80U) --end;
  return value.substr(0, end) + " ...";
}

std::string_view mend_of(const Question& question) {
  switch (question.kind) {
    case QuestionKind::both_changed:
      return "Choose the version that holds. The other stays in the history.";
    case QuestionKind::removed_in_use:
      return "Keep it, or remove it with all that belongs to it.";
    case QuestionKind::used_twice:
      break;
  }
  if (question.table == "walk_tree")
    return "Find both trees. Give one of them a new tag, on the tree and here, before any list "
           "leaves the tract.";
  if (question.table == "stand")
    return "If it is one stand, put them together; if not, give one of them another name.";
  if (question.table == "cruise")
    return "If it is one cruise, put them together; if not, give one of them another name.";
  return "Give one of them another label. A plot that was taken twice counts twice until one is "
         "removed.";
}

}  // namespace

SaidQuestion words_of(const Question& question, const SpeciesTable& species) {
  SaidQuestion words{
      record_word(question.table), question.name, {}, std::string(mend_of(question))};
  std::vector<Cells> cells;
  std::map<std::string, int> differ;  // by column, whether some side says otherwise
  for (const QuestionSide& side : question.sides)
    cells.emplace_back(side.cells.begin(), side.cells.end());
  for (const Cells& side : cells) {
    for (const auto& [column, value] : side) {
      const bool all_same = std::ranges::all_of(cells, [&](const Cells& other) {
        const auto found = other.find(column);
        return found != other.end() && found->second == value;
      });
      differ[column] |= all_same ? 0 : 1;
    }
  }
  for (std::size_t i = 0; i < question.sides.size(); ++i) {
    const QuestionSide& side = question.sides[i];
    SaidSide said_side{side.device, side.at, side.label, side.removed, {}};
    if (said_side.when.size() >= 16) {
      said_side.when.resize(16);
      said_side.when[10] = ' ';
    }
    const auto units = cells[i].find("units");
    const bool metric = units != cells[i].end() && units->second == "metric";
    for (const auto& [column, differs] : differ) {
      const auto found = cells[i].find(column);
      const std::string value = found == cells[i].end() ? "" : found->second;
      const bool wanted = question.kind == QuestionKind::used_twice ? !value.empty() : differs != 0;
      if (wanted && column != "sha256" && column != "built_in_sha256")
        said_side.fields.push_back(said(column, shortened(value), metric, species));
    }
    words.sides.push_back(std::move(said_side));
  }
  return words;
}

std::string title_of(const SaidQuestion& said, QuestionKind kind) {
  const std::string record = said.record + (said.name.empty() ? "" : " " + said.name);
  switch (kind) {
    case QuestionKind::both_changed:
      return record + ": both changed";
    case QuestionKind::removed_in_use:
      return record + ": removed by one, used by another";
    case QuestionKind::used_twice:
      break;
  }
  return record + ": used " +
         (said.sides.size() == 2 ? "twice" : std::to_string(said.sides.size()) + " times");
}

}  // namespace oaklight
