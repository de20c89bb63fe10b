// Whoever holds a packet can tell whether it is as it was handed over.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "tests/command/program.hpp"

namespace oaklight::test {
namespace {

using nlohmann::json;

class PacketCheck : public testing::Test {
 protected:
  PacketCheck() {
    const Ran made = oaklight("packet " + demo_.tract + " --for logger --out " + folder() +
                              " --work-day 2026-12-07");
    EXPECT_EQ(made.exit_code, 0) << made.errors;
  }
  [[nodiscard]] std::string folder() const { return (demo_.folder / "packet").string(); }
  [[nodiscard]] std::filesystem::path file(const std::string& name) const {
    return demo_.folder / "packet" / name;
  }
  json check(int exit_code) {
    const Ran run = oaklight("check --json " + folder());
    EXPECT_EQ(run.exit_code, exit_code) << run.out << run.errors;
    return json::parse(run.out);
  }

  DemoTract demo_;
};

TEST_F(PacketCheck, FindsNothingInOneThatNobodyTouched) {
  const json said = check(0);
  EXPECT_TRUE(said.at("sound"));
  EXPECT_GE(said.at("files").size(), 5U);
  EXPECT_TRUE(said.at("unlisted").empty());
  const Ran text = oaklight("check " + folder());
  EXPECT_NE(text.out.find("as it was handed over"), std::string::npos) << text.out;
}

// One tree more on the list, by whoever would cut it.
TEST_F(PacketCheck, NamesTheFileThatWasChangedAfterwards) {
  for (const char* name : {"logger.csv", "logger.xlsx", "logger.geojson", "logger.gpx"}) {
    const std::string bytes = bytes_of(file(name));
    write_bytes(file(name), bytes + " ");
    const json said = check(1);
    ASSERT_EQ(said.at("problems").size(), 1U) << name;
    EXPECT_EQ(said.at("problems")[0].at("where"), file(name).string());
    std::string other = bytes;
    other[other.size() / 2] = static_cast<char>(other[other.size() / 2] ^ 1);
    write_bytes(file(name), other);
    EXPECT_EQ(check(1).at("problems").size(), 1U) << name << ", one bit";
    write_bytes(file(name), bytes);
  }
  check(0);
}

TEST_F(PacketCheck, NamesWhatIsMissingAndWhatIsNoPartOfIt) {
  std::filesystem::remove(file("logger.csv"));
  write_bytes(file("more_trees.csv"), "tag\n999\n");
  const json said = check(1);
  EXPECT_EQ(said.at("problems")[0].at("where"), file("logger.csv").string());
  EXPECT_EQ(said.at("unlisted"), json::array({"more_trees.csv"}));
}

TEST_F(PacketCheck, RefusesAManifestThatIsNone) {
  const std::string good = bytes_of(file("logger.manifest.json"));
  const std::string outside =
      json{{"manifest_for", "packet"}, {"files", {{{"name", "../hollow.gpkg"}, {"bytes", 1}}}}}
          .dump();
  for (const std::string& bad : {std::string("{"), std::string("[]"), std::string("{}"), outside,
                                 std::string(R"({"manifest_for":"packet","files":[7]})")}) {
    write_bytes(file("logger.manifest.json"), bad);
    EXPECT_EQ(check(1).at("problems").size(), 1U) << bad;
  }
  write_bytes(file("logger.manifest.json"), good);
  std::filesystem::remove(file("logger.manifest.json"));
  EXPECT_EQ(oaklight("check " + folder()).exit_code, 4) << "no manifest, nothing to check against";
}

}  // namespace
}  // namespace oaklight::test
