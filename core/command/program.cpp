#include "core/command/program.hpp"
#include "core/command/keeping.hpp"

#include <unistd.h>

#include <cmath>
#include <cstdio>
#include <iostream>
#include <map>

#include "core/base/today.hpp"
#include "core/command/json_values.hpp"

namespace oaklight::command {
namespace {

int exit_code_of(ErrorCode code) {
  switch (code) {
    case ErrorCode::cannot_open:
    case ErrorCode::not_a_tract_file:
    case ErrorCode::file_too_new:
    case ErrorCode::damaged:
    case ErrorCode::disk_full:
    case ErrorCode::io_failed:
    case ErrorCode::busy:
    case ErrorCode::read_only:
    case ErrorCode::cannot_write:
      return kFileProblem;
    case ErrorCode::no_data:
    case ErrorCode::nothing_marked:
    case ErrorCode::nothing_to_undo:
      return kNothingToDo;
    default:
      return kRefused;
  }
}

}  // namespace

StoreContext store_context() {
  static SystemClock clock;
  return {clock, system_random(), "oaklight command"};
}

int fail(const Error& error, bool json) { return fail(std::vector<Error>{error}, json); }

int fail(const std::vector<Error>& faults, bool json) {
  if (json) {
    Json list = Json::array();
    for (const Error& fault : faults) list.push_back(error_json(fault));
    std::cout << json_text({{"errors", list}}) << '\n';
  } else {
    for (const Error& fault : faults) std::cerr << to_text(fault) << '\n';
  }
  return exit_code_of(faults.front().code);
}

Result<TractSession> open_to_read(const std::string& path) {
  return TractSession::open(path, OpenMode::read_only, store_context());
}

Result<TractSession> open_to_write(const std::string& path) {
  return TractSession::open(path, OpenMode::read_write, store_context());
}

Result<TractStore> open_store(const std::string& path) {
  return TractStore::open(path, OpenMode::read_only, store_context());
}

Result<TractStore> open_store_to_write(const std::string& path) {
  return TractStore::open(path, OpenMode::read_write, store_context());
}

Result<JoinReport> join_to_new(const std::string& path,
                               const std::vector<std::filesystem::path>& files, OtherTract other,
                               bool look) {
  if (!look) return TractStore::join_to_new(path, files, store_context(), other);
  const auto first = open_store(files.front().string());
  if (!first) return first.error();
  return first->preview_join({files.begin() + 1, files.end()}, other);
}

Result<TractSession> create_tract(const std::string& path) {
  return TractSession::create(path, store_context());
}

Result<Day> day_or_today(const std::string& text) {
  return text.empty() ? Result<Day>(today()) : day_from_text(text);
}

void progress(const std::string& words) {
  if (::isatty(STDERR_FILENO) != 0) std::cerr << words << " ...\n";
}

void add_tract(CLI::App& command, std::string& path) {
  command.add_option("tract", path, "The tract file (.gpkg)")->required();
}

void add_json(CLI::App& command, bool& json) {
  command.add_flag("--json", json, "Print one JSON object for machines instead of text");
}

void add_log_rule(CLI::App& command, LogRule& rule) {
  std::map<std::string, LogRule> words;
  for (const auto& entry : kWords<LogRule>) words.emplace(entry.word, entry.value);
  command.add_option("--log-rule", rule, "Board feet by this rule (default: international)")
      ->transform(CLI::CheckedTransformer(words))
      ->option_text("doyle|scribner|international");
}

void add_confidence(CLI::App& command, Confidence& level) {
  command
      .add_option_function<double>(
          "--level", [&level](double share) { level = Confidence::from_share(share).value(); },
          "Confidence of the intervals (default: 0.95)")
      ->check(between(0.5, 0.999));
}

CLI::Validator between(double least, double most) {
  const CLI::Range range(least, most);
  const auto fault = [range](std::string& text) {
    double number = 0.0;
    std::string told = range(text);
    if (told.empty() && CLI::detail::lexical_cast(text, number) && std::isnan(number)) {
      told = "Value " + text + " is no number";
    }
    return told;
  };
  return {fault, range.get_description()};
}

}  // namespace oaklight::command
