#include <chrono>
#include <filesystem>
#include <iostream>
#include <nlohmann/json.hpp>

#include "core/base/number_text.hpp"
#include "core/base/sha256.hpp"
#include "core/command/program.hpp"
#include "core/command/text_table.hpp"
#include "core/place/position_text.hpp"
#include "core/session/files.hpp"
#include "core/session/stump_view.hpp"
#ifdef OAKLIGHT_PAPER
#include "core/paper/stump_pdf.hpp"
#endif

namespace oaklight::command {
namespace {

using Json = nlohmann::ordered_json;

struct Call {
  std::string tract;
  std::string made_on;
  LogRule log_rule = LogRule::international;
  int look_at = 0;  ///< of an audit; 0: as many as the claim takes
  int allowed = 0;
  double bound = 5.0;
  double level = 0.95;
  std::uint64_t seed = 0;
  std::string folder;
  std::string csv;
  std::string paper = "letter";
  bool json = false;
  bool wants_audit = false;
};

/// A file that was written.
using Written = std::vector<std::string>;

Result<PacketOptions> options_of(const Call& call) {
  PacketOptions options;
  options.today = Day{std::chrono::floor<std::chrono::days>(std::chrono::system_clock::now())};
  options.log_rule = call.log_rule;
  if (call.made_on.empty()) return options;
  const auto day = day_from_text(call.made_on);
  if (!day) return day.error();
  options.today = *day;
  return options;
}

/// The day as a number, 20270220: a seed that nobody chose, and that the report keeps.
std::uint64_t seed_of(const Call& call, Day day) {
  if (call.seed != 0) return call.seed;
  return static_cast<std::uint64_t>(static_cast<int>(day.year())) * 10'000U +
         static_cast<unsigned>(day.month()) * 100U + static_cast<unsigned>(day.day());
}

Result<std::optional<StumpAudit>> audit_of(const StumpCheck& check, const Call& call, Day day) {
  if (!call.wants_audit) return std::optional<StumpAudit>();
  const auto confidence = Confidence::from_share(call.level);
  if (!confidence) return confidence.error();
  const std::optional<int> look_at = call.look_at == 0 ? std::nullopt : std::optional(call.look_at);
  auto audit = audit_stumps(check, call.allowed, Percent{call.bound}, *confidence,
                            seed_of(call, day), look_at);
  if (!audit) return audit.error();
  return std::optional(*std::move(audit));
}

Result<Written> write_files(const StumpCheck& check, const std::optional<StumpAudit>& audit,
                            const Call& call) {
  Written written;
  const std::string csv = stump_check_csv(check);
  const auto write = [&](const std::filesystem::path& path, const std::string& bytes) -> Status {
    if (const Status done = write_whole_file(path, bytes); !done) return done;
    written.push_back(path.string());
    return Done{};
  };
  if (!call.csv.empty()) {
    if (const Status done = write(call.csv, csv); !done) return done.error();
  }
  if (call.folder.empty()) return written;
  std::error_code problem;
  std::filesystem::create_directories(call.folder, problem);
  if (problem) {
    return Error{ErrorCode::cannot_write, "This folder cannot be made (" + problem.message() + ").",
                 call.folder, "Choose another folder."};
  }
  const std::filesystem::path folder = call.folder;
#ifdef OAKLIGHT_PAPER
  progress("drawing the pages");
  const auto pdf = stump_pdf(check, audit, sha256_hex(csv), *from_word<PaperSize>(call.paper));
  if (!pdf) return pdf.error();
  if (const Status done = write(folder / "stumps.pdf", *pdf); !done) return done.error();
#else
  (void)audit;
#endif
  if (const Status done = write(folder / "stumps.csv", csv); !done) return done.error();
  return written;
}

Json damage_json(const DamageFigure& damage) {
  return {{"trees_to_be_left", damage.left},
          {"felled", damage.cut},
          {"badly_hurt", damage.badly},
          {"hurt_less", damage.other},
          {"share_pct", damage.share() ? Json(damage.share()->value) : Json(nullptr)},
          {"limit_pct", damage.limit.value},
          {"rule", damage.rule},
          {"over", damage.over()}};
}

template <class Q>
Json between_json(const Between<Q>& value) {
  return {{"low", value.low.value}, {"likely", value.likely.value}, {"high", value.high.value}};
}

Json audit_json(const StumpAudit& audit) {
  return {{"model", word_of(audit.plan.model)},
          {"sample_needed", audit.plan.sample},
          {"wrong_allowed", audit.plan.allowed},
          {"bound_pct", audit.bound.value},
          {"confidence_pct", 100.0 * audit.confidence.share()},
          {"seed", audit.seed},
          {"tags", audit.tags},
          {"not_seen", audit.not_seen},
          {"wrong", audit.wrong},
          {"greatest_wrong_share_pct",
           audit.greatest_share ? Json(audit.greatest_share->value) : Json(nullptr)},
          {"claim_stands", audit.holds()}};
}

void print_json(const StumpCheck& check, const std::optional<StumpAudit>& audit,
                const Written& written) {
  Json json{{"listed", check.listed.size()}, {"looked_at", check.looked_at()}};
  for (const auto& [state, word] : kWords<ListState>) json[std::string(word)] = check.of(state);
  json["share_done_pct"] = check.share_done() ? Json(check.share_done()->value) : Json(nullptr);
  const UnmarkedTotals& cut = check.unmarked_totals;
  json["cut_not_marked"] = {{"trees", cut.trees},
                            {"without_dbh", cut.without_dbh},
                            {"log_rule", check.log_rule},
                            {"board_feet", between_json(cut.board_feet)},
                            {"with_board_feet", cut.with_board_feet},
                            {"cords_if_firewood", between_json(cut.cords)},
                            {"with_cords", cut.with_cords}};
  json["crop_trees"] = damage_json(check.crop_damage);
  json["trees_left"] = damage_json(check.left_damage);
  json["hurt_without_tag"] = check.hurt_without_tag;
  json["tags_twice"] = Json::array();
  for (const TagTwice& tag : check.twice) json["tags_twice"].push_back(tag.tag);
  if (audit) json["audit"] = audit_json(*audit);
  json["files"] = written;
  std::cout << json.dump(2) << '\n';
}

/// "12 to 15", or one figure where both ends are the same.
template <class Q>
std::string between_text(const Between<Q>& value, int decimals) {
  const std::string low = grouped_text(value.low.value, decimals);
  const std::string high = grouped_text(value.high.value, decimals);
  const std::string likely = grouped_text(value.likely.value, decimals);
  return low == high ? likely : likely + " (" + low + " to " + high + ")";
}

void print_go_and_look(const StumpCheck& check) {
  TextTable table({"tag", "state", "species", "DBH in", "where", "caution"});
  bool any = false;
  for (const ListedTree& tree : check.listed) {
    if (tree.state == ListState::done) continue;
    any = true;
    table.add({tree.tag, std::string(word_of(tree.state)), tree.species,
               number_text(tree.dbh.inches().value, 1),
               tree.position ? decimal_degrees_text(*tree.position) : "no position",
               tree.cautions.empty() ? "look yourself"
                                     : std::string(word_of(tree.cautions.front().severity)) + " " +
                                           tree.cautions.front().code});
  }
  if (any) std::cout << "Go and look:\n" << table.text();
}

void print_unmarked(const StumpCheck& check) {
  if (check.unmarked.empty()) return;
  TextTable table({"tag", "species", "DBH in", "board feet", "cords"});
  for (const UnmarkedTree& tree : check.unmarked) {
    table.add({tree.tag.empty() ? "none" : tree.tag + (tree.crop ? " CROP TREE" : ""), tree.species,
               tree.dbh ? between_text(*tree.dbh, 1) : "not measured",
               tree.board_feet ? between_text(*tree.board_feet, 0) : "-",
               tree.cords ? between_text(*tree.cords, 2) : "-"});
  }
  const UnmarkedTotals& totals = check.unmarked_totals;
  std::cout << "Cut without a mark: " << totals.trees << '\n'
            << table.text() << "  as saw logs " << between_text(totals.board_feet, 0)
            << " board feet " << check.log_rule << " (" << totals.with_board_feet << " of "
            << totals.trees << " trees), or all of it as firewood " << between_text(totals.cords, 2)
            << " cords (" << totals.with_cords
            << "); the two are not added.\n"
               "  DBH from stumps: form of Raile 1982, flare from memory; an estimate.\n";
}

void print_damage(const char* of, const DamageFigure& damage) {
  std::cout << "  " << of << ": " << damage.cut << " felled and " << damage.badly
            << " badly hurt of " << damage.left;
  if (const auto share = damage.share()) {
    std::cout << ", " << number_text(share->value, 1) << " %";
  }
  std::cout << "; agreed limit " << number_text(damage.limit.value, 1) << " % (" << damage.rule
            << ")" << (damage.over() ? ": OVER" : "") << '\n';
}

std::string joined(const std::vector<std::string>& tags) {
  std::string text;
  for (const std::string& tag : tags) text += (text.empty() ? "" : ", ") + tag;
  return text;
}

void print_audit(const StumpAudit& audit) {
  std::cout << "Audit: to claim with " << number_text(100.0 * audit.confidence.share(), 1)
            << " % confidence that no more than " << number_text(audit.bound.value, 1)
            << " % of the " << audit.list << " listed trees are wrong, look at "
            << audit.plan.sample << " and find at most " << audit.plan.allowed << " wrong ("
            << word_of(audit.plan.model) << ").\n"
            << "  Draw of " << audit.tags.size() << " with seed " << audit.seed << ": "
            << joined(audit.tags) << '\n';
  if (!audit.greatest_share) {
    std::cout << "  " << audit.not_seen.size() << " of them still to be looked at; " << audit.wrong
              << " wrong so far.\n";
    return;
  }
  std::cout << "  All looked at, " << audit.wrong << " wrong: at most "
            << number_text(audit.greatest_share->value, 1) << " % of the list is wrong. The claim "
            << (audit.holds() ? "stands.\n" : "does not stand.\n");
}

void print(const StumpCheck& check, const std::optional<StumpAudit>& audit,
           const Written& written) {
  for (const std::string& line : check.before_you_go) std::cout << "! " << line << '\n';
  std::cout << "Stump check of " << check.tract.name << ", " << check.made_on << ": "
            << check.looked_at() << " of " << check.listed.size() << " listed trees looked at, "
            << check.of(ListState::done) << " found as marked";
  if (const auto share = check.share_done()) {
    std::cout << " (" << number_text(share->value, 1) << " %)";
  }
  std::cout << ", " << check.of(ListState::standing) << " still standing, "
            << check.of(ListState::hung) << " hung up, " << check.of(ListState::unclear)
            << " unclear.\n";
  print_go_and_look(check);
  print_unmarked(check);
  std::cout << "Damage:\n";
  print_damage("crop trees", check.crop_damage);
  print_damage("trees to be left", check.left_damage);
  if (check.hurt_without_tag > 0) {
    std::cout << "  hurt trees without a tag, in no share: " << check.hurt_without_tag << '\n';
  }
  std::vector<std::string> twice;
  for (const TagTwice& tag : check.twice) twice.push_back(tag.tag);
  if (!twice.empty()) std::cout << "Tags noted more than once: " << joined(twice) << '\n';
  if (audit) print_audit(*audit);
  for (const std::string& path : written) std::cout << "  " << path << '\n';
}

int run(const Call& call) {
  const auto options = options_of(call);
  if (!options) return fail(options.error(), call.json);
  const auto session = open_to_read(call.tract);
  if (!session) return fail(session.error(), call.json);
  const auto data = session->data();
  if (!data) return fail(data.error(), call.json);
  const auto check = stump_check_for(*data, session->knowledge(), *options);
  if (!check) return fail(check.error(), call.json);
  const auto audit = audit_of(*check, call, options->today);
  if (!audit) return fail(audit.error(), call.json);
  const auto written = write_files(*check, *audit, call);
  if (!written) return fail(written.error(), call.json);
  if (call.json) {
    print_json(*check, *audit, *written);
  } else {
    print(*check, *audit, *written);
  }
  return kDone;
}

}  // namespace

void add_stumps(CLI::App& app, int& exit_code) {
  auto call = std::make_shared<Call>();
  CLI::App* command = app.add_subcommand(
      "stumps", "After the cut: hold the marked list against the stumps and trees that were found");
  add_tract(*command, call->tract);
  command->add_flag("--audit", call->wants_audit, "Draw listed trees to look at, by chance");
  command->add_option("--look-at", call->look_at,
                      "Trees to draw (default: as many as the claim takes)");
  command->add_option("--allow", call->allowed, "Wrong ones allowed in the audit (default: 0)");
  command->add_option("--at-most", call->bound,
                      "Wrong share that the audit is to rule out, % (default: 5)");
  add_confidence(*command, call->level);
  command->add_option("--seed", call->seed, "Repeats a draw (default: the day as a number)");
  command->add_option("--made-on", call->made_on, "Day of the report (default: today)");
  command->add_option("--out", call->folder, "Folder for stumps.pdf and stumps.csv");
  command->add_option("--csv", call->csv, "File for the reconciled list alone");
  command->add_option("--paper", call->paper, "letter or a4 (default: letter)")
      ->check(CLI::IsMember({"letter", "a4"}));
  add_log_rule(*command, call->log_rule);
  add_json(*command, call->json);
  command->footer(
      "Example: oaklight stumps hollow.gpkg --audit --out check\n"
      "Findings come from the tablet, or from stumps.csv by oaklight import (forms/README.md).");
  command->callback([call, &exit_code] {
    call->wants_audit = call->wants_audit || call->look_at != 0;
    exit_code = run(*call);
  });
}

}  // namespace oaklight::command
