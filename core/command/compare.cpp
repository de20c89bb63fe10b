#include <algorithm>
#include <iostream>

#include "core/base/number_text.hpp"
#include "core/command/compare_json.hpp"
#include "core/command/program.hpp"
#include "core/command/text_table.hpp"

namespace oaklight::command {
namespace {

struct Call {
  std::string first, second;
  std::string first_cruise, second_cruise;
  double years = 0.0;
  Confidence level;
  LogRule log_rule = LogRule::international;
  bool json = false;
};

template <class Q>
std::string text_of(const std::optional<Q>& value, int decimals) {
  return value ? number_text(value->value, decimals) : "-";
}

std::string signed_text(double value, int decimals) {
  return (value > 0.0 ? "+" : "") + number_text(value, decimals);
}

std::string trust_words(Trust trust) {
  switch (trust) {
    case Trust::fair:
      return "";
    case Trust::not_found:
      return "no plot changed: not known to be none";
    case Trust::one_plot:
      return "one pair: no error can be told";
    case Trust::two_plots:
      return "two pairs: very unsure";
    case Trust::few_found:
      return "changed on fewer than 5 plots: interval likely too short";
  }
  return "";
}

template <class Q>
void add_change(TextTable& table, const std::string& name, const PairedChange<Q>& c, int decimals) {
  const auto limit = [&](const std::optional<Q>& x) {
    return x ? signed_text(x->value, decimals) : std::string("-");
  };
  table.add({name, number_text(c.before.value, decimals), number_text(c.after.value, decimals),
             signed_text(c.change.value, decimals), text_of(c.se, decimals), limit(c.lo),
             limit(c.hi), trust_words(c.trust)});
}

std::vector<std::string> head_of(const std::string& what, const EstimateOptions& options) {
  const std::string level = number_text(100.0 * options.confidence.share(), 1);
  return {what, "then", "now", "change", "SE", level + " % from", "to", ""};
}

void print_area(const AreaChange& area, const EstimateOptions& options) {
  TextTable table(head_of("per acre", options));
  add_change(table, "basal area, ft2 [basal_area]", area.ba, 1);
  add_change(table, "trees [trees]", area.trees, 1);
  if (area.qmd) add_change(table, "mean diameter (QMD), in [mean_diameter]", *area.qmd, 2);
  add_change(table, "stocking, % [stocking]", area.stocking, 1);
  if (area.board_feet) {
    add_change(table, "board feet, " + std::string(name_of(options.log_rule)) + " [board_feet]",
               *area.board_feet, 0);
  }
  if (area.cords) add_change(table, "cords, whole trees [cords]", *area.cords, 1);
  std::cout << table.text() << "  change, SE and limits [paired_change]\n";
  if (!area.board_feet) {
    std::cout << "  no board feet: " << area.without_board_feet
              << " stems of the two visits have no logs recorded\n";
  }
  if (!area.cords) {
    std::cout << "  no cords: " << area.without_cords << " stems are thicker than the table\n";
  }
}

void print_totals(const AreaChange& area, const EstimateOptions& options) {
  TextTable table(head_of("in all", options));
  add_change(table, "basal area, ft2 [basal_area]", total_of(area.ba, area.acres), 0);
  add_change(table, "trees [trees]", total_of(area.trees, area.acres), 0);
  if (area.board_feet)
    add_change(table, "board feet [board_feet]", total_of(*area.board_feet, area.acres), 0);
  if (area.cords) add_change(table, "cords [cords]", total_of(*area.cords, area.acres), 0);
  std::cout << table.text() << "  change, SE and limits [paired_change]\n";
}

std::string list_of(const std::vector<std::string>& names) {
  std::string text;
  for (const std::string& name : names) text += (text.empty() ? "" : ", ") + name;
  return text;
}

std::string visit_words(const std::string& cruise, const std::string& day) {
  return "\"" + cruise + "\"" + (day.empty() ? "" : " of " + day);
}

void print_stand(const StandComparison& stand, const EstimateOptions& options) {
  std::cout << stand.stand << ": " << visit_words(stand.first_cruise, stand.first_day) << " and "
            << visit_words(stand.second_cruise, stand.second_day);
  if (stand.years) std::cout << ", " << number_text(*stand.years, 1) << " years";
  if (!stand.change) {
    std::cout << "\n  " << to_text(stand.change.error()) << "\n\n";
    return;
  }
  std::cout << "; " << stand.change->pairs << " plots visited both times\n";
  if (!stand.only_first.empty()) {
    std::cout << "  left out, first visit only: " << list_of(stand.only_first) << '\n';
  }
  if (!stand.only_second.empty()) {
    std::cout << "  left out, second visit only: " << list_of(stand.only_second) << '\n';
  }
  print_area(*stand.change, options);
  std::cout << '\n';
}

void print_cruises(const Comparison& c, const EstimateOptions& options) {
  for (const StandComparison& stand : c.stands) print_stand(stand, options);
  if (!c.only_first.empty()) {
    std::cout << "Not compared, first visit only: " << list_of(c.only_first) << '\n';
  }
  if (!c.only_second.empty()) {
    std::cout << "Not compared, second visit only: " << list_of(c.only_second) << '\n';
  }
  if (c.all) {
    std::cout << "All stands cruised both times, by acres: " << number_text(c.all->acres.value, 1)
              << " acres, " << c.all->pairs << " plots visited both times\n";
    if (c.all->only_first + c.all->only_second > 0) {
      std::cout << "  plots left out, one visit only: " << c.all->only_first + c.all->only_second
                << '\n';
    }
    print_area(*c.all, options);
    print_totals(*c.all, options);
    std::cout << "SE is that of the plots' own changes (paired), not of two estimates.\n";
  } else {
    std::cout << "All stands together: " << to_text(c.all.error()) << '\n';
  }
}

int count_of(const Comparison& c, TagFate fate) {
  return static_cast<int>(std::ranges::count(c.trees, fate, &TaggedTree::fate));
}

/// Tags that somebody should look at, a line for each kind.
void print_tags(const Comparison& c, TagFate fate, const std::string& words) {
  std::vector<std::string> tags;
  for (const TaggedTree& tree : c.trees) {
    if (tree.fate == fate) tags.push_back(tree.tag);
  }
  if (!tags.empty()) std::cout << "  " << words << ": " << list_of(tags) << '\n';
}

void add_group(TextTable& table, const std::string& name, const std::optional<GroupMean>& group) {
  if (!group) {
    table.add({name, "0", "-", "-", "-", "-"});
    return;
  }
  const auto text = [](const std::optional<double>& x) {
    return x ? number_text(*x, 3) : std::string("-");
  };
  table.add({name, std::to_string(group->n), number_text(group->mean, 3), text(group->se),
             text(group->lo), text(group->hi)});
}

void print_growth(const Comparison& c, const YearSettings& years, const EstimateOptions& options) {
  if (!c.growth.released && !c.growth.unreleased) return;
  const std::string level = number_text(100.0 * options.confidence.share(), 1);
  TextTable table(
      {"DBH growth of crop trees, in a year", "trees", "mean", "SE", level + " % from", "to"});
  add_group(table, "released", c.growth.released);
  add_group(table, "not released", c.growth.unreleased);
  if (c.growth.difference) {
    const MeanDifference& d = *c.growth.difference;
    table.add({"difference (Welch)", "", signed_text(d.difference, 3), number_text(d.se, 3),
               signed_text(d.lo, 3), signed_text(d.hi, 3)});
  }
  std::cout << table.text() << "  means and their difference [growth_difference]\n";
  if (!c.growth.difference) std::cout << "  " << to_text(c.growth.difference.error()) << '\n';
  std::cout << "  Released trees were chosen, not drawn by lot: they may have grown better anyway. "
               "A difference\n  is expected from year "
            << number_text(years.lag_years, 0) << " after the work on (R1.80).\n";
}

void print_trees(const Comparison& c, const YearSettings& years, const EstimateOptions& options) {
  if (c.trees.empty()) return;
  std::cout << "\nTagged trees, live at the first visit: " << c.trees.size() << "; measured again "
            << count_of(c, TagFate::grown) << ", taken " << count_of(c, TagFate::taken)
            << ", dead now " << count_of(c, TagFate::dead) << ", not measured again "
            << count_of(c, TagFate::not_read) << ", not met again " << count_of(c, TagFate::not_met)
            << '\n';
  print_tags(c, TagFate::dead, "standing dead now (stay clear; they fall without warning)");
  print_tags(c, TagFate::not_met, "not met again: fallen, stolen, or the tag is lost");
  print_tags(c, TagFate::other_species, "another species wears the tag now: look again");
  std::vector<std::string> thinner;
  for (const TaggedTree& tree : c.trees) {
    if (tree.after && *tree.after < tree.before) thinner.push_back(tree.tag);
  }
  if (!thinner.empty()) {
    std::cout << "  thinner than before, read again (they are in the figures): " << list_of(thinner)
              << '\n';
  }
  print_growth(c, years, options);
}

std::string sides_text(const Light& light) {
  return std::to_string(light.sides_free) +
         (light.sides_unknown > 0 ? "+" + std::to_string(light.sides_unknown) + "?" : "");
}

std::string look_text(const CropTreeChange& tree) {
  if (tree.look_now) return "now";
  if (tree.now) return tree.sides_closed ? "not yet" : "sides not looked at";
  if (!tree.look) return "not known";
  return "year " + number_text(tree.look->soonest, 0) + " to " + number_text(tree.look->latest, 0);
}

void print_crowns(const Comparison& c, const YearSettings& years) {
  if (c.crop_trees.empty()) return;
  std::cout << '\n';
  TextTable table(
      {"crop tree", "", "free sides then", "after the work", "now", "closed since", "look again"});
  for (const CropTreeChange& tree : c.crop_trees) {
    table.add({tree.tag, tree.species, sides_text(tree.before), sides_text(tree.after),
               tree.now ? sides_text(*tree.now) : "-",
               tree.sides_closed ? std::to_string(*tree.sides_closed) : "-", look_text(tree)});
  }
  std::cout << table.text() << "  Free sides [light]. Look again when " << years.sides_again
            << " sides or fewer are free (R1.87). Years count from the first visit; a gap as wide "
               "as\n  the crown that went closes from both edges, "
            << number_text(years.crown_growth_least.value, 1) << " to "
            << number_text(years.crown_growth_most.value, 1)
            << " ft a year each (R1.85, R1.86; from memory) [years_to_look].\n";
}

std::string producer_words(const AcornRecord& record) {
  switch (record.producer) {
    case Producer::excellent:
      return "excellent";
    case Producer::good:
      return "good";
    case Producer::fair:
      return "fair";
    case Producer::poor:
      return record.proven_poor ? "poor, proven" : "poor so far";
    case Producer::no_record:
      return "no record";
  }
  return "";
}

std::string autumn_words(const AcornAutumn& autumn) {
  std::string text = std::to_string(autumn.year) + ":";
  if (autumn.per_tip) text += " " + number_text(*autumn.per_tip, 1) + " a tip";
  if (autumn.n30) text += " " + std::to_string(*autumn.n30) + " in 30 s";
  return text;
}

void print_indices(const Comparison& c, const SpeciesTable& table, const YearSettings& years) {
  if (c.acorn_indices.empty()) return;
  TextTable rows(
      {"acorn year by timed counts", "", "year", "oaks", "index", "SE", "bearing %", ""});
  bool few = false;
  for (const AcornIndex& index : c.acorn_indices) {
    const Species* species = table.find(index.species);
    few = few || !index.enough;
    rows.add({index.stand.empty() ? "whole tract" : index.stand,
              species == nullptr ? "" : species->common_name, std::to_string(index.year),
              std::to_string(index.index.n), number_text(index.index.mean, 2),
              index.index.se ? number_text(*index.index.se, 2) : "-",
              number_text(index.bearing.value, 0), index.enough ? "" : "few oaks"});
  }
  std::cout
      << rows.text()
      << "  The index, the mean of ln(count + 1) over oaks (R3.45), ranks years of one species "
         "here. It is no\n  number of acorns, and a poor year is not a poor tree.\n";
  if (few) {
    std::cout << "  Few oaks: fewer than the " << years.acorn_trees
              << " of a species that an index should stand on (R3.48; from memory).\n";
  }
}

void print_acorns(const Comparison& c, const SpeciesTable& table, const YearSettings& years) {
  if (c.acorn_trees.empty()) return;
  std::cout << '\n';
  TextTable rows({"oak", "", "producer", "acorns"});
  for (const AcornTree& tree : c.acorn_trees) {
    const Species* species = table.find(tree.species);
    std::string counts;
    for (const AcornAutumn& autumn : tree.autumns) {
      counts += (counts.empty() ? "" : "; ") + autumn_words(autumn);
    }
    rows.add({tree.tag, species == nullptr ? "" : species->common_name, producer_words(tree.record),
              counts});
  }
  std::cout
      << rows.text()
      << "  Producer by the mean of the branch-tip counts (R3.41 to R3.43). It is proven poor "
         "only when poor in\n  every year of three or more, one of them a good year (R3.39): "
         "until then it may be the years.\n";
  print_indices(c, table, years);
}

CompareOptions options_of(const Call& call) {
  CompareOptions options;
  options.first_cruise = call.first_cruise;
  options.second_cruise = call.second_cruise;
  options.estimate.confidence = call.level;
  options.estimate.log_rule = call.log_rule;
  if (call.years > 0.0) options.years = call.years;
  return options;
}

int run(const Call& call) {
  const CompareOptions options = options_of(call);
  const auto first = open_to_read(call.first);
  if (!first) return fail(first.error(), call.json);
  const auto data = first->data();
  if (!data) return fail(data.error(), call.json);
  const auto second = call.second.empty() ? open_to_read(call.first) : open_to_read(call.second);
  if (!second) return fail(second.error(), call.json);
  const TractKnowledge& know = second->knowledge();
  const auto compared = [&]() -> Result<Comparison> {
    if (call.second.empty()) return compare_visits(*data, know, options);
    const auto later = second->data();
    if (!later) return later.error();
    return compare_files(*data, *later, know, options);
  }();
  if (!compared) return fail(compared.error(), call.json);
  if (call.json) {
    std::cout << compare_json(*compared, know.species(), know.release.rules.version()) << '\n';
  } else {
    const auto years = YearSettings::from(know.release.rules);
    if (!years) return fail(years.error(), call.json);
    print_cruises(*compared, options.estimate);
    print_trees(*compared, *years, options.estimate);
    print_crowns(*compared, *years);
    print_acorns(*compared, know.species(), *years);
  }
  return kDone;
}

}  // namespace

void add_compare(CLI::App& app, int& exit_code) {
  auto call = std::make_shared<Call>();
  CLI::App* command = app.add_subcommand(
      "compare", "What changed between two visits: stands, tagged trees, crowns");
  command->add_option("first", call->first, "The tract file of the first visit (.gpkg)")
      ->required();
  command->add_option("second", call->second,
                      "That of the second (default: both visits are in the first file)");
  command->add_option("--first-cruise", call->first_cruise,
                      "Name of the first cruise (default: the one before the newest)");
  command->add_option("--second-cruise", call->second_cruise,
                      "Name of the second cruise (default: the newest)");
  command
      ->add_option("--years", call->years,
                   "Years between the visits (default: from the days of the cruises)")
      ->check(between(0.1, 200.0));
  add_confidence(*command, call->level);
  add_log_rule(*command, call->log_rule);
  add_json(*command, call->json);
  command->footer(
      "Plots are paired by their label in the stand, trees by their tag. A plot that only one\n"
      "visit went to is listed and in no figure.\n"
      "Example: oaklight compare hollow.gpkg hollow_2031.gpkg --level 0.9");
  command->callback([call, &exit_code] { exit_code = run(*call); });
}

}  // namespace oaklight::command
