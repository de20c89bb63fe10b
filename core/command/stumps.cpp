#include <iostream>

#include "core/base/number_text.hpp"
#include "core/base/sha256.hpp"
#include "core/command/program.hpp"
#include "core/command/stumps_json.hpp"
#include "core/command/text_table.hpp"
#include "core/handoff/stump_words.hpp"
#include "core/place/position_text.hpp"
#include "core/session/files.hpp"
#include "core/session/stump_files.hpp"
#include "core/session/stump_view.hpp"
#ifdef OAKLIGHT_PAPER
#include "core/paper/stump_pdf.hpp"
#endif

namespace oaklight::command {
namespace {

struct Call {
  std::string tract;
  std::string made_on;
  LogRule log_rule = LogRule::international;
  int look_at = 0;  ///< of an audit; 0: as many as the claim takes
  int allowed = 0;
  double bound = 5.0;
  Confidence level;
  std::uint64_t seed = 0;
  std::string folder;
  std::string csv;
  std::string paper = "letter";
  bool json = false;
  bool wants_audit = false;
};

Result<PacketOptions> options_of(const Call& call) {
  PacketOptions options;
  options.log_rule = call.log_rule;
  const auto day = day_or_today(call.made_on);
  if (!day) return day.error();
  options.today = *day;
  return options;
}

Result<std::optional<StumpAudit>> audit_of(const StumpCheck& check, const Call& call, Day day) {
  if (!call.wants_audit) return std::optional<StumpAudit>();
  const std::optional<int> look_at = call.look_at == 0 ? std::nullopt : std::optional(call.look_at);
  auto audit = audit_stumps(check, call.allowed, Percent{call.bound}, call.level,
                            call.seed != 0 ? call.seed : audit_seed(day), look_at);
  if (!audit) return audit.error();
  return std::optional(*std::move(audit));
}

/// The bytes of the pages; nothing in a program built without painting.
Result<std::optional<std::string>> pages_of(const StumpCheck& check,
                                            const std::optional<StumpAudit>& audit,
                                            const Call& call) {
#ifdef OAKLIGHT_PAPER
  progress("drawing the pages");
  auto pdf = stump_pdf(check, audit, sha256_hex(stump_check_csv(check)),
                       *from_word<PaperSize>(call.paper));
  if (!pdf) return pdf.error();
  return std::optional(*std::move(pdf));
#else
  (void)check, (void)audit, (void)call;
  return std::optional<std::string>();
#endif
}

Result<std::vector<std::string>> write_files(const StumpCheck& check,
                                             const std::optional<StumpAudit>& audit,
                                             const Call& call) {
  std::vector<std::string> written;
  if (!call.csv.empty()) {
    if (const Status done = write_whole_file(call.csv, stump_check_csv(check)); !done) {
      return done.error();
    }
    written.push_back(call.csv);
  }
  if (call.folder.empty()) return written;
  const auto pdf = pages_of(check, audit, call);
  if (!pdf) return pdf.error();
  const auto files = write_stump_files(call.folder, check, *pdf);
  if (!files) return files.error();
  for (const auto& path : *files) written.push_back(path.string());
  return written;
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
            << " board feet " << check.log_rule << " [board_feet] (" << totals.with_board_feet
            << " of " << totals.trees << " trees), or all of it as firewood "
            << between_text(totals.cords, 2) << " cords [cords] (" << totals.with_cords
            << "); the two are not added.\n";
  if (!check.volumes_by.empty()) std::cout << "  " << check.volumes_by << '\n';
  std::cout
      << "  DBH from stumps [stump_dbh]: form of Raile 1982, flare from memory; an estimate.\n";
}

void print_hurt(const StumpCheck& check) {
  if (check.hurt.empty()) return;
  TextTable table({"tag", "species", "wound", "where", "day"});
  for (const HurtTree& tree : check.hurt) {
    table.add({tree.tag.empty() ? "none" : tree.tag + (tree.crop ? " CROP TREE" : ""), tree.species,
               tree.wound ? std::string(word_of(*tree.wound)) + (tree.badly() ? " (bad)" : "")
                          : "not recorded",
               tree.place ? std::string(word_of(*tree.place)) : "-",
               tree.seen_on.empty() ? "-" : tree.seen_on});
  }
  std::cout << "Hurt trees that were to be left: " << check.hurt.size() << '\n' << table.text();
}

void print_damage(const char* of, const DamageFigure& damage) {
  std::cout << "  " << of << ": " << damage.cut << " felled and " << damage.badly
            << " badly hurt of " << damage.left;
  if (const auto share = damage.share()) {
    std::cout << ", " << number_text(share->value, 1) << " % [tree_list]";
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
            << word_of(audit.plan.model) << ") [audit].\n"
            << "  Draw of " << audit.tags.size() << " with seed " << audit.seed << ": "
            << joined(audit.tags) << '\n';
  if (!audit.greatest_share) {
    std::cout << "  " << audit.not_seen.size() << " of them still to be looked at; " << audit.wrong
              << " wrong so far.\n";
    return;
  }
  std::cout << "  All looked at, " << audit.wrong << " wrong: at most "
            << number_text(audit.greatest_share->value, 1)
            << " % of the list is wrong [audit]. The claim "
            << (audit.holds() ? "stands.\n" : "does not stand.\n");
}

void print(const StumpCheck& check, const std::optional<StumpAudit>& audit,
           const std::vector<std::string>& written) {
  for (const std::string& line : check.before_you_go) std::cout << "! " << line << '\n';
  std::cout << "Stump check of " << check.tract.name << ", " << check.made_on << ": "
            << check.looked_at() << " of " << check.listed.size() << " listed trees looked at, "
            << check.of(ListState::done) << " found as marked";
  if (const auto share = check.share_done()) {
    std::cout << " (" << number_text(share->value, 1) << " %) [tree_list]";
  }
  std::cout << ", " << check.of(ListState::standing) << " still standing, "
            << check.of(ListState::hung) << " hung up, " << check.of(ListState::unclear)
            << " unclear.\n";
  print_go_and_look(check);
  print_unmarked(check);
  print_hurt(check);
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
    std::cout << stumps_json(*check, *audit, *written) << '\n';
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
