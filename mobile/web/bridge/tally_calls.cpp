// Calls that record trees: one tap, one tree, answered when it is on disk.
#include <array>

#include "core/session/plot_figures.hpp"
#include "core/session/plot_work.hpp"
#include "core/session/records_named.hpp"
#include "mobile/desk/species_order.hpp"
#include "mobile/web/bridge/tract_json.hpp"

namespace oaklight::web {
namespace {

/// What Tally shows after a tree: how it reads, a doubt, and what moves on the page.
Json tallied(WebDesk& desk, PlotId plot, Json tree, Json reading, Json doubt, UnitSystem system) {
  Json answer = moving_json(desk, *desk.tract()->live.find(plot), system);
  answer["tree"] = std::move(tree);
  answer["reading"] = std::move(reading);
  answer["doubt"] = std::move(doubt);
  return answer;
}

Json doubt_of(const OpenTract& tract, SpeciesCode species, Dbh dbh) {
  const auto doubt = unusual(tract.knowledge, species, dbh);
  return doubt ? Json(*doubt) : Json();
}

Result<Json> record(WebDesk& desk, PlotId plot, const TreeDraft& draft, UnitSystem system) {
  const auto written = desk.submit([&](OpenTract& tract) {
    return tally_tree(tract.live, tract.knowledge, tract.ids, plot, draft);
  });
  if (!written) return written.error();
  const OpenTract& tract = *desk.tract();
  const auto trees = tract.live.trees_of(plot);
  const TreeFacts& facts = draft.facts;
  return tallied(desk, plot, to_text(trees.back()->id),
                 tree_words(tract.knowledge, facts.species, facts.dbh),
                 doubt_of(tract, facts.species, facts.dbh), system);
}

TreeDraft draft_with(SpeciesCode species, Dbh dbh) {
  return {.facts = {species, dbh, {}, {}, {}, {}, {}, {}, {}, {}},
          .azimuth = {},
          .distance = {},
          .tag = {}};
}

Result<Json> tally(WebDesk& desk, const Arguments& arguments) {
  const auto plot = arguments.id<PlotId>("plot");
  if (!plot) return plot.error();
  const auto species = arguments.species();
  if (!species) return species.error();
  const auto dbh = arguments.dbh();
  if (!dbh) return dbh.error();
  TreeDraft draft = draft_with(*species, *dbh);
  const Arguments details = arguments.inside("details");
  if (const Status put = put_facts(draft.facts, details); !put) return put.error();
  if (const auto stems = details.whole("stems")) draft.stems = *stems;
  if (const auto edge = details.whole("edge_count")) draft.edge_count = *edge;
  return record(desk, *plot, draft, arguments.system());
}

Result<Json> tally_digits(WebDesk& desk, const Arguments& arguments) {
  const auto plot = arguments.id<PlotId>("plot");
  if (!plot) return plot.error();
  const auto species = arguments.species();
  if (!species) return species.error();
  const auto dbh = dbh_from_digits(arguments.text("digits").value_or(""), arguments.system());
  if (!dbh) return dbh.error();
  return record(desk, *plot, draft_with(*species, *dbh), arguments.system());
}

Result<Json> read_digits(WebDesk& /*desk*/, const Arguments& arguments) {
  const auto digits = arguments.text("digits").value_or("");
  if (digits.empty()) return Json{{"text", ""}, {"tenths", nullptr}};
  const auto dbh = dbh_from_digits(digits, arguments.system());
  if (!dbh) return dbh.error();
  return Json{{"text", dbh_text(*dbh)}, {"tenths", dbh->tenths()}};
}

Result<Json> count(WebDesk& desk, const Arguments& arguments) {
  const auto plot = arguments.id<PlotId>("plot");
  if (!plot) return plot.error();
  const auto species = arguments.species();
  if (!species) return species.error();
  const auto written = desk.submit([&](OpenTract& tract) {
    return count_tree(tract.live, tract.knowledge, *plot, *species,
                      arguments.whole("step").value_or(1));
  });
  if (!written) return written.error();
  return tallied(desk, *plot, nullptr, species_words(desk.tract()->knowledge, *species), nullptr,
                 arguments.system());
}

Result<Json> again(WebDesk& desk, const Arguments& arguments) {
  const auto plot = arguments.id<PlotId>("plot");
  if (!plot) return plot.error();
  const auto trees = desk.tract()->live.trees_of(*plot);
  if (trees.empty()) {
    return Error{ErrorCode::no_data, "No tree was tallied on this plot yet.", "plot",
                 "Tally one first."};
  }
  const TreeFacts& last = trees.back()->facts;
  return record(desk, *plot, draft_with(last.species, last.dbh), arguments.system());
}

Result<Json> trees(WebDesk& desk, const Arguments& arguments) {
  const auto plot = arguments.id<PlotId>("plot");
  if (!plot) return plot.error();
  const auto all = desk.tract()->live.trees_of(*plot);
  Json list = Json::array();
  for (auto tree = all.rbegin(); tree != all.rend(); ++tree) {
    list.push_back(tree_line(*desk.tract(), **tree));
  }
  return Json{{"trees", list}};
}

Result<Json> search(WebDesk& desk, const Arguments& arguments) {
  Json list = Json::array();
  for (const Species* species :
       species_search(desk.tract()->knowledge.species(), arguments.text("typed").value_or(""))) {
    list.push_back(species_cell(*species));
  }
  return Json{{"species", list}};
}

constexpr std::array kCalls = {NamedCall{"tally", tally},
                               NamedCall{"tallyDigits", tally_digits},
                               NamedCall{"readDigits", read_digits, false},
                               NamedCall{"count", count},
                               NamedCall{"again", again},
                               NamedCall{"trees", trees},
                               NamedCall{"search", search}};

}  // namespace

std::span<const NamedCall> tally_calls() { return kCalls; }

Json tree_line(const OpenTract& tract, const Tree& tree) {
  const TreeFacts& facts = tree.facts;
  Json text = tree_words(tract.knowledge, facts.species, facts.dbh);
  if (facts.status == TreeStatus::dead) text = phrase("TallyViewModel", "%1, dead", {text});
  return {{"tree", to_text(tree.id)},
          {"text", text},
          {"doubt", unusual(tract.knowledge, facts.species, facts.dbh).has_value()}};
}

}  // namespace oaklight::web
