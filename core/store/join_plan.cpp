#include "core/store/join_plan.hpp"

#include <algorithm>
#include <set>
#include <tuple>
#include <unordered_map>

#include "core/store/join_cells.hpp"
#include "core/store/row_text.hpp"

namespace oaklight::store {
namespace {

/// A record as it is after the join.
struct Shown {
  const RecordTable* table = nullptr;
  Row row;
  const Version* version = nullptr;  ///< nothing for a row without history
  std::vector<const Version*> heads;
  bool passed_over = false;  ///< another record is in the one place that there is
  int users = 0;             ///< removed, yet so many records in use belong to it
  const Shown* last_user = nullptr;

  [[nodiscard]] bool live() const { return table->is_live(row); }
};
using ShownRecords = std::map<std::string, std::map<std::string, Shown>, std::less<>>;

/// What shows of several: what is in use before what was removed, so that nothing goes from sight
/// unasked; what a person decided before what was computed; then the newest.
auto rank_of(const RecordTable& table, const Row& row, const Version* version) {
  return std::tuple(table.is_live(row), version != nullptr, is_by_hand(table, row),
                    version == nullptr ? std::string{} : version->action,
                    version == nullptr ? 0 : version->line, table.uid_of(row));
}
auto rank_of(const Shown& shown) { return rank_of(*shown.table, shown.row, shown.version); }

Shown shown_of(const RecordTable& table, const std::vector<Version>& life) {
  Shown shown{&table, {}, nullptr, heads_of(life)};
  shown.version = *std::ranges::max_element(
      shown.heads, {}, [&](const Version* head) { return rank_of(table, head->row, head); });
  shown.row = shown.version->row;
  return shown;
}

ShownRecords show_all(const RecordTables& tables, const Lives& lives, const Rows& rows) {
  ShownRecords all;
  for (const auto& [name, table] : tables) {
    auto& shown = all[name];
    if (const auto found = lives.find(name); found != lives.end()) {
      for (const auto& [uid, life] : found->second) shown.emplace(uid, shown_of(table, life));
    }
    if (const auto found = rows.find(name); found != rows.end()) {
      for (const auto& [uid, row] : found->second) shown.emplace(uid, Shown{&table, row, nullptr});
    }
  }
  return all;
}

/// The planner: one stage after the other, each a function of the records and of nothing else.
class Planner {
 public:
  Planner(const HistoryLines& lines, ShownRecords all) : lines_(lines), all_(std::move(all)) {}

  JoinPlan plan() {
    share_places();
    bring_back();
    tell_apart();
    ask();
    JoinPlan plan;
    for (auto& [name, records] : all_) {
      for (auto& [uid, shown] : records) {
        // Forms share one row a path, in use or not.
        if (name == "form_file" && shown.passed_over) continue;
        plan.rows[name].emplace(uid, shown.row);
      }
    }
    plan.questions = std::move(questions_);
    return plan;
  }

 private:
  /// Where there is room for one record only, the others are taken out of use.
  void share_places() {
    for (auto& [name, records] : all_) {
      std::map<std::string, std::vector<Shown*>> places;
      for (auto& [uid, shown] : records) {
        const auto place = place_of(*shown.table, shown.row);
        if (place && (shown.live() || name == "form_file")) places[*place].push_back(&shown);
      }
      for (auto& [place, rivals] : places) {
        if (rivals.size() < 2) continue;
        std::ranges::sort(rivals, std::ranges::greater{},
                          [](const Shown* s) { return rank_of(*s); });
        ask_about_place(rivals);
        for (std::size_t i = 1; i < rivals.size(); ++i) {
          rivals[i]->passed_over = true;
          rivals[i]->table->at(rivals[i]->row, "deleted") = std::int64_t{1};
        }
      }
    }
  }

  /// What records in use belong to is in use.
  void bring_back() {
    for (auto name = kRecordTables.rbegin(); name != kRecordTables.rend(); ++name) {
      for (auto& [uid, shown] : all_.find(*name)->second) {
        if (shown.live() && is_persons_word(shown)) bring_back_parents(shown);
      }
    }
    // A computed mark keeps no tree; it goes with it.
    const auto& trees = all_.find("walk_tree")->second;
    for (auto& [uid, mark] : all_.find("mark")->second) {
      const auto tree = trees.find(text_of(mark.table->at(mark.row, "walk_tree_uid")));
      if (!mark.live() || tree == trees.end() || tree->second.live()) continue;
      mark.passed_over = true;
      mark.table->at(mark.row, "deleted") = std::int64_t{1};
    }
  }
  void bring_back_parents(const Shown& shown) {
    for (const Reference& reference : shown.table->references()) {
      const std::string uid = text_of(shown.table->at(shown.row, reference.column));
      auto& parents = all_[reference.parent];
      const auto parent = parents.find(uid);
      if (parent == parents.end() || (parent->second.live() && parent->second.users == 0)) continue;
      Shown& found = parent->second;
      found.table->at(found.row, "deleted") = std::int64_t{0};
      ++found.users;
      const bool newer = found.last_user == nullptr || rank_of(*found.last_user) < rank_of(shown);
      if (newer) found.last_user = &shown;
    }
  }

  /// No two records in use wear one name: the later ones are called "101 (2nd)".
  void tell_apart() {
    for (auto& [table_name, records] : all_) {
      const auto column = name_column(table_name);
      if (!column) continue;
      std::set<std::pair<std::string, std::string>> taken;
      std::vector<Shown*> doubles;
      for (auto& [uid, shown] : records) {
        const std::string name = text_of(shown.table->at(shown.row, *column));
        if (!shown.live() || name.empty()) continue;
        if (!taken.emplace(scope_of(*shown.table, shown.row), name).second)
          doubles.push_back(&shown);
      }
      for (Shown* shown : doubles) {
        const std::string scope = scope_of(*shown->table, shown->row);
        const std::string name = text_of(shown->table->at(shown->row, *column));
        int n = 2;
        while (!taken.emplace(scope, nth_name(name, n)).second) ++n;
        shown->table->at(shown->row, *column) = nth_name(name, n);
      }
    }
  }

  // --- questions -------------------------------------------------------------------------------

  [[nodiscard]] QuestionSide side_of(const RecordTable& table, const Row& row,
                                     const Version* version) const {
    QuestionSide side;
    side.uid = table.uid_of(row);
    side.removed = !table.is_live(row);
    side.cells = cells_of(table, row);
    if (version == nullptr) return side;
    const auto action = lines_.actions.find(version->action);
    if (action == lines_.actions.end()) return side;
    side.action = version->action;
    side.line = version->line;
    side.at = text_of(action->second[1]);
    side.device = text_of(action->second[2]);
    side.label = text_of(action->second[3]);
    return side;
  }
  [[nodiscard]] QuestionSide side_of(const Shown& shown) const {
    return side_of(*shown.table, shown.row, shown.version);
  }

  /// A record's own name, or that of what it belongs to.
  [[nodiscard]] std::string name_of(const RecordTable& table, const Row& row) const {
    for (const char* column : {"tag", "name", "label", "path"}) {
      if (!table.index_of(column)) continue;
      const std::string name = text_of(table.at(row, column));
      if (!name.empty()) return name;
    }
    for (const Reference& reference : table.references()) {
      const auto parents = all_.find(reference.parent);
      const auto parent = parents->second.find(text_of(table.at(row, reference.column)));
      if (parent == parents->second.end()) continue;
      return name_of(*parent->second.table, parent->second.row);
    }
    return {};
  }

  void ask_about_place(const std::vector<Shown*>& rivals) {
    Question question{QuestionKind::both_changed,
                      rivals.front()->table->name(),
                      name_of(*rivals.front()->table, rivals.front()->row),
                      {},
                      0};
    std::set<std::uint64_t> said;
    for (const Shown* shown : rivals) {
      if (shown->version == nullptr || !shown->live() || !is_persons_word(*shown)) continue;
      if (said.insert(content_beside_uid(*shown->table, shown->row)).second)
        question.sides.push_back(side_of(*shown));
    }
    if (question.sides.size() > 1) questions_.push_back(std::move(question));
  }

  /// Marks are computed again at need; only what a person decided is asked about.
  static bool is_persons_word(const Shown& shown) {
    return shown.table->name() != "mark" || is_by_hand(*shown.table, shown.row);
  }

  void ask_about_versions(const Shown& shown) {
    if (shown.heads.size() < 2 || shown.passed_over) return;
    if (shown.table->is_live(shown.version->row) && !is_persons_word(shown)) return;
    std::vector<const Version*> heads = shown.heads;
    std::ranges::sort(heads, std::ranges::greater{},
                      [&](const Version* head) { return rank_of(*shown.table, head->row, head); });
    Question question{
        QuestionKind::both_changed, shown.table->name(), name_of(*shown.table, shown.row), {}, 0};
    std::set<std::uint64_t> said;
    for (const Version* head : heads) {
      const bool live = shown.table->is_live(head->row);
      if (live && shown.table->name() == "mark" && !is_by_hand(*shown.table, head->row)) continue;
      if (said.insert(live ? head->content : 0).second)
        question.sides.push_back(side_of(*shown.table, head->row, head));
    }
    if (question.sides.size() > 1) questions_.push_back(std::move(question));
  }

  void ask_about_removed(const Shown& shown) {
    if (shown.users == 0) return;
    QuestionSide kept = side_of(*shown.last_user);
    kept.uid = shown.table->uid_of(shown.row);
    kept.cells = cells_of(*shown.table, shown.row);
    QuestionSide removed = side_of(shown);
    removed.removed = true;
    questions_.push_back({QuestionKind::removed_in_use,
                          shown.table->name(),
                          name_of(*shown.table, shown.row),
                          {kept, removed},
                          shown.users});
  }

  void ask_about_names(const std::string& table_name) {
    const auto column = name_column(table_name);
    if (!column) return;
    std::map<std::pair<std::string, std::string>, std::vector<const Shown*>> wearers;
    for (const auto& [uid, shown] : all_.find(table_name)->second) {
      if (!shown.live()) continue;
      const std::string name = text_of(shown.table->at(shown.row, *column));
      auto& of_name = wearers[{scope_of(*shown.table, shown.row), first_name(name)}];
      name == first_name(name) ? void(of_name.insert(of_name.begin(), &shown))
                               : of_name.push_back(&shown);
    }
    for (const auto& [place, shown] : wearers) {
      const Shown& first = *shown.front();
      if (shown.size() < 2 || text_of(first.table->at(first.row, *column)) != place.second)
        continue;
      Question question{QuestionKind::used_twice, table_name, place.second, {}, 0};
      for (const Shown* one : shown) question.sides.push_back(side_of(*one));
      questions_.push_back(std::move(question));
    }
  }

  void ask() {
    for (const std::string_view name : kRecordTables) {
      for (const auto& [uid, shown] : all_.find(name)->second) {
        ask_about_versions(shown);
        ask_about_removed(shown);
      }
      ask_about_names(std::string(name));
    }
  }

  const HistoryLines& lines_;
  ShownRecords all_;
  std::vector<Question> questions_;
};

Result<Version> version_of(const RecordTable& table, const Row& line, std::size_t place) {
  const Row nothing(table.columns().size());
  Version version{text_of(line[0]), place, {}, 0, 0, 0, 0};
  auto row = from_json(text_of(line[4]), table.columns(), nothing);
  if (!row) return row.error();
  version.row = *std::move(row);
  if (table.uid_of(version.row) != text_of(line[2])) {
    return Error{ErrorCode::damaged, "A line of the history is about another record.", "change",
                 "Keep this file, and work on from your newest copy."};
  }
  version.exact = exact_image(table, version.row);
  version.content = content_image(table, version.row);
  if (is_null(line[3])) return version;
  const auto before = from_json(text_of(line[3]), table.columns(), nothing);
  if (!before) return before.error();
  version.from_exact = exact_image(table, *before);
  version.from_content = content_image(table, *before);
  return version;
}

}  // namespace

Result<Lives> lives_of(const HistoryLines& lines, const RecordTables& tables) {
  Lives lives;
  for (const auto& [action, changes] : lines.changes) {
    for (std::size_t i = 0; i < changes.size(); ++i) {
      const std::string where = text_of(changes[i][1]) + "/" + text_of(changes[i][2]);
      const auto table = tables.find(text_of(changes[i][1]));
      if (table == tables.end()) {
        return Error{ErrorCode::file_too_new,
                     "The history holds a kind of record that this program does not know.", where,
                     "Use the newest Oaklight."};
      }
      auto version = version_of(table->second, changes[i], i);
      if (!version) {
        Error error = version.error();
        error.where = where;
        return error;
      }
      lives[table->first][text_of(changes[i][2])].push_back(*std::move(version));
    }
  }
  return lives;
}

std::vector<const Version*> heads_of(const std::vector<Version>& life) {
  // A version follows all earlier ones that it was made from, and all that say the same as those:
  // two tablets that made the same change do not disagree.
  std::unordered_multimap<std::uint64_t, std::size_t> by_exact, by_content;
  std::vector<bool> followed(life.size(), false);
  const auto follow = [&](auto& images, std::uint64_t image, const Version& next) {
    if (image == 0) return;
    const auto [from, to] = images.equal_range(image);
    for (auto i = from; i != to;) {
      // The undo of a decision opens several versions out of one; they stand beside each other.
      const Version& earlier = life[i->second];
      const bool beside = earlier.action == next.action && earlier.from_exact == next.from_exact;
      if (!beside) followed[i->second] = true;
      i = beside ? std::next(i) : images.erase(i);
    }
  };
  for (std::size_t i = 0; i < life.size(); ++i) {
    follow(by_exact, life[i].from_exact, life[i]);
    follow(by_content, life[i].from_content, life[i]);
    by_exact.emplace(life[i].exact, i);
    by_content.emplace(life[i].content, i);
  }
  std::vector<const Version*> heads;
  for (std::size_t i = 0; i < life.size(); ++i) {
    if (!followed[i]) heads.push_back(&life[i]);
  }
  return heads;
}

bool is_a_head(const RecordTable& table, const Row& row, const std::vector<Version>& life) {
  const std::uint64_t exact = exact_image(table, row);
  const auto heads = heads_of(life);
  return std::ranges::any_of(heads, [&](const Version* head) { return head->exact == exact; });
}

bool is_known(const RecordTable& table, const Row& row, const std::vector<Version>& life) {
  const std::uint64_t exact = exact_image(table, row);
  return std::ranges::any_of(life, [&](const Version& version) {
    return version.exact == exact || version.from_exact == exact;
  });
}

JoinPlan plan_join(const RecordTables& tables, const Lives& lives, const Rows& rows,
                   const HistoryLines& lines) {
  return Planner(lines, show_all(tables, lives, rows)).plan();
}

}  // namespace oaklight::store
