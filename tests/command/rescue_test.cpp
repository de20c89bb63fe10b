// A damaged tract file at the desk: told, rescued, and worked on.
#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "tests/command/program.hpp"

namespace oaklight::test {
namespace {

using nlohmann::json;

/// Counts of records in use, as the check has them.
json records_of(const std::string& tract) {
  return json::parse(oaklight("check --json " + tract).out).at("records");
}

TEST(RescueCommand, BringsBackTheDemoTractWithoutItsFirstPage) {
  const DemoTract demo;
  const json before = records_of(demo.tract);
  std::string bytes = bytes_of(demo.tract);
  std::fill_n(bytes.begin(), 4096, '\x5a');
  const std::string damaged = (demo.folder / "damaged.gpkg").string();
  const std::string saved = (demo.folder / "saved.gpkg").string();
  write_bytes(damaged, bytes);

  const Ran check = oaklight("check " + damaged);
  EXPECT_EQ(check.exit_code, 3);
  const Ran rescue = oaklight("rescue " + damaged + " " + saved);
  EXPECT_EQ(rescue.exit_code, 0) << rescue.out << rescue.errors;
  EXPECT_NE(rescue.out.find("nothing was lost"), std::string::npos) << rescue.out;
  EXPECT_EQ(bytes_of(damaged), bytes);
  EXPECT_EQ(records_of(saved), before);
  const Ran packet = oaklight("packet " + saved + " --for logger --out " +
                              (demo.folder / "packet").string() + " --work-day 2026-12-07");
  EXPECT_EQ(packet.exit_code, 0) << packet.errors;
}

TEST(RescueCommand, NamesWhatIsLostAndEndsInOne) {
  const DemoTract demo;
  std::string bytes = bytes_of(demo.tract);
  // A quarter of the file in its middle: rows of several tables and of the history.
  std::fill_n(bytes.begin() + static_cast<std::ptrdiff_t>(bytes.size() / 2), bytes.size() / 4,
              '\0');
  const std::string damaged = (demo.folder / "damaged.gpkg").string();
  write_bytes(damaged, bytes);
  const Ran rescue = oaklight("rescue --json " + damaged + " " + (demo.folder / "a.gpkg").string());
  EXPECT_EQ(rescue.exit_code, 1) << rescue.out << rescue.errors;
  const json said = json::parse(rescue.out);
  ASSERT_FALSE(said.at("lost").empty());
  for (const json& lost : said.at("lost")) {
    EXPECT_FALSE(lost.at("where").get<std::string>().empty());
    EXPECT_FALSE(lost.at("what").get<std::string>().empty());
  }
  EXPECT_EQ(oaklight("check " + (demo.folder / "a.gpkg").string()).exit_code, 0);
  const Ran text = oaklight("rescue " + damaged + " " + (demo.folder / "b.gpkg").string());
  EXPECT_NE(text.out.find("LOST "), std::string::npos) << text.out;
}

TEST(RescueCommand, WritesOverNothing) {
  const DemoTract demo;
  const std::string before = bytes_of(demo.tract);
  EXPECT_EQ(oaklight("rescue " + demo.tract + " " + demo.tract).exit_code, 3);
  EXPECT_EQ(bytes_of(demo.tract), before);
}

}  // namespace
}  // namespace oaklight::test
