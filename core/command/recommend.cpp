#include <algorithm>
#include <iostream>
#include <map>

#include "core/base/number_text.hpp"
#include "core/base/today.hpp"
#include "core/command/figure_keys.hpp"
#include "core/command/json_values.hpp"
#include "core/command/program.hpp"
#include "core/command/text_table.hpp"
#include "core/session/work_view.hpp"

namespace oaklight::command {
namespace {

struct Call {
  std::string tract;
  bool dry_run = false;
  bool steps = false;
  bool plots = false;
  bool json = false;
};

Json json_of(const TreeWork& work) {
  Json ways = Json::array();
  for (const Way way : work.advice.ways) ways.push_back(word_of(way));
  Json json{{"ways", ways},
            {"way", work.advice.way_words},
            {"herbicide", work.advice.herbicide},
            {"herbicide_why", work.advice.herbicide_words},
            {"open_dangers", work.advice.open},
            {"rules", work.advice.rules}};
  if (work.day && work.day->earliest) json["earliest_day"] = to_text(*work.day->earliest);
  return json;
}

Json json_of(const StandPlan& stand, const std::vector<TreeWork>& work) {
  const ReleasePlan& plan = stand.plan;
  Json trees = Json::array();
  for (std::size_t i = 0; i < plan.trees.size(); ++i) {
    const TreeVerdict& t = plan.trees[i];
    trees.push_back({{"tag", t.tag},
                     {"verdict", word_of(t.verdict)},
                     {"method", word_of(stand.marks[i].method)},
                     {"product", word_of(stand.marks[i].product)},
                     {"crop", t.crop},
                     {"released", t.released},
                     {"reason", t.reason},
                     {"what_would_change_it", t.what_would_change_it},
                     {"rules", t.rules},
                     {"light_before", light_or_null(t.before)},
                     {"light_after", light_or_null(t.after)},
                     {"work", json_of(work[i])}});
  }
  Json guards = Json::array();
  for (const GuardState& g : plan.guards) {
    guards.push_back({{"rule", g.rule},
                      {"name", g.name},
                      {"unit", g.unit},
                      {"floor", g.floor},
                      {"limit", g.limit},
                      {"before", g.before},
                      {"after", g.after},
                      {"holds", g.holds}});
  }
  return {{"treatment", word_of(plan.advice.treatment)},
          {"advice", plan.advice.text},
          {"advice_rules", plan.advice.rules},
          {"rule_version", plan.rule_version},
          {"guards", guards},
          {"trees", trees}};
}

std::string stand_name(const TractData& data, StandId id) {
  for (const Stand& s : data.stands) {
    if (s.id == id) return s.name;
  }
  return "";
}

void print_guards(const ReleasePlan& plan) {
  if (plan.guards.empty()) return;
  TextTable table({"guard", "before", "after", "limit", "unit", "rule", ""});
  for (const GuardState& g : plan.guards) {
    table.add({g.name, number_text(g.before, 1), number_text(g.after, 1),
               (g.floor ? "at least " : "at most ") + number_text(g.limit, 1), g.unit, g.rule,
               g.holds ? "holds" : "BROKEN"});
  }
  std::cout << table.text();
}

void print(const StandPlan& stand, const TractData& data, const Call& call) {
  const ReleasePlan& plan = stand.plan;
  std::map<Verdict, int> counts;
  int crop = 0;
  int released = 0;
  for (const TreeVerdict& t : plan.trees) {
    ++counts[t.verdict];
    crop += t.crop ? 1 : 0;
    released += t.released ? 1 : 0;
  }
  std::cout << stand_name(data, stand.stand) << ": " << plan.advice.text << "\n  " << released
            << " of " << crop << " crop trees released; take " << counts[Verdict::take]
            << ", kill standing " << counts[Verdict::kill_standing] << ", keep "
            << counts[Verdict::keep] << ", look again " << counts[Verdict::look_again] << '\n';
  if (!plan.optimality.proven) {
    std::cout << "  the best found; at most " << number_text(100.0 * plan.optimality.gap(), 1)
              << " % of the released light may be missed [light]\n";
  }
  print_guards(plan);
  if (call.steps) {
    for (const StepLog& step : plan.steps) {
      std::cout << "  " << step.step << '\n';
      for (const std::string& line : step.lines) std::cout << "    " << line << '\n';
    }
  }
  for (const TreeVerdict& t : plan.trees) {
    std::cout << "  " << t.tag << "  " << t.reason << " [";
    for (std::size_t i = 0; i < t.rules.size(); ++i) std::cout << (i > 0 ? " " : "") << t.rules[i];
    std::cout << "]\n";
  }
  std::cout << '\n';
}

template <class Q>
Json json_of(const Estimate<Q>& e) {
  Json json{{"mean", e.mean.value}, {"trust", word_of(e.trust)}};
  json["lo"] = e.lo ? Json(e.lo->value) : Json(nullptr);
  json["hi"] = e.hi ? Json(e.hi->value) : Json(nullptr);
  return json;
}

Json json_of(const Prescription& p) {
  Json lines = Json::array();
  for (const RemovalLine& line : p.lines) {
    lines.push_back({{"species", line.species.fia},
                     {"dbh_class_in", line.dbh_class.inches},
                     {"product", word_of(line.product)},
                     {"trees_ac", json_of(line.trees)},
                     {"ba_ft2_ac", json_of(line.ba)}});
  }
  return {{"plots", p.plots},
          {"level", Confidence{}.share()},
          {"crop_trees_ac", json_of(p.crop_trees)},
          {"removals_ac", json_of(p.removals)},
          {"ba_before_ft2_ac", json_of(p.ba_before)},
          {"ba_after_ft2_ac", json_of(p.ba_after)},
          {"stocking_before_pct", json_of(p.stocking_before)},
          {"stocking_after_pct", json_of(p.stocking_after)},
          {"removals", lines}};
}

template <class Q>
std::string range_text(const Estimate<Q>& e) {
  if (!e.lo || !e.hi) return "not known";
  return number_text(std::max(0.0, e.lo->value), 1) + " to " + number_text(e.hi->value, 1);
}

void print(const Prescription& p, const SpeciesTable& species) {
  TextTable sums({"figure", "mean", "95 % interval", "unit"});
  const auto add = [&](const char* name, const auto& e, const char* unit) {
    sums.add({name, number_text(e.mean.value, 1), range_text(e), unit});
  };
  add("crop trees released [trees]", p.crop_trees, "trees");
  add("trees removed [trees]", p.removals, "trees");
  add("basal area before [basal_area]", p.ba_before, "ft2");
  add("basal area after [basal_area]", p.ba_after, "ft2");
  add("stocking before [guard_stocking]", p.stocking_before, "%");
  add("stocking after [guard_stocking]", p.stocking_after, "%");
  std::cout << sums.text();
  TextTable lines({"remove", "DBH in", "product", "trees", "95 % interval", "ft2"});
  for (const RemovalLine& line : p.lines) {
    const Species* s = species.find(line.species);
    lines.add({s == nullptr ? std::to_string(line.species.fia) : s->common_name,
               std::to_string(line.dbh_class.inches), std::string(word_of(line.product)),
               number_text(line.trees.mean.value, 1), range_text(line.trees),
               number_text(line.ba.mean.value, 1)});
  }
  if (!p.lines.empty()) std::cout << lines.text();
  std::cout << "  " << p.plots << " plots, empty ones included; intervals [interval]\n";
}

/// The trees of a plot have no tags of their own in most cruises, so only counts are told.
int run_plots(const Call& call) {
  const auto session = open_to_read(call.tract);
  if (!session) return fail(session.error(), call.json);
  const auto data = session->data();
  if (!data) return fail(data.error(), call.json);
  const auto plans = session->recommend_plots();
  if (!plans) return fail(plans.error(), call.json);
  Json json = Json::array();
  TextTable table(
      {"mapped plot", "trees", "crop trees released", "take", "kill standing", "advice"});
  for (const MappedPlotPlan& plot : *plans) {
    const auto record =
        std::ranges::find_if(data->plots, [&](const Plot& p) { return p.id == plot.plot; });
    const auto count = [&](Verdict v) {
      return std::ranges::count_if(plot.plan.trees,
                                   [&](const TreeVerdict& t) { return t.verdict == v; });
    };
    const auto released =
        std::ranges::count_if(plot.plan.trees, [](const TreeVerdict& t) { return t.released; });
    const std::string advice(word_of(plot.plan.advice.treatment));
    table.add({record->label, std::to_string(plot.plan.trees.size()), std::to_string(released),
               std::to_string(count(Verdict::take)), std::to_string(count(Verdict::kill_standing)),
               advice});
    json.push_back({{"plot", record->label},
                    {"trees", plot.plan.trees.size()},
                    {"released", released},
                    {"take", count(Verdict::take)},
                    {"kill_standing", count(Verdict::kill_standing)},
                    {"treatment", advice},
                    {"proven", plot.plan.optimality.proven}});
  }
  const auto told = prescriptions(*data, session->knowledge(), *plans, {});
  if (!told) return fail(told.error(), call.json);
  if (call.json) {
    Json stands = Json::array();
    for (const StandPrescription& stand : *told) {
      stands.push_back({{"stand", stand_name(*data, stand.stand)},
                        {"prescription", json_of(stand.prescription)}});
    }
    Json all{{"plots", json}, {"stands", stands}};
    add_sources(all, Document::release);
    std::cout << json_text(all) << '\n';
    return kDone;
  }
  std::cout << table.text();
  for (const StandPrescription& stand : *told) {
    std::cout << '\n' << stand_name(*data, stand.stand) << ", an acre:\n";
    print(stand.prescription, session->knowledge().species());
  }
  std::cout << "Plots are a sample: they tell what a release would take, never which trees to cut. "
               "Sides that\n"
               "look out of a plot are not known, so crop trees and removals come out low rather "
               "than high.\n"
               "Nothing was written.\n";
  return kDone;
}

int run(const Call& call) {
  if (call.plots) return run_plots(call);
  auto session = call.dry_run ? open_to_read(call.tract) : open_to_write(call.tract);
  if (!session) return fail(session.error(), call.json);
  const auto data = session->data();
  if (!data) return fail(data.error(), call.json);
  progress("deciding tree by tree");
  const auto plans = session->recommend();
  if (!plans) return fail(plans.error(), call.json);
  int written = 0;
  if (!call.dry_run) {
    const auto stored = session->store_marks(*plans);
    if (!stored) return fail(stored.error(), call.json);
    written = *stored;
  }
  if (call.json) {
    Json json{{"marks_written", written}, {"stands", Json::array()}};
    for (const StandPlan& stand : *plans) {
      const auto work =
          work_of_stand(*data, session->knowledge(), stand.stand, stand.plan, today());
      if (!work) return fail(work.error(), call.json);
      json["stands"].push_back(
          {{"stand", stand_name(*data, stand.stand)}, {"plan", json_of(stand, *work)}});
    }
    add_sources(json, Document::release);
    std::cout << json_text(json) << '\n';
    return kDone;
  }
  for (const StandPlan& stand : *plans) print(stand, *data, call);
  std::cout << (call.dry_run ? "Nothing was written (--dry-run).\n"
                             : std::to_string(written) + " marks written to " + call.tract + ".\n")
            << "A recommendation is not a safety check: whoever fells looks at each tree first.\n";
  return kDone;
}

}  // namespace

void add_recommend(CLI::App& app, int& exit_code) {
  auto call = std::make_shared<Call>();
  CLI::App* command = app.add_subcommand(
      "recommend", "Decide which trees of the marking walk to take and to keep, with reasons");
  add_tract(*command, call->tract);
  command->add_flag("--dry-run", call->dry_run, "Decide and print; write no marks");
  command->add_flag("--steps", call->steps, "Print what each step decided and why");
  command->add_flag("--plots", call->plots,
                    "Decide the stem-mapped plots of the cruise instead; writes nothing");
  add_json(*command, call->json);
  command->footer(
      "Example: oaklight recommend hollow.gpkg --dry-run\n"
      "Trees that a person decided by hand keep their mark.");
  command->callback([call, &exit_code] { exit_code = run(*call); });
}

}  // namespace oaklight::command
