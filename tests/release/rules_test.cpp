#include "core/release/rules.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>
#include <sstream>

#include "core/measure/product.hpp"
#include "core/release/plan.hpp"
#include "core/release/right_job.hpp"
#include "core/release/settings.hpp"
#include "core/release/traits.hpp"
#include "tests/support/places.hpp"
#include "tests/support/trees.hpp"

namespace oaklight {
namespace {

namespace fs = std::filesystem;

std::string text_of(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  std::stringstream text;
  text << in.rdbuf();
  return text.str();
}

std::string shipped() { return text_of(test::source_path("forms/release.rule.json")); }

RuleBook book_of(const std::string& text) {
  auto book = RuleBook::from_json(text, "release.rule.json");
  EXPECT_TRUE(book) << to_text(book.error());
  return *book;
}

/// The shipped rules with one of them changed by `change`.
template <class Change>
std::string changed(const std::string& id, Change change) {
  auto json = nlohmann::json::parse(shipped());
  for (auto& rule : json["rules"]) {
    if (rule["id"] == id) change(rule);
  }
  return json.dump();
}

std::string without(const std::string& id) {
  auto json = nlohmann::json::parse(shipped());
  auto& rules = json["rules"];
  for (auto it = rules.begin(); it != rules.end(); ++it) {
    if ((*it)["id"] == id) {
      rules.erase(it);
      break;
    }
  }
  return json.dump();
}

ErrorCode fault_of(const std::string& text) {
  const auto book = RuleBook::from_json(text, "release.rule.json");
  if (!book) return book.error().code;
  const auto settings = ReleaseSettings::from(*book);
  EXPECT_FALSE(settings) << "no fault found";
  return settings.error().code;
}

/// Ids in string literals of core/release, as they are cited and read.
std::set<std::string> ids_in_code() {
  std::set<std::string> ids;
  static const std::regex kId("\"([RX][0-9]\\.[0-9][0-9])\"");
  for (const auto& entry : fs::directory_iterator(test::source_path("core/release"))) {
    const std::string name = entry.path().filename().string();
    if (name.find("caution") != std::string::npos || name.find("season") != std::string::npos) {
      continue;
    }
    const std::string text = text_of(entry.path());
    for (auto it = std::sregex_iterator(text.begin(), text.end(), kId);
         it != std::sregex_iterator(); ++it) {
      ids.insert((*it)[1]);
    }
  }
  return ids;
}

TEST(Rules, EveryRuleThatTheCodeNamesIsInTheFile) {
  const RuleBook book = book_of(shipped());
  const std::set<std::string> ids = ids_in_code();
  EXPECT_GT(ids.size(), 80U);
  for (const std::string& id : ids) EXPECT_NE(book.find(id), nullptr) << id;
}

TEST(Rules, EveryRuleInTheFileIsUsed) {
  const std::set<std::string> ids = ids_in_code();
  const RuleBook shipped_book = book_of(shipped());
  for (const Rule& rule : shipped_book.rules()) EXPECT_TRUE(ids.count(rule.id)) << rule.id;
}

TEST(Rules, ARuleThatIsReadAndMissingIsNamed) {
  const RuleBook shipped_book = book_of(shipped());
  for (const Rule& rule : shipped_book.rules()) {
    const auto book = RuleBook::from_json(without(rule.id), "release.rule.json");
    ASSERT_TRUE(book);
    const auto settings = ReleaseSettings::from(*book);
    EXPECT_EQ(settings.has_value(), !rule.editable)
        << rule.id << ": editable must say whether the program reads the value";
    if (!settings) {
      EXPECT_EQ(settings.error().code, ErrorCode::missing_rule);
      EXPECT_EQ(settings.error().where, "rules/" + rule.id);
    }
  }
}

TEST(Rules, TooFewNumbersAreAMissingRule) {
  const auto text = changed("R3.41", [](nlohmann::json& rule) { rule["value"] = {18}; });
  const auto settings = ReleaseSettings::from(book_of(text));
  ASSERT_FALSE(settings);
  EXPECT_EQ(settings.error().code, ErrorCode::missing_rule);
  EXPECT_EQ(settings.error().where, "rules/R3.41");
}

TEST(Rules, AbsurdValuesAndUnknownWordsAreRefused) {
  EXPECT_EQ(fault_of(changed("R4.01", [](auto& rule) { rule["value"] = {-60}; })),
            ErrorCode::out_of_range);
  EXPECT_EQ(fault_of(changed("R4.01", [](auto& rule) { rule["value"] = {1e9}; })),
            ErrorCode::out_of_range);
  EXPECT_EQ(fault_of(changed("R1.61", [](auto& rule) { rule["value"] = {2.5}; })),
            ErrorCode::out_of_range);
  EXPECT_EQ(fault_of(changed("R1.02", [](auto& rule) { rule["value"] = {"tall"}; })),
            ErrorCode::not_a_choice);
}

TEST(Rules, ABrokenFileIsRefusedWithThePlace) {
  EXPECT_EQ(fault_of("{"), ErrorCode::bad_json);
  EXPECT_EQ(fault_of("[]"), ErrorCode::bad_json);
  EXPECT_EQ(fault_of(R"({"version":"1","rules":[7]})"), ErrorCode::bad_json);
  EXPECT_EQ(fault_of(R"({"rules":[]})"), ErrorCode::missing_value);
  EXPECT_EQ(fault_of(changed("R4.01", [](auto& rule) { rule.erase("source"); })),
            ErrorCode::missing_value);
  EXPECT_EQ(fault_of(changed("R4.01", [](auto& rule) { rule["status"] = "certain"; })),
            ErrorCode::not_a_choice);
  EXPECT_EQ(fault_of(changed("R4.01",
                             [](auto& rule) {
                               rule["value"] = {60, "about"};
                             })),
            ErrorCode::not_a_choice);
  EXPECT_EQ(fault_of(changed("R4.01", [](auto& rule) { rule["id"] = "R4.03"; })),
            ErrorCode::duplicate);
  const auto book = RuleBook::from_json(changed("R4.01", [](auto& rule) { rule.erase("value"); }),
                                        "release.rule.json");
  ASSERT_FALSE(book);
  EXPECT_EQ(book.error().where, "release.rule.json:R4.01/value");
}

TEST(Rules, AValueIsAListOfNumbersOrOneOfWords) {
  using nlohmann::json;
  const auto code = [](const json& value) {
    const auto book = RuleBook::from_json(
        changed("R4.01", [&](auto& rule) { rule["value"] = value; }), "release.rule.json");
    return book ? ErrorCode{} : book.error().code;
  };
  for (const json& value : {json::array(), json{60, "x"}, json{true}, json{60, nullptr}}) {
    EXPECT_EQ(code(value), ErrorCode::not_a_choice) << value;
  }
  EXPECT_EQ(code(json{{"least", 60}}), ErrorCode::missing_value);
  EXPECT_EQ(code(60), ErrorCode::missing_value);
  const auto unsaid = changed("R4.01", [](auto& rule) { rule["editable"] = "yes"; });
  EXPECT_FALSE(book_of(unsaid).find("R4.01")->editable) << "only true says so";
}

TEST(Rules, MoreThanAnybodyHasUseForAreRefused) {
  auto json = nlohmann::json::parse(shipped());
  while (json["rules"].size() <= 2'000) json["rules"].push_back(json["rules"][0]);
  const auto book = RuleBook::from_json(json.dump(), "release.rule.json");
  ASSERT_FALSE(book);
  EXPECT_EQ(book.error().what, "The file has more than 2,000 rules.");
}

TEST(Rules, OfTheLeastBasalAreaMakeAStandWait) {
  ReleaseInput input =
      test::input_of(test::cards("crop O WO 14 co\nO a N 16 touches RM 8 co"), 1.0);
  EXPECT_EQ(is_release_right_job(input.stand, input.knowledge.settings).treatment,
            Treatment::release);
  // By hand: the stand of the tests' cards holds 110 ft2 an acre.
  const auto strict = test::knowledge_with({{"R4.09", {110}}});
  const Advice advice = is_release_right_job(input.stand, strict.settings);
  EXPECT_EQ(advice.treatment, Treatment::wait);
  EXPECT_EQ(advice.text,
            "Release is refused: the stand holds 110 ft2/ac of basal area, and 110 is the least to "
            "keep. Come back when it has grown.");
  EXPECT_THAT(advice.rules, testing::ElementsAre("R4.09"));
}

TEST(Rules, AnEditedFileHasAnotherVersion) {
  const RuleBook before = book_of(shipped());
  const RuleBook after =
      book_of(changed("R4.01", [](nlohmann::json& rule) { rule["value"] = {61}; }));
  EXPECT_NE(before.version(), after.version());
  EXPECT_EQ(before.version(), book_of(shipped()).version());
  EXPECT_EQ(before.version().substr(0, 7), "2026.1-");
}

TEST(Rules, WhatIsRetrievedNamesItsSource) {
  const RuleBook shipped_book = book_of(shipped());
  for (const Rule& rule : shipped_book.rules()) {
    if (rule.evidence != Evidence::retrieved) continue;
    EXPECT_EQ(rule.source.find("from memory"), std::string::npos) << rule.id;
    EXPECT_GT(rule.source.size(), 10U) << rule.id;
  }
}

TEST(Rules, ChangingANumberChangesTheAnswer) {
  const auto text = R"(
    crop O WO 14 co
    O a N 16 touches RM 10 co
    O b E 16 touches PH 10 co
    O den S 16 touches BW 12 co den)";
  ReleaseInput input = test::input_of(test::cards(text), 1.0);
  // North is freed, east only if the hickory goes, south never: the hickory is needed for three.
  EXPECT_THAT(test::cut_tags(recommend(input)), testing::UnorderedElementsAre("a", "b"));
  input.knowledge = test::knowledge_with({{"R1.61", {2}}});
  const ReleasePlan lighter = recommend(input);
  EXPECT_THAT(test::cut_tags(lighter), testing::ElementsAre("a"));
  EXPECT_NE(lighter.rule_version, test::shipped_knowledge().rules.version());
}

Product product_by(const ReleaseKnowledge& know, const char* tree) {
  const TreeFacts facts = test::trees(tree).front().facts;
  return product_of(*know.species.find(facts.species), facts.dbh, facts.half_logs, facts.conditions,
                    know.settings.product)
      .product;
}

TEST(Rules, OfProductsChangeTheProduct) {
  const ReleaseKnowledge& shipped_rules = test::shipped_knowledge();
  EXPECT_EQ(product_by(shipped_rules, "RM 5.5 co"), Product::pulpwood);
  EXPECT_EQ(product_by(test::knowledge_with({{"R7.27", {5}}}), "RM 5.5 co"), Product::firewood);
  EXPECT_EQ(product_by(test::knowledge_with({{"R7.22", {6}}}), "RM 5.5 co"), Product::none);
  EXPECT_EQ(product_by(shipped_rules, "BX 7 co"), Product::pulpwood);  // a boxelder
  EXPECT_EQ(product_by(test::knowledge_with({{"X7.05", {316}}}), "BX 7 co"), Product::firewood);
}

TEST(Rules, OfTheStockingGuardsSayWhichTreesCount) {
  const char* text = "crop O WO 14 co\nO a N 16 touches RM 4.5 int";
  ReleaseInput input = test::input_of(test::cards(text), 1.0);
  const auto counted = [&] {
    int n = 0;
    for (const Traits& t : traits_of(input)) n += t.counted ? 1 : 0;
    return n;
  };
  EXPECT_EQ(input.knowledge.settings.guards.counted_from, Inches{5.0});
  EXPECT_EQ(counted(), 2);  // an intermediate crown is in the main canopy
  input = test::input_of(test::cards("crop O WO 14 co\nO a N 16 touches RM 4.5 over"), 1.0);
  EXPECT_EQ(counted(), 1);
  input.knowledge = test::knowledge_with({{"R2.27", {4}}});
  EXPECT_EQ(counted(), 2);
}

/// An oak of a stump with two more sound stems, all of wide, low joints.
constexpr const char* kThreeStems = R"(
  crop A RO 9 co clump u_fork
  A b E 2 touches RO 8 co clump u_fork
  A c W 2 touches RO 7 co clump u_fork)";

TEST(Rules, OfSproutsSayHowManyStemsAStumpKeeps) {
  ReleaseInput input = test::input_of(test::cards(kThreeStems), 1.0);
  const ReleasePlan plan = recommend(input);
  EXPECT_THAT(test::cut_tags(plan), testing::ElementsAre("c"));  // the thinnest of three (R6.59)
  EXPECT_THAT(test::verdict_on(plan, "c").rules, testing::IsSupersetOf({"R6.58", "R6.59"}));
  input.knowledge = test::knowledge_with({{"R6.58", {1, 1}}});
  EXPECT_THAT(test::cut_tags(recommend(input)), testing::UnorderedElementsAre("b", "c"));
  input.knowledge = test::knowledge_with({{"R6.58", {1, 3}}});
  EXPECT_THAT(test::cut_tags(recommend(input)), testing::IsEmpty());
}

TEST(Rules, OfSproutsLeaveThickStemsWithoutAWideJointAlone) {
  const char* text = R"(
    crop A RO 9 co clump
    A b E 2 touches RO 8 co clump
    A c W 2 touches RO 7 co clump)";
  ReleaseInput input = test::input_of(test::cards(text), 1.0);
  EXPECT_THAT(test::cut_tags(recommend(input)), testing::IsEmpty());
  input.knowledge = test::knowledge_with({{"R6.61", {10}}});
  EXPECT_THAT(test::cut_tags(recommend(input)), testing::ElementsAre("c"));
}

std::string step_text(const ReleasePlan& plan, const std::string& step) {
  for (const StepLog& log : plan.steps) {
    if (log.step == step) return log.lines.front();
  }
  return {};
}

TEST(Rules, OfWhatToWatchAreToldOfTheReleasedTree) {
  const char* maple = "crop M SM 10 co\nM a S 16 touches RM 10 co";
  ReleaseInput input = test::input_of(test::cards(maple), 1.0, Goal::timber);
  EXPECT_THAT(step_text(recommend(input), "watch"), testing::HasSubstr("R4.25"));
  const char* oak = "crop O WO 12 co lc=32\nO a N 16 touches RM 10 co";
  input = test::input_of(test::cards(oak), 1.0, Goal::timber);
  EXPECT_THAT(step_text(recommend(input), "watch"), testing::HasSubstr("R4.24"));
  input.knowledge = test::knowledge_with({{"R4.24", {31}}});
  EXPECT_EQ(step_text(recommend(input), "watch"), "");
  // Derived: 60 ft are 720 in, which is 80 times 9 in and no more; 61 ft are 81 times.
  const char* slender = "crop O WO 9 co ht=61\nO a N 16 touches RM 8 co";
  input = test::input_of(test::cards(slender), 1.0);
  EXPECT_THAT(step_text(recommend(input), "watch"), testing::HasSubstr("R4.27"));
  const char* stout = "crop O WO 9 co ht=60\nO a N 16 touches RM 8 co";
  input = test::input_of(test::cards(stout), 1.0);
  EXPECT_EQ(step_text(recommend(input), "watch"), "");
  input.knowledge = test::knowledge_with({{"R4.27", {79}}});
  EXPECT_THAT(step_text(recommend(input), "watch"), testing::HasSubstr("R4.27"));
}

TEST(Rules, OfOakSpeciesAreToldWhereTooFewAreReleased) {
  const char* text = R"(
    crop A WO 14 co
    crop B RO 12 co
    A a N 16 touches RM 10 co
    B b N 16 touches RM 10 co)";
  ReleaseInput input = test::input_of(test::cards(text), 1.0);
  EXPECT_THAT(test::released_tags(recommend(input)), testing::ElementsAre("A", "B"));
  EXPECT_EQ(step_text(recommend(input), "variety"), "");
  input.knowledge = test::knowledge_with({{"R1.32", {1, 1}}});  // one crop tree an acre
  EXPECT_THAT(step_text(recommend(input), "variety"), testing::HasSubstr("Only 1 of 2"));
  input.knowledge = test::knowledge_with({{"R1.32", {1, 1}}, {"R3.61", {1}}});
  EXPECT_EQ(step_text(recommend(input), "variety"), "");
}

}  // namespace
}  // namespace oaklight
