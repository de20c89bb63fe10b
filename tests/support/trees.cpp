#include "tests/support/trees.hpp"

#include <gtest/gtest.h>

#include <map>
#include <nlohmann/json.hpp>
#include <sstream>
#include <stdexcept>

#include "core/base/embedded.hpp"
#include "core/base/number_text.hpp"
#include "core/forms/read_species.hpp"
#include "core/measure/basal_area.hpp"
#include "core/stand/stand_stocking.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/test_ids.hpp"

namespace oaklight::test {
namespace {

using Words = std::vector<std::string>;

[[noreturn]] void misread(const std::string& what) {
  throw std::invalid_argument("short text: " + what);
}

Words words_of(std::string_view text) {
  std::istringstream in{std::string(text)};
  Words words;
  for (std::string word; in >> word;) words.push_back(word);
  return words;
}

SpeciesCode species_of(const std::string& letters) {
  static const std::map<std::string, int> kCodes = {
      {"WO", 802}, {"SWO", 804}, {"BUO", 823}, {"CHO", 832}, {"PO", 835}, {"RO", 833}, {"BO", 837},
      {"SO", 806}, {"NPO", 809}, {"RM", 316},  {"SM", 318},  {"AB", 531}, {"YP", 621}, {"BW", 951},
      {"AS", 746}, {"GA", 544},  {"WA", 541},  {"EL", 972},  {"IW", 701}, {"SH", 407}, {"PH", 403},
      {"BC", 762}, {"HE", 261},  {"BG", 693},  {"TOH", 341}, {"WP", 129}, {"BX", 313}};
  const auto it = kCodes.find(letters);
  if (it == kCodes.end()) misread("no species " + letters);
  return {it->second};
}

double number(const std::string& text) {
  const auto value = number_from_text(text);
  if (!value) misread("no number " + text);
  return *value;
}

/// The value of "lc=45" when the word begins with "lc=".
std::optional<double> valued(const std::string& word, std::string_view name) {
  if (!word.starts_with(name)) return std::nullopt;
  return number(word.substr(name.size()));
}

std::optional<CrownClass> crown_class_of(const std::string& word) {
  static const std::map<std::string, CrownClass> kClasses = {{"open", CrownClass::open_grown},
                                                             {"dom", CrownClass::dominant},
                                                             {"co", CrownClass::codominant},
                                                             {"int", CrownClass::intermediate},
                                                             {"over", CrownClass::overtopped}};
  const auto it = kClasses.find(word);
  return it == kClasses.end() ? std::nullopt : std::optional(it->second);
}

bool read_fact(const std::string& word, TreeFacts& facts) {
  if (const auto crown = crown_class_of(word)) {
    facts.crown_class = crown;
  } else if (word == "dead") {
    facts.status = TreeStatus::dead;
  } else if (const auto live_crown = valued(word, "lc=")) {
    facts.live_crown = Percent{*live_crown};
  } else if (const auto dieback = valued(word, "db=")) {
    facts.dieback = Percent{*dieback};
  } else if (const auto height = valued(word, "ht=")) {
    facts.height = tape_ft(*height);
  } else if (const auto logs = valued(word, "logs=")) {
    facts.half_logs = static_cast<int>(*logs * 2.0);
  } else if (const auto condition = from_word<Condition>(word)) {
    facts.conditions.add(*condition);
  } else {
    return false;
  }
  return true;
}

ShortTree tree_of(const Words& words, std::size_t from) {
  if (words.size() < from + 2) misread("a tree has a species and a DBH");
  ShortTree tree{{species_of(words[from]), dbh_in(number(words[from + 1]))}, {}};
  for (std::size_t i = from + 2; i < words.size(); ++i) {
    if (!read_fact(words[i], tree.facts)) tree.words.push_back(words[i]);
  }
  return tree;
}

Sides sides_of(std::string_view letters) {
  Sides sides;
  for (const char letter : letters) {
    if (letter == '|') continue;
    const auto side = from_word<Side>(std::string_view(&letter, 1));
    if (!side) misread("no side " + std::string(letters));
    sides.add(*side);
  }
  return sides;
}

/// Reads cards line by line.
class CardReader {
 public:
  explicit CardReader(ShortCards& cards) : cards_(cards) { cards_.stand = nth_id<StandId>(1); }

  void read(const Words& words) {
    if (words.size() < 4) misread("a line has at least four words");
    if (words[0] == "crop") {
      read_crop(words);
    } else {
      read_contact(words);
    }
  }

 private:
  std::size_t place(const std::string& tag) const {
    for (std::size_t i = 0; i < cards_.trees.size(); ++i) {
      if (cards_.trees[i].tag == tag) return i;
    }
    return cards_.trees.size();
  }

  void add(const std::string& tag, const TreeFacts& facts, bool crop, Sides looked) {
    const auto id = nth_id<WalkTreeId>(static_cast<std::uint32_t>(cards_.trees.size() + 1));
    cards_.trees.push_back({id, cards_.stand, tag, facts, crop, looked, {}, {}});
  }

  void read_crop(const Words& words) {
    const ShortTree tree = tree_of(words, 2);
    Sides looked = Sides::all();
    for (const std::string& word : tree.words) {
      if (!word.starts_with("look=")) misread("no fact " + word);
      looked = sides_of(word.substr(5));
    }
    add(words[1], tree.facts, true, looked);
  }

  void read_contact(const Words& words) {
    const std::size_t crop = place(words[0]);
    if (crop == cards_.trees.size()) misread("no crop tree " + words[0]);
    Contact contact;
    contact.id = nth_id<ContactId>(static_cast<std::uint32_t>(cards_.contacts.size() + 1));
    contact.crop = cards_.trees[crop].id;
    if (words[2].starts_with("az=")) {
      contact.azimuth = Degrees{number(words[2].substr(3))};
    } else {
      contact.sides = sides_of(words[2]);
    }
    if (words[3] != "-") contact.distance = tape_ft(number(words[3]));
    const auto seen = words.size() > 4 ? from_word<Seen>(words[4]) : std::nullopt;
    if (!seen) misread("how the crown of " + words[1] + " was seen");
    contact.seen = *seen;
    const std::size_t neighbour = place(words[1]);
    if (neighbour == cards_.trees.size()) add(words[1], tree_of(words, 5).facts, false, {});
    contact.neighbour = cards_.trees[neighbour].id;
    cards_.contacts.push_back(contact);
  }

  ShortCards& cards_;
};

std::string form_text(std::string_view path) {
  for (const EmbeddedFile& file : embedded_forms()) {
    if (file.path == path) return std::string(file.text);
  }
  throw std::runtime_error("no form " + std::string(path));
}

ReleaseKnowledge knowledge_from(const std::string& rules) {
  const SpeciesRead species = read_species({"species.csv", form_text("species/species.csv")});
  if (!species.faults.empty()) throw std::runtime_error(to_text(species.faults.front()));
  auto knowledge = release_knowledge(species.table, rules, form_text("species/mast_rank.csv"));
  if (!knowledge) throw std::runtime_error(to_text(knowledge.error()));
  return *knowledge;
}

}  // namespace

std::vector<ShortTree> trees(std::string_view text) {
  std::vector<ShortTree> list;
  while (!text.empty()) {
    const std::size_t comma = std::min(text.find(','), text.size());
    list.push_back(tree_of(words_of(text.substr(0, comma)), 0));
    text.remove_prefix(std::min(comma + 1, text.size()));
  }
  return list;
}

ShortCards cards(std::string_view lines) {
  ShortCards result;
  CardReader reader(result);
  std::istringstream in{std::string(lines)};
  for (std::string line; std::getline(in, line);) {
    const Words words = words_of(line);
    if (!words.empty()) reader.read(words);
  }
  return result;
}

const ReleaseKnowledge& shipped_knowledge() {
  static const ReleaseKnowledge kKnowledge = knowledge_from(form_text("release.rule.json"));
  return kKnowledge;
}

ReleaseKnowledge knowledge_with(
    const std::vector<std::pair<std::string, std::vector<double>>>& changes) {
  auto rules = nlohmann::json::parse(form_text("release.rule.json"));
  for (const auto& [id, value] : changes) {
    bool found = false;
    for (auto& rule : rules["rules"]) {
      if (rule["id"] != id) continue;
      rule["value"] = value;
      found = true;
    }
    if (!found) misread("no rule " + id);
  }
  return knowledge_from(rules.dump());
}

StandDensity density_of(const std::vector<TreeFacts>& list, double each) {
  StandDensity d;
  d.plots = 1;
  for (const TreeFacts& facts : list) {
    if (facts.status == TreeStatus::dead) continue;
    const Species* species = shipped_knowledge().species.find(facts.species);
    const SquareFeetPerAcre ba{each * basal_area(facts.dbh.inches()).value};
    d.live.add(facts.dbh.inches(), TreesPerAcre{each});
    if (counts_for_guard(facts, shipped_knowledge().settings.guards.counted_from))
      d.guard.add(facts.dbh.inches(), TreesPerAcre{each});
    d.ba += ba;
    if (species->is_oak()) d.ba_oak += ba;
    if (species->oak_group == OakGroup::white) d.ba_white_oak += ba;
    if (species->oak_group == OakGroup::red) d.ba_red_oak += ba;
  }
  return d;
}

StandDensity full_stand() {
  StandDensity d;
  d.plots = 10;
  // 180 trees with a mean DBH of 10 in and a mean square that makes 110 ft2/ac.
  const double squares = 110.0 / kBasalAreaFactor;
  d.live = {180.0, 1800.0, squares};
  d.guard = d.live;
  d.ba = SquareFeetPerAcre{110.0};
  d.ba_white_oak = SquareFeetPerAcre{40.0};
  d.ba_red_oak = SquareFeetPerAcre{30.0};
  d.ba_oak = d.ba_white_oak + d.ba_red_oak;
  return d;
}

ReleaseInput input_of(const ShortCards& cards, double acres, Goal goal) {
  const ReleaseKnowledge& know = shipped_knowledge();
  auto graph = graph_from_cards(cards.trees, cards.contacts, cards.stand, know.settings.contact);
  if (!graph) throw std::runtime_error(to_text(graph.error()));
  ReleaseInput input{know, std::move(*graph), {}, {}, {}};
  input.stand.goal = goal;
  input.stand.before = full_stand();
  input.stand.covered = Acres{acres};
  return input;
}

const TreeVerdict& verdict_on(const ReleasePlan& plan, std::string_view tag) {
  static const TreeVerdict kNone;
  for (const TreeVerdict& v : plan.trees) {
    if (v.tag == tag) return v;
  }
  ADD_FAILURE() << "no tree " << tag;
  return kNone;
}

std::vector<std::string> rules_against(const std::vector<Objection>& list, std::string_view tag) {
  std::vector<std::string> rules;
  for (const Objection& objection : list) {
    if (objection.tag != tag) continue;
    rules.insert(rules.end(), objection.rules.begin(), objection.rules.end());
  }
  return rules;
}

std::vector<std::string> cut_tags(const ReleasePlan& plan) {
  std::vector<std::string> tags;
  for (const TreeVerdict& v : plan.trees) {
    if (v.verdict == Verdict::take || v.verdict == Verdict::kill_standing) tags.push_back(v.tag);
  }
  return tags;
}

std::vector<std::string> released_tags(const ReleasePlan& plan) {
  std::vector<std::string> tags;
  for (const TreeVerdict& v : plan.trees) {
    if (v.released) tags.push_back(v.tag);
  }
  return tags;
}

}  // namespace oaklight::test
