// A tract file keeps the rules of the day on which it was made; the program has learned more since.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "core/session/tract_session.hpp"
#include "tests/support/temp_dir.hpp"

namespace oaklight::test {
namespace {

TEST(OlderRules, ATractFileThatLacksNewRulesStillOpens) {
  const TempDir folder;
  SystemClock clock;
  const StoreContext context{clock, system_random(), "me"};
  const auto path = folder / "woods.gpkg";
  std::string whole_version;
  {
    auto session = TractSession::create(path, context);
    ASSERT_TRUE(session) << to_text(session.error());
    whole_version = session->knowledge().release.rules.version();
    auto rules = nlohmann::json::parse(*session->store().form_text("release.rule.json"));
    ASSERT_GT(rules["rules"].size(), 3U);
    rules["rules"].erase(0);
    rules["rules"].erase(0);
    const auto set = session->store().set_form_text("release.rule.json", rules.dump());
    ASSERT_TRUE(set) << to_text(set.error());
  }
  const auto opened = TractSession::open(path, OpenMode::read_write, context);
  ASSERT_TRUE(opened) << to_text(opened.error());
  const std::string& version = opened->knowledge().release.rules.version();
  EXPECT_NE(version, whole_version);
  EXPECT_NE(version.find("+2 of " + whole_version), std::string::npos) << version;
}

}  // namespace
}  // namespace oaklight::test
