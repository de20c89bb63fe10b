// Each figure that the program shows carries the key of a note that tells how it is made.
#include <gmock/gmock.h>

#include <nlohmann/json.hpp>
#include <regex>
#include <set>
#include <sstream>

#include "core/stand/sources.hpp"
#include "tests/command/program.hpp"

namespace oaklight::test {
namespace {

using Json = nlohmann::json;

/// What is no figure: counts of what was recorded, names, answers, and the parts of a figure whose
/// own member has the key.
const std::set<std::string> kNoFigure = {"confidence",
                                         "log_rule",
                                         "stand",
                                         "acres",
                                         "plots",
                                         "measure_plots",
                                         "empty_plots",
                                         "planned",
                                         "skipped",
                                         "stems",
                                         "without_board_feet",
                                         "without_cords",
                                         "without_stem_wood",
                                         "fia",
                                         "species",
                                         "trust",
                                         "within_guide",
                                         "found_on",
                                         "plot_ac",
                                         "mean",
                                         "kind",
                                         "a",
                                         "b",
                                         "trees",
                                         "residual_sd_ft",
                                         "from_in",
                                         "to_in",
                                         "share_pct",
                                         "lo_pct",
                                         "hi_pct"};

/// The members that hold a number or an answer and have no key.
void collect_bare(const Json& json, const Json& sources, std::set<std::string>& bare) {
  if (json.is_array()) {
    for (const Json& one : json) collect_bare(one, sources, bare);
    return;
  }
  if (!json.is_object()) return;
  for (const auto& [name, value] : json.items()) {
    if (name == "sources") continue;
    if (!value.is_structured() && !sources.contains(name) && !kNoFigure.contains(name)) {
      bare.insert(name);
    }
    collect_bare(value, sources, bare);
  }
}

void expect_known(const std::string& key) {
  EXPECT_NE(source_note(key), nullptr) << key << " is the key of no note";
}

TEST(FigureKeys, EveryNumberOfAnEstimateHasOneThatResolves) {
  const DemoTract demo;
  const Ran run = oaklight("estimate " + demo.tract + " --json --fpc --post-strata");
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  const Json json = Json::parse(run.out);
  for (const auto& [member, key] : json.at("sources").items()) {
    expect_known(key.get<std::string>());
  }
  std::set<std::string> bare;
  collect_bare(json, json.at("sources"), bare);
  EXPECT_THAT(bare, testing::IsEmpty());
}

TEST(FigureKeys, EveryLineOfAnEstimateWithAFigureHasOneThatResolves) {
  const DemoTract demo;
  const Ran run = oaklight("estimate " + demo.tract + " --stand-table");
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  const std::regex key("\\[([a-z_0-9]+)\\]");
  const std::regex figure("[0-9]\\.[0-9]|[0-9] (%|ft2|in\\b|plots,)");
  std::set<std::string> keys;
  std::stringstream lines(run.out);
  std::string line;
  bool by_group = false;  // rows of the tables by species and class, whose keys stand below them
  while (std::getline(lines, line)) {
    for (std::sregex_iterator at(line.begin(), line.end(), key), end; at != end; ++at) {
      keys.insert((*at)[1]);
    }
    if (line.starts_with("  by species") || line.find("by 2-in") != std::string::npos) {
      by_group = true;
    }
    const bool has_key = std::regex_search(line, key);
    if (has_key) by_group = false;
    const bool head = line.find(" acres, ") != std::string::npos ||
                      line.starts_with("  per acre") || line.starts_with("  young trees an acre") ||
                      line.find("not in these volumes") != std::string::npos;
    if (by_group || head || !std::regex_search(line, figure)) continue;
    EXPECT_TRUE(has_key) << line;
  }
  EXPECT_GE(keys.size(), 15U);
  for (const std::string& one : keys) expect_known(one);
}

TEST(FigureKeys, OfTheOtherDocumentsResolve) {
  const DemoTract demo;
  for (const std::string& call :
       {"recommend " + demo.tract + " --dry-run --json", "explain " + demo.tract + " 101 --json",
        "design " + demo.tract + " --cruise Spring --error 20 --dry-run --json"}) {
    const Ran run = oaklight(call);
    ASSERT_EQ(run.exit_code, 0) << call << run.errors << run.out;
    const Json json = Json::parse(run.out);
    EXPECT_FALSE(json.at("sources").empty()) << call;
    for (const auto& [member, key] : json.at("sources").items()) {
      expect_known(key.get<std::string>());
    }
  }
}

TEST(FigureKeys, StandBesideTheFiguresInTheTextOfTheOtherCommands) {
  const DemoTract demo;
  const std::string folder = (demo.folder.path() / "packet").string();
  struct Call {
    std::string words;
    std::set<std::string> keys;  ///< that it prints at least
  };
  const std::vector<Call> calls = {
      {"design " + demo.tract + " --cruise Spring --error 20 --dry-run",
       {"plots_needed", "crew_hours", "plot_advice"}},
      {"packet " + demo.tract + " --for logger --out " + folder, {"board_feet", "cords"}},
      {"stumps " + demo.tract + " --audit", {"tree_list", "audit"}}};
  const std::regex key("\\[([a-z]+_[a-z_0-9]+|cords|trees|audit|light)\\]");
  for (const Call& call : calls) {
    const Ran run = oaklight(call.words);
    ASSERT_EQ(run.exit_code, 0) << call.words << run.errors;
    std::set<std::string> found;
    for (std::sregex_iterator at(run.out.begin(), run.out.end(), key), end; at != end; ++at) {
      found.insert((*at)[1]);
      expect_known((*at)[1]);
    }
    for (const std::string& wanted : call.keys)
      EXPECT_TRUE(found.contains(wanted)) << wanted << " in\n" << run.out;
  }
}

}  // namespace
}  // namespace oaklight::test
