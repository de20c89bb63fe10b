#include <charconv>
#include <filesystem>
#include <iostream>
#include <nlohmann/json.hpp>

#include "core/command/json_values.hpp"
#include "core/command/program.hpp"
#include "core/session/question_words.hpp"

namespace oaklight::command {
namespace {

struct Call {
  std::string tract;
  std::vector<std::string> others;
  std::vector<std::string> answers;  ///< "2=B"
  bool one_tract = false;
  bool look = false;
  bool json = false;
};

/// Side A, B, C ... of question number 1, 2, 3 ...
struct AnswerGiven {
  std::size_t question = 0;
  std::size_t side = 0;
};

Result<AnswerGiven> answer_of(const std::string& text, const std::vector<Question>& open) {
  const Error wrong{ErrorCode::not_a_choice,
                    "This answers none of the open questions: " + text + ".", "--answer",
                    "Write the number of a question and a side, like 2=B."};
  std::size_t number = 0;
  const char* end = text.data() + text.size();
  const auto read = std::from_chars(text.data(), end, number);
  if (read.ec != std::errc{} || end - read.ptr != 2 || *read.ptr != '=') return wrong;
  const char letter = read.ptr[1];
  if (number < 1 || number > open.size() || letter < 'A') return wrong;
  const auto side = static_cast<std::size_t>(letter - 'A');
  if (side >= open[number - 1].sides.size()) return wrong;
  return AnswerGiven{number - 1, side};
}

nlohmann::ordered_json json_of(const JoinReport& report, const SpeciesTable& species) {
  Json json{{"files", Json::array()},
            {"records_added", report.added},
            {"records_changed", report.changed},
            {"copy", report.copy.string()},
            {"questions", Json::array()}};
  for (const JoinedFile& file : report.files) {
    json["files"].push_back({{"path", file.path.string()},
                             {"tract", file.tract},
                             {"new_actions", file.actions},
                             {"new_records", file.records},
                             {"started_apart", file.started_apart}});
  }
  for (const Question& question : report.questions) {
    const SaidQuestion said = words_of(question, species);
    Json sides = Json::array();
    for (const SaidSide& side : said.sides) {
      Json fields = Json::object();
      for (const SaidField& field : side.fields) fields[field.what] = field.value;
      sides.push_back({{"device", side.who},
                       {"when", side.when},
                       {"action", side.doing},
                       {"removed", side.removed},
                       {"fields", fields}});
    }
    json["questions"].push_back({{"title", title_of(said, question.kind)},
                                 {"table", question.table},
                                 {"name", question.name},
                                 {"sides", sides},
                                 {"mend", said.mend}});
  }
  return json;
}

void print(const Question& question, std::size_t number, const SpeciesTable& species) {
  const SaidQuestion said = words_of(question, species);
  std::cout << number << ". " << title_of(said, question.kind) << '\n';
  char letter = 'A';
  for (const SaidSide& side : said.sides) {
    std::cout << "   " << letter++ << "  " << side.who << ", " << side.when << ", " << side.doing;
    if (side.removed) std::cout << ": REMOVED";
    std::cout << '\n';
    for (const SaidField& field : side.fields) {
      std::cout << "        " << field.what << ": " << (field.value.empty() ? "-" : field.value)
                << '\n';
    }
  }
  std::cout << "   " << said.mend << '\n';
}

void print(const JoinReport& report, const Call& call, const SpeciesTable& species) {
  if (call.json) {
    std::cout << json_text(json_of(report, species)) << '\n';
    return;
  }
  for (const JoinedFile& file : report.files) {
    std::cout << file.path.string() << ": " << file.actions << " actions, " << file.records
              << " records that were not there yet";
    if (file.started_apart) std::cout << "; begun as a file of its own";
    std::cout << '\n';
  }
  if (call.others.empty()) {
    if (!call.answers.empty()) std::cout << "Decided: " << report.changed << " records changed.\n";
    if (report.questions.empty()) std::cout << "Nothing is left to decide.\n";
  } else {
    std::cout << (call.look ? "Would be joined into " : "Joined into ") << call.tract << ": "
              << report.added << " records added, " << report.changed << " changed.\n";
  }
  if (!report.copy.empty())
    std::cout << "The file as it was before: " << report.copy.string() << '\n';
  if (report.questions.empty()) return;
  std::cout << "\nTo decide (on the tablet, or with --answer NUMBER=SIDE):\n";
  for (std::size_t i = 0; i < report.questions.size(); ++i)
    print(report.questions[i], i + 1, species);
}

/// The questions of a file, and the answers given to them.
Result<JoinReport> answered(TractStore& store, const Call& call) {
  auto open = store.questions();
  if (!open) return open.error();
  std::vector<AnswerGiven> answers;
  for (const std::string& text : call.answers) {
    const auto answer = answer_of(text, *open);
    if (!answer) return answer.error();
    answers.push_back(*answer);
  }
  JoinReport report;
  for (const AnswerGiven& answer : answers) {
    const auto decided = store.decide((*open)[answer.question], answer.side);
    if (!decided) return decided.error();
    report.changed += static_cast<int>(decided->size());
  }
  open = store.questions();
  if (!open) return open.error();
  report.questions = *std::move(open);
  return report;
}

int tell(const Result<JoinReport>& report, const TractStore& store, const Call& call) {
  if (!report) return fail(report.error(), call.json);
  const auto knowledge = read_knowledge(store);
  if (!knowledge) return fail(knowledge.error(), call.json);
  print(*report, call, knowledge->species());
  return kDone;
}

std::vector<std::filesystem::path> paths_of(const Call& call) {
  return {call.others.begin(), call.others.end()};
}

int run_new(const Call& call, OtherTract other) {
  if (call.others.size() < 2) {
    return fail(Error{ErrorCode::missing_value, "A new file is made of two files or more.",
                      call.tract, "Name the files of the tablets after it."},
                call.json);
  }
  progress("joining into " + call.tract);
  const auto report = join_to_new(call.tract, paths_of(call), other, call.look);
  if (!report) return fail(report.error(), call.json);
  const auto store = open_store(call.look ? call.others.front() : call.tract);
  if (!store) return fail(store.error(), call.json);
  return tell(report, *store, call);
}

int run(const Call& call) {
  if (!call.answers.empty() && !call.others.empty()) {
    return fail(
        Error{ErrorCode::not_a_choice, "Answers come after the join, in a call of their own.",
              "--answer", "Join first, and read the questions."},
        call.json);
  }
  const OtherTract other = call.one_tract ? OtherTract::take : OtherTract::refuse;
  std::error_code no_such;
  if (!std::filesystem::exists(call.tract, no_such)) return run_new(call, other);
  const bool reads = call.look || (call.others.empty() && call.answers.empty());
  auto store = reads ? open_store(call.tract) : open_store_to_write(call.tract);
  if (!store) return fail(store.error(), call.json);
  if (call.look) return tell(store->preview_join(paths_of(call), other), *store, call);
  if (call.others.empty()) return tell(answered(*store, call), *store, call);
  progress("joining into " + call.tract);
  return tell(store->join(paths_of(call), other), *store, call);
}

}  // namespace

void add_join(CLI::App& app, int& exit_code) {
  auto call = std::make_shared<Call>();
  CLI::App* command = app.add_subcommand(
      "join", "Put the files of several tablets together; shows what is left to decide");
  add_tract(*command, call->tract);
  command->get_option("tract")->description(
      "The tract file to join into; a new one is made if there is none");
  command
      ->add_option("others", call->others,
                   "Files of the tablets, which are only read; none: show what is open")
      ->check(CLI::ExistingFile);
  command
      ->add_option("--answer", call->answers,
                   "Decide: side B of question 2 holds is 2=B; may be given more than once")
      ->allow_extra_args(false);
  command->add_flag("--look", call->look, "Show what would come in, and write nothing");
  command->add_flag("--one-tract", call->one_tract,
                    "The files are of one tract although they began apart under other names");
  add_json(*command, call->json);
  command->footer(
      "Example: oaklight join hollow.gpkg tablet_1.gpkg tablet_2.gpkg\n"
      "The order of the files does not matter, and joining one again changes nothing. Where two\n"
      "tablets changed one record, one version shows and both are kept until somebody decides.\n"
      "A file that was there before is kept beside as NAME.before-join.gpkg.");
  command->callback([call, &exit_code] { exit_code = run(*call); });
}

}  // namespace oaklight::command
