// Calls about one tree of a plot: what is recorded of it, and putting that right.
#include <array>

#include "core/session/plot_work.hpp"
#include "core/session/records_named.hpp"
#include "mobile/web/bridge/tract_json.hpp"
#include "mobile/web/bridge/tree_json.hpp"

namespace oaklight::web {
namespace {

template <class T>
Json or_null(const std::optional<T>& value) {
  return value ? Json(*value) : Json();
}

Json length_json(const std::optional<TapedLength>& length) {
  return length ? Json(length->hundredths()) : Json();
}

Json recorded_json(const Tree& tree) {
  Json recorded = facts_json(tree.facts);
  recorded["azimuth"] = tree.azimuth ? Json(tree.azimuth->value) : Json();
  recorded["distance_hundredths"] = length_json(tree.distance);
  recorded["stems"] = tree.stems;
  recorded["edge_count"] = tree.edge_count;
  recorded["tag"] = tree.tag;
  return recorded;
}

Json choices_json(const OpenTract& tract, const TreeFacts& facts) {
  const auto status = [&](const std::string& word) { return word == word_of(facts.status); };
  const auto crown = [&](const std::string& word) {
    return facts.crown_class && word == word_of(*facts.crown_class);
  };
  const auto condition = [&](const std::string& word) {
    const auto seen = from_word<Condition>(word);
    return seen && facts.conditions.has(*seen);
  };
  return {{"status", choices_of(tract, "tree_status", status)},
          {"crown_class", choices_of(tract, "crown_class", crown)},
          {"condition", choices_of(tract, "condition", condition)}};
}

Result<Json> tree(WebDesk& desk, const Arguments& arguments) {
  const auto found = tree_of(desk, arguments);
  if (!found) return found.error();
  return tree_json(*desk.tract(), **found);
}

Status put_place(TreeDraft& draft, const Arguments& given) {
  if (given.is_null("azimuth")) draft.azimuth.reset();
  if (given.is_null("distance_hundredths")) draft.distance.reset();
  if (const auto azimuth = given.number("azimuth")) draft.azimuth = Degrees{*azimuth};
  if (const auto distance = given.whole("distance_hundredths")) {
    const auto length = TapedLength::from_hundredths(*distance, draft.facts.dbh.system());
    if (!length) return length.error();
    draft.distance = *length;
  }
  if (const auto stems = given.whole("stems")) draft.stems = *stems;
  if (const auto edge = given.whole("edge_count")) draft.edge_count = *edge;
  if (const auto tag = given.text("tag")) draft.tag = *tag;
  return Done{};
}

Result<Json> correct(WebDesk& desk, const Arguments& arguments) {
  const auto found = tree_of(desk, arguments);
  if (!found) return found.error();
  const TreeId id = (*found)->id;
  const auto written = desk.submit([&](OpenTract& tract) -> Result<Action> {
    TreeDraft draft = draft_of(*tract.live.find(id));
    const Arguments given = arguments.inside("facts");
    if (const Status put = put_facts(draft.facts, given); !put) return put.error();
    if (const Status put = put_place(draft, given); !put) return put.error();
    return correct_tree(tract.live, tract.knowledge, id, draft);
  });
  if (!written) return written.error();
  return changed(desk, tree_json(*desk.tract(), *desk.tract()->live.find(id)));
}

Result<Json> remove(WebDesk& desk, const Arguments& arguments) {
  const auto found = tree_of(desk, arguments);
  if (!found) return found.error();
  const PlotId plot = (*found)->plot;
  const auto written = desk.submit([id = (*found)->id](OpenTract& tract) {
    return remove_tree(tract.live, tract.knowledge, id);
  });
  if (!written) return written.error();
  return plot_json(desk, plot, arguments);
}

constexpr std::array kCalls = {NamedCall{"tree", tree}, NamedCall{"correctTree", correct},
                               NamedCall{"removeTree", remove}};

Error unknown_word(const char* field) {
  return {ErrorCode::not_a_choice, "The form has no such word.", field, "Choose one of the list."};
}

/// Puts a percentage in, or takes it out where it was given as null.
void put_percent(std::optional<Percent>& field, const Arguments& given, const char* name) {
  if (given.is_null(name)) field.reset();
  if (const auto value = given.number(name)) field = Percent{*value};
}

Status put_words(TreeFacts& facts, const Arguments& given) {
  if (given.has("status")) {
    const auto status = given.word<TreeStatus>("status");
    if (!status) return unknown_word("status");
    facts.status = *status;
  }
  if (given.is_null("crown_class")) facts.crown_class.reset();
  if (given.has("crown_class")) {
    const auto crown = given.word<CrownClass>("crown_class");
    if (!crown) return unknown_word("crown_class");
    facts.crown_class = *crown;
  }
  const Json* conditions = given.find("conditions");
  if (conditions == nullptr) return Done{};
  if (!conditions->is_array()) return unknown_word("conditions");
  Conditions seen;
  for (const Json& word : *conditions) {
    const auto condition =
        word.is_string() ? from_word<Condition>(word.get<std::string>()) : std::nullopt;
    if (!condition) return unknown_word("conditions");
    seen.add(*condition);
  }
  facts.conditions = seen;
  return Done{};
}

}  // namespace

std::span<const NamedCall> tree_calls() { return kCalls; }

Result<const Tree*> tree_of(WebDesk& desk, const Arguments& arguments) {
  const auto id = arguments.id<TreeId>("tree");
  if (!id) return id.error();
  const Tree* tree = desk.tract()->live.find(*id);
  if (tree == nullptr) return no_such("tree", to_text(*id));
  return tree;
}

Json choices_of(const OpenTract& tract, const char* name, const IsOn& on) {
  Json list = Json::array();
  const ChoiceList* choices = tract.knowledge.form.find_choices(name);
  if (choices == nullptr) return list;
  for (const Choice& choice : choices->choices) {
    list.push_back({{"word", choice.word},
                    {"label", form_words(choice.label)},
                    {"help", form_words(choice.help)},
                    {"group", choice.group.empty() ? Json() : Json(choice.group)},
                    {"on", on(choice.word)}});
  }
  return list;
}

Json tree_json(const OpenTract& tract, const Tree& tree) {
  const TreeFacts& facts = tree.facts;
  return {{"tree", to_text(tree.id)},
          {"title", tree_words(tract.knowledge, facts.species, facts.dbh)},
          {"facts", recorded_json(tree)},
          {"readings", readings_json(tract, tree)},
          {"choices", choices_json(tract, facts)}};
}

Status put_facts(TreeFacts& facts, const Arguments& given) {
  if (const auto species = given.whole("species")) facts.species = SpeciesCode{*species};
  if (const auto tenths = given.whole("tenths")) {
    const auto dbh =
        Dbh::from_tenths(*tenths, given.has("system") ? given.system() : facts.dbh.system());
    if (!dbh) return dbh.error();
    facts.dbh = *dbh;
  }
  if (const Status put = put_words(facts, given); !put) return put;
  put_percent(facts.live_crown, given, "live_crown");
  put_percent(facts.dieback, given, "dieback");
  if (given.is_null("half_logs")) facts.half_logs.reset();
  if (const auto logs = given.whole("half_logs")) facts.half_logs = *logs;
  if (given.is_null("height_hundredths")) facts.height.reset();
  if (const auto height = given.whole("height_hundredths")) {
    const auto length = TapedLength::from_hundredths(*height, facts.dbh.system());
    if (!length) return length.error();
    facts.height = *length;
  }
  if (const auto note = given.text("note")) facts.note = *note;
  return Done{};
}

Json facts_json(const TreeFacts& facts) {
  Json conditions = Json::array();
  for (const auto& [condition, word] : kWords<Condition>) {
    if (facts.conditions.has(condition)) conditions.push_back(word);
  }
  return {{"species", facts.species.fia},
          {"tenths", facts.dbh.tenths()},
          {"system", facts.dbh.system() == UnitSystem::us ? "us" : "metric"},
          {"status", word_of(facts.status)},
          {"crown_class", facts.crown_class ? Json(word_of(*facts.crown_class)) : Json()},
          {"conditions", conditions},
          {"half_logs", or_null(facts.half_logs)},
          {"height_hundredths", length_json(facts.height)},
          {"live_crown", facts.live_crown ? Json(facts.live_crown->value) : Json()},
          {"dieback", facts.dieback ? Json(facts.dieback->value) : Json()},
          {"note", facts.note}};
}

}  // namespace oaklight::web
