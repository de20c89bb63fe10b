// What is asked of the store.
#include <algorithm>
#include <stdexcept>

#include "core/base/sha256.hpp"
#include "core/store/rescue.hpp"
#include "core/store/snapshots.hpp"
#include "core/store/tree_stream.hpp"
#include "tests/crash/call.hpp"
#include "tests/crash/work.hpp"
#include "tests/store/store_fixture.hpp"
#include "tests/support/set_clock.hpp"
#include "tests/support/test_ids.hpp"

namespace oaklight::test {

namespace fs = std::filesystem;

namespace {

template <class T>
T must(Result<T> result) {
  if (!result) throw std::runtime_error(to_text(result.error()));
  return *std::move(result);
}

SetClock& clock_of_calls() {
  static SetClock clock(1'777'900'020'000);  // 2026-05-04T13:07:00Z
  return clock;
}
StoreContext context(const std::string& device, unsigned seed) {
  return {clock_of_calls(), std::mt19937_64{seed}, device};
}

/// What a file holds after somebody worked on it.
template <class Work>
std::string worked_on(const std::string& bytes, const std::string& device, unsigned seed,
                      const Work& work) {
  const TempDir folder;
  const fs::path path = folder / "woods.gpkg";
  clock_of_calls().ms += 60'000;
  if (!bytes.empty()) write_bytes(path, bytes);
  {
    auto store = bytes.empty()
                     ? TractStore::create(path, context(device, seed))
                     : TractStore::open(path, OpenMode::read_write, context(device, seed));
    if (!store) throw std::runtime_error(to_text(store.error()));
    work(*store);
  }
  return bytes_of(path);
}

Tree tree_of(const TractStore& store, std::uint32_t number) {
  Tree tree = must(store.load()).trees.front();
  tree.id = nth_id<TreeId>(number);
  tree.tag.clear();
  tree.stems = 2;
  return tree;
}

Stand renamed(const TractStore& store, const std::string& name) {
  Stand stand = must(store.load()).stands.front();
  stand.name = name;
  return stand;
}

}  // namespace

std::string small_tract() {
  static const std::string kBytes = worked_on("", "tablet", 1, [](TractStore& store) {
    must(store.apply(as_action(sample_records(store.ids(), true), "import")));
    for (std::uint32_t i = 0; i < 3; ++i) must(store.apply({"tally", {tree_of(store, 501 + i)}}));
    must(store.apply({"take out", {Remove{nth_id<TreeId>(502)}}}));
    (void)must(store.undo());
    (void)must(store.undo());
  });
  return kBytes;
}

Result<std::string> read_from(const TractStore& store) {
  static const TractData kWhole = [] {
    const TempDir folder;
    write_bytes(folder / "woods.gpkg", small_tract());
    return must(
        must(TractStore::open(folder / "woods.gpkg", OpenMode::read_only, context("", 1))).load());
  }();
  const auto data = store.load();
  if (!data) return data.error();
  const auto history = store.history(1000);
  if (!history) return history.error();
  const std::string differs = difference(*data, kWhole);
  return (differs.empty() ? "as it is" : differs) + ", " + std::to_string(history->size()) +
         " lines of history";
}

namespace {

/// Of two tablets: each renamed the stand, changed a form, used what the other removed, and wears a
/// tag that the other gave too.
Files two_tablets() {
  const std::string base = small_tract();
  const auto both = [](const std::string& whose, std::uint32_t number, TractStore& store) {
    must(store.apply({"rename", {renamed(store, whose)}}));
    const std::string form = must(store.form_text("tally.form.json"));
    must(store.set_form_text("tally.form.json", form + std::string(whose.size(), '\n')));
    WalkTree twin = must(store.load()).walk_trees.front();
    twin.id = nth_id<WalkTreeId>(number);
    twin.tag = "twin";
    must(store.apply({"walk", {twin}}));
    Mark mark = must(store.load()).marks.front();
    mark.reason = whose;
    must(store.apply({"mark", {mark}}));
  };
  const std::string ours = worked_on(base, "tablet", 2, [&](TractStore& store) {
    both("ours", 601, store);
    const TractData data = must(store.load());
    Action gone{"no plot", {}};
    for (const Tree& tree : data.trees) gone.changes.emplace_back(Remove{tree.id});
    for (const Regen& regen : data.regens) gone.changes.emplace_back(Remove{regen.id});
    gone.changes.emplace_back(Remove{data.plots.front().id});
    must(store.apply(gone));
  });
  const std::string theirs = worked_on(base, "other tablet", 3, [&](TractStore& store) {
    both("theirs", 602, store);
    must(store.apply({"tally", {tree_of(store, 701)}}));
  });
  return {{"woods.gpkg", ours}, {"other.gpkg", theirs}};
}

/// The same after they were joined.
Files joined() {
  const TempDir folder;
  lay_out(two_tablets(), folder.path());
  {
    auto store =
        must(TractStore::open(folder / "woods.gpkg", OpenMode::read_write, context("tablet", 4)));
    (void)must(store.join({folder / "other.gpkg"}));
  }
  return {{"woods.gpkg", bytes_of(folder / "woods.gpkg")}};
}

/// And somebody answered: mark and form. One of the answers was taken back.
Files decided() {
  return {{"woods.gpkg", worked_on(joined().at("woods.gpkg"), "tablet", 5, [](TractStore& store) {
             for (const std::string table : {"mark", "form_file"}) {
               const auto questions = must(store.questions());
               const auto asked = std::ranges::find(questions, table, &Question::table);
               (void)must(store.decide(*asked, 1));
             }
             (void)must(store.undo());
           })}};
}

std::string words_of(const std::vector<Question>& questions) {
  std::string text;
  for (const Question& question : questions)
    text += question.table + " " + question.name + " " + std::to_string(question.sides.size()) +
            " sides; ";
  return text;
}

std::string words_of(const JoinReport& report) {
  return std::to_string(report.added) + " added, " + std::to_string(report.changed) + " changed, " +
         words_of(report.questions);
}

Result<std::string> answer(Place& place, const std::string& table, std::size_t side) {
  const auto questions = place.store().questions();
  if (!questions) return questions.error();
  for (const Question& question : *questions) {
    if (question.table != table || question.kind == QuestionKind::used_twice) continue;
    const auto decided = place.store().decide(question, side);
    if (!decided) return decided.error();
    return std::to_string(decided->size()) + " records";
  }
  throw std::runtime_error("nothing to decide of " + table + " in: " + words_of(*questions));
}

Result<std::string> stream_trees(const TractStore& store) {
  int trees = 0;
  const auto data = store.load({[](const TractData&) { return Status(Done{}); },
                                [&](const Tree&) {
                                  ++trees;
                                  return Status(Done{});
                                }});
  if (!data) return data.error();
  return std::to_string(trees) + " trees of " + std::to_string(data->plots.size()) + " plots";
}

Action all_again(TractStore& store) {
  TractData more = sample_records(store.ids(), false);
  return as_action(more, "import more");
}

Action all_gone(const TractStore& store) {
  const TractData data = must(store.load());
  Action action{"clear", {}};
  const auto remove = [&](const auto& records) {
    for (const auto& record : records) action.changes.emplace_back(Remove{record.id});
  };
  remove(data.trees);
  remove(data.regens);
  remove(data.plots);
  remove(data.cruises);
  remove(data.contacts);
  remove(data.marks);
  remove(data.stumps);
  remove(data.acorn_counts);
  remove(data.acorn_years);
  remove(data.walk_trees);
  remove(data.lines);
  remove(data.stands);
  return action;
}

Result<std::string> look(const Place& place, OpenMode mode, DamageCheck check) {
  const auto store = TractStore::open(place.folder / "woods.gpkg", mode, place.context, check);
  if (!store) return store.error();
  return read_from(*store);
}

Call on(const std::string& name, const Files& files,
        std::function<Result<std::string>(Place&)> ask) {
  return {name, files, true, std::move(ask), false};
}
Call alone(const std::string& name, const Files& files,
           std::function<Result<std::string>(Place&)> ask) {
  return {name, files, false, std::move(ask), false};
}

}  // namespace

std::vector<Call> calls_of_opening() {
  const Files woods{{"woods.gpkg", small_tract()}};
  return {
      alone("create", {},
            [](Place& p) { return told(TractStore::create(p.folder / "woods.gpkg", p.context)); }),
      alone("open", woods,
            [](Place& p) { return look(p, OpenMode::read_write, DamageCheck::on_opening); }),
      alone("open_to_look", woods,
            [](Place& p) { return look(p, OpenMode::read_only, DamageCheck::by_caller); }),
      alone("rescue", woods,
            [](Place& p) -> Result<std::string> {
              const auto report =
                  rescue_tract(p.folder / "woods.gpkg", p.folder / "new.gpkg", p.context);
              if (!report) return report.error();
              return std::to_string(report->lost.size()) + " lost";
            }),
      alone("snapshot", woods,
            [](Place& p) {
              return told(take_snapshot(p.folder / "woods.gpkg", p.folder / "kept", p.context));
            }),
      alone("take_back", woods,
            [](Place& p) {
              return told(take_back(p.folder / "woods.gpkg", p.folder / "again.gpkg", p.context));
            }),
      alone("join_to_new", two_tablets(), [](Place& p) -> Result<std::string> {
        const auto report = TractStore::join_to_new(
            p.folder / "both.gpkg", {p.folder / "woods.gpkg", p.folder / "other.gpkg"}, p.context);
        if (!report) return report.error();
        return words_of(*report);
      })};
}

std::vector<Call> calls_of_records() {
  const Files woods{{"woods.gpkg", small_tract()}};
  std::vector<Call> calls = {
      on("load", woods, [](Place& p) { return read_from(p.store()); }),
      on("stream", woods, [](Place& p) { return stream_trees(p.store()); }),
      on("apply_all_kinds", woods,
         [](Place& p) { return told(p.store().apply(all_again(p.store()))); }),
      on("remove_all_kinds", woods,
         [action = Action{}](Place& p) mutable {
           if (action.changes.empty()) action = all_gone(p.store());
           return told(p.store().apply(action));
         }),
      on("undo", woods, [](Place& p) { return told(p.store().undo()); }),
      on("redo", woods, [](Place& p) { return told(p.store().redo()); }),
      on("undo_state", woods,
         [](Place& p) -> Result<std::string> {
           const auto state = p.store().undo_state();
           if (!state) return state.error();
           return state->undo.value_or("") + ", " + state->redo.value_or("");
         }),
      on("forms", woods,
         [](Place& p) -> Result<std::string> {
           const auto paths = p.store().form_paths();
           if (!paths) return paths.error();
           std::string all;
           for (const std::string& path : *paths) {
             const auto text = p.store().form_text(path);
             if (!text) return text.error();
             all += *text;
           }
           return sha256_hex(all);
         }),
      on("set_form", woods,
         [](Place& p) {
           return told(p.store().set_form_text("local_volume.csv", "species,dbh_in\n"));
         }),
      on("find_damage", woods, [](Place& p) { return told(p.store().find_damage()); }),
      on("check", woods,
         [](Place& p) -> Result<std::string> {
           const auto report = p.store().check();
           if (!report) return report.error();
           return std::to_string(report->done.size()) + " checks, " +
                  std::to_string(report->problems.size()) + " problems";
         }),
      on("settle", woods, [](Place& p) { return told(p.store().settle()); }),
      on("copy", woods, [](Place& p) { return told(p.store().copy_to(p.folder / "copy.gpkg")); })};
  for (Call& call : calls) {
    call.fresh_ids = call.name == "apply_all_kinds";
    call.of_each = call.name == "forms";
  }
  return calls;
}

std::vector<Call> calls_of_joining() {
  const Files apart = two_tablets();
  const Files both = joined();
  const auto join = [](Place& p, bool writes) -> Result<std::string> {
    const std::vector<fs::path> others{p.folder / "other.gpkg"};
    const auto report = writes ? p.store().join(others) : p.store().preview_join(others);
    if (!report) return report.error();
    return words_of(*report);
  };
  std::vector<Call> calls = {
      on("preview_join", apart, [join](Place& p) { return join(p, false); }),
      on("join", apart, [join](Place& p) { return join(p, true); }),
      on("questions", both,
         [](Place& p) -> Result<std::string> {
           const auto questions = p.store().questions();
           if (!questions) return questions.error();
           return words_of(*questions);
         }),
      on("undo_a_decision", decided(), [](Place& p) { return told(p.store().undo()); }),
      on("redo_a_decision", decided(), [](Place& p) { return told(p.store().redo()); }),
      on("take_a_place_away", both, [](Place& p) {
        const auto data = p.store().load();
        if (!data) return Result<std::string>(data.error());
        return told(p.store().apply({"no mark", {Remove{data->marks.front().id}}}));
      })};
  for (const std::string table : {"stand", "mark", "form_file", "plot"}) {
    for (const std::size_t side : {0U, 1U}) {
      calls.push_back(on("decide_" + table + "_" + std::to_string(side), both,
                         [=](Place& p) { return answer(p, table, side); }));
    }
  }
  return calls;
}

}  // namespace oaklight::test
