#include <algorithm>
#include <iostream>

#include "core/base/number_text.hpp"
#include "core/command/figure_keys.hpp"
#include "core/command/json_values.hpp"
#include "core/command/program.hpp"
#include "core/command/rule_words.hpp"
#include "core/release/stand_facts.hpp"
#include "core/session/work_view.hpp"

namespace oaklight::command {
namespace {

struct Call {
  std::string tract;
  std::string tag;
  std::string day;
  bool json = false;
};

/// All that is told of one tree.
struct Told {
  std::string name;
  TreeVerdict verdict;
  std::vector<const Rule*> rules;
  TreeWork work;
  std::optional<Mark> by_hand;  ///< a person decided otherwise, or the same
  std::string advice;           ///< for the whole stand
  bool optimal = true;
  double gap = 0.0;
};

const WalkTree* find_tag(const TractData& data, const std::string& tag) {
  const auto found =
      std::ranges::find_if(data.walk_trees, [&](const WalkTree& tree) { return tree.tag == tag; });
  return found == data.walk_trees.end() ? nullptr : &*found;
}

std::optional<Mark> mark_by_hand(const TractData& data, WalkTreeId tree) {
  std::optional<Mark> latest;
  for (const Mark& mark : data.marks) {
    if (mark.tree == tree && (!latest || latest->id < mark.id)) latest = mark;
  }
  return latest && latest->by_hand ? latest : std::nullopt;
}

void add_rules_of(const std::vector<std::string>& ids, const RuleBook& book,
                  std::vector<const Rule*>& rules) {
  for (const std::string& id : ids) {
    const Rule* rule = book.find(id);
    if (rule != nullptr && std::ranges::find(rules, rule) == rules.end()) rules.push_back(rule);
  }
}

/// The tree of the plan that wears the tag; every tree of the walk is in it.
std::size_t place_in(const ReleasePlan& plan, const std::string& tag) {
  const auto found =
      std::ranges::find_if(plan.trees, [&](const TreeVerdict& tree) { return tree.tag == tag; });
  return static_cast<std::size_t>(found - plan.trees.begin());
}

Result<Told> tell(const TractData& data, const TractKnowledge& know, const Call& call) {
  const auto day = day_or_today(call.day);
  if (!day) return day.error();
  const WalkTree* tree = find_tag(data, call.tag);
  if (tree == nullptr) {
    return Error{ErrorCode::no_data, "No tree of the marking walk wears the tag " + call.tag + ".",
                 "crop_trees/tag", "The tags are listed by: oaklight recommend --dry-run"};
  }
  const auto input = input_from_cards(data, tree->stand, know.release);
  if (!input) return input.error();
  const ReleasePlan plan = recommend(*input);
  const std::size_t at = place_in(plan, call.tag);
  Told told{.verdict = plan.trees[at],
            .by_hand = mark_by_hand(data, tree->id),
            .advice = plan.advice.text,
            .optimal = plan.optimality.proven,
            .gap = plan.optimality.gap()};
  const Species* species = know.species().find(tree->facts.species);
  told.name = (species == nullptr ? "tree" : species->common_name) + " " + call.tag + ", " +
              number_text(tree->facts.dbh.inches().value, 1) + " in DBH";
  auto work = work_of_stand(data, know, tree->stand, plan, *day);
  if (!work) return work.error();
  told.work = std::move((*work)[at]);
  add_rules_of(told.verdict.rules, know.release.rules, told.rules);
  add_rules_of(told.work.advice.rules, know.release.rules, told.rules);
  return told;
}

void print_json(const Told& told, const Call& call, const std::string& version) {
  Json rules = Json::array();
  for (const Rule* rule : told.rules) rules.push_back(rule_json(*rule));
  Json cautions = Json::array();
  for (const Caution& caution : told.work.cautions) {
    cautions.push_back(
        {{"code", caution.code}, {"severity", word_of(caution.severity)}, {"text", caution.text}});
  }
  Json ways = Json::array();
  for (const Way way : told.work.advice.ways) ways.push_back(word_of(way));
  Json json{{"tag", call.tag},
            {"cautions", cautions},
            {"verdict", word_of(told.verdict.verdict)},
            {"reason", told.verdict.reason},
            {"what_would_change_it", told.verdict.what_would_change_it},
            {"light_before", light_or_null(told.verdict.before)},
            {"light_after", light_or_null(told.verdict.after)},
            {"ways", ways},
            {"way", told.work.advice.way_words},
            {"herbicide", told.work.advice.herbicide},
            {"herbicide_why", told.work.advice.herbicide_words},
            {"open_dangers", told.work.advice.open},
            {"rules", rules},
            {"rule_version", version}};
  if (told.work.day) {
    json["may_be_done_that_day"] = told.work.day->held_by.empty();
    json["earliest_day"] =
        told.work.day->earliest ? Json(to_text(*told.work.day->earliest)) : Json(nullptr);
  }
  if (told.by_hand) {
    json["by_hand"] = {{"verdict", word_of(told.by_hand->verdict)},
                       {"reason", told.by_hand->reason}};
  }
  add_sources(json, Document::release);
  std::cout << json_text(json) << '\n';
}

void print_light(const TreeVerdict& verdict) {
  if (!verdict.before || !verdict.after) return;
  std::cout << "Light: " << verdict.before->sides_free << " of 4 sides free ("
            << number_text(verdict.before->open.value, 0) << " % of the crown's edge) now, "
            << verdict.after->sides_free << " (" << number_text(verdict.after->open.value, 0)
            << " %) after the work\n";
}

void print_text(const Told& told, const std::string& version, Day day) {
  std::cout << told.name << '\n';
  for (const Caution& caution : told.work.cautions) {
    const char* how = caution.severity == Severity::stop         ? "STOP: "
                      : caution.severity == Severity::extra_care ? "Extra care: "
                                                                 : "Note: ";
    std::cout << how << caution.text << '\n';
  }
  std::cout << told.verdict.reason << '\n'
            << "What would change it: " << told.verdict.what_would_change_it << '\n';
  if (told.by_hand) {
    std::cout << "A person decided: " << word_of(told.by_hand->verdict) << ". "
              << told.by_hand->reason << '\n';
  }
  print_light(told.verdict);
  std::cout << "How: " << told.work.advice.way_words << '\n';
  if (!told.work.advice.herbicide_words.empty()) {
    std::cout << "Herbicide: " << told.work.advice.herbicide_words << '\n';
  }
  if (told.work.day) std::cout << "When: " << day_words(*told.work.day, day) << '\n';
  if (!told.work.wilt.empty()) std::cout << "      " << told.work.wilt << '\n';
  if (!told.optimal) {
    std::cout << "The plan is the best found; at most " << number_text(100.0 * told.gap, 1)
              << " % of the released light may be missed.\n";
  }
  std::cout << "Rules (" << version << "):\n";
  for (const Rule* rule : told.rules) print(*rule);
  std::cout << "A recommendation is not a safety check: whoever fells looks at each tree first. "
               "The label,\nthe license and the local code come before anything said here.\n";
}

int run(const Call& call) {
  const auto session = open_to_read(call.tract);
  if (!session) return fail(session.error(), call.json);
  const auto data = session->data();
  if (!data) return fail(data.error(), call.json);
  const TractKnowledge& know = session->knowledge();
  const auto told = tell(*data, know, call);
  if (!told) return fail(told.error(), call.json);
  const std::string version = know.release.rules.version();
  if (call.json) {
    print_json(*told, call, version);
  } else {
    print_text(*told, version, *day_or_today(call.day));
  }
  return kDone;
}

}  // namespace

void add_explain(CLI::App& app, int& exit_code) {
  auto call = std::make_shared<Call>();
  CLI::App* command = app.add_subcommand(
      "explain", "Say of one tree of the marking walk what happens to it, why, how and when");
  add_tract(*command, call->tract);
  command->add_option("tag", call->tag, "The tree's tag")->required();
  command->add_option("--day", call->day, "Day of the work, like 2026-12-07 (default: today)");
  add_json(*command, call->json);
  command->footer("Example: oaklight explain hollow.gpkg 101 --day 2026-12-07");
  command->callback([call, &exit_code] { exit_code = run(*call); });
}

}  // namespace oaklight::command
