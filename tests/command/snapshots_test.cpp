#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "tests/command/program.hpp"

namespace oaklight::test {
namespace {

using nlohmann::json;

TEST(SnapshotsCommand, KeepsListsAndTakesBack) {
  const DemoTract demo;
  EXPECT_EQ(oaklight("snapshots " + demo.tract).exit_code, 4) << "there is none yet";
  const json before = json::parse(oaklight("check --json " + demo.tract).out).at("records");
  const Ran kept = oaklight("snapshots --take " + demo.tract);
  ASSERT_EQ(kept.exit_code, 0) << kept.errors;
  const json list = json::parse(oaklight("snapshots --json " + demo.tract).out);
  ASSERT_EQ(list.at("snapshots").size(), 1U);
  EXPECT_EQ(list.at("snapshots")[0].at("number"), 1);
  std::filesystem::remove(demo.tract);  // lost with the tablet's disk, but for the copies
  const std::string back = (demo.folder / "back.gpkg").string();
  const Ran taken = oaklight("snapshots " + demo.tract + " --back 1 --to " + back);
  ASSERT_EQ(taken.exit_code, 0) << taken.errors;
  EXPECT_EQ(json::parse(oaklight("check --json " + back).out).at("records"), before);
  EXPECT_EQ(oaklight("snapshots " + demo.tract + " --back 1 --to " + back).exit_code, 3)
      << "never over a file that is there";
  EXPECT_EQ(oaklight("snapshots " + demo.tract + " --back 2 --to x.gpkg").exit_code, 4);
  EXPECT_EQ(oaklight("snapshots " + demo.tract + " --back 1").exit_code, 2);
}

TEST(SnapshotsCommand, KeepsThemOnAnotherDisk) {
  const DemoTract demo;
  const std::string card = (demo.folder / "card").string();
  ASSERT_EQ(oaklight("snapshots --take " + demo.tract + " --folder " + card).exit_code, 0);
  EXPECT_EQ(oaklight("snapshots " + demo.tract).exit_code, 4);
  EXPECT_EQ(oaklight("snapshots " + demo.tract + " --folder " + card).exit_code, 0);
}

}  // namespace
}  // namespace oaklight::test
