#include "tests/store/tablets.hpp"

#include <sqlite3.h>

#include <algorithm>
#include <stdexcept>

#include "core/store/record_table.hpp"
#include "tests/support/readings.hpp"

namespace oaklight::test {
namespace {

constexpr std::int64_t kStart = 1'777'900'020'000;  // 2026-05-04T13:07:00Z

TreeFacts facts_of(unsigned n) {
  return {
      SpeciesCode{n % 2 == 0 ? 833 : 802}, dbh_in(4.0 + n % 20), {}, {}, {}, {}, {}, {}, {}, {}};
}

template <class R>
const R* any(const std::vector<R>& records, unsigned n) {
  return records.empty() ? nullptr : &records[n % records.size()];
}

/// The rows of a query, their cells with '|' between.
std::vector<std::string> rows_of(sqlite3* db, const std::string& sql) {
  std::vector<std::string> rows;
  sqlite3_stmt* statement = nullptr;
  if (sqlite3_prepare_v2(db, sql.c_str(), -1, &statement, nullptr) != SQLITE_OK)
    throw std::runtime_error(sql + ": " + sqlite3_errmsg(db));
  while (sqlite3_step(statement) == SQLITE_ROW) {
    std::string row;
    for (int i = 0; i < sqlite3_column_count(statement); ++i) {
      const auto* cell = reinterpret_cast<const char*>(sqlite3_column_text(statement, i));
      row += cell == nullptr ? "NULL|" : std::string(cell) + "|";
    }
    rows.push_back(std::move(row));
  }
  sqlite3_finalize(statement);
  return rows;
}

}  // namespace

Tablet::Tablet(std::filesystem::path file, std::string device, std::int64_t clock_ms, unsigned seed)
    : file_(std::move(file)),
      device_(std::move(device)),
      clock_(kStart + clock_ms),
      chance_(seed) {}

StoreContext Tablet::context() {
  return {clock_, [this] { return chance_(); }, device_};
}

TractStore& Tablet::store() {
  if (!store_) {
    auto opened = TractStore::open(file_, OpenMode::read_write, context());
    if (!opened) throw std::runtime_error(to_text(opened.error()));
    store_ = std::make_unique<TractStore>(*std::move(opened));
  }
  return *store_;
}

std::optional<Action> Tablet::some_action() {
  const TractData data = store().load().value();
  IdSource& ids = store().ids();
  const auto* plot = any(data.plots, pick(100));
  const auto* tree = any(data.trees, pick(100));
  const auto* stand = any(data.stands, pick(100));
  const auto* walked = any(data.walk_trees, pick(100));
  const auto* mark = any(data.marks, pick(100));
  switch (pick(15)) {
    case 0:
    case 1:
      if (plot == nullptr) return std::nullopt;
      return Action{"tally",
                    {Tree{ids.next_id<TreeTag>(), plot->id, facts_of(pick(50)), 1, 1, {}, {}, ""}}};
    case 2: {
      if (tree == nullptr) return std::nullopt;
      Tree now = *tree;
      now.facts = facts_of(pick(4));  // few values, so that two tablets may say the same
      return Action{"correct", {now}};
    }
    case 3:
      if (tree == nullptr) return std::nullopt;
      return Action{"remove tree", {Remove{tree->id}}};
    case 4: {
      if (plot == nullptr) return std::nullopt;
      Plot now = *plot;
      now.status = pick(2) == 0 ? PlotStatus::measured : PlotStatus::empty;
      return Action{"plot done", {now}};
    }
    case 5: {
      if (stand == nullptr || data.cruises.empty()) return std::nullopt;
      Plot now;
      now.id = ids.next_id<PlotTag>();
      now.stand = stand->id;
      now.cruise = data.cruises.front().id;
      now.label = std::to_string(1 + pick(8));
      return Action{"plot", {now}};
    }
    case 6: {
      if (plot == nullptr) return std::nullopt;
      Action action{"remove plot", {}};
      for (const Tree& t : data.trees)
        if (t.plot == plot->id) action.changes.emplace_back(Remove{t.id});
      action.changes.emplace_back(Remove{plot->id});
      return action;
    }
    case 7: {
      Stand now = stand == nullptr ? Stand{} : *stand;
      if (stand == nullptr || pick(3) == 0) now.id = ids.next_id<StandTag>();
      now.name = "Cove " + std::to_string(pick(4));
      now.acres = Acres{10.0 + pick(3)};
      return Action{"stand", {now}};
    }
    case 8: {
      if (stand == nullptr) return std::nullopt;
      WalkTree now{ids.next_id<WalkTreeTag>(),
                   stand->id,
                   std::to_string(101 + pick(8)),
                   facts_of(pick(30)),
                   true,
                   {},
                   {},
                   {}};
      return Action{"card", {now}};
    }
    case 9: {
      if (walked == nullptr) return std::nullopt;
      WalkTree now = *walked;
      pick(2) == 0 ? void(now.facts = facts_of(pick(4)))
                   : void(now.tag = std::to_string(101 + pick(8)));
      return Action{"card again", {now}};
    }
    case 10: {
      if (walked == nullptr) return std::nullopt;
      const auto old = std::ranges::find(data.marks, walked->id, &Mark::tree);
      Mark now{old == data.marks.end() ? ids.next_id<MarkTag>() : old->id,
               walked->id,
               pick(2) == 0 ? Verdict::take : Verdict::keep,
               Method::none,
               Product::none,
               {},
               "",
               {},
               pick(2) == 0,
               ""};
      return Action{"mark", {now}};
    }
    case 11: {
      if (walked == nullptr) return std::nullopt;
      Action action{"remove card", {}};
      for (const Mark& m : data.marks)
        if (m.tree == walked->id) action.changes.emplace_back(Remove{m.id});
      action.changes.emplace_back(Remove{walked->id});
      return action;
    }
    case 12:
      if (mark != nullptr && pick(3) == 0) return Action{"remove mark", {Remove{mark->id}}};
      return Action{"acorn year",
                    {AcornYear{ids.next_id<AcornYearTag>(), OakGroup::white,
                               2020 + static_cast<int>(pick(3)), AcornCrop::good, ""}}};
    case 13: {
      Tract now = data.tract;
      now.county = "County " + std::to_string(pick(3));
      return Action{"tract", {now}};
    }
    default: {
      const auto paths = store().form_paths().value();
      (void)store().set_form_text(paths[pick(2)], "text " + std::to_string(pick(3)) + "\n");
      return std::nullopt;
    }
  }
}

void Tablet::do_something() {
  clock_.ms += 1 + pick(60'000);
  const unsigned what = pick(10);
  if (what == 0) return void(store().undo());
  if (what == 1) return void(store().redo());
  if (const auto action = some_action()) (void)store().apply(*action);
}

Status Tablet::join(const Tablet& other) {
  clock_.ms += 1 + pick(60'000);
  const auto joined = store().join({other.file()}, OtherTract::take);
  if (!joined) return joined.error();
  return Done{};
}

void Tablet::decide_something() {
  clock_.ms += 1 + pick(60'000);
  const auto open = store().questions().value();
  if (open.empty()) return;
  const Question& question = open[pick(open.size())];
  (void)store().decide(question, pick(question.sides.size()));
}

void make_crew_file(const std::filesystem::path& path, unsigned seed) {
  SetClock clock(kStart - 86'400'000);
  std::mt19937_64 chance(seed);
  auto store = TractStore::create(path, {clock, [&] { return chance(); }, "office"});
  if (!store) throw std::runtime_error(to_text(store.error()));
  IdSource& ids = store->ids();
  Action action{"begin", {}};
  Tract tract;
  tract.name = "Bear Hollow";
  Stand stand;
  stand.id = ids.next_id<StandTag>();
  stand.name = "Cove 0";
  Cruise cruise;
  cruise.id = ids.next_id<CruiseTag>();
  cruise.name = "Spring";
  action.changes = {tract, stand, cruise};
  for (unsigned i = 0; i < 3; ++i) {
    Plot plot;
    plot.id = ids.next_id<PlotTag>();
    plot.stand = stand.id;
    plot.cruise = cruise.id;
    plot.label = std::to_string(1 + i);
    action.changes.emplace_back(plot);
    action.changes.emplace_back(
        Tree{ids.next_id<TreeTag>(), plot.id, facts_of(i), 1, 1, {}, {}, ""});
    action.changes.emplace_back(WalkTree{ids.next_id<WalkTreeTag>(),
                                         stand.id,
                                         std::to_string(101 + i),
                                         facts_of(i),
                                         true,
                                         {},
                                         {},
                                         {}});
  }
  const auto applied = store->apply(action);
  if (!applied) throw std::runtime_error(to_text(applied.error()));
}

std::vector<std::string> said_by(const std::filesystem::path& path) {
  sqlite3* db = nullptr;
  if (sqlite3_open_v2(path.c_str(), &db, SQLITE_OPEN_READONLY, nullptr) != SQLITE_OK)
    throw std::runtime_error("cannot open " + path.string());
  std::vector<std::string> said;
  const auto add = [&](const std::string& what, const std::string& sql) {
    for (std::string& row : rows_of(db, sql)) said.push_back(what + ": " + std::move(row));
  };
  for (const std::string_view name : store::kRecordTables) {
    const std::string table(name);
    std::string columns;
    for (std::string& column :
         rows_of(db, "SELECT name FROM pragma_table_info('" + table + "') WHERE name <> 'fid'")) {
      column.pop_back();
      columns += (columns.empty() ? "quote(" : ", quote(") + column + ")";
    }
    add(table, "SELECT " + columns + " FROM " + table + " ORDER BY uid");
  }
  add("user_action",
      "SELECT uid, at_utc, device, label, kind, target_uid FROM user_action"
      " ORDER BY uid");
  add("change",
      "SELECT action_uid, table_name, row_uid, before_json, after_json FROM change"
      " ORDER BY action_uid, seq");
  sqlite3_close(db);
  return said;
}

}  // namespace oaklight::test
