#include "core/release/rules.hpp"

#include <cassert>
#include <cmath>
#include <nlohmann/json.hpp>

#include "core/base/embedded.hpp"
#include "core/base/json_limits.hpp"
#include "core/base/sha256.hpp"

namespace oaklight {
namespace {

using Json = nlohmann::json;

/// Digits of the checksum in a version: enough to tell any two edits apart, short enough to print.
constexpr std::size_t kVersionDigits = 8;

Error fault(ErrorCode code, std::string what, std::string where, std::string fix) {
  return {code, std::move(what), std::move(where), std::move(fix)};
}

/// The text of a member, or "" when it is missing or something else.
std::string text_of(const Json& object, const char* name) {
  const auto it = object.find(name);
  return it != object.end() && it->is_string() ? it->get<std::string>() : std::string();
}

Status read_value(const Json& value, Rule& rule, const std::string& where) {
  for (const Json& item : value) {
    if (item.is_number() && std::isfinite(item.get<double>())) {
      rule.numbers.push_back(item.get<double>());
    } else if (item.is_string()) {
      rule.words.push_back(item.get<std::string>());
    }
  }
  const bool numbers_only = rule.numbers.size() == value.size();
  const bool words_only = rule.words.size() == value.size();
  if (value.empty() || (!numbers_only && !words_only)) {
    return fault(ErrorCode::not_a_choice, "The value mixes numbers with something else.", where,
                 "Give a list of numbers, or a list of words.");
  }
  return Done{};
}

Result<Rule> read_rule(const Json& row, const std::string& file, std::size_t place) {
  if (!row.is_object()) {
    return fault(ErrorCode::bad_json, "A rule is not an object.",
                 file + ":rules/" + std::to_string(place), "Write it as { \"id\": ... }.");
  }
  Rule rule;
  rule.id = text_of(row, "id");
  const std::string where =
      file + ":" + (rule.id.empty() ? "rules/" + std::to_string(place) : rule.id);
  rule.text = text_of(row, "rule");
  rule.unit = text_of(row, "unit");
  rule.source = text_of(row, "source");
  for (const std::string* part : {&rule.id, &rule.text, &rule.unit, &rule.source}) {
    if (part->empty()) {
      return fault(ErrorCode::missing_value, "A rule lacks its id, rule, unit or source.", where,
                   "Fill in all four; a rule without a source is not one to cut by.");
    }
  }
  const auto evidence = from_word<Evidence>(text_of(row, "status"));
  if (!evidence) {
    return fault(ErrorCode::not_a_choice, "The status is not one we know.", where + "/status",
                 "Write retrieved, from memory or common practice.");
  }
  rule.evidence = *evidence;
  const auto editable = row.find("editable");
  rule.editable = editable != row.end() && editable->is_boolean() && editable->get<bool>();
  const auto value = row.find("value");
  if (value == row.end() || !value->is_array()) {
    return fault(ErrorCode::missing_value, "A rule has no list of values.", where + "/value",
                 "Write \"value\": [ ... ].");
  }
  if (const auto read = read_value(*value, rule, where + "/value"); !read) return read.error();
  return rule;
}

}  // namespace

Result<RuleBook> RuleBook::from_json(std::string_view text, std::string_view file) {
  const std::string name(file);
  if (auto beyond = json_beyond_limits(text, file)) return *std::move(beyond);
  const Json root = Json::parse(text, nullptr, false);
  if (root.is_discarded() || !root.is_object() || !root.contains("rules") ||
      !root["rules"].is_array()) {
    return fault(ErrorCode::bad_json, "This is not a rule file.", name,
                 "It must be JSON with a version and a list of rules.");
  }
  RuleBook book;
  book.version_ = text_of(root, "version");
  if (book.version_.empty()) {
    return fault(ErrorCode::missing_value, "The rule file has no version.", name + ":version",
                 "Write one, e.g. \"2026.1\".");
  }
  book.version_ += "-" + sha256_hex(text).substr(0, kVersionDigits);
  constexpr std::size_t kMostRules = 2'000;
  if (root["rules"].size() > kMostRules) {
    return fault(ErrorCode::bad_json, "The file has more than 2,000 rules.", name,
                 "Start again from the rules that came with the program.");
  }
  for (const Json& row : root["rules"]) {
    auto rule = read_rule(row, name, book.rules_.size());
    if (!rule) return rule.error();
    if (book.find(rule->id) != nullptr) {
      return fault(ErrorCode::duplicate, "Two rules have the id " + rule->id + ".",
                   name + ":" + rule->id, "Keep one of them.");
    }
    book.rules_.push_back(std::move(*rule));
  }
  return book;
}

Result<RuleBook> RuleBook::shipped() {
  for (const EmbeddedFile& file : embedded_forms()) {
    if (file.path == "release.rule.json") return from_json(file.text, file.path);
  }
  assert(false && "the program was built without its rules");
  return fault(ErrorCode::missing_value, "The program holds no rules.", "release.rule.json",
               "Build it again.");
}

void RuleBook::add_missing(const RuleBook& newer) {
  std::size_t added = 0;
  for (const Rule& rule : newer.rules_) {
    if (find(rule.id) != nullptr) continue;
    rules_.push_back(rule);
    ++added;
  }
  if (added > 0) version_ += "+" + std::to_string(added) + " of " + newer.version_;
}

const Rule* RuleBook::find(std::string_view id) const {
  for (const Rule& rule : rules_) {
    if (rule.id == id) return &rule;
  }
  return nullptr;
}

}  // namespace oaklight
