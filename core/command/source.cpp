#include <iostream>

#include "core/command/program.hpp"
#include "core/command/rule_words.hpp"
#include "core/stand/sources.hpp"

namespace oaklight::command {
namespace {

struct Call {
  std::string key;
  std::string tract;
  bool json = false;
};

Json note_json(const SourceNote& note) {
  Json json{{"key", note.key}, {"name", note.name}, {"how", note.how}, {"range", note.range}};
  json["sources"] = Json::array();
  for (const Citation& cited : note.citations) {
    json["sources"].push_back({{"work", cited.work},
                               {"status", word_of(cited.status)},
                               {"doubt", cited.doubt},
                               {"code", cited.header}});
  }
  return json;
}

void print_note(const SourceNote& note) {
  std::cout << note.name << " (" << note.key << ")\n\n" << note.how << '\n';
  if (!note.range.empty()) std::cout << "\nWhere it holds: " << note.range << '\n';
  std::cout << "\nSources\n";
  for (const Citation& cited : note.citations) {
    std::cout << "  " << cited.work << " [" << word_of(cited.status) << "]";
    if (!cited.doubt.empty()) std::cout << ' ' << cited.doubt;
    std::cout << "\n    computed in " << cited.header << '\n';
  }
}

/// All keys: of figures by name, of rules by id.
int print_keys(const RuleBook& rules, bool json) {
  if (json) {
    Json keys{{"figures", Json::array()}, {"rules", Json::array()}};
    for (const SourceNote& note : source_notes()) keys["figures"].push_back(note.key);
    for (const Rule& rule : rules.rules()) keys["rules"].push_back(rule.id);
    std::cout << json_text(keys) << '\n';
    return kDone;
  }
  std::cout << "Figures\n";
  for (const SourceNote& note : source_notes()) {
    std::cout << "  " << note.key << "  " << note.name << '\n';
  }
  std::cout << "Rules, version " << rules.version() << '\n';
  for (const Rule& rule : rules.rules()) std::cout << "  " << rule.id << "  " << rule.text << '\n';
  return kDone;
}

/// The rules of a tract, which its owner may have changed; without one those of the program.
Result<RuleBook> rules_of(const std::string& tract) {
  if (tract.empty()) return RuleBook::shipped();
  const auto session = open_to_read(tract);
  if (!session) return session.error();
  return session->knowledge().release.rules;
}

int run(const Call& call) {
  const auto rules = rules_of(call.tract);
  if (!rules) return fail(rules.error(), call.json);
  if (call.key.empty()) return print_keys(*rules, call.json);
  if (const SourceNote* note = source_note(call.key)) {
    if (call.json) {
      std::cout << json_text(note_json(*note)) << '\n';
    } else {
      print_note(*note);
    }
    return kDone;
  }
  if (const Rule* rule = rules->find(call.key)) {
    if (call.json) {
      std::cout << json_text(rule_json(*rule)) << '\n';
    } else {
      print(*rule);
    }
    return kDone;
  }
  return fail({ErrorCode::unknown_reference, "No figure and no rule has this key.", call.key,
               "Run `oaklight source` for all keys."},
              call.json);
}

}  // namespace

void add_source(CLI::App& app, int& exit_code) {
  auto call = std::make_shared<Call>();
  CLI::App* command = app.add_subcommand(
      "source", "How a figure is computed, or what a rule says, with its sources and their status");
  command->add_option("key", call->key, "Of a figure (stocking) or a rule (R3.60); without: all");
  command->add_option("--tract", call->tract, "Tract file whose own rules to show")
      ->check(CLI::ExistingFile);
  add_json(*command, call->json);
  command->footer("Example: oaklight source stocking");
  command->callback([call, &exit_code] { exit_code = run(*call); });
}

}  // namespace oaklight::command
