// What keeps a tract and explains it, in text and for machines: check, snapshots, source, join, the
// import's report, printed sheets.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "tests/command/demo_cases.hpp"
#include "tests/command/small_tract.hpp"

namespace oaklight::test {
namespace {

using Json = nlohmann::json;

class Keeping : public DemoCases {
 protected:
  static Json json(const std::string& words) {
    const Json told = Json::parse(oaklight(words + " --json").out, nullptr, false);
    EXPECT_FALSE(told.is_discarded()) << words;
    return told;
  }

  const std::string tract_ = copy_of_demo("hollow.gpkg");
};

TEST_F(Keeping, APacketThatWasTouchedIsToldFileByFile) {
  const std::string packet = in_folder("packet");
  ASSERT_EQ(oaklight("packet " + tract_ + " --for logger --out " + packet).exit_code, 0);
  write_bytes(folder_ / "packet" / "extra.txt", "mine");
  write_bytes(folder_ / "packet" / "logger.csv", bytes_of(folder_ / "packet/logger.csv") + "x");
  const Ran text = oaklight("check " + packet);
  EXPECT_EQ(text.exit_code, 1);
  for (const char* words : {"as handed over: logger.pdf\n", "not part of the packet: extra.txt\n",
                            "logger.csv: This file is not as it was handed over",
                            "The packet is not as it was handed over.\n"}) {
    EXPECT_TRUE(says(text.out, words));
  }
  const Json told = json("check " + packet);
  EXPECT_EQ(told.at("sound"), false);
  EXPECT_EQ(told.at("unlisted"), Json::array({"extra.txt"}));
  EXPECT_EQ(told.at("problems").size(), 1U);
}

TEST_F(Keeping, SnapshotsForMachines) {
  const Json taken = json("snapshots " + tract_ + " --take");
  EXPECT_EQ(taken.at("number"), 1);
  EXPECT_TRUE(std::filesystem::exists(taken.at("path").get<std::string>()));
  const Json listed = json("snapshots " + tract_);
  EXPECT_EQ(listed.at("snapshots"), Json::array({taken}));
  const std::string back = in_folder("back.gpkg");
  const Json made = json("snapshots " + tract_ + " --back 1 --to " + back);
  EXPECT_EQ(made.at("made"), back);
  EXPECT_EQ(made.at("from"), taken);
  EXPECT_EQ(json("estimate " + back), json("estimate " + tract_));
  // Nothing is taken back over a file that is there.
  const std::string before = bytes_of(back);
  const Ran again = oaklight("snapshots " + tract_ + " --back 1 --to " + back);
  EXPECT_EQ(again.exit_code, 3);
  EXPECT_TRUE(says(again.errors, "There is a file of that name already."));
  EXPECT_EQ(bytes_of(back), before);
  EXPECT_EQ(oaklight("snapshots " + tract_ + " --folder " + in_folder("none")).exit_code, 4);
}

TEST_F(Keeping, EveryKeyIsListedAndAnswered) {
  const Ran all = oaklight("source");
  const Json keys = json("source");
  for (const char* kind : {"figures", "rules"}) {
    for (const Json& key : keys.at(kind)) {
      EXPECT_TRUE(says(all.out, "\n" + key.get<std::string>() + " ")) << key;
    }
  }
  EXPECT_TRUE(says(all.out, "Rules, version "));
  // A figure that holds everywhere says nothing of a range.
  EXPECT_EQ(oaklight("source tree_list").out.find("Where it holds"), std::string::npos);
  EXPECT_TRUE(says(oaklight("source stocking").out, "Where it holds: "));
  EXPECT_EQ(json("source R1.87 --tract " + tract_).at("id"), "R1.87");
  write_bytes(folder_ / "no.gpkg", "no database");
  EXPECT_EQ(oaklight("source R1.87 --tract " + in_folder("no.gpkg")).exit_code, 3);
}

TEST_F(Keeping, AnImportTellsMachinesWhatItBrought) {
  const std::string tract = in_folder("new.gpkg");
  const Json told = json("import " + tract + " " + demo_plots().string());
  EXPECT_EQ(told.at("tract"), tract);
  // By hand: rows of demo_plots/stands.csv and plots.csv.
  EXPECT_EQ(told.at("stands"), 3);
  EXPECT_EQ(told.at("plots"), 36);
  std::filesystem::create_directory(folder_ / "empty");
  const Ran nothing = oaklight("import " + tract + " " + in_folder("empty"));
  EXPECT_EQ(nothing.exit_code, 3);
  EXPECT_TRUE(says(nothing.errors, "This folder holds none of the files of a cruise."));
  write_bytes(folder_ / "birds.csv", "bird\nwren\n");
  const Ran unknown = oaklight("import " + tract + " " + in_folder("birds.csv"));
  EXPECT_NE(unknown.exit_code, 0);
  EXPECT_TRUE(says(unknown.errors, "What this file holds cannot be told from its name."));
  const Ran twice = oaklight("import " + tract + " " + (demo_plots() / "acorns.csv").string() +
                             " " + (demo_plots() / "acorns.csv").string());
  EXPECT_NE(twice.exit_code, 0);
  EXPECT_TRUE(says(twice.errors, "This kind of file is named twice."));
  write_bytes(folder_ / "local_volume.csv",
              "species,dbh_in,log_rule,board_feet,cords,source\n"
              "any,10,doyle,30,0.1,the mill (invented)\nany,20,doyle,300,0.6,\n");
  const Ran volumes = oaklight("import " + tract + " " + in_folder("local_volume.csv"));
  EXPECT_EQ(volumes.exit_code, 0) << volumes.errors;
  EXPECT_TRUE(says(volumes.out, "Local volume table of 2 lines"));
}

TEST_F(Keeping, SheetsForMachinesAndWithoutATract) {
  const std::string pdf = in_folder("sheets.pdf");
  const Json told = json("sheet " + tract_ + " " + pdf);
  EXPECT_EQ(told.at("file"), pdf);
  EXPECT_TRUE(bytes_of(pdf).starts_with("%PDF"));
  EXPECT_EQ(oaklight("sheet " + tract_).exit_code, 2);
  EXPECT_EQ(oaklight("sheet --form " + in_folder("nobody.json") + " " + pdf).exit_code, 3);
  write_bytes(folder_ / "form.json", "{\"form\": 1}");
  const Ran form = oaklight("sheet --form " + in_folder("form.json") + " " + in_folder("f.pdf"));
  EXPECT_EQ(form.exit_code, 1) << form.errors;
  EXPECT_FALSE(std::filesystem::exists(folder_ / "f.pdf"));
  EXPECT_EQ(oaklight("sheet " + tract_ + " /nowhere/s.pdf").exit_code, 3);
}

}  // namespace
}  // namespace oaklight::test
