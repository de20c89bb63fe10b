// The main job on the demo tract, from files to packet, and what came of it compared with figures
// and verdicts that were worked out apart from the program (demo_plots/working.md).
#include <gtest/gtest.h>

#include <map>
#include <nlohmann/json.hpp>
#include <sstream>

#include "core/base/number_text.hpp"
#include "tests/command/program.hpp"

namespace oaklight::test {
namespace {

using Json = nlohmann::json;

/// Rows of a tab-separated file by column name.
std::vector<std::map<std::string, std::string>> table_of(const std::filesystem::path& path) {
  std::istringstream lines(bytes_of(path));
  std::vector<std::map<std::string, std::string>> rows;
  std::vector<std::string> head;
  for (std::string line; std::getline(lines, line);) {
    if (line.empty() || line.front() == '#') continue;
    std::vector<std::string> cells;
    std::istringstream parts(line);
    for (std::string cell; std::getline(parts, cell, '\t');) cells.push_back(cell);
    if (head.empty()) {
      head = cells;
      continue;
    }
    std::map<std::string, std::string> row;
    for (std::size_t i = 0; i < head.size(); ++i) row[head[i]] = i < cells.size() ? cells[i] : "";
    rows.push_back(row);
  }
  return rows;
}

/// Whether a list of words parted by | holds this one.
bool holds(const std::string& list, const std::string& word) {
  return ("|" + list + "|").find("|" + word + "|") != std::string::npos;
}

/// Every verdict of a recommendation by tag.
std::map<std::string, Json> verdicts_of(const Json& recommendation) {
  std::map<std::string, Json> verdicts;
  for (const Json& stand : recommendation.at("stands")) {
    for (const Json& tree : stand.at("plan").at("trees")) {
      verdicts[tree.at("tag").get<std::string>()] = tree;
    }
  }
  return verdicts;
}

TEST(DemoJob, VerdictsAreThoseThatAForesterWorkedOut) {
  const DemoTract demo;
  const Ran run = oaklight("recommend --dry-run --json " + demo.tract);
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  const auto verdicts = verdicts_of(Json::parse(run.out));
  const auto expected = table_of(demo_plots() / "expected_marks.tsv");
  ASSERT_GE(expected.size(), 10U);
  for (const auto& row : expected) {
    const std::string& tag = row.at("tag");
    ASSERT_TRUE(verdicts.count(tag)) << tag;
    const Json& tree = verdicts.at(tag);
    const std::string told =
        "\nworked out: " + row.at("why") + "\nprogram: " + tree.at("reason").get<std::string>();
    EXPECT_TRUE(holds(row.at("verdict"), tree.at("verdict")))
        << tag << ' ' << tree.at("verdict") << told;
    EXPECT_FALSE(holds(row.at("method_not"), tree.at("method")))
        << tag << ' ' << tree.at("method") << told;
  }
}

TEST(DemoJob, EveryVerdictHasAReasonAndRules) {
  const DemoTract demo;
  const Ran run = oaklight("recommend --dry-run --json " + demo.tract);
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  for (const auto& [tag, tree] : verdicts_of(Json::parse(run.out))) {
    const std::string reason = tree.at("reason");
    EXPECT_GT(reason.size(), 15U) << tag;
    EXPECT_EQ(reason.back(), '.') << tag << ": " << reason;
    EXPECT_FALSE(tree.at("rules").empty()) << tag << ": " << reason;
  }
}

TEST(DemoJob, NoTreeToCutOrForATrainedFellerIsAlsoOneToKeep) {
  const DemoTract demo;
  for (const std::string reader : {"logger", "firewood", "standing", "owner"}) {
    const auto folder = demo.folder.path() / reader;
    const Ran run = oaklight("packet " + demo.tract + " --for " + reader + " --out " +
                             folder.string() + " --work-day 2026-12-07 --made-on 2026-11-25");
    ASSERT_EQ(run.exit_code, 0) << run.errors;
    const Ran counts =
        run_program("/usr/bin/python3 -c \"import csv; rows = list(csv.DictReader(open('" +
                    (folder / (reader + ".csv")).string() +
                    "', newline=''))); tags = [r['tag'] for r in rows]; "
                    "print(len(tags), len(set(tags)))\"");
    ASSERT_EQ(counts.exit_code, 0) << counts.errors;
    std::istringstream numbers(counts.out);
    int rows = 0;
    int tags = 0;
    numbers >> rows >> tags;
    EXPECT_GT(rows, 100);
    EXPECT_EQ(rows, tags) << "a tag is on two lists of the " << reader;
  }
}

TEST(DemoJob, EachReaderGetsEveryFileAndTheirHashesHold) {
  const DemoTract demo;
  for (const std::string reader : {"logger", "firewood", "standing", "owner"}) {
    const auto folder = demo.folder.path() / reader;
    const Ran run = oaklight("packet " + demo.tract + " --for " + reader + " --out " +
                             folder.string() + " --work-day 2026-12-07 --json");
    ASSERT_EQ(run.exit_code, 0) << run.errors;
    EXPECT_EQ(Json::parse(run.out).at("for"), reader);
    const Json manifest = Json::parse(bytes_of(folder / (reader + ".manifest.json")));
    std::vector<std::string> endings;
    for (const Json& file : manifest.at("files")) {
      const std::string name = file.at("name");
      endings.push_back(name.substr(name.find('.')));
      const Ran hash = run_program("sha256sum " + (folder / name).string());
      EXPECT_EQ(hash.out.substr(0, 64), file.at("sha256")) << name;
    }
    std::vector<std::string> expected = {".pdf", ".csv", ".xlsx", ".geojson", ".gpx", ".gpkg"};
    if (reader == "owner") expected.emplace_back(".practice.csv");
    EXPECT_EQ(endings, expected) << reader;
  }
}

TEST(DemoJob, TheBuyersLogRuleDecidesTheBoardFeet) {
  const DemoTract demo;
  std::map<std::string, double> board_feet;
  for (const std::string rule : {"doyle", "scribner", "international"}) {
    const auto folder = demo.folder.path() / rule;
    const Ran run = oaklight("packet " + demo.tract + " --for owner --out " + folder.string() +
                             " --log-rule " + rule);
    ASSERT_EQ(run.exit_code, 0) << run.errors;
    const Json manifest = Json::parse(bytes_of(folder / "owner.manifest.json"));
    for (const char* totals : {"totals", "totals_if_cleared"}) {
      for (const Json& total : manifest.at(totals)) {
        if (total.at("board_feet").is_number())
          board_feet[rule] += total.at("board_feet").get<double>();
      }
    }
  }
  // Common knowledge of the trade: on logs as small as these Doyle gives least, International most.
  EXPECT_LT(board_feet["doyle"], board_feet["scribner"]);
  EXPECT_LT(board_feet["scribner"], board_feet["international"]);
}

TEST(DemoJob, CautionsComeBeforeTheMapAndTheMapBeforeTheList) {
  const DemoTract demo;
  const auto folder = demo.folder.path();
  ASSERT_EQ(oaklight("packet " + demo.tract + " --for logger --out " + folder.string()).exit_code,
            0);
  const Ran text = run_program("pdftotext -layout " + (folder / "logger.pdf").string() + " -");
  ASSERT_EQ(text.exit_code, 0) << text.errors;
  const auto cautions = text.out.find("BEFORE YOU START");
  const auto map = text.out.find("Map of the tract");
  const auto list = text.out.find("Trees to cut");
  const auto keep = text.out.find("DO NOT CUT:");
  ASSERT_NE(cautions, std::string::npos);
  ASSERT_NE(keep, std::string::npos);
  EXPECT_LT(cautions, map);
  EXPECT_LT(map, list);
  EXPECT_LT(list, keep);
}

TEST(DemoJob, TheOwnersFiguresOfBeforeCarryTheErrorOfTheEstimate) {
  const DemoTract demo;
  const auto folder = demo.folder.path();
  ASSERT_EQ(oaklight("packet " + demo.tract + " --for owner --out " + folder.string()).exit_code,
            0);
  const Ran text = run_program("pdftotext -enc UTF-8 " + (folder / "owner.pdf").string() + " -");
  ASSERT_EQ(text.exit_code, 0) << text.errors;
  const Json estimate = Json::parse(oaklight("estimate " + demo.tract + " --json").out);
  for (const Json& stand : estimate.at("stands")) {
    const Json& live = stand.at("figures").at("live");
    for (const auto& [name, decimals] : {std::pair("ba_ft2_ac", 1), {"trees_ac", 0}}) {
      const Json& figure = live.at(name);
      const std::string shown = number_text(figure.at("mean").get<double>(), decimals) + " ± " +
                                number_text(figure.at("se").get<double>(), decimals);
      EXPECT_NE(text.out.find(shown), std::string::npos) << stand.at("stand") << ": " << shown;
    }
  }
}

TEST(DemoJob, SameDataGivesTheSameBytesTwice) {
  std::string first;
  for (int run = 0; run < 2; ++run) {
    const DemoTract demo;
    const auto folder = demo.folder.path();
    ASSERT_EQ(oaklight("packet " + demo.tract + " --for logger --made-on 2026-11-25 --out " +
                       folder.string())
                  .exit_code,
              0);
    const std::string made =
        bytes_of(folder / "logger.csv") + bytes_of(folder / "logger.manifest.json");
    if (first.empty()) first = made;
    EXPECT_EQ(made, first);
  }
}

TEST(DemoJob, TractFileIsAGeoPackageThatOthersRead) {
  const DemoTract demo;
  const Ran layers = run_program("ogrinfo -ro -al -so " + demo.tract);
  EXPECT_EQ(layers.exit_code, 0);
  EXPECT_EQ(layers.errors, "");
  for (const char* layer : {"Layer name: stand", "Layer name: plot", "Layer name: tree",
                            "Layer name: walk_tree", "Layer name: mark"}) {
    EXPECT_NE(layers.out.find(layer), std::string::npos) << layer;
  }
  const Ran valid =
      run_program("/usr/bin/python3 -m osgeo_utils.samples.validate_gpkg " + demo.tract);
  EXPECT_EQ(valid.exit_code, 0) << valid.out << valid.errors;
  const Ran sound = oaklight("check " + demo.tract);
  EXPECT_EQ(sound.exit_code, 0) << sound.out;
}

}  // namespace
}  // namespace oaklight::test
