#include "core/command/manual.hpp"

#include <algorithm>
#include <iostream>
#include <sstream>
#include <string_view>
#include <vector>

namespace oaklight::command {
namespace {

/// Text as roff takes it: hyphens that are typed stay hyphens, and no line begins a request.
std::string roff(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '\\') {
      out += "\\e";
    } else if (c == '-') {
      out += "\\-";
    } else if (c == '\n') {
      out += ' ';
    } else {
      if (out.empty() && (c == '.' || c == '\'')) out += "\\&";
      out += c;
    }
  }
  return out;
}

/// The lines below a help text. An example stands on a line of its own, the rest is filled.
std::string roff_footer(const std::string& footer) {
  std::istringstream lines(footer);
  std::string out;
  for (std::string line; std::getline(lines, line);) {
    const bool example = line.starts_with("Example:");
    out += example ? ".PP\n" + roff(line) + "\n.PP\n" : roff(line) + "\n";
  }
  return out.ends_with(".PP\n") ? out.substr(0, out.size() - 4) : out;
}

/// The subcommand's own options and those of its groups, in the order of --help.
std::vector<const CLI::Option*> options_of(const CLI::App& app) {
  auto options = app.get_options();
  for (const CLI::App* group : app.get_subcommands([](const CLI::App*) { return true; })) {
    if (!group->get_name().empty()) continue;
    for (const CLI::Option* option : group->get_options()) {
      if (option != group->get_help_ptr()) options.push_back(option);
    }
  }
  return options;
}

std::vector<const CLI::App*> subcommands_of(const CLI::App& app) {
  return app.get_subcommands([](const CLI::App* sub) { return !sub->get_name().empty(); });
}

/// What may follow the option, as --help shows it: "TEXT:{letter,a4}", "doyle|scribner".
std::string value_text(const CLI::Option& option) {
  std::string text = CLI::Formatter().make_option_opts(&option);
  text.erase(0, text.find_first_not_of(' '));
  return text;
}

/// The words that an option takes, where it takes only some: those between bars or in braces.
std::vector<std::string> words_of(const CLI::Option& option) {
  std::string text = value_text(option);
  const auto open = text.find('{');
  char between = '|';
  if (open != std::string::npos) {
    text = text.substr(open + 1, text.find('}') - open - 1);
    between = ',';
  }
  if (text.find(between) == std::string::npos) return {};
  std::vector<std::string> words;
  std::istringstream parts(text);
  for (std::string word; std::getline(parts, word, between);) words.push_back(word);
  return words;
}

std::string roff_options(const CLI::App& app) {
  std::string out;
  for (const CLI::Option* option : options_of(app)) {
    out += ".TP\n.B " + roff(option->get_name(!option->nonpositional(), true));
    const std::string value = value_text(*option);
    out += (value.empty() ? "" : " \\fR" + roff(value)) + "\n" + roff(option->get_description()) +
           "\n";
  }
  return out;
}

std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& word : words) out += (out.empty() ? "" : " ") + word;
  return out;
}

std::vector<std::string> typed_names(const CLI::Option& option) {
  std::vector<std::string> names;
  for (const std::string& name : option.get_lnames()) names.push_back("--" + name);
  return names;
}

/// One subcommand's part of the completion: the words after an option, or its options.
std::string bash_case(const CLI::App& sub) {
  std::vector<std::string> names;
  std::string by_option;
  for (const CLI::Option* option : options_of(sub)) {
    const auto typed = typed_names(*option);
    names.insert(names.end(), typed.begin(), typed.end());
    const auto words = words_of(*option);
    if (typed.empty() || words.empty()) continue;
    by_option += "        " + typed.front() + ") words='" + joined(words) + "' ;;\n";
  }
  std::string out = "    " + sub.get_name() + ")\n";
  if (!by_option.empty()) out += "      case $before in\n" + by_option + "      esac\n";
  return out + "      options='" + joined(names) + "' ;;\n";
}

}  // namespace

std::string manual_page(const CLI::App& app) {
  const std::string name = app.get_name();
  std::string out = ".TH OAKLIGHT 1 \"\" \"" + roff(app.version()) + "\"\n.SH NAME\n" + name +
                    " \\- from a cruise of a wooded tract to a marked list\n.SH SYNOPSIS\n.B " +
                    name + "\n.I subcommand\n[\\fIoptions\\fR] \\fItract.gpkg\\fR ...\n" +
                    ".SH DESCRIPTION\n" + roff(app.get_description()) +
                    "\n.PP\nA tract file is a GeoPackage with a history of every change. What a "
                    "subcommand writes is written whole or not at all.\n.SH OPTIONS\n" +
                    roff_options(app) + ".SH SUBCOMMANDS\n";
  for (const CLI::App* sub : subcommands_of(app)) {
    out += ".SS " + roff(sub->get_name()) + "\n" + roff(sub->get_description()) + ".\n" +
           roff_options(*sub);
    if (!sub->get_footer().empty()) out += ".PP\n" + roff_footer(sub->get_footer());
  }
  return out + ".SH NOTES\n" + roff_footer(app.get_footer()) +
         ".SH CAUTION\nOaklight is a reminder and a record. It is not training, a permit, a "
         "survey, "
         "or a check that a tree is safe to fell. Local codes, the product label, the saw's manual "
         "and licensed people always govern.\n.SH SEE ALSO\n.BR oaklight\\-tablet (1)\n";
}

std::string bash_completion(const CLI::App& app) {
  std::vector<std::string> first;
  std::string cases;
  for (const CLI::App* sub : subcommands_of(app)) {
    first.push_back(sub->get_name());
    cases += bash_case(*sub);
  }
  for (const CLI::Option* option : app.get_options()) {
    for (const std::string& name : typed_names(*option)) first.push_back(name);
  }
  return "# bash completion for oaklight; printed by: oaklight --completion\n"
         "_oaklight() {\n"
         "  local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]}\n"
         "  local words='' options=''\n"
         "  COMPREPLY=()\n"
         "  [ \"$COMP_CWORD\" -gt 1 ] || options='" +
         joined(first) +
         "'\n"
         "  [ \"$COMP_CWORD\" -lt 2 ] || case ${COMP_WORDS[1]} in\n" +
         cases +
         "  esac\n"
         "  # Files are bash's own work: no word of ours, and -o default gives them.\n"
         "  if [ -z \"$words\" ] && { [ \"$COMP_CWORD\" -eq 1 ] || [[ $word == -* ]]; }; then\n"
         "    words=$options\n"
         "  fi\n"
         "  mapfile -t COMPREPLY < <(compgen -W \"$words\" -- \"$word\")\n"
         "}\n"
         "complete -o default -F _oaklight oaklight\n";
}

void add_manual(CLI::App& app) {
  const auto prints = [&app](const char* option, const char* help, auto text) {
    app.add_flag_callback(
           option,
           [&app, text] {
             std::cout << text(app);
             throw CLI::Success();
           },
           help)
        ->trigger_on_parse();
  };
  prints("--manual", "Print the manual page (oaklight --manual | man -l -)", manual_page);
  prints("--completion", "Print the completion for bash (source <(oaklight --completion))",
         bash_completion);
}

}  // namespace oaklight::command
