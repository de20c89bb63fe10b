// The program's figures for the demo tract against those that a program of its own computed from
// the same files (demo_plots/check_summary.py, which shares no code with this one; checked there
// against R survey).
#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <optional>
#include <sstream>
#include <vector>

#include "tests/command/program.hpp"

namespace oaklight::test {
namespace {

using Json = nlohmann::json;

std::vector<std::string> split(const std::string& text, char at) {
  std::vector<std::string> parts;
  std::istringstream in(text);
  for (std::string part; std::getline(in, part, at);) parts.push_back(part);
  return parts;
}

std::optional<double> optional_of(const Json& value) {
  return value.is_null() ? std::nullopt : std::optional<double>(value.get<double>());
}

/// A live figure's group: all, one species or one class.
const Json* group_of(const Json& area, const std::vector<std::string>& name) {
  if (name[1] == "dead") return &area.at("dead");
  if (name[1] != "species" && name[1] != "class") return &area.at("live");
  const char* list = name[1] == "species" ? "by_species" : "by_class";
  for (const Json& row : area.at(list)) {
    const bool found = name[1] == "species" ? row.at("species") == name[2]
                                            : row.at("class_in") == std::stoi(name[2]);
    if (found) return &row.at("figures");
  }
  return nullptr;
}

/// The program's value of a figure by its name in expected_summary.tsv; nothing for names that the
/// JSON does not carry.
std::optional<double> value_of(const Json& area, const Json& stocking, const std::string& figure) {
  const auto name = split(figure, '.');
  const std::string& last = name.back();
  if (figure == "qmd") return area.at("live").at("qmd_in");
  if (figure == "plots") return area.at("plots");
  if (figure == "plots_empty") return area.at("empty_plots");
  if (figure == "stocking.live") return stocking.at("stocking_pct").at("mean");
  if (figure == "stocking.guard") return stocking.at("guard_stocking_pct").at("mean");
  if (figure == "ccf.live") return stocking.at("crown_competition_pct").at("mean");
  static const std::vector<std::string> kCarried = {"mean", "se", "df", "half_pct", "cv_pct"};
  const bool carried = std::find(kCarried.begin(), kCarried.end(), last) != kCarried.end();
  if (name.front() == "regen" && carried) {
    const Json& height = area.at("regeneration").at(name[name.size() - 2]);
    return optional_of(height.at(name[1] == "oak" ? "oak_ac" : "stems_ac").at(last));
  }
  if (name.front() != "ba" && name.front() != "tpa") return std::nullopt;
  if (name.size() == 2 && (last == "total" || last == "total_se")) {
    const Json& total = area.at(name.front() == "ba" ? "total_ba_ft2" : "total_trees");
    return total.at(last == "total" ? "mean" : "se").get<double>();
  }
  if (!carried) return std::nullopt;
  if (name.size() == 3 && name[1] != "dead") return std::nullopt;
  const Json* group = group_of(area, name);
  if (group == nullptr) return std::nullopt;
  return optional_of(group->at(name.front() == "ba" ? "ba_ft2_ac" : "trees_ac").at(last));
}

TEST(DemoFigures, AgreeWithAnIndependentComputation) {
  const DemoTract demo;
  const Ran run = oaklight("estimate --json " + demo.tract);
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  const Json estimate = Json::parse(run.out);
  std::istringstream lines(bytes_of(demo_plots() / "expected_summary.tsv"));
  int compared = 0;
  for (std::string line; std::getline(lines, line);) {
    const auto cells = split(line, '\t');
    if (line.empty() || line.front() == '#' || cells[0] == "stand") continue;
    Json area;
    Json stocking;
    if (cells[0] == "tract") area = estimate.at("all");
    for (const Json& stand : estimate.at("stands")) {
      if (stand.at("stand") != cells[0]) continue;
      area = stand.at("figures");
      stocking = stand.at("stocking");
    }
    ASSERT_FALSE(area.is_null()) << cells[0];
    const auto value = value_of(area, stocking, cells[1]);
    if (!value) continue;
    ++compared;
    EXPECT_NEAR(*value, std::stod(cells[2]), std::stod(cells[4])) << cells[0] << ' ' << cells[1];
  }
  EXPECT_GE(compared, 800) << "names in the file changed and most figures were passed over";
}

}  // namespace
}  // namespace oaklight::test
