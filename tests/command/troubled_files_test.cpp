// Every subcommand on a tract file that is not there, that is damaged, or whose rules somebody
// spoiled; and on an output that takes no more. A table of calls, so that a new one is one line.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "core/base/clock.hpp"
#include "core/store/tract_store.hpp"
#include "tests/command/demo_cases.hpp"
#include "tests/command/small_tract.hpp"
#include "tests/support/places.hpp"

namespace oaklight::test {
namespace {

using Json = nlohmann::json;

/// TRACT is the file in trouble, SOUND the demo tract, OUT a name that nobody has.
const char* const kCalls[] = {
    "estimate TRACT",
    "recommend TRACT",
    "recommend --dry-run TRACT",
    "recommend --plots TRACT",
    "explain TRACT 101",
    "packet TRACT --for logger --out OUT",
    "packet TRACT --for owner --out OUT",
    "stumps TRACT --out OUT",
    "compare TRACT",
    "compare TRACT SOUND",
    "compare SOUND TRACT",
    "sheet TRACT OUT",
    "route TRACT --out OUT",
    "design TRACT --cruise Next --error 20",
    "boundary TRACT OUTLINES",
};

class TroubledFiles : public DemoCases {
 protected:
  /// The call as the shell gets it.
  [[nodiscard]] std::string words(std::string call, const std::string& tract) const {
    for (const auto& [name, path] : {std::pair<std::string, std::string>("TRACT", tract),
                                     {"SOUND", demo_->tract},
                                     {"OUTLINES", (demo_plots() / "map.geojson").string()},
                                     {"OUT", in_folder("out")}}) {
      if (const auto at = call.find(name); at != std::string::npos)
        call.replace(at, name.size(), path);
    }
    return call;
  }

  /// All calls end so, with one error of this code for machines, and write nothing.
  void expect_all_refuse(const std::string& tract, int exit_code, const std::string& code) const {
    const std::string before = bytes_of(tract);
    const std::string sound = bytes_of(demo_->tract);
    for (const std::string call : kCalls) {
      const Ran run = oaklight(words(call, tract) + " --json");
      EXPECT_EQ(run.exit_code, exit_code) << call << run.out << run.errors;
      const Json told = Json::parse(run.out, nullptr, false);
      ASSERT_FALSE(told.is_discarded()) << call << run.out;
      ASSERT_EQ(told.at("errors").size(), 1U) << call;
      const Json& error = told.at("errors").at(0);
      EXPECT_EQ(error.at("code"), code) << call;
      EXPECT_FALSE(error.at("what").get<std::string>().empty()) << call;
      EXPECT_FALSE(error.at("fix").get<std::string>().empty()) << call;
      EXPECT_FALSE(std::filesystem::exists(folder_ / "out")) << call;
    }
    EXPECT_EQ(bytes_of(tract), before);
    EXPECT_EQ(bytes_of(demo_->tract), sound);
  }
};

TEST_F(TroubledFiles, AMissingOneEndsInThree) {
  const std::string tract = in_folder("nobody.gpkg");
  expect_all_refuse(tract, 3, "cannot_open");
  EXPECT_FALSE(std::filesystem::exists(tract)) << "nor was it made";
}

TEST_F(TroubledFiles, ADamagedRecordIsNeverReckonedWith) {
  const std::string tract = copy_of_demo("damaged.gpkg");
  const Ran altered =
      run_program("sqlite3 " + tract + " \"update stand set name = 'Cave' where name = 'Cove'\"");
  ASSERT_EQ(altered.exit_code, 0) << altered.errors;
  expect_all_refuse(tract, 3, "damaged");
  const Ran import = oaklight("import " + tract + " " + (demo_plots() / "acorns.csv").string());
  EXPECT_EQ(import.exit_code, 3) << import.errors;
  const Ran check = oaklight("check " + tract);
  EXPECT_EQ(check.exit_code, 1);
  EXPECT_TRUE(says(check.out, "PROBLEM stand/"));
  EXPECT_TRUE(says(check.out, "The file has problems.\n"));
  const Json checked = Json::parse(oaklight("check --json " + tract).out);
  EXPECT_EQ(checked.at("sound"), false);
  EXPECT_EQ(checked.at("problems").at(0).at("code"), "damaged");
  const Ran join = oaklight("join " + demo_->tract + " " + tract);
  EXPECT_EQ(join.exit_code, 3);
  EXPECT_TRUE(says(join.errors, "Nothing was joined."));
  EXPECT_EQ(oaklight("snapshots " + tract + " --take").exit_code, 3);
}

// Rules are the owner's to edit; one that is out of its range is named, whichever file has it.
TEST_F(TroubledFiles, SpoiledRulesAreNamed) {
  const std::string tract = copy_of_demo("spoiled.gpkg");
  {
    SystemClock clock;
    auto store = TractStore::open(tract, OpenMode::read_write, {clock, system_random(), "test"});
    ASSERT_TRUE(store);
    std::string rules = store->form_text("release.rule.json").value();
    const auto at = rules.find("[2]", rules.find("\"R1.87\""));
    ASSERT_NE(at, std::string::npos);
    ASSERT_TRUE(store->set_form_text("release.rule.json", rules.replace(at, 3, "[2000]")));
  }
  for (const char* call : {"compare TRACT", "compare SOUND TRACT"}) {
    const Ran run = oaklight(words(call, tract));
    EXPECT_EQ(run.exit_code, 1) << call << run.out;
    EXPECT_TRUE(says(run.errors, "Rule R1.87 is out of range.")) << call;
  }
}

// A shell that says "done" for half a report is worse than none.
TEST_F(TroubledFiles, AnOutputThatTakesNoMoreEndsInThree) {
  for (const std::string call :
       {"estimate TRACT", "estimate --json TRACT", "check TRACT", "source", "--help"}) {
    const Ran run =
        run_program(build_path("bin/oaklight ") + words(call, demo_->tract) + " > /dev/full");
    EXPECT_EQ(run.exit_code, 3) << call;
    EXPECT_TRUE(says(run.errors, "could not be written")) << call;
  }
}

}  // namespace
}  // namespace oaklight::test
