// The program oaklight: one subcommand a file beside this one.
#include <iostream>

#include "core/command/keeping.hpp"
#include "core/command/manual.hpp"
#include "core/command/program.hpp"

namespace {

/// How a run ended, unless what it printed was cut short.
int ended(int exit_code) {
  if (std::cout.flush()) return exit_code;
  std::cerr << "What was printed could not be written: the output takes no more. What went into "
               "files is there.\n";
  return oaklight::command::kFileProblem;
}

}  // namespace

int main(int argc, char** argv) {
  using namespace oaklight::command;
  CLI::App app{
      "Oaklight: from a cruise of a wooded tract to a marked list that a stranger can follow."};
  app.name("oaklight");
  app.set_version_flag("--version", "oaklight " OAKLIGHT_VERSION);
  app.require_subcommand(1);
  app.footer(
      "Each subcommand has its own --help with an example.\n"
      "Exit codes: 0 done; 1 the input has faults or a check found problems, nothing was changed;\n"
      "2 the call is wrong; 3 a file cannot be opened, read or written; 4 no data for what was "
      "asked.");
  int exit_code = kDone;
  add_import(app, exit_code);
  add_boundary(app, exit_code);
  add_design(app, exit_code);
  add_route(app, exit_code);
  add_estimate(app, exit_code);
  add_recommend(app, exit_code);
  add_explain(app, exit_code);
  add_packet(app, exit_code);
  add_compare(app, exit_code);
#ifdef OAKLIGHT_PAPER
  add_sheet(app, exit_code);
#endif
  add_stumps(app, exit_code);
  add_check(app, exit_code);
  add_join(app, exit_code);
  add_rescue(app, exit_code);
  add_snapshots(app, exit_code);
  add_source(app, exit_code);
  add_manual(app);
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& problem) {
    // Help and version end in 0; CLI11's own codes for a wrong call are not part of our interface.
    return app.exit(problem) == 0 ? ended(kDone) : kUsage;
  }
  return ended(exit_code);
}
