// Where a figure comes from, asked by its key.
#include <gmock/gmock.h>

#include <nlohmann/json.hpp>

#include "core/stand/sources.hpp"
#include "tests/command/program.hpp"

namespace oaklight::test {
namespace {

using Json = nlohmann::json;
using testing::HasSubstr;

TEST(Source, ToldOfEveryFigureAndEveryRuleThatIsListed) {
  const Ran all = oaklight("source --json");
  ASSERT_EQ(all.exit_code, 0) << all.errors;
  const Json keys = Json::parse(all.out);
  EXPECT_EQ(keys.at("figures").size(), source_notes().size());
  for (const Json& key : keys.at("figures")) {
    const Ran run = oaklight("source --json " + key.get<std::string>());
    ASSERT_EQ(run.exit_code, 0) << key << run.errors;
    const Json told = Json::parse(run.out);
    EXPECT_EQ(told.at("key"), key);
    EXPECT_FALSE(told.at("sources").empty()) << key;
    for (const Json& source : told.at("sources")) {
      EXPECT_FALSE(source.at("status").get<std::string>().empty()) << key;
    }
  }
  EXPECT_GT(keys.at("rules").size(), 100U);
  std::size_t seen = 0;
  for (const Json& id : keys.at("rules")) {
    if (seen++ % 20 != 0) continue;  // a process each: some will do
    const Ran run = oaklight("source --json " + id.get<std::string>());
    ASSERT_EQ(run.exit_code, 0) << id << run.errors;
    EXPECT_EQ(Json::parse(run.out).at("id"), id);
  }
}

TEST(Source, InWordsNamesTheWorkAndHowFarItIsKnown) {
  const Ran run = oaklight("source stocking");
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  EXPECT_THAT(run.out, HasSubstr("Gingrich 1967"));
  EXPECT_THAT(run.out, HasSubstr("[from memory]"));
  EXPECT_THAT(run.out, HasSubstr("Where it holds: Made for upland oak"));
}

TEST(Source, OfARuleIsThatOfTheTractWhereOneIsNamed) {
  const DemoTract demo;
  const Ran own = oaklight("source R3.60 --tract " + demo.tract);
  ASSERT_EQ(own.exit_code, 0) << own.errors;
  EXPECT_THAT(own.out, HasSubstr("R3.60"));
  EXPECT_THAT(own.out, HasSubstr("% of oak basal area; common practice"));
}

TEST(Source, OfAnUnknownKeySaysWhereTheKeysAre) {
  const Ran run = oaklight("source nothing_like_it");
  EXPECT_EQ(run.exit_code, 1);
  EXPECT_THAT(run.errors, HasSubstr("oaklight source"));
}

}  // namespace
}  // namespace oaklight::test
