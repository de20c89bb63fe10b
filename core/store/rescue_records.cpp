#include "core/store/rescue_records.hpp"

#include <algorithm>
#include <set>

#include "core/store/row_text.hpp"

namespace oaklight::store {
namespace {

constexpr const char* kLostFix = "Enter it again, or take it from an older copy.";

std::string text_at(const std::vector<std::string>& columns, const Row& row, const char* name) {
  const auto place = std::find(columns.begin(), columns.end(), name);
  const auto* text =
      std::get_if<std::string>(&row[static_cast<std::size_t>(place - columns.begin())]);
  return text == nullptr ? std::string{} : *text;
}

/// Rows in order of their keys, each key once; one in its place goes before a stray.
std::vector<const HarvestedRow*> by_key(const HarvestedTable& table) {
  std::vector<const HarvestedRow*> rows;
  for (const HarvestedRow& row : table.rows) rows.push_back(&row);
  std::stable_sort(rows.begin(), rows.end(), [](const auto* a, const auto* b) {
    return a->key != b->key ? a->key < b->key : a->in_place > b->in_place;
  });
  rows.erase(std::unique(rows.begin(), rows.end(),
                         [](const auto* a, const auto* b) { return a->key == b->key; }),
             rows.end());
  return rows;
}

/// Lines of the history in the order of events, which is that of the actions' uids; in a file that
/// was joined from several they may lie in another order.
std::vector<const HarvestedRow*> by_uid(const HarvestedTable& table, const char* column) {
  auto lines = by_key(table);
  std::stable_sort(lines.begin(), lines.end(), [&](const auto* a, const auto* b) {
    return text_at(table.columns, a->cells, column) < text_at(table.columns, b->cells, column);
  });
  return lines;
}

/// The last image of each record that the history has, by table and uid.
using Images = std::map<std::string, std::map<std::string, Row>, std::less<>>;

Images images_of(const Harvest& harvest, const RecordTables& tables) {
  Images images;
  const HarvestedTable& changes = harvest.tables.find("change")->second;
  for (const HarvestedRow* line : by_uid(changes, "action_uid")) {
    const auto table = tables.find(text_at(changes.columns, line->cells, "table_name"));
    if (table == tables.end()) continue;
    const auto image = from_json(text_at(changes.columns, line->cells, "after_json"),
                                 table->second.columns(), Row(table->second.columns().size()));
    if (!image || !table->second.verify(*image)) continue;
    images[table->first][table->second.uid_of(*image)] = *image;
  }
  return images;
}

/// The key of the last line of the history that is lost; 0 when none is.
std::int64_t last_lost_line(const Harvest& harvest) {
  const HarvestedTable& changes = harvest.tables.find("change")->second;
  std::int64_t expected = changes.highest_key;
  const auto lines = by_key(changes);
  for (auto line = lines.rbegin(); line != lines.rend() && (*line)->key == expected; ++line)
    --expected;
  return expected;
}

bool is_younger(const RecordTable& table, const Row& a, const Row& b) {
  const auto* at = std::get_if<std::string>(&table.at(a, "changed_at"));
  const auto* than = std::get_if<std::string>(&table.at(b, "changed_at"));
  return at != nullptr && (than == nullptr || *at > *than);
}

/// The best of what lies on pages: the row in its table, else the youngest stray.
std::map<std::string, RescuedRow> rows_on_pages(const HarvestedTable& found,
                                                const RecordTable& table) {
  std::map<std::string, RescuedRow> best;
  for (const HarvestedRow& row : found.rows) {
    const auto source = row.in_place ? RescueSource::table : RescueSource::stray;
    const RescuedRow candidate{row.key, row.cells, source};
    const auto [there, is_new] = best.emplace(table.uid_of(row.cells), candidate);
    if (is_new) continue;
    const bool better =
        source != there->second.source
            ? source == RescueSource::table
            : source == RescueSource::stray && is_younger(table, row.cells, there->second.cells);
    if (better) there->second = candidate;
  }
  return best;
}

/// Lets the history say what records were whose rows are lost.
void take_images(const std::map<std::string, Row>& images, const RecordTable& table,
                 std::int64_t highest_key, std::map<std::string, RescuedRow>& best) {
  for (const auto& [uid, image] : images) {
    // Behind all rows of the table, in the order of their ids.
    const RescuedRow row{highest_key + 1, image, RescueSource::history};
    const auto [there, is_new] = best.emplace(uid, row);
    const bool older_stray = !is_new && there->second.source == RescueSource::stray &&
                             !is_younger(table, there->second.cells, image);
    if (older_stray) there->second = {there->second.key, image, row.source};
  }
}

Error may_be_older(const RecordTable& table, const Row& row) {
  const auto* at = std::get_if<std::string>(&table.at(row, "changed_at"));
  return {ErrorCode::damaged,
          "The " + table.name() + " stands as it was at " + (at == nullptr ? "some time" : *at) +
              "; a later change of it may be lost.",
          table.name() + "/" + table.uid_of(row), "Compare it with what you know of it."};
}

/// Actions that lost a change, or may have: the lines of one action follow each other, so that a
/// gap took from the one before it or the one behind it.
std::set<std::string> broken_actions(const HarvestedTable& changes,
                                     const std::vector<const HarvestedRow*>& lines,
                                     const std::set<std::string>& known) {
  std::set<std::string> broken;
  std::int64_t before = 0;
  std::string action_before;
  for (const HarvestedRow* line : lines) {
    const std::string action = text_at(changes.columns, line->cells, "action_uid");
    if (known.count(action) == 0) broken.insert(action);
    if (line->key != before + 1) broken.insert({action, action_before});
    before = line->key;
    action_before = action;
  }
  if (before < changes.highest_key) broken.insert(action_before);
  return broken;
}

void note_gone(const HarvestedTable& table, const std::vector<Row>& kept, const char* name,
               const char* words, std::vector<Error>& lost) {
  const auto gone = table.highest_key - static_cast<std::int64_t>(kept.size());
  if (gone <= 0) return;
  lost.push_back({ErrorCode::damaged,
                  std::to_string(gone) + " of " + std::to_string(table.highest_key) + words, name,
                  "The records stand as they last were."});
}

}  // namespace

RescuedRows settle_records(const Harvest& harvest, const RecordTables& tables,
                           std::vector<Error>& lost) {
  RescuedRows settled;
  const Images images = images_of(harvest, tables);
  const std::int64_t last_lost = last_lost_line(harvest);
  for (const std::string_view name : kRecordTables) {
    const RecordTable& table = tables.find(name)->second;
    const HarvestedTable& found = harvest.tables.find(name)->second;
    auto best = rows_on_pages(found, table);
    const auto of_table = images.find(name);
    if (of_table != images.end()) take_images(of_table->second, table, found.highest_key, best);
    std::vector<RescuedRow>& rows = settled[std::string(name)];
    for (auto& [uid, row] : best) {
      if (row.source != RescueSource::table && last_lost > 0)
        lost.push_back(may_be_older(table, row.cells));
      rows.push_back(std::move(row));
    }
    std::stable_sort(rows.begin(), rows.end(),
                     [](const RescuedRow& a, const RescuedRow& b) { return a.key < b.key; });
    const std::int64_t gone = found.highest_key - static_cast<std::int64_t>(rows.size());
    if (gone <= 0) continue;
    lost.push_back({ErrorCode::damaged,
                    std::to_string(gone) + " of " + std::to_string(found.highest_key) +
                        " records are nowhere in the file, and the history does not hold them.",
                    std::string(name), kLostFix});
  }
  return settled;
}

RescuedHistory settle_history(const Harvest& harvest, std::vector<Error>& lost) {
  RescuedHistory kept;
  const HarvestedTable& actions = harvest.tables.find("user_action")->second;
  std::set<std::string> known;
  for (const HarvestedRow* line : by_uid(actions, "uid")) {
    const std::string target = text_at(actions.columns, line->cells, "target_uid");
    if (!target.empty() && known.count(target) == 0) continue;
    known.insert(text_at(actions.columns, line->cells, "uid"));
    kept.actions.push_back(line->cells);
  }
  note_gone(actions, kept.actions, "user_action",
            " actions are lost from the history, and cannot be undone.", lost);

  const HarvestedTable& changes = harvest.tables.find("change")->second;
  const auto lines = by_key(changes);
  const std::set<std::string> broken = broken_actions(changes, lines, known);
  for (const HarvestedRow* line : lines) {
    if (broken.count(text_at(changes.columns, line->cells, "action_uid")) == 0)
      kept.changes.push_back(line->cells);
  }
  note_gone(changes, kept.changes, "change",
            " changes are lost from the history, or belong to an action of which a part is lost; "
            "these cannot be undone.",
            lost);
  return kept;
}

}  // namespace oaklight::store
