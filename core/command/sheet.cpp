#ifdef OAKLIGHT_PAPER

#include <iostream>

#include "core/command/json_values.hpp"
#include "core/command/program.hpp"
#include "core/forms/read_form.hpp"
#include "core/paper/tally_sheet.hpp"
#include "core/session/files.hpp"
#include "core/session/sheet_set.hpp"

namespace oaklight::command {
namespace {

struct Call {
  std::vector<std::string> files;  ///< [tract] out.pdf
  std::string form;
  std::string paper = "letter";
  bool metric = false;
  bool each_plot = false;
  bool json = false;
};

/// Blank sheets from a form alone.
Result<SheetSet> from_form(const Call& call) {
  const auto text = read_whole_file(call.form);
  if (!text) return text.error();
  auto form = read_form(*text, std::filesystem::path(call.form).filename().string());
  if (!form) return form.error();
  return SheetSet{.form = *std::move(form),
                  .system = call.metric ? UnitSystem::metric : UnitSystem::us,
                  .tract = {},
                  .given = {},
                  .species = {},
                  .min_dbh = {},
                  .plots = {}};
}

Result<SheetSet> from_tract(const Call& call) {
  const auto session = open_to_read(call.files.front());
  if (!session) return session.error();
  const auto data = session->data();
  if (!data) return data.error();
  return sheet_set(*data, session->knowledge(), call.each_plot);
}

int run(const Call& call) {
  const auto set = call.form.empty() ? from_tract(call) : from_form(call);
  if (!set) return fail(set.error(), call.json);
  progress("drawing the sheets");
  const auto pdf = sheet_pdf(*set, *from_word<PaperSize>(call.paper));
  if (!pdf) return fail(pdf.error(), call.json);
  const Status written = write_whole_file(call.files.back(), *pdf);
  if (!written) return fail(written.error(), call.json);
  if (call.json) {
    std::cout << json_text({{"file", call.files.back()},
                            {"plots", set->plots.size()},
                            {"form", set->form.name},
                            {"form_version", set->form.version}})
              << '\n';
  } else {
    std::cout
        << call.files.back() << ": print it at full size; "
        << (set->plots.empty() ? "one blank set, copy it for each plot"
                               : std::to_string(set->plots.size()) + " plots")
        << ". Type it in under the small column words and bring it in with oaklight import.\n";
  }
  return kDone;
}

}  // namespace

void add_sheet(CLI::App& app, int& exit_code) {
  auto call = std::make_shared<Call>();
  CLI::App* command =
      app.add_subcommand("sheet", "Tally sheets and a crop tree card to print, for rain");
  command
      ->add_option("files", call->files, "The tract file (not with --form), then the PDF to write")
      ->required()
      ->expected(1, 2);
  command->add_option("--form", call->form, "Blank sheets from this form definition, of no tract");
  command->add_flag("--metric", call->metric, "With --form: columns in metric units");
  command->add_flag("--each-plot", call->each_plot,
                    "A sheet for each plot still to be visited, its label printed");
  command->add_option("--paper", call->paper, "Paper (default: letter)")
      ->check(CLI::IsMember({"letter", "a4"}));
  add_json(*command, call->json);
  command->footer("Example: oaklight sheet hollow.gpkg sheets.pdf --each-plot");
  command->callback([call, &exit_code] {
    const std::size_t wanted = call->form.empty() ? 2 : 1;
    if (call->files.size() != wanted) {
      throw CLI::ValidationError(call->form.empty() ? "Give the tract file and the PDF to write"
                                                    : "With --form, give the PDF to write alone");
    }
    exit_code = run(*call);
  });
}

}  // namespace oaklight::command

#endif
